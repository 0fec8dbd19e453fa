import { type Path, type Point, SAME_POINT } from "./path.js";

/** A straight piece of a path. */
export interface LineSegment {
	readonly kind: "line";
	readonly start: Point;
	readonly end: Point;
}

/** A circular piece of a path; `sweep` is signed, positive counter-clockwise, |sweep| < 2π. */
export interface ArcSegment {
	readonly kind: "arc";
	readonly start: Point;
	readonly end: Point;
	readonly centre: Point;
	readonly radius: number;
	readonly startAngle: number;
	readonly sweep: number;
}

export type Segment = LineSegment | ArcSegment;

/** Below this bulge a segment is straight: its sagitta on a metre is under 0.5 nm. */
const STRAIGHT = 1e-12;

/**
 * The arc from start to end with the given bulge (chord 1, bulge 1 has radius 0.5).
 *
 * The centre lies (1 − b²)/(4b)·chord to the left of the chord's middle.
 *
 * @throws RangeError if start and end coincide
 */
export function arcFromBulge(start: Point, end: Point, bulge: number): ArcSegment {
	const dx = end.x - start.x;
	const dy = end.y - start.y;
	const chord = Math.hypot(dx, dy);
	if (chord < SAME_POINT) throw new RangeError("an arc needs two different ends");
	const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
	const rise = (1 - bulge * bulge) / (4 * bulge);
	const centre = {
		x: (start.x + end.x) / 2 - dy * rise,
		y: (start.y + end.y) / 2 + dx * rise,
	};
	return {
		kind: "arc",
		start,
		end,
		centre,
		radius,
		startAngle: Math.atan2(start.y - centre.y, start.x - centre.x),
		sweep: 4 * Math.atan(bulge),
	};
}

/** The segments of a path in order; a closed path has as many as it has vertices. */
export function segments(path: Path): Segment[] {
	const { points, closed } = path;
	const count = closed ? points.length : points.length - 1;
	const result: Segment[] = [];
	for (let i = 0; i < count; i++) {
		const start = points[i]!;
		const end = points[(i + 1) % points.length]!;
		result.push(
			Math.abs(start.bulge) < STRAIGHT
				? { kind: "line", start, end }
				: arcFromBulge(start, end, start.bulge),
		);
	}
	return result;
}

/**
 * The point at fraction u (0 start, 1 end) of a segment.
 *
 * On an arc it is reached along the chord from the start, 2r·sin(φ/2): from the centre, which
 * may be kilometres away, a flat arc would lose its digits.
 */
export function pointAt(segment: Segment, u: number): Point {
	if (u === 0) return segment.start;
	if (u === 1) return segment.end;
	const { start } = segment;
	if (segment.kind === "line") {
		const { end } = segment;
		return { x: start.x + (end.x - start.x) * u, y: start.y + (end.y - start.y) * u };
	}
	const half = (segment.sweep * u) / 2;
	const chord = 2 * segment.radius * Math.sin(half);
	const angle = segment.startAngle + half;
	return { x: start.x - chord * Math.sin(angle), y: start.y + chord * Math.cos(angle) };
}

/** Unit tangent at fraction u, in the direction of travel. */
export function tangentAt(segment: Segment, u: number): Point {
	if (segment.kind === "line") {
		const dx = segment.end.x - segment.start.x;
		const dy = segment.end.y - segment.start.y;
		const size = Math.hypot(dx, dy);
		return { x: dx / size, y: dy / size };
	}
	const angle = segment.startAngle + segment.sweep * u;
	const turn = Math.sign(segment.sweep);
	return { x: -Math.sin(angle) * turn, y: Math.cos(angle) * turn };
}

/** Length of a segment, mm. */
export function segmentLength(segment: Segment): number {
	return segment.kind === "line"
		? Math.hypot(segment.end.x - segment.start.x, segment.end.y - segment.start.y)
		: Math.abs(segment.sweep) * segment.radius;
}

const TURN = 2 * Math.PI;

/**
 * Where an angle stands on an arc: 0 at its start to 1 at its end, or null beside it.
 *
 * @param slack - angle by which both ends reach further; such angles give 0 or 1
 */
export function fractionOfAngle(arc: ArcSegment, angle: number, slack = 0): number | null {
	const raw = (arc.sweep > 0 ? angle - arc.startAngle : arc.startAngle - angle) % TURN;
	let turned = raw < 0 ? raw + TURN : raw;
	if (turned > TURN - slack) turned -= TURN;
	const size = Math.abs(arc.sweep);
	return turned <= size + slack ? Math.min(1, Math.max(0, turned / size)) : null;
}

/**
 * Power of a point with respect to an arc's circle, |p − c|² − r² in mm²: below 0 inside.
 *
 * Taken from the arc's start s as |p − s|² + 2(p − s)·(s − c), which has no squares of a large
 * radius to cancel.
 */
export function powerOf(p: Point, { start, centre }: ArcSegment): number {
	const x = p.x - start.x;
	const y = p.y - start.y;
	return x * x + y * y + 2 * (x * (start.x - centre.x) + y * (start.y - centre.y));
}

/** Distance of a point from an arc's whole circle, mm: below 0 inside. */
export function besideCircle(p: Point, arc: ArcSegment): number {
	const fromCentre = Math.hypot(p.x - arc.centre.x, p.y - arc.centre.y);
	return powerOf(p, arc) / (fromCentre + arc.radius);
}

/** Distance from a point to the nearest point of a segment, mm. */
export function distanceTo(segment: Segment, p: Point): number {
	const { start, end } = segment;
	if (segment.kind === "line") {
		const dx = end.x - start.x;
		const dy = end.y - start.y;
		const along = ((p.x - start.x) * dx + (p.y - start.y) * dy) / (dx * dx + dy * dy);
		const u = Math.min(1, Math.max(0, along));
		return Math.hypot(p.x - start.x - u * dx, p.y - start.y - u * dy);
	}
	const angle = Math.atan2(p.y - segment.centre.y, p.x - segment.centre.x);
	if (fractionOfAngle(segment, angle) !== null) return Math.abs(besideCircle(p, segment));
	return Math.min(Math.hypot(p.x - start.x, p.y - start.y), Math.hypot(p.x - end.x, p.y - end.y));
}
