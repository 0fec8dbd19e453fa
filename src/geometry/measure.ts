import type { Path, Point } from "./path.js";
import { fractionOfAngle, type Segment, segmentLength, segments } from "./segment.js";

/** The smallest upright box around something, mm. */
export interface Extents {
	readonly minX: number;
	readonly minY: number;
	readonly maxX: number;
	readonly maxY: number;
}

/**
 * Area of a closed path, positive counter-clockwise: shoelace over the chords plus
 * r²/2·(sweep − sin sweep) for every arc.
 *
 * @throws RangeError for an open path
 * @example signedArea(circle({ x: 0, y: 0 }, 1)) // π
 */
export function signedArea(path: Path): number {
	if (!path.closed) throw new RangeError("an open path has no area");
	const origin = path.points[0]!;
	let area = 0;
	for (const s of segments(path)) {
		const ax = s.start.x - origin.x;
		const ay = s.start.y - origin.y;
		const bx = s.end.x - origin.x;
		const by = s.end.y - origin.y;
		area += (ax * by - bx * ay) / 2;
		if (s.kind === "arc") area += ((s.radius * s.radius) / 2) * lessSine(s.sweep);
	}
	return area;
}

/** x − sin x; small angles by its series, since the difference keeps none of their digits. */
function lessSine(x: number): number {
	if (Math.abs(x) > 0.1) return x - Math.sin(x);
	const xx = x * x;
	return ((x * xx) / 6) * (1 - (xx / 20) * (1 - (xx / 42) * (1 - xx / 72)));
}

/** Length of a path, mm; a closed path includes its closing segment. */
export function pathLength(path: Path): number {
	return segments(path).reduce((sum, s) => sum + segmentLength(s), 0);
}

/** From this radius on, mm, a centre and a radius hold no more than eleven decimals. */
const FLAT = 1e5;
const UP = Math.PI / 2;

/** The exact box of a segment, quadrant points of arcs included. */
export function segmentExtents(s: Segment): Extents {
	const { start, end } = s;
	let minX = Math.min(start.x, end.x);
	let minY = Math.min(start.y, end.y);
	let maxX = Math.max(start.x, end.x);
	let maxY = Math.max(start.y, end.y);
	if (s.kind === "arc") {
		const { centre: c, radius: r } = s;
		const flat = r >= FLAT;
		// From a flat arc's start it is r(1 − cos δ) to the quadrant point at the angle δ from it.
		const rise = (angle: number) => 2 * r * Math.sin((s.startAngle - angle) / 2) ** 2;
		const reach = (angle: number, from: number, centre: number, side: 1 | -1) =>
			flat ? from + side * rise(angle) : centre + side * r;
		const passes = (angle: number) => fractionOfAngle(s, angle) !== null;
		if (passes(0)) maxX = Math.max(maxX, reach(0, start.x, c.x, 1));
		if (passes(UP)) maxY = Math.max(maxY, reach(UP, start.y, c.y, 1));
		if (passes(Math.PI)) minX = Math.min(minX, reach(Math.PI, start.x, c.x, -1));
		if (passes(-UP)) minY = Math.min(minY, reach(-UP, start.y, c.y, -1));
	}
	return { minX, minY, maxX, maxY };
}

/** The box around all given boxes. @throws RangeError when there is none */
export function around(boxes: Iterable<Extents>): Extents {
	let minX = Number.POSITIVE_INFINITY;
	let minY = Number.POSITIVE_INFINITY;
	let maxX = Number.NEGATIVE_INFINITY;
	let maxY = Number.NEGATIVE_INFINITY;
	for (const box of boxes) {
		minX = Math.min(minX, box.minX);
		minY = Math.min(minY, box.minY);
		maxX = Math.max(maxX, box.maxX);
		maxY = Math.max(maxY, box.maxY);
	}
	if (!Number.isFinite(minX)) throw new RangeError("nothing to take the extents of");
	return { minX, minY, maxX, maxY };
}

/** The exact box of a path. */
export function extents(path: Path): Extents {
	const straight = path.points.every(({ bulge }) => bulge === 0);
	return straight ? extentsOfPoints(path.points) : around(segments(path).map(segmentExtents));
}

/** The box of some points. @throws RangeError when there is none */
export function extentsOfPoints(points: readonly Point[]): Extents {
	let minX = Number.POSITIVE_INFINITY;
	let minY = Number.POSITIVE_INFINITY;
	let maxX = Number.NEGATIVE_INFINITY;
	let maxY = Number.NEGATIVE_INFINITY;
	for (const { x, y } of points) {
		if (x < minX) minX = x;
		if (y < minY) minY = y;
		if (x > maxX) maxX = x;
		if (y > maxY) maxY = y;
	}
	if (!Number.isFinite(minX)) throw new RangeError("nothing to take the extents of");
	return { minX, minY, maxX, maxY };
}

/** A box with `margin` more on every side. */
export function grown(box: Extents, margin: number): Extents {
	return {
		minX: box.minX - margin,
		minY: box.minY - margin,
		maxX: box.maxX + margin,
		maxY: box.maxY + margin,
	};
}
