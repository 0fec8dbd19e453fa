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
	pointOnFret,
	stringLines,
	widthAt,
} from "../../neck/index.js";
import { outlineOf } from "../outline.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
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

/** The strip's rounded corners stay this far from a bend of the board's edge, mm. */
const OFF_BEND = 2 * CORNER_RADIUS;

/**
 * The strip reaches past the nut, the moved nut and the last fret by the end margin, and a little
 * more where a bend of the board's edge would meet its corners.
 */
export function endsOf(neck: Neck, slots: readonly Slot[], s: StripSettings): Ends {
	const nut = fretLine(neck, 0);
	const nutEnds = ([-1, 1] as const).map((side) => edgePoint(neck, nut, side).x);
	const far = Math.max(...slots.flatMap(({ bass, treble }) => [bass.x, treble.x]));
	const shift = Math.min(0, neck.nutShift);
	let from = Math.min(...nutEnds) + shift - s["end-margin"];
	let to = far + s["end-margin"];
	const bends = neck.width.knots.map((k) => k.x).sort((a, b) => a - b);
	for (const x of [...bends].reverse()) if (Math.abs(x - from) < OFF_BEND) from = x - OFF_BEND;
	for (const x of bends) if (Math.abs(x - to) < OFF_BEND) to = x + OFF_BEND;
	return { from, to };
}

/** The board's outline between the ends, wider by the edge margin, corners rounded. */
export function stripOutline(neck: Neck, ends: Ends, margin: number): Path {
	const knots = neck.width.knots.map((k) => k.x).filter((x) => x > ends.from && x < ends.to);
	const along = [ends.from, ...knots, ends.to];
	const half = (x: number) => widthAt(neck, x) / 2 + margin;
	const last = along.length - 1;
	const corner = (x: number, y: number, i: number) =>
		i === 0 || i === last ? { x, y, round: CORNER_RADIUS } : { x, y };
	const lower = along.map((x, i) => corner(x, -half(x), i));
	const upper = along.map((x, i) => corner(x, half(x), i)).reverse();
	return outlineOf([...lower, ...upper]);
}

/** A line across the board at the nut, shifted along the neck. */
export function nutLine(neck: Neck, shift: number): readonly [Point, Point] {
	const nut = fretLine(neck, 0);
	const moved = { ...nut, x: nut.x + shift };
	return [edgePoint(neck, moved, -1), edgePoint(neck, moved, 1)];
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

/** Centres of one fret's marker. */
export interface MarkerCentre {
	readonly fret: number;
	readonly id: string;
	/** As people call it: "marker 12 bass". */
	readonly feature: string;
	readonly at: Point;
}

/** Marker centres: midway between a fret and the one before, along the neck. */
export function markerCentres(bench: Bench, s: StripSettings): MarkerCentre[] {
	const { neck } = bench;
	return neck.markers.flatMap(({ fret, double }) => {
		const here = fretLine(neck, fret);
		const before = fretLine(neck, fret - 1);
		const centre = (y: number): Point => ({
			x: (pointOnFret(here, y).x + pointOnFret(before, y).x) / 2,
			y,
		});
		const feature = `marker ${fret}`;
		if (!double) return [{ fret, id: `marker-${fret}`, feature, at: centre(0) }];
		const middle = (here.x + before.x) / 2;
		const half = (s["double-marker-spread"] ?? widthAt(neck, middle) * 0.4) / 2;
		return (["bass", "treble"] as const).map((side) => ({
			fret,
			id: `marker-${fret}-${side}`,
			feature: `${feature} ${side}`,
			at: centre((side === "bass" ? -half : half) * neck.trebleSide),
		}));
	});
}
