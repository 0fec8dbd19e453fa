/** A place in the plane, mm. */
export interface Point {
	readonly x: number;
	readonly y: number;
}

/**
 * A corner of a path. `bulge` belongs to the segment that leaves it: tan(sweep/4), positive
 * counter-clockwise, 0 for a line, ±1 for a half circle (DXF reference, LWPOLYLINE group 42).
 */
export interface Vertex extends Point {
	readonly bulge: number;
}

/**
 * A chain of lines and circular arcs, the one representation of every contour here.
 * Closed: the last vertex leads back to the first. Open: the last bulge is 0 and unused.
 * Outer contours run counter-clockwise, holes clockwise: material is on the left.
 */
export interface Path {
	readonly points: readonly Vertex[];
	readonly closed: boolean;
}

/** Two points closer than this are one: a thousandth of the 1 µm budget. */
export const SAME_POINT = 1e-6;

/** From one point to another, mm. */
export function distance(a: Point, b: Point): number {
	const x = a.x - b.x;
	const y = a.y - b.y;
	return Math.sqrt(x * x + y * y);
}

/** A corner from which a line (or, with a bulge, an arc) leaves. */
export function vertex(x: number, y: number, bulge = 0): Vertex {
	return { x, y, bulge };
}

/** An open path. @throws RangeError with fewer than two points */
export function open(...points: Vertex[]): Path {
	if (points.length < 2) throw new RangeError("an open path needs two points");
	return { points, closed: false };
}

/** A closed path. @throws RangeError with fewer than two points */
export function closed(...points: Vertex[]): Path {
	if (points.length < 2) throw new RangeError("a closed path needs two points");
	return { points, closed: true };
}

/** A straight line from a to b. */
export function line(a: Point, b: Point): Path {
	return open(vertex(a.x, a.y), vertex(b.x, b.y));
}

/** A full circle: two half arcs, counter-clockwise. @throws RangeError unless radius > 0 */
export function circle(centre: Point, radius: number): Path {
	if (!(radius > 0)) throw new RangeError(`radius must be above 0: ${radius}`);
	return closed(vertex(centre.x + radius, centre.y, 1), vertex(centre.x - radius, centre.y, 1));
}

/** An axis-parallel rectangle, counter-clockwise from its lower left corner. */
export function rectangle(x0: number, y0: number, x1: number, y1: number): Path {
	return closed(vertex(x0, y0), vertex(x1, y0), vertex(x1, y1), vertex(x0, y1));
}

/** The same path run the other way. */
export function reversed(path: Path): Path {
	const n = path.points.length;
	const points = path.points.map((_, i) => {
		const at = path.points[n - 1 - i]!;
		const bulge = path.closed
			? path.points[(2 * n - 2 - i) % n]!.bulge
			: (path.points[n - 2 - i]?.bulge ?? 0);
		return vertex(at.x, at.y, bulge === 0 ? 0 : -bulge);
	});
	return { points, closed: path.closed };
}

/** The same closed path begun at another vertex; an open path is returned as it is. */
export function startedAt(path: Path, index: number): Path {
	if (!path.closed) return path;
	return {
		points: [...path.points.slice(index), ...path.points.slice(0, index)],
		closed: true,
	};
}
