import { describe, expect, it } from "vitest";
import { edgePoint, fretLine, isFanned, radiusAt, widthAt } from "../../src/neck/index.js";
import { neckOfJob, neckOrProblems } from "../support/neck-of-job.js";

const plain = "scale: 648, frets: 22, radius: 12 in, width: 50";
const strung = "strings: {count: 6, at-nut: 36, at-saddle: 52}";

function codesOf(values: string): string[] {
	const result = neckOrProblems(`{${values}}`);
	return "frets" in result ? [] : result.map(({ code }) => code);
}

describe("a job's neck", () => {
	it("has its twelfth fret at half the scale", () => {
		const neck = neckOfJob(`{${plain}}`);
		expect(fretLine(neck, 12).x).toBeCloseTo(324, 12);
		expect(isFanned(neck)).toBe(false);
	});

	it("takes stations in any order, and each where it lies", () => {
		const neck = neckOfJob(
			"{scale: 648, frets: 22, radius: {last-fret: 14 in, 12: 12 in, nut: 10 in}, width: {324 mm: 52, nut: 43}}",
		);
		expect(radiusAt(neck, 0)).toBeCloseTo(254, 9);
		expect(radiusAt(neck, 324)).toBeCloseTo(304.8, 9);
		expect(radiusAt(neck, fretLine(neck, 22).x)).toBeCloseTo(355.6, 9);
		// Half way in distance, not in frets.
		expect(radiusAt(neck, 162)).toBeCloseTo((254 + 304.8) / 2, 9);
		expect(widthAt(neck, 162)).toBeCloseTo(47.5, 9);
	});

	it("keeps outer strings as long as their scales, and the square fret square", () => {
		const neck = neckOfJob(
			`{scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}, frets: 24, radius: 16 in, width: {nut: 48, last-fret: 62}, ${strung}}`,
		);
		for (const [side, scale] of [
			["bass", 685.8],
			["treble", 647.7],
		] as const) {
			const { nut, saddle } = neck.guides[side];
			expect(Math.hypot(saddle.x - nut.x, saddle.y - nut.y)).toBeCloseTo(scale, 9);
		}
		expect(fretLine(neck, 7).lean).toBeCloseTo(0, 12);
		expect(fretLine(neck, 0).x).toBeCloseTo(0, 12);
	});

	it("is mirrored for the left hand", () => {
		const right = neckOfJob(`{${plain}, ${strung}}`);
		const left = neckOfJob(`{${plain}, handed: left, ${strung}}`);
		expect(edgePoint(right, fretLine(right, 5), 1).y).toBeCloseTo(25, 9);
		expect(edgePoint(left, fretLine(left, 5), 1).y).toBeCloseTo(-25, 9);
	});

	it("holds single and doubled strings", () => {
		expect(neckOfJob(`{${plain}, ${strung}}`).strings).toEqual({
			count: 6,
			pairGap: 0,
			atNut: 36,
			atSaddle: 52,
		});
		const courses = "strings: {courses: 4, pair-gap: 1.8, at-nut: 26, at-saddle: 40}";
		expect(neckOfJob(`{${plain}, ${courses}}`).strings).toMatchObject({ count: 4, pairGap: 1.8 });
	});

	it("holds its markers", () => {
		expect(neckOfJob(`{${plain}, markers: [3, {12: double, 15: single}]}`).markers).toEqual([
			{ fret: 3, double: false },
			{ fret: 12, double: true },
			{ fret: 15, double: false },
		]);
	});
});

describe("the limits of a neck", () => {
	it.each([
		["radius: 25", "width: 50", []],
		["radius: 24.999", "width: 50", ["radius-below-half-board"]],
		["radius: flat", "width: 10", []],
		["radius: flat", "width: 9.999", ["length-range"]],
		["radius: flat", "width: {nut: 12, last-fret: 10}", []],
		["radius: flat", "width: {nut: 12, 21: 10}", ["board-too-narrow"]],
		["radius: flat", "width: 15, binding: 7.5", []],
		["radius: flat", "width: 15, binding: 7.501", ["board-too-narrow", "board-too-narrow"]],
	])("lie where they are said to: %s, %s", (radius, width, codes) => {
		expect(codesOf(`scale: 648, frets: 22, ${radius}, ${width}`)).toEqual(codes);
	});

	it("let the outer strings reach the board's edge and no further", () => {
		const strings = (nut: number, saddle: number) =>
			`strings: {count: 2, at-nut: ${nut}, at-saddle: ${saddle}}`;
		expect(codesOf(`${plain}, ${strings(50, 50)}`)).toEqual([]);
		expect(codesOf(`${plain}, ${strings(50.001, 50)}`)).toEqual(["strings-beside-board"]);
		expect(codesOf(`${plain}, ${strings(40, 55)}`)).toEqual(["strings-beside-board"]);
	});

	it("let the nut move to half of the way to fret 1, 18.185 mm of 36.369", () => {
		expect(codesOf(`${plain}, nut-shift: 18.18`)).toEqual([]);
		expect(codesOf(`${plain}, nut-shift: 18.19`)).toEqual(["nut-past-first-fret"]);
	});

	it("keep frets a millimetre apart", () => {
		// 648·2^(-n/12)·(1 − 2^(-1/12)) falls below 1 mm between frets 62 and 64.
		expect(codesOf("scale: 648, frets: 63, radius: flat, width: 50")).toEqual([]);
		expect(codesOf("scale: 648, frets: 64, radius: flat, width: 50")).toEqual(["frets-too-close"]);
	});
});
