import type { Law } from "../neck/index.js";
import type { Problem } from "../problem/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import type { FittedSlot } from "./fitted-slots.js";
import { FREE_OFFSET } from "./law-at-nut.js";
import type { ScaleFit, ScaleOptions } from "./scale-fit.js";
import type { LawKind } from "./scale-laws.js";
import type { ReadingsPath } from "./slot-readings.js";
import type { Undecided } from "./undecided.js";

const PATH = ["slots"];

/** A law in words, as a message names it. */
export function lawName(kind: LawKind, told: Law): string {
	if (kind === "told") return toldName(told);
	if (kind === "twelve") return "12 equal steps";
	if (kind === "rule-of-18") return "the rule of 18";
	return kind === "ratio" ? "a free ratio" : "two ratios that meet at a fret";
}

function toldName(told: Law): string {
	if (told.kind === "equal") return `${told.steps} equal steps`;
	return told.kind === "rule-of-18" ? "the rule of 18" : "the listed division";
}

/** What is said alike of one line of slots and of two. */
export interface LawFound {
	readonly kind: LawKind;
	readonly undecided: Undecided | null;
	readonly untested: readonly LawKind[];
	readonly s: number;
	readonly isResolutionBound: boolean;
	/** Slots read. */
	readonly read: number;
}

/** What the readings cannot decide, with the reading that would; and what they say against what was told. */
export function scaleNotes(
	fit: Omit<ScaleFit, "notes">,
	{ law, resolution, nut }: ScaleOptions,
	untested: readonly LawKind[],
): Problem[] {
	const read = fit.rows.length;
	if (read === 1)
		return [note("scale-from-one-slot", PATH, { fret: fit.rows[0]!.fret, resolution })];
	const { free } = fit.alternatives;
	const offsetTest = fit.comparisons.find((c) => c.richer === FREE_OFFSET);
	const isOut = nut === "true" && offsetTest?.wins === true && free !== null;
	const isUntested = nut === "unknown" && !offsetTest;
	return [
		...oddNotes(fit.rows, PATH),
		...lawNotes({ ...fit, untested, read }, law, resolution),
		...(isOut ? [nutNote(free.offset, free.scale, PATH)] : []),
		...(isUntested ? [note("nut-untested", PATH, { read })] : []),
		...unseenNut(fit, nut),
	];
}

/** A nut's end that may be this far off unseen is said, mm. */
const SEEN = 0.3;

/** How far off an unknown nut's end may be although the fit goes through it. */
function unseenNut(
	{ offset, alternatives }: Pick<ScaleFit, "offset" | "alternatives">,
	nut: ScaleOptions["nut"],
): Problem[] {
	const { free } = alternatives;
	if (nut !== "unknown" || offset !== null || free === null) return [];
	const { low, high } = free.offset;
	const most = Math.max(Math.abs(low), Math.abs(high));
	if (most <= SEEN) return [];
	return [note("nut-undecided", PATH, { low, high, from: free.scale.low, to: free.scale.high })];
}

/** Slots that were left out. */
export function oddNotes(rows: readonly FittedSlot[], path: ReadingsPath): Problem[] {
	return rows
		.filter((r) => r.isOdd)
		.map(({ fret, residual, cents }) =>
			note("slot-odd", [...path, String(fret)], { fret, off: residual, cents }),
		);
}

/** What was found of the law, left open or untested, and whether the rule's step bounds it. */
export function lawNotes(found: LawFound, law: Law, resolution: number): Problem[] {
	const { kind, undecided, untested, s, isResolutionBound, read } = found;
	const name = (k: LawKind) => lawName(k, law);
	const isOther = kind !== "told";
	return [
		...(isOther ? [note("law-not-told", PATH, { told: name("told"), found: name(kind) })] : []),
		...(undecided ? [alikeNote(undecided, name, read)] : []),
		...(untested.length > 0
			? [note("law-untested", PATH, { laws: untested.map(name), read })]
			: []),
		...(isResolutionBound ? [note("scatter-below-step", PATH, { resolution, s })] : []),
	];
}

/** A nut told to be true that the slots find out. */
export function nutNote(offset: Estimate, scale: Estimate, path: ReadingsPath): Problem {
	return note("nut-end-off", path, { offset: offset.value, scale: scale.value });
}

function alikeNote(undecided: Undecided, name: (kind: LawKind) => string, read: number): Problem {
	const laws = undecided.laws.map(name);
	if (!undecided.read) return note("laws-alike-finer", PATH, { laws, read });
	const { from, to } = undecided.read;
	return note("laws-alike", PATH, { laws, read, from, to });
}
