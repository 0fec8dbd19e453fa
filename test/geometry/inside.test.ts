import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	circle,
	closed,
	contains,
	moved,
	type Path,
	type Point,
	rectangle,
	reversed,
	segments,
	startedAt,
	vertex,
	windingNumber,
} from "../../src/geometry/index.js";

const at = (x: number, y: number): Point => ({ x, y });

/** The same ring begun at every vertex, and each of those the other way round. */
function variants(path: Path): Path[] {
	const starts = path.points.map((_, i) => startedAt(path, i));
	return [...starts, ...starts.map(reversed)];
}

describe("the winding number", () => {
	test("is 1 inside a counter-clockwise path, −1 inside a clockwise one, 0 outside", () => {
		const square = rectangle(0, 0, 2, 2);
		expect(windingNumber(segments(square), at(1, 1))).toBe(1);
		expect(windingNumber(segments(reversed(square)), at(1, 1))).toBe(-1);
		expect(windingNumber(segments(square), at(3, 1))).toBe(0);
		expect(windingNumber(segments(square), at(-1, 1))).toBe(0);
	});

	test("adds up over nested contours", () => {
		const outer = segments(rectangle(0, 0, 10, 10));
		const hole = segments(reversed(circle(at(5, 5), 2)));
		expect(windingNumber([...outer, ...hole], at(5, 5))).toBe(0);
		expect(windingNumber([...outer, ...hole], at(1, 1))).toBe(1);
	});

	test("is right where the ray passes through vertices", () => {
		// A diamond, its tips level with the point.
		const diamond = closed(vertex(0, -2), vertex(2, 0), vertex(0, 2), vertex(-2, 0));
		expect(windingNumber(segments(diamond), at(0, 0))).toBe(1);
		expect(windingNumber(segments(diamond), at(-3, 0))).toBe(0);
		expect(windingNumber(segments(diamond), at(-1, -2))).toBe(0);
		expect(windingNumber(segments(diamond), at(-1, 2))).toBe(0);
		// A comb, the ray along its edges and through its teeth's tips.
		const comb = closed(
			...[vertex(0, 0), vertex(1, 1), vertex(2, 0), vertex(3, 1), vertex(4, 0)],
			...[vertex(4, 3), vertex(3, 2), vertex(2, 2), vertex(1, 2), vertex(0, 3)],
		);
		expect(windingNumber(segments(comb), at(0.5, 1))).toBe(1);
		expect(windingNumber(segments(comb), at(-0.5, 1))).toBe(0);
		expect(windingNumber(segments(comb), at(-0.5, 2))).toBe(0);
		expect(windingNumber(segments(comb), at(-0.5, 0))).toBe(0);
		expect(windingNumber(segments(comb), at(-0.5, 3))).toBe(0);
		expect(windingNumber(segments(comb), at(0.5, 2))).toBe(1);
	});

	test("is right where the ray touches an arc or passes through its ends", () => {
		const ring = segments(circle(at(0, 0), 1));
		expect(windingNumber(ring, at(-2, 1))).toBe(0);
		expect(windingNumber(ring, at(-2, -1))).toBe(0);
		expect(windingNumber(ring, at(0, 0))).toBe(1);
		expect(windingNumber(ring, at(-2, 0))).toBe(0);
		const slot = segments(closed(vertex(2, 0), vertex(8, 0, 1), vertex(8, 4), vertex(2, 4, 1)));
		expect(windingNumber(slot, at(-1, 0))).toBe(0);
		expect(windingNumber(slot, at(-1, 4))).toBe(0);
		expect(windingNumber(slot, at(5, 2))).toBe(1);
		expect(windingNumber(slot, at(8, 2))).toBe(1);
		expect(windingNumber(slot, at(9.9, 2))).toBe(1);
		expect(windingNumber(slot, at(10.1, 2))).toBe(0);
	});

	test("tells the two sides of an arc apart", () => {
		const bitten = segments(closed(vertex(0, 0), vertex(4, 0, -1), vertex(4, 4), vertex(0, 4)));
		expect(windingNumber(bitten, at(2.1, 2))).toBe(0);
		expect(windingNumber(bitten, at(1.9, 2))).toBe(1);
		expect(windingNumber(bitten, at(3.9, 0.05))).toBe(0);
	});

	test.each([1e-6, 1e-8, 1e-10])("sees the bow of an arc of bulge %d", (bulge) => {
		const sagitta = 25 * bulge;
		const lens = segments(closed(vertex(0, 0, bulge), vertex(0, 50, bulge)));
		for (const side of [1, -1]) {
			expect(windingNumber(lens, at(0.9 * side * sagitta, 25))).toBe(1);
			expect(windingNumber(lens, at(1.1 * side * sagitta, 25))).toBe(0);
		}
	});

	test("of a circle agrees with the distance from its centre", () => {
		const place = fc.double({ min: -2, max: 2, noNaN: true });
		fc.assert(
			fc.property(place, place, fc.double({ min: 0, max: 6.3, noNaN: true }), (x, y, turn) => {
				const far = Math.hypot(x, y);
				fc.pre(Math.abs(far - 1) > 1e-9);
				const ring = moved(circle(at(0, 0), 1), { x: 0, y: 0, turn, mirror: false });
				expect(windingNumber(segments(ring), at(x, y))).toBe(far < 1 ? 1 : 0);
			}),
			{ seed: 7, numRuns: 500, endOnFailure: true },
		);
	});
});

describe("contains", () => {
	const slot = closed(vertex(2, 0), vertex(8, 0, 1), vertex(8, 4), vertex(2, 4, 1));

	test.each([
		[5, 2, true],
		[0.5, 2, true],
		[0.1, 0.1, false],
		[9.9, 0.1, false],
		[5, 5, false],
	])("(%d, %d) is %s whichever way and from wherever the path runs", (x, y, inside) => {
		for (const path of variants(slot)) expect(contains(path, at(x, y))).toBe(inside);
	});
});
