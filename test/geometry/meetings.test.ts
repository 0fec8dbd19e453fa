import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	type ArcSegment,
	arcFromBulge,
	circle,
	type LineSegment,
	type Meeting,
	meetings,
	type Point,
	pointAt,
	type Segment,
	segments,
} from "../../src/geometry/index.js";

const at = (x: number, y: number): Point => ({ x, y });
const lineOf = (x0: number, y0: number, x1: number, y1: number): LineSegment => ({
	kind: "line",
	start: at(x0, y0),
	end: at(x1, y1),
});

/** The lower half of a circle, left to right, counter-clockwise. */
const lower = (x: number, y: number, radius: number): ArcSegment =>
	arcFromBulge(at(x - radius, y), at(x + radius, y), 1);
/** The upper half, right to left. */
const upper = (x: number, y: number, radius: number): ArcSegment =>
	arcFromBulge(at(x + radius, y), at(x - radius, y), 1);

/** Meeting points without repeats, by x then y, to twelve decimals. */
function places(all: readonly Meeting[]): string[] {
	const clean = (v: number) => (Math.round(v * 1e9) / 1e9 + 0).toFixed(9);
	return [...new Set(all.map(({ at: p }) => `${clean(p.x)} ${clean(p.y)}`))].sort();
}

/** Checks that both fractions lead to the meeting's point. */
function expectOnBoth(first: Segment, second: Segment, all: readonly Meeting[]): void {
	for (const { at: p, onFirst, onSecond } of all) {
		for (const q of [pointAt(first, onFirst), pointAt(second, onSecond)]) {
			expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(2e-8);
		}
	}
}

describe("two lines", () => {
	test("meet once where they cross, with the fraction along each", () => {
		const all = meetings(lineOf(0, 0, 4, 4), lineOf(0, 2, 4, 2));
		expect(all).toEqual([
			{ at: at(2, 2), onFirst: expect.closeTo(0.5, 14), onSecond: expect.closeTo(0.5, 14) },
		]);
	});

	test("meet at a common end", () => {
		expect(meetings(lineOf(0, 0, 4, 0), lineOf(4, 0, 4, 4))).toEqual([
			{ at: at(4, 0), onFirst: 1, onSecond: 0 },
		]);
	});

	test("meet where one ends on the other", () => {
		expect(places(meetings(lineOf(0, 0, 4, 0), lineOf(1, 0, 1, 4)))).toEqual([
			"1.000000000 0.000000000",
		]);
	});

	test("do not meet where only their carriers do", () => {
		expect(meetings(lineOf(0, 0, 4, 0), lineOf(5, -1, 5, 1))).toEqual([]);
		expect(meetings(lineOf(0, 0, 4, 0), lineOf(2, 0.001, 2, 1))).toEqual([]);
	});

	test("that are parallel do not meet", () => {
		expect(meetings(lineOf(0, 0, 4, 0), lineOf(0, 1e-6, 4, 1e-6))).toEqual([]);
	});

	test("that lie on each other give the ends of the shared stretch", () => {
		const long = lineOf(0, 0, 10, 0);
		expect(places(meetings(long, lineOf(4, 0, 14, 0)))).toEqual([
			"10.000000000 0.000000000",
			"4.000000000 0.000000000",
		]);
		expect(places(meetings(long, lineOf(7, 0, 3, 0)))).toEqual([
			"3.000000000 0.000000000",
			"7.000000000 0.000000000",
		]);
		expect(places(meetings(long, lineOf(10, 0, 20, 0)))).toEqual(["10.000000000 0.000000000"]);
		expect(meetings(long, lineOf(11, 0, 20, 0))).toEqual([]);
	});
});

describe("a line and an arc", () => {
	test("meet twice where the line crosses", () => {
		const all = meetings(lineOf(-5, -3, 5, -3), lower(0, 0, 5));
		expect(places(all)).toEqual(["-4.000000000 -3.000000000", "4.000000000 -3.000000000"]);
		expectOnBoth(lineOf(-5, -3, 5, -3), lower(0, 0, 5), all);
	});

	test("meet once where the arc or the line ends before the second crossing", () => {
		expect(places(meetings(lineOf(0, -3, 5, -3), lower(0, 0, 5)))).toEqual([
			"4.000000000 -3.000000000",
		]);
		expect(meetings(lineOf(-5, 3, 5, 3), lower(0, 0, 5))).toEqual([]);
	});

	test("meet once where they touch", () => {
		const all = meetings(lineOf(-5, -5, 5, -5), lower(0, 0, 5));
		expect(all).toHaveLength(1);
		expect(all[0]!.at.x).toBeCloseTo(0, 9);
		expect(all[0]!.onFirst).toBeCloseTo(0.5, 9);
	});

	test("do not meet where the line passes by a micrometre", () => {
		expect(meetings(lineOf(-5, -5.001, 5, -5.001), lower(0, 0, 5))).toEqual([]);
		expect(meetings(lineOf(-5, -4.999, 5, -4.999), lower(0, 0, 5))).toHaveLength(2);
	});

	test("meet at the exact crossings of an arc with a radius of a kilometre", () => {
		const flat = arcFromBulge(at(0, 0), at(50, 0), 1.25e-5);
		// Its sagitta is 0.3125 µm; at half of that the chord is 50/√2 long.
		const line = lineOf(0, -0.00015625, 50, -0.00015625);
		const all = meetings(line, flat).map(({ at: p }) => p.x);
		expect(all.sort((a, b) => a - b)).toEqual([
			expect.closeTo(25 - 25 * Math.SQRT1_2, 6),
			expect.closeTo(25 + 25 * Math.SQRT1_2, 6),
		]);
	});
});

describe("two arcs", () => {
	test("meet twice where their circles cross", () => {
		const [left, right] = [segments(circle(at(0, 0), 5)), segments(circle(at(6, 0), 5))];
		const all = left.flatMap((a) => right.flatMap((b) => meetings(a, b)));
		expect(places(all)).toEqual(["3.000000000 -4.000000000", "3.000000000 4.000000000"]);
	});

	test("meet once from the halves that face each other only", () => {
		expect(places(meetings(lower(0, 0, 5), lower(6, 0, 5)))).toEqual(["3.000000000 -4.000000000"]);
		expect(meetings(lower(0, 0, 5), upper(6, 0, 5))).toEqual([]);
	});

	test("meet once where they touch from outside or inside", () => {
		expect(places(meetings(lower(0, 0, 5), upper(0, -8, 3)))).toEqual(["0.000000000 -5.000000000"]);
		expect(places(meetings(lower(0, 0, 5), lower(0, -2, 3)))).toEqual(["0.000000000 -5.000000000"]);
	});

	test("about one centre do not meet", () => {
		expect(meetings(lower(0, 0, 5), lower(0, 0, 4))).toEqual([]);
	});

	test("apart or one within the other do not meet", () => {
		expect(meetings(lower(0, 0, 5), lower(11, 0, 5))).toEqual([]);
		expect(meetings(lower(0, 0, 5), lower(1, 0, 3))).toEqual([]);
	});

	test("that lie on one circle give the ends of the shared stretch", () => {
		const quarter = arcFromBulge(at(0, -5), at(5, 0), Math.SQRT2 - 1);
		expect(places(meetings(lower(0, 0, 5), quarter))).toEqual([
			"0.000000000 -5.000000000",
			"5.000000000 0.000000000",
		]);
		expect(places(meetings(lower(0, 0, 5), upper(0, 0, 5)))).toEqual([
			"-5.000000000 0.000000000",
			"5.000000000 0.000000000",
		]);
	});
});

describe("the meetings of any two segments", () => {
	const place = fc.double({ min: -50, max: 50, noNaN: true });
	const segment = fc
		.tuple(place, place, place, place, fc.double({ min: -2, max: 2, noNaN: true }), fc.boolean())
		.filter(([a, b, c, d, bulge]) => Math.hypot(a - c, b - d) > 0.1 && Math.abs(bulge) > 1e-3)
		.map(
			([a, b, c, d, bulge, straight]): Segment =>
				straight ? lineOf(a, b, c, d) : arcFromBulge(at(a, b), at(c, d), bulge),
		);

	test("lie on both, in either order", () => {
		fc.assert(
			fc.property(segment, segment, (first, second) => {
				const all = meetings(first, second);
				expectOnBoth(first, second, all);
				const swapped = meetings(second, first);
				expect(swapped).toHaveLength(all.length);
				for (const { at: p } of all) {
					const nearest = Math.min(...swapped.map((m) => Math.hypot(m.at.x - p.x, m.at.y - p.y)));
					expect(nearest).toBeLessThan(1e-7);
				}
			}),
			{ seed: 11, numRuns: 500, endOnFailure: true },
		);
	});

	test("include every change of side along a finely walked segment", () => {
		fc.assert(
			fc.property(segment, place, place, place, (first, x, y, t) => {
				// A line far longer than everything, so that each change of side is a meeting.
				const [ux, uy] = [Math.cos(t), Math.sin(t)];
				const cut = lineOf(x - 1000 * ux, y - 1000 * uy, x + 1000 * ux, y + 1000 * uy);
				const side = (u: number) => {
					const p = pointAt(first, u);
					return (p.x - x) * uy - (p.y - y) * ux;
				};
				const met = meetings(first, cut).map((m) => m.onFirst);
				for (let i = 0; i < 200; i++) {
					const [from, to] = [i / 200, (i + 1) / 200];
					const [before, after] = [side(from), side(to)];
					if (before * after > 0 || Math.abs(before) < 1e-9 || Math.abs(after) < 1e-9) continue;
					expect(met.some((u) => u >= from && u <= to)).toBe(true);
				}
			}),
			{ seed: 12, numRuns: 200, endOnFailure: true },
		);
	});
});
