import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Path, segments, tangentAt, vertex } from "../../src/geometry/index.js";
import {
	arcsAlong,
	CURVE_TOLERANCE,
	type Cubic,
	cubicOfQuadratic,
	pointOnCubic,
} from "../../src/lettering/curve.js";
import { distanceToPaths, distanceToPolylines, pointsAlong } from "./distance.js";

const p = (x: number, y: number) => ({ x, y });

function chain(curve: Cubic, tolerance = CURVE_TOLERANCE): Path {
	const end = vertex(curve[3].x, curve[3].y);
	return { points: [...arcsAlong(curve, tolerance), end], closed: false };
}

function samples(curve: Cubic, count: number) {
	return Array.from({ length: count + 1 }, (_, i) => pointOnCubic(curve, i / count));
}

const within = fc.double({ min: -10, max: 10, noNaN: true });
const point = fc.record({ x: within, y: within });

describe("arcsAlong", () => {
	it("stays within the tolerance of any curve, and the curve of it", () => {
		fc.assert(
			fc.property(fc.tuple(point, point, point, point), (curve) => {
				const path = chain(curve, 0.01);
				if (path.points.length < 2) return;
				const curvePoints = samples(curve, 150);
				const toPath = distanceToPaths([path]);
				const toCurve = distanceToPolylines([curvePoints]);
				for (const q of curvePoints) expect(toPath(q)).toBeLessThan(0.0102);
				// chords of 150 samples leave a curve of this size by up to 0.002
				for (const q of pointsAlong(path, 2)) {
					expect(toCurve(q)).toBeLessThan(0.0125);
				}
			}),
			{ seed: 7, numRuns: 60 },
		);
	});

	it("keeps both ends exactly and leaves in the direction of the curve", () => {
		const curve: Cubic = [p(0, 0), p(1, 2), p(3, 3), p(5, 1)];
		const path = chain(curve);
		expect(path.points[0]).toMatchObject(p(0, 0));
		expect(path.points.at(-1)).toMatchObject(p(5, 1));
		const all = segments(path);
		const first = tangentAt(all[0]!, 0);
		expect(Math.atan2(first.y, first.x)).toBeCloseTo(Math.atan2(2, 1), 9);
		const last = tangentAt(all.at(-1)!, 1);
		expect(Math.atan2(last.y, last.x)).toBeCloseTo(Math.atan2(-2, 2), 9);
	});

	it("joins its arcs tangentially", () => {
		const all = segments(chain([p(0, 0), p(4, 0), p(-1, 3), p(3, 3)]));
		expect(all.length).toBeGreaterThan(3);
		for (let i = 1; i < all.length; i++) {
			const before = tangentAt(all[i - 1]!, 1);
			const after = tangentAt(all[i]!, 0);
			expect(Math.abs(before.x * after.y - before.y * after.x)).toBeLessThan(1e-6);
			expect(before.x * after.x + before.y * after.y).toBeGreaterThan(0);
		}
	});

	it("finds the quarter circle that a cubic with controls at 0.5523 stands for", () => {
		// the usual constant 4/3·(√2 − 1); such a cubic leaves the circle by at most 0.0273 %
		const k = (4 / 3) * (Math.SQRT2 - 1);
		const path = chain([p(1, 0), p(1, k), p(k, 1), p(0, 1)], 0.001);
		expect(path.points).toHaveLength(3);
		for (const s of segments(path)) {
			expect(s).toMatchObject({ kind: "arc" });
			expect(s.kind === "arc" && s.radius).toBeCloseTo(1, 9);
		}
	});

	it("draws a straight curve as one line", () => {
		expect(arcsAlong([p(0, 0), p(1, 1), p(2, 2), p(3, 3)], 1e-3)).toEqual([vertex(0, 0)]);
		expect(arcsAlong([p(0, 0), p(0, 0), p(3, 3), p(3, 3)], 1e-3)).toEqual([vertex(0, 0)]);
	});

	it("follows loops, cusps and curves that return to their start", () => {
		const hard: Cubic[] = [
			[p(0, 0), p(10, 6), p(-6, 6), p(4, 0)],
			[p(0, 0), p(4, 4), p(0, 4), p(4, 0)],
			[p(0, 0), p(5, 5), p(-5, 5), p(0, 0)],
			[p(0, 0), p(6, 0), p(-3, 0), p(3, 0)],
		];
		for (const curve of hard) {
			const toPath = distanceToPaths([chain(curve)]);
			for (const q of samples(curve, 400)) {
				expect(toPath(q)).toBeLessThan(1.02 * CURVE_TOLERANCE);
			}
		}
	});

	it("draws nothing for a curve without extent and refuses NaN", () => {
		expect(arcsAlong([p(1, 1), p(1, 1), p(1, 1), p(1, 1)], 1e-3)).toEqual([]);
		expect(() => arcsAlong([p(0, 0), p(Number.NaN, 1), p(1, 1), p(2, 0)], 1e-3)).toThrow(
			RangeError,
		);
	});
});

describe("cubicOfQuadratic", () => {
	it("draws the very same curve", () => {
		const cubic = cubicOfQuadratic(p(0, 0), p(2, 4), p(6, 0));
		// (1−t)²·0 + 2t(1−t)·(2, 4) + t²·(6, 0) at t = 1/4
		const at = pointOnCubic(cubic, 0.25);
		expect(at.x).toBeCloseTo(1.125, 12);
		expect(at.y).toBeCloseTo(1.5, 12);
	});
});
