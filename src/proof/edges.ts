import {
	type ArcSegment,
	type Extents,
	fractionOfAngle,
	type LineSegment,
	type Path,
	type Point,
	powerOf,
	type Segment,
	segmentExtents,
	segments,
} from "../geometry/index.js";
import { along, cross, dot, minus } from "./plane.js";

/** The segments of some paths with their boxes, to be looked up by place. */
export interface Edges {
	readonly paths: readonly Path[];
	readonly all: readonly EdgeSegment[];
}

interface EdgeSegment {
	readonly segment: Segment;
	readonly box: Extents;
	/** Place of its path. */
	readonly path: number;
}

/** Where a measuring line crosses an edge. */
export interface Cut {
	/** mm along the line from its point. */
	readonly t: number;
	/** Material on the left of the path: 1 where the line leaves it, −1 where it enters it. */
	readonly leaves: 1 | -1;
	/** Place of the path that is crossed. */
	readonly path: number;
}

/**
 * Least sine of the angle between a measuring line and what it crosses: lines that run along
 * it, a little askew by rounding, cross it anywhere.
 */
const LEAST_SINE = 0.05;
/** By how much a segment reaches past its ends, mm, so that none slips through a joint. */
const JOINT = 1e-6;

export function edgesOf(paths: readonly Path[]): Edges {
	const all = paths.flatMap((path, i) =>
		segments(path).map((segment) => ({ segment, box: segmentExtents(segment), path: i })),
	);
	return { paths, all };
}

/** The edges that a line through p crosses within a distance of p on either side. */
export function crossings(edges: Edges, p: Point, direction: Point, reach: number): Cut[] {
	const [a, b] = [along(p, direction, -reach), along(p, direction, reach)];
	const [minX, maxX] = [Math.min(a.x, b.x) - JOINT, Math.max(a.x, b.x) + JOINT];
	const [minY, maxY] = [Math.min(a.y, b.y) - JOINT, Math.max(a.y, b.y) + JOINT];
	const found: Cut[] = [];
	for (const { segment, box, path } of edges.all) {
		if (box.maxX < minX || box.minX > maxX || box.maxY < minY || box.minY > maxY) continue;
		const at = segment.kind === "line" ? onLine : onArc;
		for (const { t, sine } of at(segment as LineSegment & ArcSegment, p, direction)) {
			if (Math.abs(sine) < LEAST_SINE || Math.abs(t) > reach) continue;
			found.push({ t, leaves: sine > 0 ? 1 : -1, path });
		}
	}
	return found;
}

interface Met {
	readonly t: number;
	/** Sine of the angle from the measuring line to the edge's way. */
	readonly sine: number;
}

function onLine({ start, end }: LineSegment, p: Point, direction: Point): Met[] {
	const way = minus(end, start);
	const size = Math.hypot(way.x, way.y);
	const across = cross(direction, way);
	const from = minus(start, p);
	const u = cross(from, direction) / across;
	const slack = JOINT / size;
	if (!(u >= -slack && u <= 1 + slack)) return [];
	return [{ t: cross(from, way) / across, sine: across / size }];
}

function onArc(arc: ArcSegment, p: Point, direction: Point): Met[] {
	const half = dot(minus(p, arc.centre), direction);
	const power = powerOf(p, arc);
	const square = half * half - power;
	if (!(square >= 0)) return [];
	// Of the two roots of t² + 2·half·t + power the larger first: the other loses no digits then.
	const large = -(half + (half < 0 ? -1 : 1) * Math.sqrt(square));
	const roots = large === 0 ? [0] : [large, power / large];
	return roots.flatMap((t) => {
		const q = minus(along(p, direction, t), arc.centre);
		const angle = Math.atan2(q.y, q.x);
		if (fractionOfAngle(arc, angle, JOINT / arc.radius) === null) return [];
		const turn = Math.sign(arc.sweep);
		const way = { x: (-q.y / arc.radius) * turn, y: (q.x / arc.radius) * turn };
		return [{ t, sine: cross(direction, way) }];
	});
}

/** The crossing nearest to the line's point; null of none. */
export function nearestCut(cuts: readonly Cut[]): Cut | null {
	return cuts.reduce<Cut | null>(
		(best, cut) => (best === null || Math.abs(cut.t) < Math.abs(best.t) ? cut : best),
		null,
	);
}
