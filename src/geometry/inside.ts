import type { Path, Point } from "./path.js";
import {
	type ArcSegment,
	type LineSegment,
	pointAt,
	powerOf,
	type Segment,
	segments,
} from "./segment.js";

/**
 * How often closed contours wind around a point, counter-clockwise positive.
 *
 * A ray runs from the point toward +x; arcs are cut into pieces that only rise or only fall.
 * A point on the contour itself has no defined answer.
 */
export function windingNumber(contours: readonly Segment[], p: Point): number {
	let winding = 0;
	for (const s of contours) winding += s.kind === "line" ? passOf(s, p) : passesOf(s, p);
	return winding;
}

/** Whether a point lies within a closed path, whichever way the path runs. */
export function contains(path: Path, p: Point): boolean {
	return windingNumber(segments(path), p) !== 0;
}

/** The way from one point to another past a height: 1 up, −1 down, 0 not past it. */
function wayPast(from: Point, to: Point, y: number): 1 | -1 | 0 {
	if (from.y <= y === to.y <= y) return 0;
	return to.y > from.y ? 1 : -1;
}

function passOf({ start, end }: LineSegment, p: Point): number {
	const way = wayPast(start, end, p.y);
	if (way === 0) return 0;
	return start.x + ((p.y - start.y) / (end.y - start.y)) * (end.x - start.x) > p.x ? way : 0;
}

/** By how much a circle may reach past its centre and radius, as a share of the radius. */
const ROUNDING = 1e-12;

/** How often an arc passes the ray, up less down. */
function passesOf(arc: ArcSegment, p: Point): number {
	const reach = arc.radius * (1 + ROUNDING);
	if (arc.centre.x + reach < p.x) return 0;
	// Of an arc wholly on the right only the ends count: other passes cancel out.
	if (arc.centre.x - reach > p.x) return wayPast(arc.start, arc.end, p.y);
	const isInside = powerOf(p, arc) < 0;
	const isBefore = p.x < arc.centre.x;
	return piecesOf(arc).reduce((sum, { from, to, middle }) => {
		const isPassed = middle.x > arc.centre.x ? isInside || isBefore : isBefore && !isInside;
		return isPassed ? sum + wayPast(from, to, p.y) : sum;
	}, 0);
}

interface Piece {
	readonly from: Point;
	readonly middle: Point;
	readonly to: Point;
}

/** The pieces of an arc between the places where it turns from rising to falling. */
function piecesOf(arc: ArcSegment): Piece[] {
	const cuts = [0, 1];
	for (let k = -4; k <= 4; k++) {
		const u = (Math.PI / 2 + k * Math.PI - arc.startAngle) / arc.sweep;
		if (u > 0 && u < 1) cuts.push(u);
	}
	cuts.sort((a, b) => a - b);
	return cuts.slice(1).map((to, i) => {
		const from = cuts[i]!;
		return {
			from: pointAt(arc, from),
			middle: pointAt(arc, (from + to) / 2),
			to: pointAt(arc, to),
		};
	});
}
