import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	arcLengthOfChord,
	arcSagitta,
	arcVertex,
	bulgeOf,
	closed,
	radiusFromSagitta,
	segmentLength,
	segments,
	vertex,
} from "../../src/geometry/index.js";

describe("the sagitta of an arc", () => {
	test("of 304.8 mm over 56 mm is 1.28881 mm", () => {
		expect(arcSagitta(304.8, 56)).toBeCloseTo(1.28881, 5);
	});

	test("is 1 for a 3-4-5 triangle: radius 5 over a chord of 6", () => {
		expect(arcSagitta(5, 6)).toBeCloseTo(1, 14);
	});

	test("over the diameter is the radius, over nothing is nothing", () => {
		expect(arcSagitta(5, 10)).toBe(5);
		expect(arcSagitta(5, 0)).toBe(0);
	});

	test("keeps its digits on an arc that is nearly flat", () => {
		// c²/8r, the next term being 1e-24 of it.
		expect(arcSagitta(1e13, 50) / (2500 / 8e13)).toBeCloseTo(1, 14);
	});

	test.each([
		[5, 10.0001],
		[0, 1],
		[-5, 1],
		[5, -1],
		[Number.NaN, 1],
		[5, Number.NaN],
	])("of radius %d over a chord of %d is refused", (radius, chord) => {
		expect(() => arcSagitta(radius, chord)).toThrow(RangeError);
		expect(() => arcLengthOfChord(radius, chord)).toThrow(RangeError);
	});
});

describe("the radius from a sagitta", () => {
	test("undoes the sagitta", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 1, max: 2000, noNaN: true }),
				fc.double({ min: 0.01, max: 1, noNaN: true }),
				(radius, share) => {
					const chord = 2 * radius * share;
					expect(radiusFromSagitta(chord, arcSagitta(radius, chord)) / radius).toBeCloseTo(1, 10);
				},
			),
			{ seed: 1, numRuns: 300, endOnFailure: true },
		);
	});

	test.each([
		[0, 1],
		[1, 0],
		[-1, 1],
		[1, Number.NaN],
	])("from chord %d and sagitta %d is refused", (chord, sagitta) => {
		expect(() => radiusFromSagitta(chord, sagitta)).toThrow(RangeError);
	});
});

describe("the length of an arc over a chord", () => {
	test("is half a circumference over the diameter", () => {
		expect(arcLengthOfChord(3, 6)).toBeCloseTo(3 * Math.PI, 12);
	});

	test("over a chord as long as the radius is a sixth of a circumference", () => {
		expect(arcLengthOfChord(3, 3)).toBeCloseTo(Math.PI, 12);
	});
});

describe("a bulge", () => {
	test("over the diameter is 1, over a quarter circle tan 22.5°", () => {
		expect(bulgeOf(0.5, 1)).toBe(1);
		expect(bulgeOf(1, Math.SQRT2)).toBeCloseTo(Math.SQRT2 - 1, 12);
	});

	test("over no chord is refused, and so is a chord that does not fit", () => {
		expect(() => bulgeOf(1, 0)).toThrow(RangeError);
		expect(() => bulgeOf(1, 2.1)).toThrow(RangeError);
	});

	test.each([1, -1] as const)("of an arc with turn %d makes an arc of that radius", (turn) => {
		const [start, end] = [
			{ x: 1, y: 2 },
			{ x: 4, y: 6 },
		] as const;
		const path = closed(arcVertex(start, end, 7, turn), vertex(end.x, end.y));
		const [arc] = segments(path);
		expect(arc).toMatchObject({ kind: "arc", start: expect.objectContaining(start) });
		if (arc?.kind !== "arc") return;
		expect(arc.radius).toBeCloseTo(7, 12);
		expect(Math.sign(arc.sweep)).toBe(turn);
		expect(Math.abs(arc.sweep)).toBeLessThan(Math.PI);
		expect(segmentLength(arc)).toBeCloseTo(arcLengthOfChord(7, 5), 12);
	});
});
