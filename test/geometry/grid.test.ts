import { describe, expect, test } from "vitest";
import {
	distanceTo,
	type Extents,
	meetings,
	rectangle,
	type Segment,
	SegmentGrid,
	segments,
	windingNumber,
} from "../../src/geometry/index.js";
import { beam, comb, hole, random, randomContour } from "../support/offset-cases.js";

const SETS: readonly (readonly [string, readonly Segment[]])[] = [
	["a bar with notches", segments(beam())],
	["a comb", segments(comb(200))],
	["a rectangle alone", segments(rectangle(0, 0, 4, 2))],
	["holes far apart", [0, 1e4, 3e5].flatMap((x) => segments(hole(x, -x / 2, 1)))],
	...[1, 2, 3, 4].map((i) => [`random contour ${i}`, segments(randomContour(random(i)))] as const),
];

function boxOf(grid: SegmentGrid): Extents {
	const side = (of: (b: Extents) => number) => grid.boxes.map(of);
	return {
		minX: Math.min(...side((b) => b.minX)),
		minY: Math.min(...side((b) => b.minY)),
		maxX: Math.max(...side((b) => b.maxX)),
		maxY: Math.max(...side((b) => b.maxY)),
	};
}

describe.each(SETS)("a grid of %s", (_, all) => {
	const next = random(5);

	test("brings together all segments that meet, in their order", () => {
		const grid = new SegmentGrid(all);
		for (const [i, one] of all.entries()) {
			const after = grid.after(i);
			expect(after).toEqual([...new Set(after)].sort((a, b) => a - b));
			expect(after.every((j) => j > i)).toBe(true);
			for (let j = i + 1; j < all.length; j++) {
				if (meetings(one, all[j]!).length > 0) expect(after).toContain(j);
			}
		}
	});

	test.each([0, 0.3, 20])("of cells of at least %d tells the clearance of a point", (reach) => {
		const grid = new SegmentGrid(all, reach);
		const { minX, minY, maxX, maxY } = boxOf(grid);
		for (let i = 0; i < 100; i++) {
			const p = { x: minX + (maxX - minX) * next(), y: minY + (maxY - minY) * next() };
			const least = 4 * next();
			const nearest = Math.min(...all.map((s) => distanceTo(s, p)));
			const clearance = grid.clearance(p, least);
			if (nearest < least) expect(clearance).toBeNull();
			else expect(clearance).toBeGreaterThanOrEqual(nearest);
			expect(grid.clearance(p, nearest)).toBe(nearest);
		}
	});

	test("gives all segments that decide how often a point is wound around", () => {
		const grid = new SegmentGrid(all);
		const { minX, minY, maxX, maxY } = boxOf(grid);
		for (let i = 0; i < 100; i++) {
			const p = { x: minX - 1 + (maxX - minX + 2) * next(), y: minY + (maxY - minY) * next() };
			expect(windingNumber(grid.toTheRight(p), p)).toBe(windingNumber(all, p));
		}
	});
});

test("a grid of nothing is refused", () => {
	expect(() => new SegmentGrid([])).toThrow(RangeError);
});
