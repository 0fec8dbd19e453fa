import type { Point } from "../geometry/index.js";

/** A circle through points as well as it goes. */
export interface FittedCircle {
	readonly centre: Point;
	readonly radius: number;
}

/**
 * The circle for which the squares of |p − c|² − r² add up to the least, which is linear in
 * its centre; taken about the points' middle, where the sums keep their digits. Null where the
 * points lie on a line.
 */
export function fittedCircle(points: readonly Point[]): FittedCircle | null {
	const n = points.length;
	if (n < 3) return null;
	const mx = points.reduce((sum, p) => sum + (p.x - points[0]!.x), 0) / n + points[0]!.x;
	const my = points.reduce((sum, p) => sum + (p.y - points[0]!.y), 0) / n + points[0]!.y;
	let [uu, uv, vv, u3, v3] = [0, 0, 0, 0, 0];
	for (const p of points) {
		const [u, v] = [p.x - mx, p.y - my];
		const square = u * u + v * v;
		uu += u * u;
		uv += u * v;
		vv += v * v;
		u3 += u * square;
		v3 += v * square;
	}
	const det = uu * vv - uv * uv;
	const a = (u3 * vv - v3 * uv) / (2 * det);
	const b = (v3 * uu - u3 * uv) / (2 * det);
	const radius = Math.sqrt(a * a + b * b + (uu + vv) / n);
	return Number.isFinite(radius) ? { centre: { x: a + mx, y: b + my }, radius } : null;
}
