import type { Path, Point } from "./path.js";
import { pointAt, powerOf, type Segment, segments } from "./segment.js";

/**
 * How often closed contours wind around a point, counter-clockwise positive.
 *
 * A ray runs from the point toward +x; arcs are cut into pieces that only rise or only fall.
 * A point on the contour itself has no defined answer.
 */
export function windingNumber(contours: readonly Segment[], p: Point): number {
	let winding = 0;
	for (const s of contours) {
		for (const [from, to, middle] of monotone(s)) {
			if (from.y <= p.y === to.y <= p.y) continue;
			if (isLeftOf(p, s, middle)) winding += to.y > from.y ? 1 : -1;
		}
	}
	return winding;
}

/** Whether a point lies within a closed path, whichever way the path runs. */
export function contains(path: Path, p: Point): boolean {
	return windingNumber(segments(path), p) !== 0;
}

type Piece = readonly [from: Point, to: Point, middle: Point];

/** The pieces of a segment between the places where it turns from rising to falling. */
function monotone(s: Segment): Piece[] {
	if (s.kind === "line") return [[s.start, s.end, s.start]];
	const cuts = [0, 1];
	for (let k = -4; k <= 4; k++) {
		const u = (Math.PI / 2 + k * Math.PI - s.startAngle) / s.sweep;
		if (u > 0 && u < 1) cuts.push(u);
	}
	cuts.sort((a, b) => a - b);
	const pieces: Piece[] = [];
	for (let i = 0; i + 1 < cuts.length; i++) {
		const from = cuts[i]!;
		const to = cuts[i + 1]!;
		pieces.push([pointAt(s, from), pointAt(s, to), pointAt(s, (from + to) / 2)]);
	}
	return pieces;
}

/** Whether a point whose height a piece passes lies to its left, that is, nearer to −x. */
function isLeftOf(p: Point, s: Segment, middle: Point): boolean {
	if (s.kind === "line") {
		const { start, end } = s;
		return start.x + ((p.y - start.y) / (end.y - start.y)) * (end.x - start.x) > p.x;
	}
	const isInside = powerOf(p, s) < 0;
	if (middle.x > s.centre.x) return isInside || p.x < s.centre.x;
	return !isInside && p.x < s.centre.x;
}
