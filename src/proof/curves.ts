import type { Point } from "../geometry/index.js";
import type { Findings } from "./findings.js";
import { CURVE_ERROR } from "./limits.js";

/** A piece of an ellipse: centre, radii, turn of its axes, and angles of its parameter. */
export interface EllipseArc {
	readonly centre: Point;
	readonly rx: number;
	readonly ry: number;
	readonly turn: number;
	readonly from: number;
	readonly sweep: number;
}

/**
 * The arc between two points as SVG defines it (SVG 2, appendix B.2.4 and B.2.5): radii too small
 * grow until they fit. Null where SVG draws a line or nothing.
 */
export function ellipseArc(
	start: Point,
	radii: Point,
	degrees: number,
	large: boolean,
	sweep: boolean,
	end: Point,
): EllipseArc | null {
	const [dx, dy] = [(start.x - end.x) / 2, (start.y - end.y) / 2];
	let [rx, ry] = [Math.abs(radii.x), Math.abs(radii.y)];
	if (rx === 0 || ry === 0 || (dx === 0 && dy === 0)) return null;
	const turn = (degrees * Math.PI) / 180;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const [x, y] = [c * dx + s * dy, -s * dx + c * dy];
	const tight = Math.hypot(x / rx, y / ry);
	if (tight > 1) [rx, ry] = [rx * tight, ry * tight];
	const [u, v] = [x / rx, y / ry];
	const size = u * u + v * v;
	const off = Math.sqrt(Math.max(0, (1 - size) / size)) * (large === sweep ? -1 : 1);
	const [cu, cv] = [off * v, -off * u];
	const centre = {
		x: c * cu * rx - s * cv * ry + (start.x + end.x) / 2,
		y: s * cu * rx + c * cv * ry + (start.y + end.y) / 2,
	};
	const from = Math.atan2(v - cv, u - cu);
	const raw = Math.atan2(-v - cv, -u - cu) - from;
	const full = 2 * Math.PI;
	const ahead = ((raw % full) + full) % full;
	return { centre, rx, ry, turn, from, sweep: sweep ? ahead : ahead - full };
}

/**
 * Points on an ellipse's arc between its ends, so near that the lines between them stay within
 * the error allowed: a step of the parameter δ leaves at most r(1 − cos δ/2), r the larger radius.
 *
 * @param stretch - millimetres of one unit, at most
 */
export function ellipsePoints(arc: EllipseArc, stretch: number, findings: Findings): Point[] {
	const radius = Math.max(arc.rx, arc.ry) * stretch;
	const step = Math.sqrt((8 * CURVE_ERROR) / Math.max(radius, CURVE_ERROR));
	const count = Math.ceil(Math.abs(arc.sweep) / Math.min(step, 1));
	const [c, s] = [Math.cos(arc.turn), Math.sin(arc.turn)];
	return between(count, findings, (t) => {
		const angle = arc.from + arc.sweep * t;
		const [x, y] = [arc.rx * Math.cos(angle), arc.ry * Math.sin(angle)];
		return { x: c * x - s * y + arc.centre.x, y: s * x + c * y + arc.centre.y };
	});
}

/**
 * Points on a Bézier curve between its ends: √(d(d−1)/8·m/ε) steps keep the lines between them
 * within ε, m the largest second difference of its d + 1 control points (Wang's bound: Goldman,
 * Pyramid Algorithms, 2003; from memory).
 *
 * @param stretch - millimetres of one unit, at most
 */
export function bezierPoints(all: readonly Point[], stretch: number, findings: Findings): Point[] {
	const degree = all.length - 1;
	let most = 0;
	for (let i = 0; i + 2 < all.length; i++) {
		const [a, b, c] = [all[i]!, all[i + 1]!, all[i + 2]!];
		most = Math.max(most, Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y));
	}
	const count = Math.ceil(Math.sqrt((degree * (degree - 1) * most * stretch) / (8 * CURVE_ERROR)));
	return between(count, findings, (t) => bezierAt(all, t));
}

/** De Casteljau's construction. */
function bezierAt(all: readonly Point[], t: number): Point {
	let row = all;
	while (row.length > 1) {
		row = row.slice(1).map((b, i) => {
			const a = row[i]!;
			return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
		});
	}
	return row[0]!;
}

function between(count: number, findings: Findings, at: (t: number) => Point): Point[] {
	if (!(count > 1) || !findings.mayUse(count)) return [];
	return Array.from({ length: count - 1 }, (_, i) => at((i + 1) / count));
}
