import type { Point } from "../../geometry/index.js";
import {
	edgePoint,
	type FretLine,
	fretLine,
	fretNumbers,
	type Neck,
	pointOnFret,
	radiusAt,
	slantOf,
} from "../../neck/index.js";
import { overCrown } from "../shop-sheet/wire.js";
import { type Slot, slotFlanks } from "../slot-strip/lay.js";
import type { Bench } from "../tool.js";
import type { MaskSettings } from "./settings.js";

/** What a window is longer than its fret, at either end, mm. */
export const OVER_END = 1;

/**
 * Where a place of the board comes to lie on a sheet that is bent over it: as far from the centre
 * line as the way over the board's section, R·asin(y/R).
 */
export function flattened(neck: Neck, { x, y }: Point): Point {
	const radius = radiusAt(neck, x);
	return radius === null ? { x, y } : { x, y: radius * Math.asin(y / radius) };
}

/** Half a window's width is added on either side of its middle line. */
export function windowWidth({ wire }: Bench, s: MaskSettings): number {
	return wire.crownWidth + s["crown-clearance"];
}

/**
 * The middle line of every fret's window on the flat sheet: over the crown from edge to edge, and
 * a millimetre more at either end.
 */
export function windowsOf(neck: Neck): Slot[] {
	return fretNumbers(neck).map((n) => {
		const fret = fretLine(neck, n);
		const [a, b] = ([-1, 1] as const).map((side) => flattened(neck, edgePoint(neck, fret, side)));
		const length = overCrown(neck, fret) + 2 * OVER_END;
		const middle = { x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 };
		const size = Math.hypot(b!.x - a!.x, b!.y - a!.y);
		const half = {
			x: ((b!.x - a!.x) / size) * (length / 2),
			y: ((b!.y - a!.y) / size) * (length / 2),
		};
		return {
			fret,
			length,
			bass: { x: middle.x - half.x, y: middle.y - half.y },
			treble: { x: middle.x + half.x, y: middle.y + half.y },
		};
	});
}

/** Where a window's middle line crosses the centre line. */
export function onCentre({ bass, treble }: Slot): number {
	return bass.x + ((treble.x - bass.x) * -bass.y) / (treble.y - bass.y);
}

/** Signed turn of a window from the y axis, radians. */
export function turnOf({ bass, treble }: Slot): number {
	return Math.atan((treble.x - bass.x) / (treble.y - bass.y));
}

/** Least sheet between two neighbouring windows, mm; 0 or less where they meet. */
export function landBetween(before: Slot, after: Slot, width: number): number {
	const near = flankToward(before, width, 1);
	const far = flankToward(after, width, -1);
	return Math.min(...near.map((p) => ahead(p, far)), ...far.map((p) => -ahead(p, near)));
}

/** Least sheet between a line across the mask and the window after it, mm. */
export function landAfter(line: FretLine, window: Slot, width: number): number {
	const square = Math.cos(slantOf(line));
	const flank = flankToward(window, width, -1);
	return Math.min(...flank.map((p) => (p.x - pointOnFret(line, p.y).x) * square));
}

/** A long side of a window by its ends. */
type Flank = readonly [Point, Point];

/** A window's long side toward the saddle (1) or the nut (−1). */
function flankToward(window: Slot, width: number, side: 1 | -1): Flank {
	const [a, b] = slotFlanks(window, width).map(({ points }): Flank => [points[0]!, points[1]!]) as [
		Flank,
		Flank,
	];
	// The flanks run opposite ways: their ends do not lie side by side, their middles do.
	const middle = ([from, to]: Flank) => from.x + to.x;
	return (middle(a) - middle(b)) * side > 0 ? a : b;
}

/** How far a line lies toward the saddle from a point, square to the line, mm. */
function ahead(p: Point, [a, b]: readonly Point[]): number {
	const size = Math.hypot(b!.x - a!.x, b!.y - a!.y);
	const way = ((a!.x - p.x) * (b!.y - a!.y) - (a!.y - p.y) * (b!.x - a!.x)) / size;
	return way * Math.sign(b!.y - a!.y);
}

/** The line of a fret moved along the neck, square to itself. */
export function beside(fret: FretLine, by: number): FretLine {
	return { ...fret, x: fret.x + by / Math.cos(slantOf(fret)) };
}
