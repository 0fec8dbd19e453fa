import type { Point } from "../../geometry/index.js";
import { type FretLine, pointOnFret, slantOf } from "../../neck/index.js";

/** Places along the neck at which something lies clear of the lines on both sides of it. */
export interface Room {
	readonly from: number;
	readonly to: number;
}

/** A line across the strip and the air that it wants, square to it. */
export interface Beside {
	readonly line: FretLine;
	readonly air: number;
}

/**
 * How far along x a label may be shifted between two lines; `from` is above `to` if it does not
 * fit.
 *
 * @param corners - of the label, placed as if it stood at x = 0
 */
export function roomBetween(corners: readonly Point[], before: Beside, after: Beside): Room {
	const reach = ({ line, air }: Beside, { x, y }: Point, side: 1 | -1) =>
		pointOnFret(line, y).x - x - (side * air) / Math.cos(slantOf(line));
	return {
		from: Math.max(...corners.map((corner) => reach(before, corner, -1))),
		to: Math.min(...corners.map((corner) => reach(after, corner, 1))),
	};
}

/** The place near the far end of a room, `off` before it, or the middle if that is farther on. */
export function placeIn({ from, to }: Room, off: number): number {
	return Math.max((from + to) / 2, to - off);
}

/** Corners of a text's box, turned about the left end of its baseline, which lies at `start`. */
export function textCorners(width: number, height: number, turn: number, start: Point): Point[] {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	return [
		[0, 0],
		[width, 0],
		[width, height],
		[0, height],
	].map(([x, y]) => ({ x: start.x + c * x! - s * y!, y: start.y + s * x! + c * y! }));
}
