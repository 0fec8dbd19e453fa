import type { Path, Point, Vertex } from "../../src/geometry/index.js";
import type { Random } from "./offset-cases.js";

/**
 * What an offset must be, from its definition: every point of it is at the distance from the
 * contours (an empty result passes this), and a point is within it exactly when its signed
 * distance to the contours is below the distance (a wrong shape passes neither).
 *
 * Nothing here comes from the code under test: a point's place beside a chord decides what the
 * code decides by angles.
 */
export interface Verdict {
	/** Largest |distance to the contours − |distance|| along the result, mm. */
	readonly error: number;
	/** Points on the wrong side, and how many were looked at. */
	readonly misplaced: number;
	readonly tested: number;
	/** Sizes of the result. */
	readonly segments: number;
	readonly arcs: number;
}

/** A line or arc between two points; `bulge` 0 is a line. */
interface Edge {
	readonly from: Vertex;
	readonly to: Vertex;
	readonly bulge: number;
	/** Of an arc. */
	readonly centre: Point;
	readonly radius: number;
}

export function judge(
	contours: readonly Path[],
	paths: readonly Path[],
	distance: number,
	next: Random,
	points = 60,
): Verdict {
	const given = edgesOf(contours);
	const found = edgesOf(paths);
	const size = Math.abs(distance);
	let error = 0;
	for (const edge of found) {
		for (const share of [0, 0.25, 0.5, 0.75]) {
			const off = Math.abs(distanceToEdges(given, along(edge, share)) - size);
			error = Number.isNaN(off) ? Number.POSITIVE_INFINITY : Math.max(error, off);
		}
	}
	let misplaced = 0;
	let tested = 0;
	for (const p of testPoints(given, size, next, points)) {
		const signed = distanceToEdges(given, p) * (windings(given, p) > 0 ? -1 : 1);
		if (Math.abs(signed - distance) < 1e-5) continue;
		tested++;
		// Of a sound result the windings are 0 outside and 1 inside, nowhere else.
		if (windings(found, p) !== (signed < distance ? 1 : 0)) misplaced++;
	}
	const arcs = found.filter((e) => e.bulge !== 0).length;
	return { error, misplaced, tested, segments: found.length, arcs };
}

/** Points all over the contours, then as many about the distance from them. */
function* testPoints(
	edges: readonly Edge[],
	size: number,
	next: Random,
	count: number,
): Generator<Point> {
	const margin = 2 * size + 2;
	const xs = edges.map((e) => e.from.x);
	const ys = edges.map((e) => e.from.y);
	const [x0, x1] = [Math.min(...xs) - margin, Math.max(...xs) + margin];
	const [y0, y1] = [Math.min(...ys) - margin, Math.max(...ys) + margin];
	for (let i = 0; i < count; i++) yield { x: x0 + (x1 - x0) * next(), y: y0 + (y1 - y0) * next() };
	for (let i = 0; i < count; i++) {
		const p = along(edges[Math.floor(next() * edges.length)]!, next());
		const angle = next() * 2 * Math.PI;
		const far = size * (0.9 + 0.2 * next());
		yield { x: p.x + far * Math.cos(angle), y: p.y + far * Math.sin(angle) };
	}
}

/** Whether a point is within contours that bound material on their left. */
export function covers(contours: readonly Path[], p: Point): boolean {
	return windings(edgesOf(contours), p) > 0;
}

/** Distance from a point to the nearest of some contours. */
export function distanceToContours(contours: readonly Path[], p: Point): number {
	return distanceToEdges(edgesOf(contours), p);
}

function edgesOf(paths: readonly Path[]): Edge[] {
	return paths.flatMap(({ points }) =>
		points.map((from, i): Edge => {
			const to = points[(i + 1) % points.length]!;
			const { bulge } = from;
			const chord = Math.hypot(to.x - from.x, to.y - from.y);
			const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
			const rise = (1 - bulge * bulge) / (4 * bulge);
			const centre = {
				x: (from.x + to.x) / 2 - (to.y - from.y) * rise,
				y: (from.y + to.y) / 2 + (to.x - from.x) * rise,
			};
			return { from, to, bulge, centre, radius };
		}),
	);
}

/** The point at a share of an edge's sweep, by turning its start about the centre. */
function along({ from, to, bulge, centre }: Edge, share: number): Point {
	if (bulge === 0) {
		return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
	}
	const angle = 4 * Math.atan(bulge) * share;
	const [x, y] = [from.x - centre.x, from.y - centre.y];
	const [c, s] = [Math.cos(angle), Math.sin(angle)];
	return { x: centre.x + x * c - y * s, y: centre.y + x * s + y * c };
}

/** Twice the area of a triangle: above 0 where p is on the left of the way from a to b. */
function leftOf(a: Point, b: Point, p: Point): number {
	return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

function distanceToEdges(edges: readonly Edge[], p: Point): number {
	let nearest = Number.POSITIVE_INFINITY;
	for (const edge of edges) nearest = Math.min(nearest, distanceToEdge(edge, p));
	return nearest;
}

function distanceToEdge({ from, to, bulge, centre, radius }: Edge, p: Point): number {
	const ends = Math.min(Math.hypot(p.x - from.x, p.y - from.y), Math.hypot(p.x - to.x, p.y - to.y));
	if (bulge === 0) {
		const chord = Math.hypot(to.x - from.x, to.y - from.y);
		const foot =
			((p.x - from.x) * (to.x - from.x) + (p.y - from.y) * (to.y - from.y)) / (chord * chord);
		return foot > 0 && foot < 1 ? Math.abs(leftOf(from, to, p)) / chord : ends;
	}
	const far = Math.hypot(p.x - centre.x, p.y - centre.y);
	if (far === 0) return radius;
	const foot = {
		x: centre.x + ((p.x - centre.x) / far) * radius,
		y: centre.y + ((p.y - centre.y) / far) * radius,
	};
	// A counter-clockwise arc lies on the right of its chord.
	const onArc = leftOf(from, to, foot) * bulge < 0;
	return onArc ? Math.min(ends, Math.abs(far - radius)) : ends;
}

/** Windings around a point: those of the chords, and one for every bow that the point is in. */
function windings(edges: readonly Edge[], p: Point): number {
	let result = 0;
	for (const { from, to, bulge, centre, radius } of edges) {
		const side = leftOf(from, to, p);
		if (from.y <= p.y && to.y > p.y && side > 0) result++;
		if (from.y > p.y && to.y <= p.y && side < 0) result--;
		if (bulge === 0 || side * bulge >= 0) continue;
		if (Math.hypot(p.x - centre.x, p.y - centre.y) < radius) result += Math.sign(bulge);
	}
	return result;
}
