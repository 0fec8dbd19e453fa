import { type Path, type Point, SAME_POINT, type Vertex, vertex } from "./path.js";

/**
 * A path with a corner between two lines rounded by a tangent arc.
 *
 * The arc leaves each line at t = r·tan(θ/2) from the corner, θ the turn of the path there;
 * its bulge is tan(θ/4). A line that the arc uses up goes: the arc then starts or ends at the
 * line's other vertex.
 *
 * @param index - the corner's vertex; both segments there must be lines
 * @param radius - greater than 0
 * @throws RangeError if the corner is not between two lines, is straight or a full turn back, or
 *   the arc does not fit on either line; nothing is clamped
 * @example filleted(rectangle(0, 0, 10, 10), 0, 2).points.length // 5
 */
export function filleted(path: Path, index: number, radius: number): Path {
	const { points, closed } = path;
	const n = points.length;
	const previous = closed ? (index + n - 1) % n : index - 1;
	const before = points[previous];
	const corner = points[index];
	const after = points[closed ? (index + 1) % n : index + 1];
	if (!before || !corner || !after) throw new RangeError(`no corner at vertex ${index}`);
	if (before.bulge !== 0 || corner.bulge !== 0) {
		throw new RangeError(`the corner at vertex ${index} is not between two lines`);
	}
	if (!(radius > 0)) throw new RangeError(`radius must be above 0: ${radius}`);
	const turn = turnAt(before, corner, after);
	if (!(Math.abs(turn) > 1e-9 && Math.abs(turn) < Math.PI - 1e-9)) {
		throw new RangeError(`vertex ${index} is no corner that can be rounded`);
	}
	const cut = radius * Math.tan(Math.abs(turn) / 2);
	const from = toward(corner, before, cut);
	const to = toward(corner, after, cut);
	if (!from || !to) {
		throw new RangeError(`a radius of ${radius} does not fit the corner at vertex ${index}`);
	}
	const result: Vertex[] = [...points];
	const rounded = [vertex(from.x, from.y, Math.tan(turn / 4))];
	if (to !== after) rounded.push(vertex(to.x, to.y));
	result.splice(index, 1, ...rounded);
	if (from === before) result.splice(previous < index ? previous : result.length - 1, 1);
	return { closed, points: result };
}

/** How far a path turns at a corner, radians, left positive; NaN where a side has no length. */
function turnAt(before: Point, corner: Point, after: Point): number {
	const inX = corner.x - before.x;
	const inY = corner.y - before.y;
	const outX = after.x - corner.x;
	const outY = after.y - corner.y;
	if (Math.hypot(inX, inY) < SAME_POINT || Math.hypot(outX, outY) < SAME_POINT) return Number.NaN;
	return Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
}

/** The point at a distance from a corner on the line to `end`, `end` itself if there, or null. */
function toward(corner: Point, end: Point, distance: number): Point | null {
	const dx = end.x - corner.x;
	const dy = end.y - corner.y;
	const size = Math.hypot(dx, dy);
	if (Math.abs(size - distance) < SAME_POINT) return end;
	if (distance > size) return null;
	return { x: corner.x + (dx / size) * distance, y: corner.y + (dy / size) * distance };
}

/**
 * Several corners rounded, given as [vertex index, radius]; the indices are those of the path
 * as it is given.
 */
export function filletedAt(path: Path, corners: readonly (readonly [number, number])[]): Path {
	return [...corners]
		.sort((a, b) => b[0] - a[0])
		.reduce((result, [index, radius]) => filleted(result, index, radius), path);
}
