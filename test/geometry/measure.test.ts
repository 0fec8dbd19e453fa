import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	around,
	circle,
	closed,
	extents,
	extentsOfPoints,
	grown,
	line,
	moved,
	open,
	pathLength,
	pointAt,
	rectangle,
	reversed,
	segments,
	signedArea,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";

/** A slot of 10 × 4 with half-round ends, counter-clockwise. */
const STADIUM = closed(vertex(2, 0), vertex(8, 0, 1), vertex(8, 4), vertex(2, 4, 1));

describe("the signed area", () => {
	test("of a rectangle is positive counter-clockwise", () => {
		expect(signedArea(rectangle(0, 0, 3, 2))).toBe(6);
		expect(signedArea(reversed(rectangle(0, 0, 3, 2)))).toBe(-6);
	});

	test("takes arcs whole: a slot is its rectangle and a circle", () => {
		expect(signedArea(STADIUM)).toBeCloseTo(24 + 4 * Math.PI, 12);
	});

	test("loses what an arc cuts out of it", () => {
		const bitten = closed(vertex(0, 0), vertex(4, 0, -1), vertex(4, 2), vertex(0, 2));
		expect(signedArea(bitten)).toBeCloseTo(8 - Math.PI / 2, 12);
	});

	test("of an arc over 180° counts the greater segment", () => {
		// A circle of radius 1 less the segment above y = 1/2: 120° of it.
		const cut = closed(
			vertex(-Math.sqrt(3) / 2, 0.5, Math.tan(Math.PI / 3)),
			vertex(Math.sqrt(3) / 2, 0.5),
		);
		expect(signedArea(cut)).toBeCloseTo((2 / 3) * Math.PI + Math.sqrt(3) / 4, 12);
	});

	test.each([1e-3, 1e-6, 1e-9, 1e-11])(
		"of a segment of bulge %d is 2/3 of chord and sagitta",
		(bulge) => {
			const sagitta = bulge * 25;
			const lens = closed(vertex(0, 0, bulge), vertex(50, 0));
			expect(signedArea(lens) / ((2 / 3) * 50 * sagitta)).toBeCloseTo(1, 5);
		},
	);

	test("does not depend on where the path starts or lies", () => {
		for (let i = 0; i < 4; i++) {
			const there = moved(startedAt(STADIUM, i), { x: 1e4, y: -3e3, turn: 0.7, mirror: false });
			expect(signedArea(there)).toBeCloseTo(24 + 4 * Math.PI, 7);
		}
	});

	test("of an open path is refused", () => {
		expect(() => signedArea(open(vertex(0, 0), vertex(1, 0), vertex(1, 1)))).toThrow(RangeError);
	});
});

describe("the length of a path", () => {
	test("counts the closing segment of a closed path only", () => {
		expect(pathLength(rectangle(0, 0, 3, 2))).toBe(10);
		expect(pathLength(open(vertex(0, 0), vertex(3, 0), vertex(3, 2)))).toBe(5);
		expect(pathLength(STADIUM)).toBeCloseTo(12 + 4 * Math.PI, 12);
	});
});

describe("extents", () => {
	test("reach to the quadrant points of a circle", () => {
		expect(extents(circle({ x: 1, y: 2 }, 5))).toEqual({ minX: -4, minY: -3, maxX: 6, maxY: 7 });
	});

	test("reach to a quadrant point between an arc's ends, and only to that", () => {
		const arch = open(vertex(1, 0, 1), vertex(-1, 0));
		const box = extents(arch);
		expect(box.maxY).toBeCloseTo(1, 14);
		expect(box.minY).toBeCloseTo(0, 14);
		expect([box.minX, box.maxX]).toEqual([-1, 1]);
	});

	test("of an arc without a quadrant point are those of its ends", () => {
		const a = 0.1;
		const b = 1.4;
		const bulge = Math.tan((b - a) / 4);
		const arc = open(vertex(Math.cos(a), Math.sin(a), bulge), vertex(Math.cos(b), Math.sin(b)));
		expect(extents(arc)).toEqual({
			minX: Math.cos(b),
			minY: Math.sin(a),
			maxX: Math.cos(a),
			maxY: Math.sin(b),
		});
	});

	test.each([1e-4, 1e-6, 1e-8, 1e-10])(
		"of an arc of bulge %d reach as far as its sagitta",
		(bulge) => {
			const box = extents(open(vertex(300, 7, bulge), vertex(350, 7)));
			expect((7 - box.minY) / (25 * bulge)).toBeCloseTo(1, 4);
			expect([box.minX, box.maxX, box.maxY]).toEqual([300, 350, 7]);
			const upright = extents(open(vertex(7, 300, bulge), vertex(7, 350)));
			expect((upright.maxX - 7) / (25 * bulge)).toBeCloseTo(1, 4);
		},
	);

	test("hold every point of a path, and each side is reached", () => {
		const place = fc.double({ min: -100, max: 100, noNaN: true });
		const corner = fc.record({
			x: place,
			y: place,
			bulge: fc.double({ min: -2, max: 2, noNaN: true }),
		});
		fc.assert(
			fc.property(corner, corner, (a, b) => {
				fc.pre(Math.hypot(a.x - b.x, a.y - b.y) > 0.01);
				const path = closed(a, b);
				const box = extents(path);
				const points = segments(path).flatMap((s) =>
					Array.from({ length: 1001 }, (_, i) => pointAt(s, i / 1000)),
				);
				const seen = extentsOfPoints(points);
				const fine = pathLength(path) / 1000;
				for (const side of ["minX", "minY", "maxX", "maxY"] as const) {
					const out = side.startsWith("min") ? seen[side] - box[side] : box[side] - seen[side];
					expect(out).toBeGreaterThan(-1e-8);
					expect(out).toBeLessThan(fine);
				}
			}),
			{ seed: 6, numRuns: 50, endOnFailure: true },
		);
	});

	test("of nothing are refused", () => {
		expect(() => around([])).toThrow(RangeError);
	});

	test("grow by a margin on every side, and go around several boxes", () => {
		const one = extents(rectangle(0, 0, 2, 1));
		const two = extents(line({ x: -1, y: 5 }, { x: 0, y: 4 }));
		expect(around([one, two])).toEqual({ minX: -1, minY: 0, maxX: 2, maxY: 5 });
		expect(grown(one, 0.5)).toEqual({ minX: -0.5, minY: -0.5, maxX: 2.5, maxY: 1.5 });
	});
});
