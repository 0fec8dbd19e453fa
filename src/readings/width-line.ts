import { leastSquares, product, spreadOf } from "./least-squares.js";
import { estimate } from "./statistics.js";

/**
 * A place is out beyond this many standard errors of what the others leave for it, and beyond what
 * this many steps in every reading would leave.
 */
const OUT_STANDARDS = 4;
const OUT_STEPS = 2;

/** All readings of one place, x in mm from the theoretical nut. */
export interface Place {
	readonly x: number;
	readonly values: readonly number[];
}

/** Variance of one reading: scatter within the places, never below the step's. */
function varianceOf(places: readonly Place[], resolution: number): number {
	const spare = places.reduce((sum, { values }) => sum + values.length - 1, 0);
	const squares = places.reduce((sum, { values }) => {
		const mean = meanOf(values);
		return sum + values.reduce((part, value) => part + (value - mean) ** 2, 0);
	}, 0);
	return Math.max(spare > 0 ? squares / spare : 0, resolution ** 2 / 12);
}

export const meanOf = (values: readonly number[]) =>
	values.reduce((sum, value) => sum + value, 0) / values.length;

/** A straight line through all single readings. */
export function lineThrough(places: readonly Place[], resolution: number) {
	const rows = places.flatMap(({ x, values }) => values.map((value) => ({ x, value })));
	const fit = leastSquares(
		rows.map(({ x }) => [1, x]),
		rows.map(({ value }) => value),
	);
	const floor = resolution ** 2 / 12;
	const scatter = fit.df > 0 ? fit.rss / fit.df : 0;
	const variance = Math.max(scatter, floor);
	const df = scatter > floor ? fit.df : Number.POSITIVE_INFINITY;
	const sum = (gradient: readonly number[]) => ({
		value: product(gradient, fit.coefficients),
		/** Share of a reading's variance that stays in the sum. */
		share: spreadOf(fit.covariance, gradient),
	});
	const combine = (gradient: readonly number[]) => {
		const { value, share } = sum(gradient);
		return estimate(value, Math.sqrt(Math.max(0, share * variance)), df);
	};
	return { sum, combine };
}

/** How far a place lies off the line through all the others, in allowed departures; over 1 it is out. */
function departures(places: readonly Place[], resolution: number): number[] {
	const variance = varianceOf(places, resolution);
	return places.map((place) => {
		const others = places.filter((other) => other !== place);
		const { value, share } = lineThrough(others, resolution).sum([1, place.x]);
		const standard = Math.sqrt(variance * (share + 1 / place.values.length));
		const limit = Math.max(OUT_STANDARDS * standard, OUT_STEPS * resolution * Math.sqrt(share + 1));
		return Math.abs(meanOf(place.values) - value) / limit;
	});
}

/** The place that is out: the only one without which the others lie on a line. */
export function outOf(places: readonly Place[], resolution: number): Place | null {
	if (places.length < 4 || straight(places, resolution)) return null;
	const suspects = places.filter((place) =>
		straight(
			places.filter((other) => other !== place),
			resolution,
		),
	);
	return suspects.length === 1 ? suspects[0]! : null;
}

/** Whether every place lies on the line of all the others, as far as the readings tell. */
export function straight(places: readonly Place[], resolution: number): boolean {
	return Math.max(...departures(places, resolution)) <= 1;
}
