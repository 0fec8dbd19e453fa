import {
	arcFromBulge,
	distanceTo,
	type Point,
	SAME_POINT,
	type Segment,
	type Vertex,
	vertex,
} from "../geometry/index.js";

/** A cubic Bézier curve: start, two controls, end. */
export type Cubic = readonly [Point, Point, Point, Point];

/** How far arcs may leave the curve they stand for, mm: half of the 1 µm from formula to file. */
export const CURVE_TOLERANCE = 0.0005;

/** Where a piece of curve is compared with its arcs; their gap peaks near 1/4 and 3/4. */
const PROBES = Array.from({ length: 15 }, (_, i) => (i + 1) / 16);

/** The cubic that draws the same curve as a quadratic one (exact). */
export function cubicOfQuadratic(start: Point, control: Point, end: Point): Cubic {
	return [start, between(start, control, 2 / 3), between(end, control, 2 / 3), end];
}

/** The point of a curve at parameter t, 0 to 1 (de Casteljau). */
export function pointOnCubic(curve: Cubic, t: number): Point {
	return halves(curve, t)[1][0];
}

/**
 * A curve as a tangent chain of arcs, none further than `tolerance` from it.
 *
 * Every piece becomes two arcs that meet tangentially and keep its end tangents (a biarc with
 * equal tangent lengths); a piece that misses the tolerance is halved. Ends are kept exactly.
 * Fitted here because makerjs takes no bound in mm: on letters 10 mm high its default strays
 * 2.9 µm, and its arcs meet at up to 1.6°.
 *
 * @param tolerance - mm, greater than 0
 * @returns the vertices from the start on, without the end
 * @throws RangeError on coordinates that are not finite
 */
export function arcsAlong(curve: Cubic, tolerance: number): Vertex[] {
	if (!curve.every((p) => Number.isFinite(p.x) && Number.isFinite(p.y))) {
		throw new RangeError("a curve needs finite points");
	}
	const [start, c1, c2, end] = curve;
	const reach = distance(start, c1) + distance(c1, c2) + distance(c2, end);
	if (reach < SAME_POINT) return [];
	const arcs = reach <= tolerance ? [vertex(start.x, start.y)] : biarc(curve);
	if (arcs && (reach <= tolerance || follows(arcs, curve, tolerance))) return arcs;
	const [first, second] = halves(curve, 0.5);
	return [...arcsAlong(first, tolerance), ...arcsAlong(second, tolerance)];
}

/**
 * Two arcs with the end tangents t₁, t₂ of a curve over v = end − start. Their joint is the
 * middle of start + d·t₁ and end − d·t₂ with d = v²/(v·t + √((v·t)² + 2(1 − t₁·t₂)v²)), t = t₁ + t₂.
 *
 * @returns null where no such arcs of less than a half circle exist
 */
function biarc(curve: Cubic): Vertex[] | null {
	const [start, c1, c2, end] = curve;
	const size = distance(start, end);
	if (size < SAME_POINT) return null;
	const t1 = heading(start, c1) ?? heading(start, c2) ?? heading(start, end)!;
	const t2 = heading(c2, end) ?? heading(c1, end) ?? heading(start, end)!;
	const along = (end.x - start.x) * (t1.x + t2.x) + (end.y - start.y) * (t1.y + t2.y);
	const opening = 2 * (1 - (t1.x * t2.x + t1.y * t2.y)) * size * size;
	const below = along + Math.sqrt(along * along + opening);
	if (!(below > size * 1e-3)) return null;
	const d = (size * size) / below;
	const joint = {
		x: (start.x + d * t1.x + end.x - d * t2.x) / 2,
		y: (start.y + d * t1.y + end.y - d * t2.y) / 2,
	};
	const u1 = heading(start, joint);
	const u2 = heading(joint, end);
	if (!u1 || !u2) return null;
	const b1 = halfTurn(t1, u1);
	const b2 = halfTurn(u2, t2);
	if (b1 === 0 && b2 === 0) return [vertex(start.x, start.y)];
	if (!(Math.abs(b1) < 1 && Math.abs(b2) < 1)) return null;
	return [vertex(start.x, start.y, b1), vertex(joint.x, joint.y, b2)];
}

function follows(arcs: readonly Vertex[], curve: Cubic, tolerance: number): boolean {
	const pieces = arcs.map((from, i): Segment => {
		const to = arcs[i + 1] ?? curve[3];
		return from.bulge === 0
			? { kind: "line", start: from, end: to }
			: arcFromBulge(from, to, from.bulge);
	});
	return PROBES.every((t) => {
		const p = pointOnCubic(curve, t);
		return pieces.some((s) => distanceTo(s, p) <= tolerance);
	});
}

/** Below this bulge a piece is straight: on a chord of 1 mm it rises less than a thousandth µm. */
const STRAIGHT = 1e-6;

/** tan of half the angle from one heading to the next: the bulge of the arc between them. */
function halfTurn(from: Point, to: Point): number {
	const bulge = (from.x * to.y - from.y * to.x) / (1 + from.x * to.x + from.y * to.y);
	return Math.abs(bulge) < STRAIGHT ? 0 : bulge;
}

function heading(from: Point, to: Point): Point | null {
	const size = distance(from, to);
	return size < SAME_POINT ? null : { x: (to.x - from.x) / size, y: (to.y - from.y) / size };
}

function distance(a: Point, b: Point): number {
	return Math.hypot(b.x - a.x, b.y - a.y);
}

function between(a: Point, b: Point, t: number): Point {
	return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

function halves([p0, p1, p2, p3]: Cubic, t: number): readonly [Cubic, Cubic] {
	const a = between(p0, p1, t);
	const b = between(p1, p2, t);
	const c = between(p2, p3, t);
	const ab = between(a, b, t);
	const bc = between(b, c, t);
	const middle = between(ab, bc, t);
	return [
		[p0, a, ab, middle],
		[middle, bc, c, p3],
	];
}
