import { distance, type Point } from "../geometry/index.js";

/** How far a curve may lie beside the arc or the line that it is taken for, mm. */
const NEAR = 2e-4;

/** A cubic Bézier: its ends and the two points that it is drawn toward. */
export type Cubic = readonly [Point, Point, Point, Point];

/**
 * Bulge of the arc that a cubic stands for, 0 if it is straight; null if it is neither.
 *
 * PDF knows no arcs, so that they are written as cubics: one whose points at 1/4, 1/2 and 3/4 lie
 * within 2e-4 mm of the circle through its ends and its middle is taken back for the arc. Half a
 * turn and more is none.
 */
export function bulgeOfCubic(cubic: Cubic): number | null {
	const [a, , , b] = cubic;
	const middle = cubicAt(cubic, 1 / 2);
	const quarters = [cubicAt(cubic, 1 / 4), middle, cubicAt(cubic, 3 / 4)];
	const chord = distance(a, b);
	if (!(chord > NEAR)) return null;
	const along = (p: Point) => ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / chord;
	const aside = (p: Point) => ((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / chord;
	const isBetween = quarters.every((p) => along(p) > -NEAR && along(p) < chord + NEAR);
	if (isBetween && quarters.every((p) => Math.abs(aside(p)) <= STRAIGHT)) return 0;
	const bulge = bulgeThrough(a, middle, b);
	if (!(Math.abs(bulge) < 1)) return null;
	const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
	const rise = (1 - bulge * bulge) / (4 * bulge);
	const centre = {
		x: (a.x + b.x) / 2 - (b.y - a.y) * rise,
		y: (a.y + b.y) / 2 + (b.x - a.x) * rise,
	};
	const isRound = quarters.every((p) => Math.abs(distance(p, centre) - radius) <= NEAR);
	return isRound && isBetween ? bulge : null;
}

/** What is no higher over its chord than numbers of 32 bits can say is straight, mm. */
const STRAIGHT = 1e-6;

/** Bulge of the arc from a through m to b: at m its chords turn by half its sweep. */
function bulgeThrough(a: Point, m: Point, b: Point): number {
	const [ux, uy] = [m.x - a.x, m.y - a.y];
	const [vx, vy] = [b.x - m.x, b.y - m.y];
	return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 2);
}

function cubicAt([a, b, c, d]: Cubic, t: number): Point {
	const s = 1 - t;
	const [wa, wb, wc, wd] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
	return {
		x: wa * a.x + wb * b.x + wc * c.x + wd * d.x,
		y: wa * a.y + wb * b.y + wc * c.y + wd * d.y,
	};
}
