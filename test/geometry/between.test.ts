import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	circle,
	closed,
	line,
	open,
	type Path,
	pathBetween,
	pathLength,
	rectangle,
	segments,
	vertex,
} from "../../src/geometry/index.js";

const ends = (path: Path) => [path.points[0]!, path.points.at(-1)!].map(({ x, y }) => [x, y]);

describe("pathBetween", () => {
	it("takes a stretch out of a line", () => {
		expect(pathBetween(line({ x: 0, y: 0 }, { x: 10, y: 0 }), 2, 5)).toEqual(
			line({ x: 2, y: 0 }, { x: 5, y: 0 }),
		);
	});

	it("runs around corners, and over the start of a closed path", () => {
		const square = rectangle(0, 0, 10, 10);
		expect(ends(pathBetween(square, 8, 13))).toEqual([
			[8, 0],
			[10, 3],
		]);
		const over = pathBetween(square, 38, 43);
		expect(ends(over)).toEqual([
			[0, 2],
			[3, 0],
		]);
		expect(over.points).toHaveLength(3);
	});

	it("keeps arcs on their circle", () => {
		const quarter = pathBetween(circle({ x: 1, y: 2 }, 4), 0.5 * Math.PI * 4, 1.5 * Math.PI * 4);
		for (const s of segments(quarter)) {
			expect(s).toMatchObject({ kind: "arc", radius: expect.closeTo(4, 12) });
		}
		expect(ends(quarter).flat()).toEqual([1, 6, 1, -2].map((v) => expect.closeTo(v, 12)));
	});

	it("is as long as it was asked for, and its parts make the whole", () => {
		const bulge = fc.double({ min: -1.5, max: 1.5, noNaN: true });
		fc.assert(
			fc.property(bulge, bulge, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (a, b, share) => {
				const path = closed(vertex(0, 0, a), vertex(30, 0, b), vertex(10, 20));
				const whole = pathLength(path);
				const cut = share * whole;
				const first = pathBetween(path, 0, cut);
				const second = pathBetween(path, cut, whole);
				expect(pathLength(first)).toBeCloseTo(cut, 6);
				expect(pathLength(first) + pathLength(second)).toBeCloseTo(whole, 6);
				expect(ends(first)[1]!.map((v) => v.toFixed(9))).toEqual(
					ends(second)[0]!.map((v) => v.toFixed(9)),
				);
			}),
			{ seed: 7, numRuns: 300 },
		);
	});

	it("refuses distances that are not on the path", () => {
		const path = open(vertex(0, 0), vertex(10, 0));
		for (const [from, to] of [
			[-1, 5],
			[2, 11],
			[3, 3],
			[10, 12],
			[5, 2],
		] as const) {
			expect(() => pathBetween(path, from, to)).toThrow(RangeError);
		}
	});
});
