import type { Point } from "./path.js";
import {
	type ArcSegment,
	besideCircle,
	fractionOfAngle,
	type LineSegment,
	powerOf,
	type Segment,
} from "./segment.js";

/** A common point of two segments with the fraction along each. */
export interface Meeting {
	readonly at: Point;
	readonly onFirst: number;
	readonly onSecond: number;
}

/** How far past its end a segment still counts as met, mm: a hundredth of the point tolerance. */
export const REACH = 1e-8;
/** Two lines (or circles) nearer than this are one, mm. */
const COINCIDENT = 1e-9;
/**
 * Two meetings no further than this to either side of their middle are one touch, mm (or a
 * share of a radius below 1 mm): half a chord is the root of what rounding leaves of its square.
 */
const TANGENT = 1e-6;

/**
 * The points that two segments share. Of segments that lie on each other the ends of the
 * shared stretch are given.
 *
 * Circles are met from the smaller one, at a = (d² − R² + r²)/2d toward the other centre and
 * h² = (r − a)(r + a) to either side, then polished by at most three Newton steps. d² − R² is
 * the power of the smaller one's centre, so that flat arcs lose no digits.
 */
export function meetings(first: Segment, second: Segment): Meeting[] {
	const candidates =
		first.kind === "line"
			? second.kind === "line"
				? lineLine(first, second)
				: lineCircle(first, second)
			: second.kind === "line"
				? lineCircle(second, first)
				: circleCircle(first, second);
	const result: Meeting[] = [];
	for (const candidate of candidates) {
		const at = polished(first, second, candidate);
		const onFirst = fractionOf(first, at);
		const onSecond = fractionOf(second, at);
		if (onFirst !== null && onSecond !== null) result.push({ at, onFirst, onSecond });
	}
	return result;
}

/** Where a point on the carrier stands along a segment, or null beyond its ends. */
function fractionOf(s: Segment, p: Point): number | null {
	if (s.kind === "arc") {
		const angle = Math.atan2(p.y - s.centre.y, p.x - s.centre.x);
		return fractionOfAngle(s, angle, REACH / s.radius);
	}
	const dx = s.end.x - s.start.x;
	const dy = s.end.y - s.start.y;
	const size = Math.hypot(dx, dy);
	const along = ((p.x - s.start.x) * dx + (p.y - s.start.y) * dy) / size;
	if (along < -REACH || along > size + REACH) return null;
	return Math.min(1, Math.max(0, along / size));
}

function lineLine(a: LineSegment, b: LineSegment): Point[] {
	const ax = a.end.x - a.start.x;
	const ay = a.end.y - a.start.y;
	const bx = b.end.x - b.start.x;
	const by = b.end.y - b.start.y;
	const cross = ax * by - ay * bx;
	const gapX = b.start.x - a.start.x;
	const gapY = b.start.y - a.start.y;
	const sizeA = Math.hypot(ax, ay);
	if (Math.abs(cross) < 1e-12 * sizeA * Math.hypot(bx, by)) {
		const apart = Math.abs(gapX * ay - gapY * ax) / sizeA;
		return apart < COINCIDENT ? [a.start, a.end, b.start, b.end] : [];
	}
	const u = (gapX * by - gapY * bx) / cross;
	return [{ x: a.start.x + u * ax, y: a.start.y + u * ay }];
}

function lineCircle(l: LineSegment, arc: ArcSegment): Point[] {
	const dx = l.end.x - l.start.x;
	const dy = l.end.y - l.start.y;
	const size = Math.hypot(dx, dy);
	const ux = dx / size;
	const uy = dy / size;
	const along = (arc.centre.x - l.start.x) * ux + (arc.centre.y - l.start.y) * uy;
	const foot = { x: l.start.x + along * ux, y: l.start.y + along * uy };
	if (besideCircle(foot, arc) > COINCIDENT) return [];
	const half = Math.sqrt(Math.max(0, -powerOf(foot, arc)));
	if (half < TANGENT * Math.min(1, arc.radius)) return [foot];
	return [
		{ x: foot.x + half * ux, y: foot.y + half * uy },
		{ x: foot.x - half * ux, y: foot.y - half * uy },
	];
}

function circleCircle(a: ArcSegment, b: ArcSegment): Point[] {
	const [small, large] = a.radius > b.radius ? [b, a] : [a, b];
	const r = small.radius;
	const dx = large.centre.x - small.centre.x;
	const dy = large.centre.y - small.centre.y;
	const apart = Math.hypot(dx, dy);
	if (apart < COINCIDENT) {
		return large.radius - r < COINCIDENT ? [a.start, a.end, b.start, b.end] : [];
	}
	if (Math.abs(besideCircle(small.centre, large)) > r + COINCIDENT) return [];
	const toward = (powerOf(small.centre, large) + r * r) / (2 * apart);
	// Circles that nearly coincide leave no digits in it; the point stays on the smaller one.
	const along = Math.min(r, Math.max(-r, toward));
	const half = Math.sqrt((r - along) * (r + along));
	const x = small.centre.x + (along * dx) / apart;
	const y = small.centre.y + (along * dy) / apart;
	if (half < TANGENT * Math.min(1, r)) return [{ x, y }];
	const ox = (half * dy) / apart;
	const oy = (half * dx) / apart;
	return [
		{ x: x - ox, y: y + oy },
		{ x: x + ox, y: y - oy },
	];
}

/** Signed distance from a segment's carrier and its gradient. */
function carrier(s: Segment, p: Point): readonly [value: number, gx: number, gy: number] {
	if (s.kind === "line") {
		const dx = s.end.x - s.start.x;
		const dy = s.end.y - s.start.y;
		const size = Math.hypot(dx, dy);
		const value = ((p.x - s.start.x) * dy - (p.y - s.start.y) * dx) / size;
		return [value, dy / size, -dx / size];
	}
	const ex = p.x - s.centre.x;
	const ey = p.y - s.centre.y;
	const size = Math.hypot(ex, ey);
	return [besideCircle(p, s), ex / size, ey / size];
}

/** At most three Newton steps onto both carriers; tangent carriers are left as computed. */
function polished(first: Segment, second: Segment, from: Point): Point {
	if (first.kind === "line" && second.kind === "line") return from;
	let { x, y } = from;
	for (let step = 0; step < 3; step++) {
		const [fa, ax, ay] = carrier(first, { x, y });
		const [fb, bx, by] = carrier(second, { x, y });
		const cross = ax * by - ay * bx;
		if (Math.abs(cross) < 1e-5) break;
		const sx = -(fa * by - fb * ay) / cross;
		const sy = -(ax * fb - bx * fa) / cross;
		if (!(Math.hypot(sx, sy) < 1e-2)) break;
		x += sx;
		y += sy;
	}
	return { x, y };
}
