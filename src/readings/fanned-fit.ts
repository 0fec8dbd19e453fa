import { highestFret, type Law } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { type CurveFit, fitCurve, type SlotRow, varianceOf } from "./curve-fit.js";
import type { Estimate } from "./estimate.js";
import { estimateOf } from "./fit-estimates.js";
import { type FittedSlot, fittedSlots } from "./fitted-slots.js";
import { chooseLawAtNut, FREE_OFFSET, THROUGH_NUT } from "./law-at-nut.js";
import { type Comparison, chooseLaw, compare, type LawChoice } from "./law-choice.js";
import type { ScaleOptions } from "./scale-fit.js";
import { type LawKind, lawOf } from "./scale-laws.js";
import { lawNotes, nutNote, oddNotes } from "./scale-notes.js";
import { meanRows, type RuleZero, readingProblems, type SlotReading } from "./slot-readings.js";
import { squareFret } from "./square-fret.js";
import { type Undecided, undecidedOf } from "./undecided.js";

/** Slot readings along both outer strings. */
export interface FannedReadings {
	readonly bass: readonly SlotReading[];
	readonly treble: readonly SlotReading[];
}

/** What is known besides the readings of a fanned board. */
export interface FannedOptions extends ScaleOptions {
	/** Where the rule's zero lay: each string's own nut end, or one line square to the centre line. */
	readonly from: RuleZero;
	/** Outer string centre to outer string centre, square to the centre line, mm. */
	readonly spread?: { readonly atNut: number; readonly atSaddle: number };
}

/** Both scale lengths, and the fret that lies square to the centre line. */
export interface FannedFit {
	readonly law: Law;
	readonly kind: LawKind;
	readonly join: number | null;
	readonly ratios: readonly number[];
	/** Along the outer strings, mm. */
	readonly scale: { readonly bass: Estimate; readonly treble: Estimate };
	/** The strings' theoretical nuts from the rule's zero, mm; null through the nut's ends. */
	readonly offset: { readonly bass: Estimate; readonly treble: Estimate } | null;
	/** Null where the readings cannot tell; a note says why. */
	readonly squareFret: Estimate | null;
	readonly s: number;
	readonly df: number;
	readonly isResolutionBound: boolean;
	readonly rows: { readonly bass: readonly FittedSlot[]; readonly treble: readonly FittedSlot[] };
	readonly odd: { readonly bass: readonly number[]; readonly treble: readonly number[] };
	readonly comparisons: readonly Comparison[];
	readonly undecided: Undecided | null;
	/** What the readings cannot decide, and what would. */
	readonly notes: readonly Problem[];
}

const USUAL_FRETS = 24;

/**
 * Both scales of a fanned board from slot readings along its outer strings: one law, x = a + L·u(n) on each string.
 *
 * From a line square to the centre line the fret p with a_b + L_b·u(p) = a_t + L_t·u(p) is the square one.
 * From each string's own nut end it cannot be known.
 *
 * @returns problems for readings that cannot be fitted
 * @throws RangeError for a resolution of 0 or less
 */
export function fitFanned(readings: FannedReadings, options: FannedOptions): FannedFit | Problem[] {
	const { law, resolution, nut, from } = options;
	const problems = problemsOf(readings, options);
	if (problems.length > 0) return problems;
	const rows = SIDES.flatMap((side, i) => meanRows(readings[side], i));
	const isAtNut = from === "nut" && nut === "true";
	const choice = isAtNut
		? chooseLawAtNut(rows, law, resolution)
		: chooseLaw(rows, law, true, resolution);
	if (!choice) return [problem("slots-no-law", ["slots"], { read: rows.length })];
	const { odd } = choice.best.clean;
	const short = SIDES.filter((_, i) => slotsOf(rows, i).length - slotsOf(odd, i).length < 2);
	if (short.length > 0)
		return short.map((side) =>
			problem("slots-disagree", ["slots", side], {
				frets: readings[side].map((r) => String(r.fret)),
			}),
		);
	return result(rows, choice, options);
}

const SIDES = ["bass", "treble"] as const;

function slotsOf<T extends { readonly side: number }>(rows: readonly T[], side: number): T[] {
	return rows.filter((r) => r.side === side);
}

function problemsOf(
	readings: FannedReadings,
	{ law, resolution, from, frets = Number.POSITIVE_INFINITY }: FannedOptions,
): Problem[] {
	return SIDES.flatMap((side) => {
		const path = ["slots", side];
		const found = readingProblems(readings[side], frets, resolution, from, law, path);
		const given = meanRows(readings[side], 0).length;
		if (found.length > 0 || given > 1) return found;
		return [problem("slots-too-few", path, { given, needed: 2 })];
	});
}

/** The law with free offsets or through both nut ends, as told or as an F-test asks. */
function throughOrFree(
	fit: CurveFit,
	{ from, nut, resolution }: FannedOptions,
): { readonly fit: CurveFit; readonly free: CurveFit | null; readonly test: Comparison | null } {
	if (from === "square-line") return { fit, free: fit, test: null };
	const through = fit.isOffset ? fitCurve(fit.rows, fit.shape, false) : fit;
	const free = fit.isOffset ? fit : fitCurve(fit.rows, fit.shape, true);
	if (!through) return { fit, free, test: null };
	const isTested = free !== null && free.df > 0;
	const test = isTested ? compare([THROUGH_NUT, FREE_OFFSET], through, free, resolution) : null;
	const isFree = nut === "filed" || (nut === "unknown" && test?.wins === true);
	return { fit: (isFree ? free : through) ?? fit, free, test };
}

/** A coefficient of each string. */
function both(fit: CurveFit, at: number, resolution: number) {
	return {
		bass: estimateOf(fit, at, resolution),
		treble: estimateOf(fit, at + 1, resolution),
	};
}

function result(
	rows: readonly SlotRow[],
	choice: LawChoice,
	options: FannedOptions,
): FannedFit | Problem[] {
	const { resolution, law, from, spread } = options;
	const { clean, comparisons } = choice.best;
	const { fit, free, test } = throughOrFree(clean.fit, options);
	const read = Math.max(USUAL_FRETS, ...rows.map((r) => r.fret));
	const frets = Math.min(highestFret(law), options.frets ?? read);
	const taper = spread ? (spread.atSaddle - spread.atNut) / 2 : 0;
	const shortest = Math.min(...fit.lengths);
	if (Math.abs(taper) >= shortest)
		return [problem("scales-beyond-spread", ["slots"], { taper, scale: shortest })];
	const square = from === "nut" ? "square-fret-unknown" : squareFret(fit, frets, resolution, taper);
	const isFound = typeof square !== "string";
	const fitted = fittedSlots(rows, fit, clean.odd, resolution);
	const ofSide = (i: number) => fitted.filter((_, k) => rows[k]!.side === i);
	const oddOf = (i: number) => slotsOf(clean.odd, i).map((r) => r.fret);
	const found = {
		law: lawOf(fit.shape, fit.free, law, frets),
		kind: fit.shape.kind as LawKind,
		join: fit.shape.join,
		ratios: fit.free.map((rate) => Math.exp(-rate)),
		scale: both(fit, fit.isOffset ? 2 : 0, resolution),
		offset: fit.isOffset ? both(fit, 0, resolution) : null,
		squareFret: isFound ? square : null,
		s: Math.sqrt(varianceOf(fit, resolution)),
		df: fit.df,
		isResolutionBound: !(fit.df > 0 && fit.rss / fit.df > resolution ** 2 / 12),
		rows: { bass: ofSide(0), treble: ofSide(1) },
		odd: { bass: oddOf(0).sort((a, b) => a - b), treble: oddOf(1).sort((a, b) => a - b) },
		comparisons: test ? [...comparisons, test] : comparisons,
		undecided: undecidedOf(choice, frets, resolution),
	};
	const notes = fannedNotes(found, free, choice.best.untested, options);
	return { ...found, notes: [...(isFound ? [] : [note(square, ["slots"])]), ...notes] };
}

/** Odd slots, what is open about the law, and nuts that are out, string by string. */
function fannedNotes(
	fit: Omit<FannedFit, "notes">,
	free: CurveFit | null,
	untested: readonly LawKind[],
	{ law, resolution, from, nut }: FannedOptions,
): Problem[] {
	const { bass, treble } = fit.rows;
	const read = bass.length + treble.length;
	const test = fit.comparisons.find((c) => c.richer === FREE_OFFSET);
	const isOut = free && nut === "true" && test?.wins === true;
	const isUntested = from === "nut" && nut === "unknown" && !test;
	const offsets = isOut ? both(free, 0, resolution) : null;
	const scales = isOut ? both(free, 2, resolution) : null;
	const unchecked = fit.offset ? SIDES.filter((side) => fit.rows[side].length === 2) : [];
	return [
		...SIDES.flatMap((side) => oddNotes(fit.rows[side], ["slots", side])),
		...unchecked.map((side) => note("string-unchecked", ["slots", side])),
		...lawNotes({ ...fit, untested, read }, law, resolution),
		...(offsets && scales
			? SIDES.map((side) => nutNote(offsets[side], scales[side], ["slots", side]))
			: []),
		...(isUntested ? [note("nut-untested", ["slots"], { read })] : []),
	];
}
