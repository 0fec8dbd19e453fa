import { crossingOf, type Neck, type Station, type StringLine } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { rests } from "./straightness-bar.js";
import { alongOf, readLine } from "./straightness-line.js";
import type { StraightnessReading } from "./straightness-reading.js";

/** Nearer to a contact than this, a gap is the contact's own. */
const AT_CONTACT = 1;
const MOST_GAP = 10;
/** Coarsest step of gaps that tells a relief. */
export const MOST_RESOLUTION = 0.5;

/** Where in the readings. */
export const path = (...keys: (string | number)[]) => ["straightness", ...keys];

/** A reading laid on its neck, mm along the line. */
export interface Placed {
	readonly line: StringLine;
	readonly from: number;
	readonly to: number;
	readonly xs: readonly number[];
}

/** Where everything lies, or what does not lie on this neck. */
export function placed(reading: StraightnessReading, neck: Neck): Placed | Problem[] {
	const line = readLine(neck, reading.along);
	if (!line) {
		const count = neck.strings ? neck.strings.count * (neck.strings.pairGap > 0 ? 2 : 1) : 0;
		return [problem("gap-line-unknown", path("along"), { given: reading.along, count })];
	}
	const start: Station = { kind: "fret", fret: neck.zeroFret ? 0 : 1 };
	const [first, second] = reading.contacts ?? [
		reading.on === "wood" ? { kind: "nut" } : start,
		{ kind: "last-fret" },
	];
	const fretsOff = [first, second, ...reading.gaps.map(({ at }) => at)].flatMap((station, i) =>
		station.kind === "fret" && !(station.fret >= 0 && station.fret <= neck.frets)
			? [
					problem(
						"gap-fret-not-on-neck",
						i < 2 ? path(i === 0 ? "from" : "to") : path("gaps", i - 2),
						{
							fret: station.fret,
							frets: neck.frets,
						},
					),
				]
			: [],
	);
	if (fretsOff.length > 0) return fretsOff;
	return {
		line,
		from: alongOf(neck, line, first),
		to: alongOf(neck, line, second),
		xs: reading.gaps.map(({ at }) => alongOf(neck, line, at)),
	};
}

/** Past the last fret the board may go on by as much, mm. */
const BOARD_BEYOND = 30;

/** Contacts and a straightedge that cannot have lain so. */
export function contactProblems(
	reading: StraightnessReading,
	neck: Neck,
	{ line, from, to }: Placed,
): Problem[] {
	if (!(to - from > AT_CONTACT * 2)) {
		return [problem("contacts-out-of-order", path("to"), { from, to })];
	}
	const end = crossingOf(neck, line, neck.frets).along + BOARD_BEYOND;
	const off = [from, to].findIndex((x) => x < neck.nutShift - 1e-9 || x > end);
	if (off !== -1) {
		const facts = { at: off === 0 ? from : to, from: neck.nutShift, to: end };
		return [problem("contact-off-board", path(off === 0 ? "from" : "to"), facts)];
	}
	const { bar } = reading;
	if (!bar) return [];
	const span = to - from;
	if (!(bar.height > 0)) {
		const facts = { height: bar.height };
		return [problem("bar-without-size", path("straightedge"), facts)];
	}
	const overhang = bar.overhang ?? 0;
	if (!(overhang >= 0 && bar.length >= span + overhang)) {
		return [
			problem("bar-too-short", path("straightedge", "length"), {
				length: bar.length,
				span,
				overhang,
			}),
		];
	}
	return rests(bar, span)
		? []
		: [
				problem("bar-tips", path("straightedge", "overhang"), {
					length: bar.length,
					span,
					overhang,
				}),
			];
}

/** Gaps that cannot be read, or are too few. */
export function gapProblems(reading: StraightnessReading, { from, to, xs }: Placed): Problem[] {
	const found = reading.gaps.flatMap(({ gap }, i) => {
		const x = xs[i]!;
		const at = path("gaps", i);
		if (gap < 0) return [problem("gap-negative", at, { gap })];
		if (!(gap <= MOST_GAP)) return [problem("gap-too-large", at, { gap, most: MOST_GAP })];
		if (x < from - AT_CONTACT || x > to + AT_CONTACT) {
			return [problem("gap-beyond-contacts", path("gaps", i), { at: x, from, to })];
		}
		return isAtContact(x, from, to) && gap > reading.resolution
			? [problem("gap-at-contact", at, { gap, at: x })]
			: [];
	});
	const places = new Set(xs.filter((x) => !isAtContact(x, from, to))).size;
	if (found.length > 0 || places >= 2) return found;
	return [problem("too-few-gaps", path("gaps"), { places })];
}

/** Whether a gap is a contact's own. */
export function isAtContact(x: number, from: number, to: number): boolean {
	return Math.min(Math.abs(x - from), Math.abs(x - to)) < AT_CONTACT;
}
