import type { Mark } from "../../drawing/index.js";
import { closed, line, open, type Path, type Point, vertex } from "../../geometry/index.js";
import {
	crossingOf,
	edgePoint,
	type FretLine,
	fretEnds,
	fretLength,
	fretLine,
	fretNumbers,
	type Neck,
	pointAlong,
	stringLines,
} from "../../neck/index.js";
import { aroundSides, beforeBends, boardSides, pastBends, squareEnd } from "../board-outline.js";
import type { StripSettings } from "./settings.js";

/** A slot of the strip: where its middle line runs and how it ends. */
export interface Slot {
	readonly fret: FretLine;
	readonly bass: Point;
	readonly treble: Point;
	readonly length: number;
}

/** The slots of a neck, blind inside the binding. */
export function slotsOf(neck: Neck): Slot[] {
	return fretNumbers(neck).map((n) => {
		const fret = fretLine(neck, n);
		const length = fretLength(neck, fret, neck.binding);
		return { fret, ...fretEnds(neck, n, neck.binding), length };
	});
}

/** Corners of a slot cut at a width, clockwise: bass, treble, treble, bass. */
function slotCorners({ bass, treble, length }: Slot, width: number) {
	const ux = (treble.x - bass.x) / length;
	const uy = (treble.y - bass.y) / length;
	const [ox, oy] = [(uy * width) / 2, (-ux * width) / 2];
	return [
		vertex(bass.x - ox, bass.y - oy),
		vertex(treble.x - ox, treble.y - oy),
		vertex(treble.x + ox, treble.y + oy),
		vertex(bass.x + ox, bass.y + oy),
	] as const;
}

/** A slot cut at a width: a rectangle about its middle line, clockwise as a hole is. */
export function slotHole(slot: Slot, width: number): Path {
	return closed(...slotCorners(slot, width));
}

/** The long sides of a slot cut at a width: they guide the saw. */
export function slotFlanks(slot: Slot, width: number): Path[] {
	const [a, b, c, d] = slotCorners(slot, width);
	return [open(a, b), open(c, d)];
}

/** Ends of the strip on the centre line. */
export interface Ends {
	readonly from: number;
	readonly to: number;
}

/**
 * The strip reaches past the nut, the moved nut and the last fret by the end margin, and a little
 * more where a bend of the board's edge would meet its corners.
 */
export function endsOf(neck: Neck, slots: readonly Slot[], s: StripSettings): Ends {
	const nut = fretLine(neck, 0);
	const nutEnds = ([-1, 1] as const).map((side) => edgePoint(neck, nut, side).x);
	const far = Math.max(...slots.flatMap(({ bass, treble }) => [bass.x, treble.x]));
	const shift = Math.min(0, neck.nutShift);
	return {
		from: beforeBends(neck, Math.min(...nutEnds) + shift - s["end-margin"]),
		to: pastBends(neck, far + s["end-margin"]),
	};
}

/** The board's outline between the ends, wider by the edge margin, corners rounded. */
export function stripOutline(neck: Neck, { from, to }: Ends, margin: number): Path {
	const ends = [from, to].map((x) => squareEnd(neck, x, margin));
	return aroundSides(boardSides(neck, ends[0]!, ends[1]!, margin));
}

/** Half the longest dash of a string's line at a slot, mm. */
const DASH = 2;
/** Half an arm of a marker's cross, mm. */
export const CROSS = 1.5;

/** Half a dash at the nut or a slot: short where the frets are near each other. */
export function halfDash(neck: Neck, n: number): number {
	const next = n === neck.frets ? n - 1 : n + 1;
	return Math.min(DASH, Math.abs(fretLine(neck, next).x - fretLine(neck, n).x) / 8);
}

/** A dash of each string's line at the nut and at every slot, clear of the labels between. */
export function stringDashes(neck: Neck): Mark[] {
	return stringLines(neck).flatMap((string, i) => {
		return [0, ...fretNumbers(neck).filter((n) => n > 0)].map((n): Mark => {
			const half = halfDash(neck, n);
			const { along } = crossingOf(neck, string, n);
			return {
				operation: "score",
				path: line(pointAlong(string, along - half), pointAlong(string, along + half)),
				feature: `string line ${i + 1}`,
			};
		});
	});
}
