import { independentSquares, type LeastSquares } from "./least-squares.js";
import type { Shape } from "./scale-laws.js";

/** The slot of one fret on one string: the mean of its readings. */
export interface SlotRow {
	readonly fret: number;
	/** From the rule's zero, mm. */
	readonly at: number;
	/** Which string was read along: 0, or 1 for the second of two. */
	readonly side: number;
}

/** x = δ + L·u(n), fitted: lengths and offsets by string, and what is free in u. */
export interface CurveFit {
	readonly shape: Shape;
	readonly rows: readonly SlotRow[];
	readonly isOffset: boolean;
	readonly free: readonly number[];
	readonly lengths: readonly number[];
	/** 0 where the fit runs through the nut end. */
	readonly offsets: readonly number[];
	/** Columns: offsets (if any), lengths, free parameters; at the solution. */
	readonly linear: LeastSquares;
	readonly rss: number;
	readonly df: number;
}

/** A free parameter stands once a step changes it by less than this share. */
const SETTLED = 1e-10;

/** A step that is rounding alone. */
const NOTHING = 1e-12;

/** Steps until the free parameters must stand; usually 4 to 6 are taken. */
const MOST_STEPS = 60;

/** Longest step of a rate, as a share of it: a start far off must not overshoot. */
const LONGEST_STEP = 0.3;

/** Parameters of a model. */
export function parameters(shape: Shape, sides: number, isOffset: boolean): number {
	return sides * (isOffset ? 2 : 1) + shape.start.length;
}

/**
 * Least squares of a law, with the lengths (and offsets) linear in it.
 *
 * Gauss-Newton on the separated problem: with u taken linear about the present free parameters,
 * lengths, offsets and the step are one linear fit; at the solution its covariance is the whole model's.
 *
 * @returns null with fewer rows than parameters on a string or in all, or if the rows leave a parameter open or the free ones do not settle
 */
export function fitCurve(
	rows: readonly SlotRow[],
	shape: Shape,
	isOffset: boolean,
): CurveFit | null {
	const sides = 1 + Math.max(0, ...rows.map((r) => r.side));
	if (rows.length < parameters(shape, sides, isOffset)) return null;
	if (!isEachKnown(rows, sides, isOffset)) return null;
	const values = rows.map((r) => r.at);
	const fixed = isOffset ? sides : 0;
	let free = shape.start;
	let lengths: readonly number[] = linearLengths(rows, shape, sides, isOffset);
	for (let step = 0; step < MOST_STEPS; step++) {
		const linear = independentSquares(
			rows.map((r) => gradient(r, shape, free, lengths, isOffset)),
			values,
		);
		if (!linear) return null;
		const { coefficients, rss, df } = linear;
		lengths = coefficients.slice(fixed, fixed + sides);
		const moves = coefficients.slice(fixed + sides);
		if (moves.every((move, i) => Math.abs(move) <= SETTLED * Math.abs(free[i]!) + NOTHING)) {
			const offsets = isOffset ? coefficients.slice(0, sides) : lengths.map(() => 0);
			return { shape, rows, isOffset, free, lengths, offsets, linear, rss, df };
		}
		const longest = shape.kind === "mixture" ? 1 : stepShare(moves, free);
		free = free.map((value, i) => value + moves[i]! * longest);
		if (!shape.isSound(free)) return null;
	}
	return null;
}

/** Whether every string has slots enough for a length and offset of its own. */
function isEachKnown(rows: readonly SlotRow[], sides: number, isOffset: boolean): boolean {
	const counts = new Array<number>(sides).fill(0);
	for (const { side } of rows) counts[side]!++;
	return counts.every((count) => count >= (isOffset ? 2 : 1));
}

function stepShare(moves: readonly number[], free: readonly number[]): number {
	const steps = moves.map((move, i) => Math.abs(move / free[i]!) / LONGEST_STEP);
	return 1 / Math.max(1, ...steps);
}

/** Lengths that fit at the start of the free parameters. */
function linearLengths(
	rows: readonly SlotRow[],
	shape: Shape,
	sides: number,
	isOffset: boolean,
): number[] {
	if (shape.start.length === 0) return new Array<number>(sides).fill(1);
	const ends = rows.map((r) => ({ ...r, u: shape.share(r.fret, shape.start) }));
	return Array.from({ length: sides }, (_, side) => {
		const own = ends.filter((r) => r.side === side).sort((a, b) => a.u - b.u);
		const last = own.at(-1)!;
		const first = isOffset ? own[0]! : { at: 0, u: 0 };
		return (last.at - first.at) / (last.u - first.u);
	});
}

/** Derivatives of a slot's place by offsets, lengths and free parameters. */
export function gradient(
	{ fret, side }: { readonly fret: number; readonly side: number },
	shape: Shape,
	free: readonly number[],
	lengths: readonly number[],
	isOffset: boolean,
): number[] {
	const row: number[] = [];
	if (isOffset) for (let i = 0; i < lengths.length; i++) row.push(i === side ? 1 : 0);
	const share = shape.share(fret, free);
	for (let i = 0; i < lengths.length; i++) row.push(i === side ? share : 0);
	for (const slope of shape.slopes(fret, free)) row.push(slope * lengths[side]!);
	return row;
}

/** Where a fit puts a slot, mm. */
export function placeOf(fit: CurveFit, fret: number, side: number): number {
	return fit.offsets[side]! + fit.lengths[side]! * fit.shape.share(fret, fit.free);
}

/** A fit's variance, mm²: that of its residuals, but never below a rounding's, step²/12. */
export function varianceOf({ rss, df }: CurveFit, resolution: number): number {
	const floor = resolution ** 2 / 12;
	return df > 0 ? Math.max(rss / df, floor) : floor;
}
