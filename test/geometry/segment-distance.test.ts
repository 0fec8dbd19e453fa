import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	arcFromBulge,
	distanceTo,
	pointAt,
	type Segment,
	segmentDistance,
} from "../../src/geometry/index.js";

const lineOf = (x0: number, y0: number, x1: number, y1: number): Segment => {
	return { kind: "line", start: { x: x0, y: y0 }, end: { x: x1, y: y1 } };
};

const coordinate = fc.integer({ min: -400, max: 400 }).map((i) => i / 10);
const anySegment = fc
	.tuple(coordinate, coordinate, coordinate, coordinate, fc.integer({ min: -9, max: 9 }))
	.filter(([x0, y0, x1, y1]) => Math.hypot(x1 - x0, y1 - y0) > 1)
	.map(([x0, y0, x1, y1, bulge]): Segment => {
		const line = lineOf(x0, y0, x1, y1);
		return bulge === 0 ? line : arcFromBulge(line.start, line.end, bulge / 6);
	});

describe("segmentDistance", () => {
	it("is the least distance of an end from the other line", () => {
		expect(segmentDistance(lineOf(0, 0, 10, 0), lineOf(0, 3, 10, 4))).toBe(3);
	});

	it("is 0 where segments meet", () => {
		expect(segmentDistance(lineOf(0, 0, 10, 0), lineOf(5, -1, 5, 1))).toBe(0);
	});

	it("is taken between the backs of two arcs", () => {
		const left = arcFromBulge({ x: 0, y: -2 }, { x: 0, y: 2 }, 1);
		const right = arcFromBulge({ x: 9, y: 2 }, { x: 9, y: -2 }, 1);
		expect(segmentDistance(left, right)).toBeCloseTo(5, 12);
	});

	it("is that of the nearest of many points, either way round", () => {
		fc.assert(
			fc.property(anySegment, anySegment, (a, b) => {
				const looks = Array.from({ length: 801 }, (_, i) => distanceTo(b, pointAt(a, i / 800)));
				const [found, least] = [segmentDistance(a, b), Math.min(...looks)];
				expect(found).toBeLessThanOrEqual(least + 1e-9);
				expect(found).toBeGreaterThan(least - 0.5);
				expect(segmentDistance(b, a)).toBeCloseTo(found, 9);
			}),
			{ seed: 41, numRuns: 200 },
		);
	});
});
