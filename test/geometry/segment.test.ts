import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	type ArcSegment,
	arcFromBulge,
	besideCircle,
	circle,
	closed,
	distanceTo,
	fractionOfAngle,
	type LineSegment,
	open,
	type Point,
	pointAt,
	powerOf,
	segmentLength,
	segments,
	tangentAt,
	vertex,
} from "../../src/geometry/index.js";

const at = (x: number, y: number): Point => ({ x, y });
const lineOf = (start: Point, end: Point): LineSegment => ({ kind: "line", start, end });

/** A quarter circle of radius 2 about the origin, from (2, 0) to (0, 2). */
const QUARTER = arcFromBulge(at(2, 0), at(0, 2), Math.SQRT2 - 1);
const anyArc = fc
	.tuple(
		fc.double({ min: -300, max: 300, noNaN: true }),
		fc.double({ min: -300, max: 300, noNaN: true }),
		fc.double({ min: -3, max: 3, noNaN: true }).filter((b) => Math.abs(b) > 1e-6),
	)
	.filter(([x, y]) => Math.hypot(x - 1, y - 2) > 0.01)
	.map(([x, y, bulge]) => arcFromBulge(at(1, 2), at(x, y), bulge));

describe("an arc from its bulge", () => {
	test("with chord 1 and bulge 1 is a half circle of radius 0.5", () => {
		const arc = arcFromBulge(at(0, 0), at(1, 0), 1);
		expect(arc.radius).toBe(0.5);
		expect(arc.centre).toEqual(at(0.5, 0));
		expect(arc.sweep).toBeCloseTo(Math.PI, 14);
		// Counter-clockwise from the left end: below the chord.
		expect(pointAt(arc, 0.5).y).toBeCloseTo(-0.5, 14);
	});

	test("turns right with a negative bulge", () => {
		const arc = arcFromBulge(at(0, 0), at(1, 0), -1);
		expect(arc.sweep).toBeCloseTo(-Math.PI, 14);
		expect(pointAt(arc, 0.5).y).toBeCloseTo(0.5, 14);
	});

	test("over 1 is more than a half circle, and starts and ends where it should", () => {
		fc.assert(
			fc.property(anyArc, (arc) => {
				const far = Math.hypot(arc.start.x - arc.centre.x, arc.start.y - arc.centre.y);
				expect(far / arc.radius).toBeCloseTo(1, 9);
				const last = arc.startAngle + arc.sweep;
				const reach = 1e-9 * Math.max(1, arc.radius);
				const { centre, radius, end } = arc;
				expect(Math.abs(centre.x + radius * Math.cos(last) - end.x)).toBeLessThan(reach);
				expect(Math.abs(centre.y + radius * Math.sin(last) - end.y)).toBeLessThan(reach);
			}),
			{ seed: 3, numRuns: 300, endOnFailure: true },
		);
		expect(arcFromBulge(at(0, 0), at(1, 0), 2).sweep).toBeGreaterThan(Math.PI);
	});

	test("without two different ends is refused", () => {
		expect(() => arcFromBulge(at(1, 1), at(1, 1), 0.5)).toThrow(RangeError);
	});
});

describe("the segments of a path", () => {
	test("of a closed path are as many as its vertices, and the last leads back", () => {
		const all = segments(closed(vertex(0, 0), vertex(4, 0, 1), vertex(4, 2)));
		expect(all.map((s) => s.kind)).toEqual(["line", "arc", "line"]);
		expect(all[2]!.end).toMatchObject(at(0, 0));
	});

	test("of an open path are one fewer", () => {
		expect(segments(open(vertex(0, 0), vertex(4, 0), vertex(4, 2)))).toHaveLength(2);
	});

	test("are lines where the bulge is below what a metre can show", () => {
		expect(segments(open(vertex(0, 0, 1e-13), vertex(1000, 0)))[0]!.kind).toBe("line");
	});
});

describe("along a segment", () => {
	test("a line is walked evenly", () => {
		const line = lineOf(at(1, 1), at(5, 4));
		expect(pointAt(line, 0.5)).toEqual(at(3, 2.5));
		expect(segmentLength(line)).toBe(5);
		expect(tangentAt(line, 0.3)).toEqual(at(0.8, 0.6));
	});

	test("a quarter circle is walked by its angle", () => {
		const middle = pointAt(QUARTER, 0.5);
		expect(middle.x).toBeCloseTo(Math.SQRT2, 14);
		expect(middle.y).toBeCloseTo(Math.SQRT2, 14);
		expect(segmentLength(QUARTER)).toBeCloseTo(Math.PI, 14);
		const direction = tangentAt(QUARTER, 0.5);
		expect(direction.x).toBeCloseTo(-Math.SQRT1_2, 14);
		expect(direction.y).toBeCloseTo(Math.SQRT1_2, 14);
	});

	test("the ends are the ends themselves", () => {
		expect(pointAt(QUARTER, 0)).toBe(QUARTER.start);
		expect(pointAt(QUARTER, 1)).toBe(QUARTER.end);
	});

	test("a point lies on the arc's circle, and the tangent is square to the radius", () => {
		fc.assert(
			fc.property(anyArc, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (arc, u) => {
				const p = pointAt(arc, u);
				const far = Math.hypot(p.x - arc.centre.x, p.y - arc.centre.y);
				expect(far / arc.radius).toBeCloseTo(1, 9);
				const t = tangentAt(arc, u);
				const across = t.x * (p.x - arc.centre.x) + t.y * (p.y - arc.centre.y);
				expect(Math.abs(across) / arc.radius).toBeLessThan(1e-9);
			}),
			{ seed: 4, numRuns: 300, endOnFailure: true },
		);
	});

	test.each([1e-5, 1e-7, 1e-9, 1e-11])("an arc of bulge %d keeps its digits", (bulge) => {
		// So flat an arc is the parabola y = −4h·u(1 − u), h = bulge·chord/2.
		const arc = arcFromBulge(at(0, 0), at(50, 0), bulge);
		const sagitta = bulge * 25;
		expect(pointAt(arc, 0.25).y / (-0.75 * sagitta)).toBeCloseTo(1, 4);
		expect(distanceTo(arc, at(25, 1)) - 1 - sagitta).toBeCloseTo(0, 13);
	});
});

describe("the fraction of an angle on an arc", () => {
	test("goes from 0 at the start to 1 at the end", () => {
		expect(fractionOfAngle(QUARTER, QUARTER.startAngle)).toBe(0);
		expect(fractionOfAngle(QUARTER, QUARTER.startAngle + QUARTER.sweep)).toBeCloseTo(1, 14);
		expect(fractionOfAngle(QUARTER, Math.PI / 4)).toBeCloseTo(0.5, 14);
		expect(fractionOfAngle(QUARTER, Math.PI / 4 + 2 * Math.PI)).toBeCloseTo(0.5, 13);
		expect(fractionOfAngle(QUARTER, Math.PI / 4 - 4 * Math.PI)).toBeCloseTo(0.5, 13);
	});

	test("is null beside the arc unless within the slack", () => {
		expect(fractionOfAngle(QUARTER, -0.1)).toBeNull();
		expect(fractionOfAngle(QUARTER, Math.PI / 2 + 0.1)).toBeNull();
		expect(fractionOfAngle(QUARTER, -0.1, 0.2)).toBe(0);
		expect(fractionOfAngle(QUARTER, Math.PI / 2 + 0.1, 0.2)).toBe(1);
	});

	test("counts down a clockwise arc", () => {
		const down = arcFromBulge(at(0, 2), at(2, 0), 1 - Math.SQRT2);
		expect(fractionOfAngle(down, Math.PI / 8)).toBeCloseTo(0.75, 13);
		expect(fractionOfAngle(down, -0.1)).toBeNull();
	});
});

describe("beside a circle", () => {
	test("the power of a point is |p − c|² − r²", () => {
		expect(powerOf(at(0, 0), QUARTER)).toBeCloseTo(-4, 14);
		expect(powerOf(at(5, 0), QUARTER)).toBeCloseTo(21, 13);
		expect(powerOf(QUARTER.start, QUARTER)).toBe(0);
	});

	test("the distance is negative inside", () => {
		expect(besideCircle(at(1, 0), QUARTER)).toBeCloseTo(-1, 14);
		expect(besideCircle(at(0, 5), QUARTER)).toBeCloseTo(3, 14);
	});
});

describe("the distance to a segment", () => {
	test("is square to a line, or to its nearer end", () => {
		const line = lineOf(at(0, 0), at(10, 0));
		expect(distanceTo(line, at(4, 3))).toBe(3);
		expect(distanceTo(line, at(-3, 4))).toBe(5);
		expect(distanceTo(line, at(13, -4))).toBe(5);
	});

	test("is along the radius within an arc's sweep, else to its nearer end", () => {
		expect(distanceTo(QUARTER, at(3, 3))).toBeCloseTo(Math.hypot(3, 3) - 2, 14);
		expect(distanceTo(QUARTER, at(0.5, 0.5))).toBeCloseTo(2 - Math.hypot(0.5, 0.5), 14);
		expect(distanceTo(QUARTER, at(-1, -1))).toBeCloseTo(Math.hypot(3, 1), 14);
		const [half] = segments(circle(at(0, 0), 2)) as [ArcSegment];
		expect(distanceTo(half, at(0, 0))).toBeCloseTo(2, 14);
	});

	test("is no more than to any of its points", () => {
		const place = fc.double({ min: -300, max: 300, noNaN: true });
		fc.assert(
			fc.property(anyArc, place, place, (arc, x, y) => {
				const least = Math.min(
					...Array.from({ length: 401 }, (_, i) => {
						const p = pointAt(arc, i / 400);
						return Math.hypot(p.x - x, p.y - y);
					}),
				);
				const distance = distanceTo(arc, at(x, y));
				expect(distance).toBeLessThanOrEqual(least + 1e-9);
				expect(distance).toBeGreaterThanOrEqual(least - segmentLength(arc) / 400);
			}),
			{ seed: 5, numRuns: 100, endOnFailure: true },
		);
	});
});
