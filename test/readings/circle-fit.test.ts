import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { circleFitTaubin, formOf } from "../../src/readings/circle-fit-taubin.js";
import { circleFitGeometric } from "../../src/readings/index.js";
import { normal, seeded } from "../support/seeded.js";

const SEED = 21;

/** Points on an arc about its top, at angles from the upright. */
function arc(radius: number, centre: { x: number; y: number }, angles: readonly number[]) {
	return angles.map((a) => ({
		x: centre.x + radius * Math.sin(a),
		y: centre.y + radius * Math.cos(a),
	}));
}

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });

/** Sum of squared distances from a circle, straight from its centre. */
function sumFrom(
	points: readonly { x: number; y: number }[],
	x: number,
	y: number,
	radius: number,
) {
	return points.reduce((s, p) => s + (Math.hypot(p.x - x, p.y - y) - radius) ** 2, 0);
}

describe("circleFitGeometric", () => {
	it("gives back the circle of points that lie on one", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 1, max: 5000, noNaN: true }),
				coordinate,
				coordinate,
				fc.double({ min: 0.1, max: 2, noNaN: true }),
				(radius, x, y, reach) => {
					const angles = [-1, -0.4, 0.1, 0.7, 1].map((t) => t * reach);
					const fit = circleFitGeometric(arc(radius, { x, y }, angles));
					expect(fit.curvature * radius).toBeCloseTo(1, 6);
					expect(Math.hypot(fit.centre!.x - x, fit.centre!.y - y) / radius).toBeLessThan(1e-6);
				},
			),
			{ seed: SEED },
		);
	});

	it("is not improved by any small move of its centre or radius", () => {
		const next = seeded(SEED);
		const points = arc(10, { x: 3, y: -2 }, [-1, -0.5, 0, 0.3, 0.8, 1.2]).map((p) => ({
			x: p.x + 0.2 * normal(next),
			y: p.y + 0.2 * normal(next),
		}));
		const { centre, radius, residuals } = circleFitGeometric(points);
		const least = sumFrom(points, centre!.x, centre!.y, radius);
		expect(residuals.reduce((s, v) => s + v * v, 0)).toBeCloseTo(least, 12);
		for (const [dx, dy, dr] of [
			[1e-3, 0, 0],
			[-1e-3, 0, 0],
			[0, 1e-3, 0],
			[0, -1e-3, 0],
			[0, 0, 1e-3],
			[0, 0, -1e-3],
			[0, 1e-3, -1e-3],
			[0, -1e-3, 1e-3],
		] as const) {
			expect(sumFrom(points, centre!.x + dx, centre!.y + dy, radius + dr)).toBeGreaterThan(least);
		}
	});

	it("has a curvature below 0 on a hollow, above 0 on a crown, 0 on a line", () => {
		const crown = arc(254, { x: 0, y: 0 }, [-0.1, -0.05, 0, 0.06, 0.1]);
		const hollow = crown.map(({ x, y }) => ({ x, y: -y }));
		expect(circleFitGeometric(crown).curvature).toBeCloseTo(1 / 254, 10);
		expect(circleFitGeometric(hollow).curvature).toBeCloseTo(-1 / 254, 10);
		const line = [-2, -1, 0, 1, 2].map((x) => ({ x, y: 3 + x / 2 }));
		expect(Math.abs(circleFitGeometric(line).curvature)).toBeLessThan(1e-12);
	});

	it("says what the curvature gains by moving a point along its normal", () => {
		const points = arc(254, { x: 0, y: 0 }, [-0.1, -0.05, 0, 0.06, 0.1]);
		const { leverage, normals } = circleFitGeometric(points);
		points.forEach((_, i) => {
			const by = (step: number) =>
				circleFitGeometric(
					points.map((p, k) =>
						k === i ? { x: p.x + step * normals[i]!.x, y: p.y + step * normals[i]!.y } : p,
					),
				).curvature;
			const slope = (by(1e-3) - by(-1e-3)) / 2e-3;
			expect(slope / leverage[i]!).toBeCloseTo(1, 3);
		});
	});

	it("needs three points that do not coincide", () => {
		expect(() =>
			circleFitGeometric([
				{ x: 0, y: 0 },
				{ x: 1, y: 0 },
			]),
		).toThrow(RangeError);
		const one = { x: 1, y: 1 };
		expect(() => circleFitGeometric([one, one, one])).toThrow(RangeError);
	});
});

describe("circleFitTaubin", () => {
	it("finds a circle through points on it, as the form that formOf makes of it", () => {
		const points = arc(2, { x: 0, y: 0 }, [0, Math.PI / 2, Math.PI, -Math.PI / 2]);
		const found = circleFitTaubin(points)!;
		const made = formOf({ x: 0, y: 0 }, 2);
		for (const key of ["a", "b", "c", "d"] as const) expect(found[key]).toBeCloseTo(made[key], 12);
		expect(made.b ** 2 + made.c ** 2 - 4 * made.a * made.d).toBeCloseTo(1, 12);
	});

	it("finds none through points on a line", () => {
		expect(circleFitTaubin([-1, 0, 1].map((x) => ({ x, y: 0 })))).toBeNull();
	});
});
