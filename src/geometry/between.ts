import { type Path, SAME_POINT, type Vertex, vertex } from "./path.js";
import { pointAt, segmentLength, segments } from "./segment.js";

/**
 * The stretch of a path between two distances along it, open, arcs as arcs.
 *
 * On a closed path `to` may lie beyond the whole length: the stretch then runs on over the start.
 *
 * @param from - mm from the path's start, 0 or more
 * @param to - mm, more than `from`; at most the path's length, or twice that of a closed path
 * @throws RangeError on distances that are not on the path
 * @example pathBetween(line({ x: 0, y: 0 }, { x: 10, y: 0 }), 2, 5) // from (2, 0) to (5, 0)
 */
export function pathBetween(path: Path, from: number, to: number): Path {
	const around = segments(path);
	const all = path.closed ? [...around, ...around] : around;
	const points: Vertex[] = [];
	let reached = 0;
	let last: { x: number; y: number } | null = null;
	for (const segment of all) {
		const length = segmentLength(segment);
		const u0 = Math.max(0, (from - reached) / length);
		const u1 = Math.min(1, (to - reached) / length);
		reached += length;
		if ((u1 - u0) * length < SAME_POINT) continue;
		const start = pointAt(segment, u0);
		const bulge = segment.kind === "arc" ? Math.tan((segment.sweep * (u1 - u0)) / 4) : 0;
		points.push(vertex(start.x, start.y, bulge));
		last = pointAt(segment, u1);
	}
	if (!last || !(from >= 0) || to > reached + SAME_POINT) {
		throw new RangeError(`no stretch of the path from ${from} to ${to}`);
	}
	return { points: [...points, vertex(last.x, last.y)], closed: false };
}
