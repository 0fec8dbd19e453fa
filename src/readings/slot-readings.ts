import { fretFraction, highestFret, type Law, TWELVE } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { MM_PER_INCH } from "../units/index.js";
import type { SlotRow } from "./curve-fit.js";

/** One reading of a slot: its middle from the rule's zero, mm. */
export interface SlotReading {
	readonly fret: number;
	readonly at: number;
}

/** What the rule's zero was laid at: the nut's end, or a line across the board. */
export type RuleZero = "nut" | "square-line";

/** Where the readings stand in the readings block. */
export type ReadingsPath = readonly (string | number)[];

/** Repeats of a slot further apart than this many steps of the rule are not the same slot. */
const REPEAT_STEPS = 10;

/** Scale lengths that an instrument can have, mm: the smallest ukulele and the largest bass lie well inside. */
const SCALES = { from: 150, to: 2000 } as const;

const MM_PER_CM = 10;

/**
 * What is wrong with slot readings, all of it; empty if they can be fitted.
 *
 * @param frets - the highest fret that the neck has
 * @param resolution - step of the rule, mm, greater than 0
 * @param zero - readings from a line across the board may be negative
 * @param law - the told division: only to see whether the scale is of a possible size
 * @param path - of the readings in the readings block
 * @throws RangeError for a resolution of 0 or less
 */
export function readingProblems(
	readings: readonly SlotReading[],
	frets: number,
	resolution: number,
	zero: RuleZero = "nut",
	law: Law = TWELVE,
	path: ReadingsPath = ["slots"],
): Problem[] {
	if (!(resolution > 0)) throw new RangeError(`a rule has no step of ${resolution}`);
	if (readings.length === 0) return [problem("slots-none", path)];
	const single = readings.flatMap((r) =>
		singleProblems(r, Math.min(frets, highestFret(law)), zero, path),
	);
	if (single.length > 0) return single;
	const rows = meanRows(readings, 0);
	if (rows.length > 1 && readings.every((r) => r.at === readings[0]!.at))
		return [problem("slots-equal", path, { count: readings.length, at: readings[0]!.at })];
	const apart = repeatProblems(readings, resolution, path);
	const fall = fallProblems(rows, path);
	return [...apart, ...fall, ...(fall.length > 0 ? [] : unitProblems(rows, law, zero, path))];
}

/** The mean of each fret's readings, by fret: repeats cannot lessen what a slot itself is out by. */
export function meanRows(readings: readonly SlotReading[], side: number): SlotRow[] {
	const byFret = new Map<number, number[]>();
	for (const { fret, at } of readings) byFret.set(fret, [...(byFret.get(fret) ?? []), at]);
	return [...byFret]
		.map(([fret, all]) => ({ fret, at: all.reduce((sum, x) => sum + x, 0) / all.length, side }))
		.sort((a, b) => a.fret - b.fret);
}

function singleProblems(
	{ fret, at }: SlotReading,
	frets: number,
	zero: RuleZero,
	path: ReadingsPath,
): Problem[] {
	const here = [...path, String(fret)];
	if (!Number.isInteger(fret) || fret < 1 || fret > frets)
		return [problem("slot-no-such-fret", here, { fret, frets })];
	if (!Number.isFinite(at)) return [problem("slot-not-a-number", here, { fret })];
	if (zero === "nut" && at <= 0) return [problem("slot-before-nut", here, { fret, at })];
	return [];
}

function repeatProblems(
	readings: readonly SlotReading[],
	resolution: number,
	path: ReadingsPath,
): Problem[] {
	const frets = [...new Set(readings.map((r) => r.fret))];
	return frets.flatMap((fret) => {
		const all = readings.filter((r) => r.fret === fret).map((r) => r.at);
		const [least, most] = [Math.min(...all), Math.max(...all)];
		const allowed = REPEAT_STEPS * resolution;
		if (most - least <= allowed) return [];
		return [problem("slot-repeats-apart", [...path, String(fret)], { fret, least, most, allowed })];
	});
}

function fallProblems(rows: readonly SlotRow[], path: ReadingsPath): Problem[] {
	const i = rows.findIndex((r, k) => k > 0 && r.at <= rows[k - 1]!.at);
	if (i < 0) return [];
	const [low, high] = [rows[i - 1]!, rows[i]!];
	const facts = { before: low.fret, first: low.at, fret: high.fret, second: high.at };
	return [problem("slots-fall", [...path, String(high.fret)], facts)];
}

/** A scale of an impossible size, with what it would be if another unit was read. */
function unitProblems(
	rows: readonly SlotRow[],
	law: Law,
	zero: RuleZero,
	path: ReadingsPath,
): Problem[] {
	const scale = impliedScale(rows, law, zero);
	if (scale === null || (scale >= SCALES.from && scale <= SCALES.to)) return [];
	const guesses = (
		scale < SCALES.from
			? [
					["inches", scale * MM_PER_INCH],
					["centimetres", scale * MM_PER_CM],
				]
			: [
					["millimetres taken for inches", scale / MM_PER_INCH],
					["millimetres taken for centimetres", scale / MM_PER_CM],
				]
	) as [string, number][];
	const likely = guesses.filter(([, length]) => length >= SCALES.from && length <= SCALES.to);
	const facts = {
		scale,
		from: SCALES.from,
		to: SCALES.to,
		guesses: likely.map(([unit, length]) => `${unit} (a scale of ${length.toFixed(1)} mm)`),
	};
	return [problem("slots-unit", path, facts)];
}

function impliedScale(rows: readonly SlotRow[], law: Law, zero: RuleZero): number | null {
	const last = rows.at(-1)!;
	const first = rows[0]!;
	if (rows.length > 1)
		return (last.at - first.at) / (fretFraction(law, last.fret) - fretFraction(law, first.fret));
	return zero === "nut" ? last.at / fretFraction(law, last.fret) : null;
}
