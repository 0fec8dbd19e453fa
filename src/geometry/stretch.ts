import { type Path, type Point, type Vertex, vertex } from "./path.js";
import { type ArcSegment, pointAt, segments } from "./segment.js";

/** How far an arc may lie from the ellipse that it stands for, mm: a fifth of the 1 µm budget. */
const NEAR_ELLIPSE = 0.0002;

/**
 * A path as a machine must be told it whose axes are not true: every coordinate is divided by
 * what the machine makes of a millimetre along that axis, so that what it makes is true.
 *
 * Lines stay lines. Under equal factors arcs keep their bulge. Unequal ones make ellipses of
 * circles: each arc becomes one arc or more with their ends on the ellipse, none of which is
 * further from it than 0.0002 mm.
 *
 * @param stretch - measured / nominal along x and y, above 0
 * @throws RangeError for a factor that is none
 * @example stretched(line({ x: 0, y: 0 }, { x: 100.08, y: 0 }), { x: 1.0008, y: 1 }) // 100 long
 */
export function stretched(path: Path, stretch: Point): Path {
	for (const factor of [stretch.x, stretch.y]) {
		if (!(factor > 0) || !Number.isFinite(factor)) {
			throw new RangeError(`no stretch of a machine: ${factor}`);
		}
	}
	const { points, closed } = path;
	if (stretch.x === stretch.y) return { closed, points: points.map((v) => divided(v, stretch)) };
	const all = segments(path);
	return {
		closed,
		points: points.flatMap((v, i): Vertex[] => {
			const segment = all[i];
			if (segment?.kind !== "arc") return [divided(v, stretch)];
			return [...arcsOfEllipse(segment, stretch, 0, 1)];
		}),
	};
}

function divided(v: Vertex, stretch: Point): Vertex {
	return vertex(v.x / stretch.x, v.y / stretch.y, v.bulge);
}

/** The place on the ellipse of the fraction u of its circular arc. */
function onEllipse(arc: ArcSegment, stretch: Point, u: number): Point {
	const p = pointAt(arc, u);
	return { x: p.x / stretch.x, y: p.y / stretch.y };
}

/** The vertices of arcs along an ellipse between two fractions of its circular arc. */
function arcsOfEllipse(arc: ArcSegment, stretch: Point, from: number, to: number): Vertex[] {
	const middle = (from + to) / 2;
	const a = onEllipse(arc, stretch, from);
	const b = onEllipse(arc, stretch, to);
	const bulge = bulgeThrough(a, onEllipse(arc, stretch, middle), b);
	const chord = Math.hypot(b.x - a.x, b.y - a.y);
	const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
	if (furthest(arc, stretch, from, to, radius) <= NEAR_ELLIPSE) return [vertex(a.x, a.y, bulge)];
	return [...arcsOfEllipse(arc, stretch, from, middle), ...arcsOfEllipse(arc, stretch, middle, to)];
}

/**
 * Bulge of the arc from a through m to b: at m its chords turn by half its sweep. An ellipse's
 * deviation from a circle is odd about the middle but for a small rest, so that no other circle
 * through the ends comes much nearer than the one through the middle.
 */
function bulgeThrough(a: Point, m: Point, b: Point): number {
	const [ux, uy] = [m.x - a.x, m.y - a.y];
	const [vx, vy] = [b.x - m.x, b.y - m.y];
	return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 2);
}

/**
 * A bound of the distance of an elliptic arc from the circle through its ends and its middle, mm.
 *
 * The power of the ellipse's point (r/p·cos θ, r/q·sin θ) with respect to a circle is a
 * trigonometric polynomial of degree 2 in θ with cos 2θ·r²(1/p² − 1/q²)/2 at its head. Three of
 * its zeros are the ends m ± h and the middle m, and since the four sum to whole turns (concyclic
 * points of an ellipse) the fourth is −3m: with t = θ − m it is
 *
 * 4r²(1/p² − 1/q²) · sin(t/2)·sin((t − h)/2)·sin((t + h)/2) · sin(t/2 + 2m).
 *
 * With S = sin(h/2) the first three sines are at most 2S³/√27, the last |sin 2m| + S and 1. A
 * power g lies √(R² + g) − R from a circle of radius R, at most |g|/(R + √(R² − |g|)).
 *
 * @param radius - of that circle
 */
function furthest(
	arc: ArcSegment,
	stretch: Point,
	from: number,
	to: number,
	radius: number,
): number {
	const s = Math.sin((Math.abs(arc.sweep) * (to - from)) / 4);
	const middle = arc.startAngle + (arc.sweep * (from + to)) / 2;
	const last = Math.min(1, Math.abs(Math.sin(2 * middle)) + s);
	const [p, q] = [1 / stretch.x, 1 / stretch.y];
	const head = 4 * arc.radius * arc.radius * Math.abs((p - q) * (p + q));
	const power = head * ((2 * s * s * s) / Math.sqrt(27)) * last;
	return power / (radius + Math.sqrt(Math.max(0, radius * radius - power)));
}
