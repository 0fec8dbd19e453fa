import { type CurveFit, fitCurve, gradient, type SlotRow } from "./curve-fit.js";
import { product, remainders } from "./least-squares.js";
import { twoRatios } from "./scale-laws.js";

/** Frets that must have been read on either side of a join. */
const FRETS_BESIDE_JOIN = 3;

/** The best two ratios, and how many joins were tried for it. */
export interface JoinSearch {
	readonly fit: CurveFit;
	readonly searched: number;
}

/** Frets at which two ratios may meet: at least three frets read up to it and three beyond. */
export function joins(rows: readonly SlotRow[]): number[] {
	const frets = [...new Set(rows.map((r) => r.fret))].sort((a, b) => a - b);
	const first = frets[FRETS_BESIDE_JOIN - 1];
	const beyond = frets[frets.length - FRETS_BESIDE_JOIN];
	if (first === undefined || beyond === undefined) return [];
	return Array.from({ length: Math.max(0, beyond - first) }, (_, i) => first + i);
}

/**
 * Two ratios that meet at the fret where they fit best.
 *
 * Each join is first judged by how much a second ratio would take from the single ratio's residuals, to first
 * order; the best by that and its neighbours are then fitted in full, onward while the fit improves.
 *
 * @param single - the free ratio's fit of the same rows
 * @returns null if no join leaves three frets either side that tell a second ratio, or a degree of freedom
 */
export function bestJoin(single: CurveFit): JoinSearch | null {
	const { rows, isOffset } = single;
	if (single.df < 2) return null;
	const gains = joinGains(single, joins(rows));
	const tried = gains.map((g) => g.join);
	if (tried.length === 0) return null;
	const fits = new Map<number, CurveFit | null>();
	const fitAt = (i: number): CurveFit | null => {
		const join = tried[i];
		if (join === undefined) return null;
		if (!fits.has(i)) fits.set(i, fitCurve(rows, twoRatios(join, single.free[0]!), isOffset));
		return fits.get(i) ?? null;
	};
	const most = Math.max(...gains.map((g) => g.gain));
	let at = gains.findIndex((g) => g.gain === most);
	for (;;) {
		const here = fitAt(at)?.rss ?? Number.POSITIVE_INFINITY;
		const next = [at - 1, at + 1].find((i) => (fitAt(i)?.rss ?? Number.POSITIVE_INFINITY) < here);
		if (next === undefined) break;
		at = next;
	}
	const fit = fitAt(at);
	return fit && { fit, searched: tried.length };
}

/** A second ratio's column that keeps less than this share of its square follows from the others. */
const FOLLOWS = 1e-16;

/**
 * What a second ratio beyond each join would take from the sum of squares, to first order; without the joins
 * at which it cannot be told from the strings' own lengths and offsets.
 */
function joinGains(
	single: CurveFit,
	tried: readonly number[],
): { readonly join: number; readonly gain: number }[] {
	const { rows, shape, free, lengths, isOffset, linear } = single;
	const basis = rows.map((r) => gradient(r, shape, free, lengths, isOffset));
	const columns = tried.map((join) =>
		rows.map(
			(r) => lengths[r.side]! * Math.max(0, r.fret - join) * (1 - shape.share(r.fret, free)),
		),
	);
	return remainders(basis, columns).flatMap((rest, i) => {
		const size = product(rest, rest);
		if (size <= FOLLOWS * product(columns[i]!, columns[i]!)) return [];
		return [{ join: tried[i]!, gain: product(rest, linear.residuals) ** 2 / size }];
	});
}
