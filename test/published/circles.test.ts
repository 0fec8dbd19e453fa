import { describe, expect, test } from "vitest";
import {
	arcFromBulge,
	arcLengthOfChord,
	arcSagitta,
	bulgeOf,
	radiusFromSagitta,
} from "../../src/geometry/index.js";

const INCH = 25.4;

/** Machinery's Handbook, 31st ed., pp. 79 and 83: segments of a circle, r = (c² + 4h²)/8h. */
describe("Machinery's Handbook, segments of a circle", () => {
	test("radius 60 and height 8 have the chord 59.86", () => {
		expect(arcSagitta(60, 59.8665)).toBeCloseTo(8, 4);
		expect(arcSagitta(60, 59.86)).toBeCloseTo(8, 2);
		expect(radiusFromSagitta(59.8665, 8)).toBeCloseTo(60, 3);
	});

	test("chord 16 and height 6 have the radius 8⅓", () => {
		expect(radiusFromSagitta(16, 6)).toBeCloseTo(8 + 1 / 3, 12);
		expect(arcSagitta(8 + 1 / 3, 16)).toBeCloseTo(6, 12);
	});
});

/** Segment manual of a maths program: chord 21, height 6. */
describe("a segment manual, chord 21 and height 6", () => {
	const radius = radiusFromSagitta(21, 6);

	test("radius 12.1875", () => {
		expect(radius).toBeCloseTo(12.1875, 12);
	});

	test("angle 118.97953°", () => {
		const arc = arcFromBulge({ x: 0, y: 0 }, { x: 21, y: 0 }, bulgeOf(radius, 21));
		expect((arc.sweep * 180) / Math.PI).toBeCloseTo(118.97953, 5);
		expect(arc.radius).toBeCloseTo(12.1875, 12);
	});

	test("arc 25.308373", () => {
		expect(arcLengthOfChord(radius, 21)).toBeCloseTo(25.308373, 6);
	});
});

/** Computed from the sagitta formula r − √(r² − c²/4) to five decimals. */
describe("sagitta over a chord of 56 mm", () => {
	test.each([
		[7.25, 2.14115],
		[9.5, 1.63004],
		[10, 1.54802],
		[12, 1.28881],
		[16, 0.96571],
		[20, 0.77224],
	])("of a radius of %d in is %d mm", (radius, sagitta) => {
		expect(arcSagitta(radius * INCH, 56)).toBeCloseTo(sagitta, 5);
		expect(radiusFromSagitta(56, sagitta) / INCH).toBeCloseTo(radius, 3);
	});
});

/** Bar spherometer, R = c²/8h + h/2. */
test("a bar spherometer of 50 mm reads 10 in from its own sagitta", () => {
	const sagitta = arcSagitta(10 * INCH, 50);
	expect((50 * 50) / (8 * sagitta) + sagitta / 2).toBeCloseTo(254, 9);
	expect(radiusFromSagitta(50, sagitta)).toBeCloseTo(254, 9);
});

/** DXF reference, LWPOLYLINE group 42: bulge = tan(angle/4), negative clockwise; = 2h/c. */
describe("DXF reference, bulge of an arc over 56 mm", () => {
	test.each([
		[10, 0.0552866],
		[7.25, 0.0764695],
	])("of a radius of %d in is %d", (radius, bulge) => {
		expect(bulgeOf(radius * INCH, 56)).toBeCloseTo(bulge, 7);
	});

	test("a quarter of the angle has it as tangent, and clockwise it is negative", () => {
		const [start, end] = [
			{ x: 0, y: 0 },
			{ x: 56, y: 0 },
		] as const;
		const left = arcFromBulge(start, end, 0.0552866);
		const right = arcFromBulge(start, end, -0.0552866);
		expect(Math.tan(left.sweep / 4)).toBeCloseTo(0.0552866, 12);
		expect(right.sweep).toBe(-left.sweep);
		expect(left.radius).toBeCloseTo(254, 3);
		// Counter-clockwise from left to right sags below the chord.
		expect(left.centre.y).toBeGreaterThan(0);
		expect(right.centre.y).toBeLessThan(0);
	});
});
