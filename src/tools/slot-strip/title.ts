import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { type FretLine, fretLine, widthAt } from "../../neck/index.js";
import { heightToFit, type Label, label } from "../label.js";
import { scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { AIR, CLEAR, EDGE, LARGE, SMALL } from "./labels.js";
import { type Ends, halfDash } from "./lay.js";
import { type Beside, placeIn, roomBetween, textCorners } from "./room.js";
import type { StripSettings } from "./settings.js";

/** What the strip says of itself, and where the centre line makes way for it. */
export interface StripTitle {
	readonly labels: readonly Label[];
	readonly break: { readonly from: number; readonly to: number } | null;
}

/** Part of a letter's height that g and p hang below the baseline. */
const HANG = 0.3;
/** Between the baselines of the title's lines, mm. */
const LEADING = LARGE + 2;

/** The names of the nut lines, and job and scale before the first fret if there is room. */
export function stripTitle(bench: Bench, ends: Ends, s: StripSettings): StripTitle {
	const nuts = nutLabels(bench, ends, s);
	const title = titleLines(bench, nuts.after ? OFF_WORKING_EDGE + SMALL + 1 : 0, s);
	const { labels } = title;
	return { ...title, labels: [...labels, ...[nuts.before, nuts.after].flatMap((l) => l ?? [])] };
}

/** The nut's line and, where it was moved, the line of its actual face, in their order along x. */
function nutNames({ neck }: Bench): [string[], string[]] {
	const { nutShift } = neck;
	const theoretical = neck.zeroFret
		? ["ZERO FRET", "0"]
		: nutShift === 0
			? ["NUT"]
			: ["THEORETICAL NUT", "THEOR. NUT", "0"];
	if (nutShift === 0) return [theoretical, []];
	const actual = neck.zeroFret ? ["NUT"] : ["ACTUAL NUT", "NUT"];
	return nutShift > 0 ? [theoretical, actual] : [actual, theoretical];
}

/** One name before the nut's lines and, where there are two, one after them. */
function nutLabels(bench: Bench, ends: Ends, s: StripSettings) {
	const { neck } = bench;
	const nut = fretLine(neck, 0);
	const at = (shift: number): FretLine => ({ ...nut, x: nut.x + shift });
	const [first, last] = [at(Math.min(0, neck.nutShift)), at(Math.max(0, neck.nutShift))];
	const [before, after] = nutNames(bench);
	const air = lineAir(bench, s);
	const end: Beside = { line: { ...nut, x: ends.from, lean: 0 }, air: EDGE };
	return {
		before: nutLabel(bench, before, end, { line: first, air }, "before"),
		after: nutLabel(bench, after, { line: last, air }, firstFret(bench), "after"),
	};
}

/** Air that a label keeps from a nut line and the strings' dashes there. */
function lineAir({ neck }: Bench, s: StripSettings): number {
	const dashed = s["string-lines"] && neck.strings !== null;
	return Math.max(AIR, dashed ? halfDash(neck, 0) + CLEAR : 0);
}

/** The first fret and the room that its own labels take before it. */
function firstFret({ neck, letters }: Bench): Beside {
	const taken = Math.max(SMALL, letters.width("1", LARGE));
	return { line: fretLine(neck, 1), air: OFF_WORKING_EDGE + taken + 1 };
}

/** The longest of some names that fits between two lines, along the nut. */
function nutLabel(
	{ neck, letters }: Bench,
	names: readonly string[],
	before: Beside,
	after: Beside,
	side: "before" | "after",
): Label | null {
	const room = widthAt(neck, 0) / 2 - neck.binding - EDGE - 1;
	const text = names.find((name) => letters.width(name, SMALL) <= room);
	if (text === undefined) return null;
	const nut = (side === "before" ? after : before).line;
	const turn = Math.PI / 2 - Math.atan(nut.lean);
	const width = letters.width(text, SMALL);
	const y = 1 + (room - width * Math.sin(turn)) / 2;
	const corners = textCorners(width, SMALL, turn, { x: 0, y });
	const free = roomBetween(corners, before, after);
	if (free.from > free.to) return null;
	const off =
		OFF_WORKING_EDGE - Math.min(OFF_WORKING_EDGE, side === "before" ? after.air : before.air);
	const x =
		side === "before" ? placeIn(free, off) : -placeIn({ from: -free.to, to: -free.from }, off);
	const id = side === "before" ? "nut" : "nut-after";
	return label(letters, id, text, { at: { x, y }, height: SMALL, turn });
}

/** Job and scale, across the strip between nut and first fret. */
function titleLines(bench: Bench, taken: number, s: StripSettings): StripTitle {
	const { neck, letters, job } = bench;
	const room = widthAt(neck, 0) - 2 * neck.binding - 2 * EDGE;
	const lines = [
		{ id: "job", text: job },
		{ id: "scale", text: `${scaleText(neck)}, ${neck.frets} frets` },
	].flatMap((l) => {
		const height = heightToFit(letters, l.text, room, LARGE);
		return height === null ? [] : [{ ...l, height, width: letters.width(l.text, height) }];
	});
	const nut = fretLine(neck, 0);
	const last = { ...nut, x: nut.x + Math.max(0, neck.nutShift) };
	const before = { line: last, air: lineAir(bench, s) + taken };
	for (const shown of [lines, lines.slice(-1)]) {
		const left = -LARGE;
		const right = (shown.length - 1) * LEADING + HANG * LARGE;
		const half = Math.max(...shown.map((l) => l.width)) / 2;
		const corners = [left, right].flatMap((x) => [-half, half].map((y) => ({ x, y })));
		const free = roomBetween(corners, before, firstFret(bench));
		if (shown.length === 0 || free.from > free.to) continue;
		const x = (free.from + free.to) / 2;
		const labels = shown.map(({ id, text, height }, i) =>
			label(letters, id, text, {
				at: { x: x + i * LEADING, y: 0 },
				height,
				turn: Math.PI / 2,
				align: "centre",
			}),
		);
		return { labels, break: { from: x + left - 1, to: x + right + 1 } };
	}
	return { labels: [], break: null };
}
