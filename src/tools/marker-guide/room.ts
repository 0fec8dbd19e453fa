import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import {
	closed,
	contains,
	line,
	type Path,
	type Point,
	segmentDistance,
	segments,
	vertex,
} from "../../geometry/index.js";
import { textCorners } from "../slot-strip/room.js";
import type { Guide } from "./lay.js";

/** Between letters and working edges, mm: a little more than must be, for round letters. */
export const OFF_EDGE = OFF_WORKING_EDGE + 0.2;
/** Between letters and any other line, and between letters, mm. */
const AIR = 0.8;
/** Plate between the hanging hole and the last slot, mm. */
const BESIDE_HOLE = 1;

/** A box that letters take, turned about the left end of its baseline. */
export function letterBox(width: number, height: number, turn: number, at: Point): Path {
	return closed(...textCorners(width, height, turn, at).map((p) => vertex(p.x, p.y)));
}

/** Whether two paths stay so far apart. */
function areApart(a: Path, b: Path, least: number): boolean {
	const others = segments(b);
	return segments(a).every((s) => others.every((o) => segmentDistance(s, o) >= least));
}

/** Whether a box lies on the guide, clear of its holes, edges and slots, and of what else is taken. */
export function isFree(guide: Guide, box: Path, taken: readonly Path[]): boolean {
	const { outline, edges, holes, slots } = guide;
	const working = [...edges, ...holes.map(({ path }) => path)];
	const others = [outline, ...slots.map(({ bass, treble }) => line(bass, treble)), ...taken];
	return (
		box.points.every((p) => contains(outline, p)) &&
		working.every((path) => areApart(box, path, OFF_EDGE)) &&
		others.every((path) => areApart(box, path, AIR))
	);
}

/** Least end margin with room for a hole to hang the guide by, mm. */
export function marginFor(diameter: number): number {
	return diameter + OFF_WORKING_EDGE + BESIDE_HOLE;
}

/**
 * Where the hole to hang the guide by goes: on the centre line, beyond the last slot. Between frets it
 * would be taken for a marker's.
 */
export function hangingPlace({ to }: Guide, diameter: number): Point {
	return { x: to - OFF_WORKING_EDGE - diameter / 2, y: 0 };
}
