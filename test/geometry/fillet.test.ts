import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	closed,
	extents,
	filleted,
	filletedAt,
	open,
	type Path,
	rectangle,
	segments,
	signedArea,
	tangentAt,
	vertex,
} from "../../src/geometry/index.js";

const SQUARE = rectangle(0, 0, 10, 10);

/** The greatest turn between one segment and the next, radians. */
function sharpest(path: Path): number {
	const all = segments(path);
	return Math.max(
		...all.map((s, i) => {
			const a = tangentAt(s, 1);
			const b = tangentAt(all[(i + 1) % all.length]!, 0);
			return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
		}),
	);
}

describe("a corner rounded", () => {
	test("loses (1 − π/4)r² of a square", () => {
		for (let i = 0; i < 4; i++) {
			const path = filleted(SQUARE, i, 2);
			expect(path.points).toHaveLength(5);
			expect(signedArea(path)).toBeCloseTo(100 - 4 * (1 - Math.PI / 4), 12);
			const box = extents(path);
			expect([box.minX, box.minY]).toEqual([expect.closeTo(0, 14), expect.closeTo(0, 14)]);
			expect([box.maxX, box.maxY]).toEqual([expect.closeTo(10, 14), expect.closeTo(10, 14)]);
		}
	});

	test("is an arc of the radius, tangent to both lines, left or right", () => {
		fc.assert(
			fc.property(
				fc.double({ min: -2.9, max: 2.9, noNaN: true }).filter((t) => Math.abs(t) > 0.05),
				fc.double({ min: 0.01, max: 0.6, noNaN: true }),
				(turn, radius) => {
					const path = open(
						vertex(-20, 0),
						vertex(0, 0),
						vertex(20 * Math.cos(turn), 20 * Math.sin(turn)),
					);
					const [before, arc, after] = segments(filleted(path, 1, radius));
					if (arc?.kind !== "arc") throw new Error("no arc");
					expect(arc.radius).toBeCloseTo(radius, 9);
					expect(arc.sweep).toBeCloseTo(turn, 9);
					const [leaving, arriving] = [tangentAt(arc, 0), tangentAt(arc, 1)];
					expect(leaving.x).toBeCloseTo(tangentAt(before!, 1).x, 8);
					expect(leaving.y).toBeCloseTo(tangentAt(before!, 1).y, 8);
					expect(arriving.x).toBeCloseTo(tangentAt(after!, 0).x, 8);
					expect(arriving.y).toBeCloseTo(tangentAt(after!, 0).y, 8);
				},
			),
			{ seed: 10, numRuns: 200, endOnFailure: true },
		);
	});

	test("uses up a line that it just fits, and leaves no segment without length", () => {
		const half = filletedAt(rectangle(0, 0, 10, 4), [
			[1, 2],
			[2, 2],
		]);
		expect(half.points).toHaveLength(5);
		expect(signedArea(half)).toBeCloseTo(32 + 2 * Math.PI, 12);
		const disc = filletedAt(rectangle(0, 0, 4, 4), [
			[0, 2],
			[1, 2],
			[2, 2],
			[3, 2],
		]);
		expect(disc.points.map((v) => v.bulge)).toEqual(
			Array.from({ length: 4 }, () => expect.closeTo(Math.SQRT2 - 1, 12)),
		);
		expect(signedArea(disc)).toBeCloseTo(4 * Math.PI, 12);
		expect(sharpest(disc)).toBeLessThan(1e-9);
	});

	test("may use up the ends of an open path", () => {
		const path = filleted(open(vertex(0, 0), vertex(2, 0), vertex(2, 2)), 1, 2);
		expect(path.points).toEqual([
			{ x: 0, y: 0, bulge: expect.closeTo(Math.SQRT2 - 1, 14) },
			{ x: 2, y: 2, bulge: 0 },
		]);
	});
});

describe("a corner is not rounded", () => {
	test.each([0, -1, Number.NaN])("by a radius of %d", (radius) => {
		expect(() => filleted(SQUARE, 1, radius)).toThrow(/radius must be above 0/);
	});

	test.each([4, -1, 0.5])("where there is no vertex: %d", (index) => {
		expect(() => filleted(SQUARE, index, 1)).toThrow(/no corner at vertex/);
	});

	test("at the ends of an open path", () => {
		const path = open(vertex(0, 0), vertex(5, 0), vertex(5, 5));
		expect(() => filleted(path, 0, 1)).toThrow(/no corner at vertex 0/);
		expect(() => filleted(path, 2, 1)).toThrow(/no corner at vertex 2/);
	});

	test("beside an arc", () => {
		const path = closed(vertex(0, 0, 0.2), vertex(10, 0), vertex(10, 10), vertex(0, 10));
		expect(() => filleted(path, 0, 1)).toThrow(/not between two lines/);
		expect(() => filleted(path, 1, 1)).toThrow(/not between two lines/);
		expect(filleted(path, 2, 1).points).toHaveLength(5);
	});

	test("where the path runs straight or turns back on itself", () => {
		const straight = open(vertex(0, 0), vertex(5, 0), vertex(9, 0));
		const back = open(vertex(0, 0), vertex(5, 0), vertex(1, 0));
		expect(() => filleted(straight, 1, 1)).toThrow(/no corner that can be rounded/);
		expect(() => filleted(back, 1, 1)).toThrow(/no corner that can be rounded/);
	});

	test("where a line has no length", () => {
		const path = closed(vertex(0, 0), vertex(0, 0), vertex(5, 0), vertex(5, 5));
		expect(() => filleted(path, 0, 1)).toThrow(/no corner that can be rounded/);
		expect(() => filleted(path, 1, 1)).toThrow(/no corner that can be rounded/);
	});

	test("where the arc is longer than a line, or than what another arc has left of it", () => {
		expect(() => filleted(SQUARE, 1, 10.001)).toThrow(/does not fit/);
		expect(() => filleted(SQUARE, 1, Number.POSITIVE_INFINITY)).toThrow(/does not fit/);
		const both = (first: number, second: number) =>
			filletedAt(SQUARE, [
				[1, first],
				[2, second],
			]);
		expect(() => both(6, 4.001)).toThrow(/does not fit/);
		expect(both(6, 4).points).toHaveLength(5);
	});
});
