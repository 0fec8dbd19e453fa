import { leastSquares, spreadOf } from "./least-squares.js";
import { naturalSpline, type Smooth } from "./straightness-spline.js";

/** A relief at a place, mm along the line. */
export interface ReliefAt {
	readonly x: number;
	readonly relief: number;
}

/** A curve that is a sum of fixed shapes: its uncertainty follows from that of their sizes. */
export interface ReliefCurve {
	/** `arch`: one smooth arch; `points`: a spline through every reading. */
	readonly kind: "arch" | "points";
	readonly shapes: readonly Smooth[];
	readonly sizes: readonly number[];
	readonly covariance: readonly (readonly number[])[];
	/** Degrees of freedom of the covariance, infinite where the resolution decides it. */
	readonly df: number;
	/** Reading less curve of the arch, in the order of the readings, whichever curve was kept. */
	readonly residuals: readonly number[];
}

/** A step r of reading has this variance as a share of r². */
const STEP_VARIANCE = 1 / 12;

/** ξ(1 − ξ), and ξ(1 − ξ)(2ξ − 1): an arch, and its lean to one end; 0 at both contacts. */
function archShapes(from: number, to: number): Smooth[] {
	const size = to - from;
	const share = (x: number) => (x - from) / size;
	return [
		{
			at: (x) => share(x) * (1 - share(x)),
			slope: (x) => (1 - 2 * share(x)) / size,
			bend: () => -2 / size ** 2,
		},
		{
			at: (x) => share(x) * (1 - share(x)) * (2 * share(x) - 1),
			slope: (x) => (-1 + 6 * share(x) - 6 * share(x) ** 2) / size,
			bend: (x) => (6 - 12 * share(x)) / size ** 2,
		},
	];
}

function arch(
	points: readonly ReliefAt[],
	shapes: readonly Smooth[],
	resolution: number,
): ReliefCurve {
	const design = points.map(({ x }) => shapes.map((shape) => shape.at(x)));
	const fit = leastSquares(
		design,
		points.map(({ relief }) => relief),
	);
	const floor = resolution ** 2 * STEP_VARIANCE;
	const scatter = fit.df > 0 ? fit.rss / fit.df : 0;
	const variance = Math.max(scatter, floor);
	return {
		kind: "arch",
		shapes,
		sizes: fit.coefficients,
		covariance: fit.covariance.map((row) => row.map((value) => value * variance)),
		df: scatter > floor ? fit.df : Number.POSITIVE_INFINITY,
		residuals: fit.residuals,
	};
}

/** A natural spline through the contacts, at 0, and the mean reading of every place. */
function throughPoints(
	points: readonly ReliefAt[],
	from: number,
	to: number,
	resolution: number,
	residuals: readonly number[],
): ReliefCurve {
	const places = [...new Set(points.map(({ x }) => x))].sort((a, b) => a - b);
	const knots = [from, ...places, to];
	const read = places.map((place) => points.filter(({ x }) => x === place));
	return {
		kind: "points",
		shapes: places.map((place) =>
			naturalSpline(
				knots,
				knots.map((x) => (x === place ? 1 : 0)),
			),
		),
		sizes: read.map((r) => r.reduce((sum, { relief }) => sum + relief, 0) / r.length),
		covariance: read.map((r, i) =>
			read.map((_, j) => (i === j ? (resolution ** 2 * STEP_VARIANCE) / r.length : 0)),
		),
		df: Number.POSITIVE_INFINITY,
		residuals,
	};
}

/**
 * The smooth curve of the relief between two contacts, where it is 0.
 *
 * An arch with a lean, by least squares, is kept while no reading lies off it by more than the
 * resolution: a bent neck is one arch, and fitting it evens out the steps of the readings. Where a
 * reading lies farther off, the board has a shape of its own, and a natural cubic spline through the
 * readings follows it without evening anything out. Two places carry an arch without lean, or, where
 * that misses them, one with.
 *
 * @param points - two or more places between the contacts
 */
export function reliefCurve(
	points: readonly ReliefAt[],
	from: number,
	to: number,
	resolution: number,
): ReliefCurve {
	const shapes = archShapes(from, to);
	const places = new Set(points.map(({ x }) => x)).size;
	const holds = ({ residuals }: ReliefCurve) =>
		residuals.every((residual) => Math.abs(residual) <= resolution + 1e-9);
	if (places === 2) {
		const even = arch(points, shapes.slice(0, 1), resolution);
		if (holds(even)) return even;
	}
	const leaning = arch(points, shapes, resolution);
	if (holds(leaning)) return leaning;
	return throughPoints(points, from, to, resolution, leaning.residuals);
}

function sumOf(curve: ReliefCurve, value: (shape: Smooth) => number): number {
	return curve.shapes.reduce((sum, shape, i) => sum + curve.sizes[i]! * value(shape), 0);
}

function standardOf(curve: ReliefCurve, value: (shape: Smooth) => number): number {
	return Math.sqrt(Math.max(0, spreadOf(curve.covariance, curve.shapes.map(value))));
}

/** The curve's height at a place, and its standard error. */
export function heightOn(curve: ReliefCurve, x: number) {
	const value = (shape: Smooth) => shape.at(x);
	return { value: sumOf(curve, value), standard: standardOf(curve, value) };
}

/** Places looked at for the highest; between two of them the curve has one top at most in practice. */
const SAMPLES = 400;
const HALVINGS = 50;

/**
 * Where the curve is highest between its contacts, and the standard error of that place; null where it
 * is nowhere above 0. To first order the place moves by the slope's error over the curve's bend.
 */
export function topOf(curve: ReliefCurve, from: number, to: number) {
	const step = (to - from) / SAMPLES;
	const xs = Array.from({ length: SAMPLES - 1 }, (_, i) => from + (i + 1) * step);
	const best = xs.reduce((a, b) => (heightOn(curve, b).value > heightOn(curve, a).value ? b : a));
	if (heightOn(curve, best).value <= 0) return null;
	let [low, high] = [best - step, best + step];
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (low + high) / 2;
		if (sumOf(curve, (shape) => shape.slope(middle)) > 0) low = middle;
		else high = middle;
	}
	const x = (low + high) / 2;
	const bend = Math.abs(sumOf(curve, (shape) => shape.bend(x)));
	return { x, standard: standardOf(curve, (shape) => shape.slope(x)) / bend };
}
