import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { chiSquareTail } from "./chi-square.js";
import type { Estimate } from "./estimate.js";
import { type RadiusEstimate, type ReadingPath, radiusOf, weighingSd } from "./radius-estimate.js";
import { estimate } from "./statistics.js";

/** Chance below which readings are taken to disagree. */
const DISAGREE = 0.01;

/**
 * Several readings at one station in one: their mean in curvature, weighed by 1/sd².
 *
 * Chi-square on n − 1 tells whether they agree; where they do not (1 %), every reading whose
 * distance from the mean of the others exceeds what both allow is named, and the standard error grows
 * by √(χ²/(n − 1)) (Birge, Phys. Rev. 40, 1932). The weights take each interval's half width for 1.96
 * standard errors.
 *
 * @returns problems for an empty list
 */
export function combinedRadius(
	readings: readonly RadiusEstimate[],
	path: ReadingPath = ["radius"],
): RadiusEstimate | Problem[] {
	const [first] = readings;
	if (!first) return [problem("no-radius-readings", path)];
	if (readings.length === 1) return first;
	const curvatures = readings.map((r) => r.curvature);
	const { value, sd } = weighedMean(curvatures);
	const chi2 = curvatures.reduce((s, k) => s + ((k.value - value) / weighingSd(k)) ** 2, 0);
	const df = readings.length - 1;
	const chance = chiSquareTail(chi2, df);
	const agree = chance >= DISAGREE;
	const spread = agree ? 1 : Math.sqrt(chi2 / df);
	const curvature = estimate(value, sd * spread, Number.POSITIVE_INFINITY);
	return {
		label: readings.map((r) => r.label).join(", "),
		radius: radiusOf(curvature),
		curvature,
		flat: curvature.low <= 0,
		chord: Math.max(...readings.map((r) => r.chord)),
		notes: [
			...readings.flatMap((r) => r.notes),
			...(agree ? [] : [disagreement(readings, path, chance, spread)]),
		],
	};
}

function weighedMean(values: readonly Estimate[]) {
	const weights = values.map((v) => weighingSd(v) ** -2);
	const sum = weights.reduce((a, b) => a + b, 0);
	const value = values.reduce((s, v, i) => s + v.value * weights[i]!, 0) / sum;
	return { value, sd: 1 / Math.sqrt(sum) };
}

function disagreement(
	readings: readonly RadiusEstimate[],
	path: ReadingPath,
	chance: number,
	spread: number,
): Problem {
	const strays = readings.map((reading, i) => {
		const others = weighedMean(readings.filter((_, k) => k !== i).map((r) => r.curvature));
		const off = Math.abs(reading.curvature.value - others.value);
		return {
			name: `${i + 1} (${reading.label})`,
			by: off / Math.hypot(others.sd, weighingSd(reading.curvature)),
		};
	});
	const named = strays.filter(({ by }) => chiSquareTail(by * by, 1) < DISAGREE);
	// All may share the disagreement without one that stands out.
	const readingsOut = (named.length > 0 ? named : strays).map((s) => s.name);
	return note("readings-disagree", path, { readings: readingsOut, chance, spread });
}
