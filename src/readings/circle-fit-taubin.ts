import type { Point } from "../geometry/index.js";

/** A circle as A(x² + y²) + Bx + Cy + D = 0 with B² + C² − 4AD = 1: A = 0 is a straight line. */
export interface CircleForm {
	readonly a: number;
	readonly b: number;
	readonly c: number;
	readonly d: number;
}

/** More steps than Newton's way from 0, which meets no turn before the root, ever needs. */
const MOST_STEPS = 100;

/**
 * Taubin's algebraic circle: the least Σ(A z + Bx + Cy + D)² for a given mean square gradient
 * (Taubin, IEEE PAMI 13, 1991; by moments and Newton's steps as in Chernov, Circular and Linear
 * Regression, 2010). A start for the geometric fit. Null where the points lie on one line.
 *
 * @param points - three or more, their centroid at the origin
 */
export function circleFitTaubin(points: readonly Point[]): CircleForm | null {
	const m = moments(points);
	const mz = m.xx + m.yy;
	const area = m.xx * m.yy - m.xy * m.xy;
	const variance = m.zz - mz * mz;
	const a3 = 4 * mz;
	const a2 = -3 * mz * mz - m.zz;
	const a1 = variance * mz + 4 * area * mz - m.xz ** 2 - m.yz ** 2;
	const a0 =
		m.xz * (m.xz * m.yy - m.yz * m.xy) + m.yz * (m.yz * m.xx - m.xz * m.xy) - variance * area;
	let root = 0;
	for (let i = 0; i < MOST_STEPS; i++) {
		const value = a0 + root * (a1 + root * (a2 + root * a3));
		const step = value / (a1 + root * (2 * a2 + root * 3 * a3));
		if (!Number.isFinite(step) || root - step === root) break;
		root -= step;
	}
	const det = root * root - root * mz + area;
	const centre = {
		x: (m.xz * (m.yy - root) - m.yz * m.xy) / det / 2,
		y: (m.yz * (m.xx - root) - m.xz * m.xy) / det / 2,
	};
	const radius = Math.sqrt(centre.x ** 2 + centre.y ** 2 + mz);
	return Number.isFinite(radius) ? formOf(centre, radius) : null;
}

/** The form of a circle, its gradient outwards. */
export function formOf({ x, y }: Point, radius: number): CircleForm {
	const a = 1 / (2 * radius);
	return { a, b: -2 * a * x, c: -2 * a * y, d: a * (x * x + y * y - radius * radius) };
}

function moments(points: readonly Point[]) {
	const sum = { xx: 0, yy: 0, xy: 0, xz: 0, yz: 0, zz: 0 };
	for (const { x, y } of points) {
		const z = x * x + y * y;
		sum.xx += (x * x) / points.length;
		sum.yy += (y * y) / points.length;
		sum.xy += (x * y) / points.length;
		sum.xz += (x * z) / points.length;
		sum.yz += (y * z) / points.length;
		sum.zz += (z * z) / points.length;
	}
	return sum;
}
