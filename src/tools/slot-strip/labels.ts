import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { type FretLine, fretLine, type Neck, widthAt } from "../../neck/index.js";
import { fixed } from "../../units/index.js";
import { type Label, label } from "../label.js";
import type { MarkerCentre } from "../marker-centres.js";
import type { Bench } from "../tool.js";
import { CROSS, halfDash, type Slot } from "./lay.js";
import { type Beside, placeIn, roomBetween, textCorners } from "./room.js";
import type { StripSettings } from "./settings.js";

/** Height of distances and of numbers where there is little room, mm. */
export const SMALL = 1.8;
export const LARGE = 2.5;
/** Least air between a label and a slot, and between a label and any other line, mm. */
export const AIR = 0.6;
export const CLEAR = 0.25;
/** How far a label stays from the board's edge, mm. */
export const EDGE = 1.5;

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
		const around = aroundOf(bench, fret, s, crosses);
		const number = numberLabel(bench, fret, around);
		if (number) labels.push(number);
		else unnumbered.push(fret.n);
		if (!s.distances) continue;
		const distance = distanceLabel(bench, fret, around);
		if (distance) labels.push(distance);
		else unmeasured.push(fret.n);
	}
	return { labels, unnumbered, unmeasured };
}

/** All that a fret's labels must stay clear of. */
interface Around {
	readonly before: Beside;
	readonly after: Beside;
	readonly crosses: readonly MarkerCentre[];
}

function aroundOf(bench: Bench, fret: FretLine, s: StripSettings, all: readonly MarkerCentre[]) {
	const { neck, wire } = bench;
	const slot = s.slots === "tang" ? wire.tangWidth / 2 : 0;
	const dashed = s["string-lines"] && neck.strings !== null;
	const air = (n: number) => Math.max(slot + AIR, dashed ? halfDash(neck, n) + CLEAR : 0);
	const line = fretLine(neck, fret.n - 1);
	const moved = fret.n === 1 ? Math.max(0, neck.nutShift) : 0;
	return {
		before: { line: { ...line, x: line.x + moved }, air: air(fret.n - 1) },
		after: { line: fret, air: air(fret.n) },
		crosses: all.filter((c) => c.fret === fret.n),
	};
}

/** Where a label stands between two frets, past the crosses beside it; null without room. */
function placeOf(corners: readonly Point[], { before, after, crosses }: Around): number | null {
	const ys = corners.map((p) => p.y);
	const [low, high] = [Math.min(...ys) - CROSS - CLEAR, Math.max(...ys) + CROSS + CLEAR];
	const left = Math.min(...corners.map((p) => p.x));
	const past = crosses
		.filter(({ at }) => at.y > low && at.y < high)
		.map(({ at }) => at.x + CROSS + CLEAR - left);
	const between = roomBetween(corners, before, after);
	const room = { from: Math.max(between.from, ...past), to: between.to };
	return room.from > room.to ? null : placeIn(room, OFF_WORKING_EDGE - after.air);
}

function numberLabel({ neck, letters }: Bench, fret: FretLine, around: Around): Label | null {
	const text = String(fret.n);
	const half = halfBoard(neck, fret.x);
	for (const height of [LARGE, SMALL]) {
		if (half < height + CLEAR) continue;
		const width = letters.width(text, height);
		const y = -neck.trebleSide * (half - height / 2) - height / 2;
		const x = placeOf(textCorners(width, height, 0, { x: 0, y }), around);
		if (x !== null) return label(letters, `number-${fret.n}`, text, { at: { x, y }, height });
	}
	return null;
}

function distanceLabel({ neck, letters }: Bench, fret: FretLine, around: Around): Label | null {
	const text = fixed(fret.x, 3);
	const width = letters.width(text, SMALL);
	const half = halfBoard(neck, fret.x);
	if (width > half - OFF_WORKING_EDGE) return null;
	const turn = Math.PI / 2 - Math.atan(fret.lean);
	const middle = neck.trebleSide * (half - width / 2);
	const start = { x: (-width / 2) * Math.cos(turn), y: middle - (width / 2) * Math.sin(turn) };
	const x = placeOf(textCorners(width, SMALL, turn, start), around);
	if (x === null) return null;
	const at = { x: start.x + x, y: start.y };
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
