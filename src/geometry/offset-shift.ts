import type { Boundary, SegmentRef } from "./offset-check.js";
import type { Point } from "./path.js";
import { type ArcSegment, type Segment, tangentAt } from "./segment.js";

/** What a segment of an offset comes from: a segment, or the corner at that segment's end. */
export interface Source extends SegmentRef {
	readonly corner: boolean;
}

/** A whole segment moved sideways, or the arc about a corner, before anything is cut away. */
export interface Shifted {
	readonly segment: Segment;
	readonly source: Source;
}

/** An arc with no more radius than this has shrunk to a point, mm. */
const SHRUNK = 1e-7;
/** A corner arc no longer than this closes no gap that matters, mm. */
const SHORTEST_CORNER = 1e-8;
/** From here a turn counts as straight back, radians: its sign is then the curvatures'. */
const STRAIGHT_BACK = Math.PI - 1e-6;

/**
 * Every segment moved `distance` to its right, and an arc about every corner that the contour
 * turns at away from that side.
 *
 * A line is moved along its normal; an arc keeps its centre and takes the radius
 * r + sign(sweep)·distance. An arc that would need a radius below 0 goes: every point of such
 * an arc would be nearer than |distance| to the ends of the one that it came from.
 */
export function shiftedSegments(boundary: Boundary, distance: number): Shifted[] {
	const { segments, refs, nextOf } = boundary;
	const result: Shifted[] = [];
	for (const [i, segment] of segments.entries()) {
		const moved = shifted(segment, distance);
		if (moved) result.push({ segment: moved, source: { ...refs[i]!, corner: false } });
		const corner = cornerArc(segment, segments[nextOf[i]!]!, distance);
		if (corner) result.push({ segment: corner, source: { ...refs[i]!, corner: true } });
	}
	return result;
}

function shifted(segment: Segment, distance: number): Segment | null {
	const start = beside(segment.start, tangentAt(segment, 0), distance);
	const end = beside(segment.end, tangentAt(segment, 1), distance);
	if (segment.kind === "line") return { kind: "line", start, end };
	const radius = segment.radius + Math.sign(segment.sweep) * distance;
	return radius > SHRUNK ? { ...segment, start, end, radius } : null;
}

/** The point at a distance to the right of a direction. */
function beside(p: Point, direction: Point, distance: number): Point {
	return { x: p.x + direction.y * distance, y: p.y - direction.x * distance };
}

/** The arc from the end of one moved segment to the start of the next, where they part. */
function cornerArc(segment: Segment, next: Segment, distance: number): ArcSegment | null {
	const arriving = tangentAt(segment, 1);
	const leaving = tangentAt(next, 0);
	const sweep = turnBetween(segment, next, arriving, leaving);
	if (sweep * distance < SHORTEST_CORNER) return null;
	const start = beside(segment.end, arriving, distance);
	const end = beside(segment.end, leaving, distance);
	const startAngle = Math.atan2(-arriving.x * distance, arriving.y * distance);
	const radius = Math.abs(distance);
	return { kind: "arc", start, end, centre: segment.end, radius, startAngle, sweep };
}

/**
 * How far a contour turns at a joint, radians, left positive.
 *
 * Straight back it may be either way. The contour then goes back on the left of where it came
 * from if its curvatures, counted positive to the left, add up to less than 0.
 */
function turnBetween(segment: Segment, next: Segment, arriving: Point, leaving: Point): number {
	const cross = arriving.x * leaving.y - arriving.y * leaving.x;
	const turn = Math.atan2(cross, arriving.x * leaving.x + arriving.y * leaving.y);
	if (Math.abs(turn) < STRAIGHT_BACK) return turn;
	const bend = curvature(segment) + curvature(next);
	return bend === 0 ? turn : bend < 0 ? Math.abs(turn) : -Math.abs(turn);
}

function curvature(segment: Segment): number {
	return segment.kind === "line" ? 0 : Math.sign(segment.sweep) / segment.radius;
}
