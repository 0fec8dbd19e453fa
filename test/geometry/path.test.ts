import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	circle,
	closed,
	line,
	open,
	type Path,
	pathLength,
	pointAt,
	rectangle,
	reversed,
	segments,
	signedArea,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";

const coordinate = fc.double({ min: -500, max: 500, noNaN: true }).map((v) => v + 0);
const corner = fc.record({
	x: coordinate,
	y: coordinate,
	bulge: fc.oneof(
		fc.constant(0),
		fc.double({ min: -2, max: 2, noNaN: true }).map((b) => b + 0),
	),
});
const closedPath = fc
	.array(corner, { minLength: 2, maxLength: 9 })
	.map((points): Path => ({ points, closed: true }));
const openPath = fc.array(corner, { minLength: 2, maxLength: 9 }).map(
	(points): Path => ({
		points: [...points.slice(0, -1), { ...points.at(-1)!, bulge: 0 }],
		closed: false,
	}),
);

describe("a path", () => {
	test("needs two points", () => {
		expect(() => open(vertex(0, 0))).toThrow(RangeError);
		expect(() => closed(vertex(0, 0))).toThrow(RangeError);
		expect(() => closed()).toThrow(RangeError);
	});

	test("has a straight corner unless a bulge is given", () => {
		expect(vertex(1, 2)).toEqual({ x: 1, y: 2, bulge: 0 });
	});

	test("that is a line is open", () => {
		expect(line({ x: 0, y: 1 }, { x: 2, y: 3 })).toEqual(open(vertex(0, 1), vertex(2, 3)));
	});

	test("that is a circle or a rectangle runs counter-clockwise", () => {
		expect(signedArea(circle({ x: 3, y: 4 }, 2))).toBeCloseTo(4 * Math.PI, 12);
		expect(signedArea(rectangle(1, 2, 4, 7))).toBe(15);
	});

	test.each([0, -1, Number.NaN])("that is a circle of radius %d is refused", (radius) => {
		expect(() => circle({ x: 0, y: 0 }, radius)).toThrow(RangeError);
	});
});

describe("reversed", () => {
	test("a path runs through the same points the other way", () => {
		const path = closed(vertex(0, 0, 0.5), vertex(10, 0), vertex(10, 10, -0.3));
		// It starts at the last vertex, so the closing segment comes last.
		const back = segments(reversed(path));
		for (const [i, s] of [1, 0, 2].map((k) => segments(path)[k]!).entries()) {
			for (const u of [0, 0.25, 0.5, 1]) {
				const [there, here] = [pointAt(s, u), pointAt(back[i]!, 1 - u)];
				expect(here.x).toBeCloseTo(there.x, 12);
				expect(here.y).toBeCloseTo(there.y, 12);
			}
		}
	});

	test("a half circle from (0, 0) to (2, 0) goes from (2, 0) to (0, 0) with the other bulge", () => {
		expect(reversed(open(vertex(0, 0, 1), vertex(2, 0)))).toEqual(
			open(vertex(2, 0, -1), vertex(0, 0)),
		);
	});

	test("twice, it is the path that it was, open or closed", () => {
		fc.assert(
			fc.property(fc.oneof(closedPath, openPath), (path) => {
				expect(reversed(reversed(path))).toEqual(path);
			}),
			{ seed: 2, numRuns: 300, endOnFailure: true },
		);
	});

	test("it has the same length and the area's other sign", () => {
		const path = closed(vertex(0, 0, 0.5), vertex(10, 0), vertex(10, 10, -0.3));
		expect(pathLength(reversed(path))).toBeCloseTo(pathLength(path), 12);
		expect(signedArea(reversed(path))).toBeCloseTo(-signedArea(path), 12);
	});
});

describe("started at another vertex", () => {
	test("a closed path is the same ring", () => {
		const path = closed(vertex(0, 0, 0.5), vertex(10, 0), vertex(10, 10, -0.3));
		expect(startedAt(path, 1)).toEqual(
			closed(vertex(10, 0), vertex(10, 10, -0.3), vertex(0, 0, 0.5)),
		);
		expect(startedAt(path, 0)).toEqual(path);
	});

	test("an open path stays as it is", () => {
		const path = open(vertex(0, 0), vertex(1, 0), vertex(1, 1));
		expect(startedAt(path, 1)).toBe(path);
	});
});
