import { fretLine, type Neck, pointOnFret, widthAt } from "../../neck/index.js";
import { fixed, inchLabel } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import { type Bench, OFF_WORKING_EDGE } from "../tool.js";
import { gapBefore, type Slot } from "./lay.js";
import type { StripSettings } from "./settings.js";

/** Height of distances and of numbers where there is little room, mm. */
const SMALL = 1.8;
const LARGE = 2.5;
/** Least air between a label and a slot, and between a label and any other line, mm. */
const AIR = 0.6;
const CLEAR = 0.25;
/** How far a label stays from the board's edge, mm. */
const EDGE = 1.5;

/** What fitted on the strip and which frets had no room for a number or a distance. */
export interface StripLabels {
	readonly labels: readonly Label[];
	readonly unnumbered: readonly number[];
	readonly unmeasured: readonly number[];
}

/**
 * Number (bass half) and distance (treble half) of every slot, on its nut side: 3 mm from it
 * where the gap allows, else in the middle of the gap; left out where the gap is too small.
 */
export function slotLabels(
	bench: Bench,
	slots: readonly Slot[],
	s: StripSettings,
	crosses: readonly MarkerCentre[],
): StripLabels {
	const labels: Label[] = [];
	const unnumbered: number[] = [];
	const unmeasured: number[] = [];
	for (const { fret } of slots.filter(({ fret }) => fret.n > 0)) {
		const number = numberLabel(bench, fret, s);
		if (number) labels.push(number);
		else unnumbered.push(fret.n);
		if (!s.distances) continue;
		const distance = distanceLabel(bench, fret, s, crosses);
		if (distance) labels.push(distance);
		else unmeasured.push(fret.n);
	}
	return { labels, unnumbered, unmeasured };
}

/** The lines on both sides of a fret's labels, with the air that slots and dashes want. */
function sidesOf(bench: Bench, fret: FretLine, s: StripSettings): [Beside, Beside] {
	const { neck, wire } = bench;
	const slot = s.slots === "tang" ? wire.tangWidth / 2 : 0;
	const dashed = s["string-lines"] && neck.strings !== null;
	const air = (n: number) => Math.max(slot + AIR, dashed ? halfDash(neck, n) + CLEAR : 0);
	const before = fretLine(neck, fret.n - 1);
	const moved = fret.n === 1 ? Math.max(0, neck.nutShift) : 0;
	return [
		{ line: { ...before, x: before.x + moved }, air: air(fret.n - 1) },
		{ line: fret, air: air(fret.n) },
	];
}

function numberLabel(bench: Bench, fret: FretLine, s: StripSettings): Label | null {
	const { neck, letters } = bench;
	const text = String(fret.n);
	const [before, after] = sidesOf(bench, fret, s);
	const half = halfBoard(neck, fret.x);
	for (const height of [LARGE, SMALL]) {
		const width = letters.width(text, height);
		const y = -neck.trebleSide * (half - height / 2) - height / 2;
		const corners = textCorners(width, height, 0).map((p) => ({ x: p.x, y: p.y + y }));
		const room = roomBetween(corners, before, after);
		if (room.from > room.to) continue;
		const x = placeIn(room, OFF_WORKING_EDGE - after.air);
		return label(letters, `number-${fret.n}`, text, { at: { x, y }, height });
	}
	return null;
}

function distanceLabel(
	bench: Bench,
	fret: FretLine,
	s: StripSettings,
	crosses: readonly MarkerCentre[],
): Label | null {
	const { neck, letters } = bench;
	const text = fixed(fret.x, 3);
	const width = letters.width(text, SMALL);
	const half = halfBoard(neck, fret.x);
	if (width > half - OFF_WORKING_EDGE) return null;
	const turn = Math.PI / 2 - Math.atan(fret.lean);
	const middle = neck.trebleSide * (half - width / 2);
	const start = { x: (-width / 2) * Math.cos(turn), y: middle - (width / 2) * Math.sin(turn) };
	const corners = textCorners(width, SMALL, turn).map((p) => ({
		x: p.x + start.x,
		y: p.y + start.y,
	}));
	const [before, after] = sidesOf(bench, fret, s);
	const between = roomBetween(corners, before, after);
	const ys = corners.map((p) => p.y);
	const [low, high] = [Math.min(...ys) - CROSS - CLEAR, Math.max(...ys) + CROSS + CLEAR];
	const left = Math.min(...corners.map((p) => p.x));
	const past = crosses
		.filter(({ at, fret: n }) => n === fret.n && at.y > low && at.y < high)
		.map(({ at }) => at.x + CROSS + CLEAR - left);
	const room = { from: Math.max(between.from, ...past), to: between.to };
	if (room.from > room.to) return null;
	const x = start.x + placeIn(room, OFF_WORKING_EDGE - after.air);
	const at = { x, y: start.y };
	return label(letters, `distance-${fret.n}`, text, { at, height: SMALL, turn });
}

/** From the centre line to where labels end at the board's edge. */
function halfBoard(neck: Neck, x: number): number {
	return widthAt(neck, x) / 2 - neck.binding - EDGE;
}

/** Frets as a person lists them: "20, 21, 22". */
export function fretList(neck: Neck, frets: readonly number[]): string {
	return frets.length === neck.frets ? "all frets" : frets.join(", ");
}
