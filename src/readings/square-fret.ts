import { type CurveFit, gradient, varianceOf } from "./curve-fit.js";
import type { Estimate } from "./estimate.js";
import { degrees } from "./fit-estimates.js";
import { spreadOf } from "./least-squares.js";
import { estimate, tQuantile } from "./statistics.js";

/** Halvings that take a fret number to the last digit. */
const HALVINGS = 60;

/** Half the step for the slope of u by the fret; the fret need not be whole. */
const FRET_STEP = 1e-4;

/**
 * The fret square to the centre line, from both strings read from one square line.
 *
 * Read along the strings, a slot lies (a + L·u)·cos θ from the line, sin θ = taper/L. So p is where
 * D(p) = (a_b + L_b·u)·cos θ_b − (a_t + L_t·u)·cos θ_t is 0, and its standard error that of D over the slope of D (delta method).
 * The cosines of two usual strings differ by about 1e-5: 0.003 mm.
 *
 * @param taper - half of what the spread grows from nut to saddle, mm; 0 leaves the cosines out
 * @returns the code of a note if the scales are alike or the square fret is not on the neck
 */
export function squareFret(
	fit: CurveFit,
	frets: number,
	resolution: number,
	taper: number,
): Estimate | "square-fret-scales-alike" | "square-fret-off-neck" {
	const { shape, free, lengths, offsets, linear } = fit;
	const cosines = lengths.map((length) => Math.sqrt(1 - (taper / length) ** 2));
	const variance = varianceOf(fit, resolution);
	const sign = [1, -1];
	const first = fit.isOffset ? 2 : 0;
	const between = linear.coefficients.map((_, i) => sign[i - first] ?? 0);
	const reach = Math.sqrt(variance * spreadOf(linear.covariance, between));
	const apart = Math.abs(lengths[0]! - lengths[1]!);
	if (apart <= tQuantile(0.975, degrees(fit)) * reach) return "square-fret-scales-alike";
	const ahead = (fret: number) =>
		sign.reduce((sum, by, i) => {
			const place = offsets[i]! + lengths[i]! * shape.share(fret, free);
			return sum + by * cosines[i]! * place;
		}, 0);
	const at = rootBetween(ahead, 0, frets);
	if (at === null) return "square-fret-off-neck";
	const rows = cosines.map((c, side) =>
		gradient({ fret: at, side }, shape, free, lengths, fit.isOffset).map(
			(g) => g * c * sign[side]!,
		),
	);
	const whole = rows[0]!.map((g, i) => g + rows[1]![i]!);
	const low = Math.max(0, at - FRET_STEP);
	const high = Math.min(frets, at + FRET_STEP);
	const slope = (ahead(high) - ahead(low)) / (high - low);
	const standard = Math.sqrt(variance * spreadOf(linear.covariance, whole)) / Math.abs(slope);
	return estimate(at, standard, degrees(fit));
}

/** Where a monotone function is 0, by halving; null if it does not change sign. */
function rootBetween(of: (x: number) => number, from: number, to: number): number | null {
	let [low, high] = [from, to];
	const start = Math.sign(of(low));
	if (start === 0) return low;
	if (Math.sign(of(high)) === start) return null;
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (low + high) / 2;
		if (Math.sign(of(middle)) === start) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}
