import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fixed, inches, inchLabel, sixtyFourth, stable, trimmed } from "../../src/units/index.js";

const NOT_FINITE = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

describe("fixed", () => {
	test.each([
		[0, 3, "0.000"],
		[40.5, 3, "40.500"],
		[-40.5, 0, "-41"],
		[1 / 3, 6, "0.333333"],
		[2 / 3, 6, "0.666667"],
		[1e-9, 6, "0.000000"],
		[123456789.125, 3, "123456789.125"],
		[1e-7, 9, "0.000000100"],
	])("%d to %d digits is %s", (value, digits, text) => {
		expect(fixed(value, digits)).toBe(text);
	});

	test.each([-0, -1e-9, -0.0000004])(
		"%d has no sign left once it is rounded to nothing",
		(value) => {
			expect(fixed(value, 6)).toBe("0.000000");
			expect(fixed(value, 0)).toBe("0");
		},
	);

	test("it keeps the sign of what is left", () => {
		expect(fixed(-0.0000006, 6)).toBe("-0.000001");
	});

	test("it never prints an exponent", () => {
		fc.assert(
			fc.property(
				fc.double({ min: -1e15, max: 1e15, minExcluded: true, maxExcluded: true, noNaN: true }),
				fc.integer({ min: 1, max: 15 }),
				(value, digits) => {
					const text = fixed(value, digits);
					expect(text).toMatch(new RegExp(`^-?\\d+\\.\\d{${digits}}$`));
					expect(text).not.toMatch(/^-0\.0*$/);
					expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
						0.5 * 10 ** -digits + Math.abs(value) * Number.EPSILON,
					);
				},
			),
			{ seed: 3, numRuns: 500, endOnFailure: true },
		);
	});

	test("it refuses what it cannot write", () => {
		for (const value of [...NOT_FINITE, 1e15, -1e15]) {
			expect(() => fixed(value, 3)).toThrow(RangeError);
		}
	});
});

describe("trimmed", () => {
	test.each([
		[40.5, 3, "40.5"],
		[40, 3, "40"],
		[100, 0, "100"],
		[100, 2, "100"],
		[-0.0001, 3, "0"],
		[0.125, 3, "0.125"],
	])("%d to %d digits is %s", (value, digits, text) => {
		expect(trimmed(value, digits)).toBe(text);
	});
});

test("numbers for a report keep nine decimals and no negative zero", () => {
	expect(stable(36.352612345678)).toBe(36.352612346);
	expect(Object.is(stable(-1e-12), 0)).toBe(true);
	expect(() => stable(Number.NaN)).toThrow(RangeError);
});

test("a length in inch has four digits unless more are asked for", () => {
	expect(inches(25.4)).toBe("1.0000");
	expect(inches(647.7)).toBe("25.5000");
	expect(inches(1, 6)).toBe("0.039370");
});

describe("the nearest 1/64 in", () => {
	test.each([
		[25.4, "1", 0],
		[41.275, "1 5/8", 0],
		[12.7, "1/2", 0],
		[36.3526, "1 7/16", 0.1599],
		[0.396875, "1/64", 0],
		[0, "0", 0],
		[0.1, "0", -0.1],
		[-0.1, "0", 0.1],
		[-41.275, "-1 5/8", 0],
		[25.3, "1", 0.1],
	])("of %d mm is %s in", (mm, text, error) => {
		const nearest = sixtyFourth(mm);
		expect(nearest.text).toBe(text);
		expect(nearest.error).toBeCloseTo(error, 10);
	});

	test("is never further than 1/128 in, and says by how much", () => {
		fc.assert(
			fc.property(fc.double({ min: -1000, max: 1000, noNaN: true }), (mm) => {
				const { text, error } = sixtyFourth(mm);
				const [, sign, whole, top, bottom] = /^(-?)(\d+)?(?: ?(\d+)\/(\d+))?$/.exec(text) ?? [];
				const size = Number(whole ?? 0) + (top ? Number(top) / Number(bottom) : 0);
				expect((sign === "-" ? -size : size) * 25.4).toBeCloseTo(mm + error, 9);
				expect(Math.abs(error)).toBeLessThanOrEqual(25.4 / 128 + 1e-12);
			}),
			{ seed: 4, numRuns: 500, endOnFailure: true },
		);
	});

	test("of no number is refused", () => {
		for (const mm of NOT_FINITE) expect(() => sixtyFourth(mm)).toThrow(RangeError);
	});
});

test("an inch label is a fraction where the size is one, else a decimal", () => {
	expect(inchLabel(184.15)).toBe("7 1/4 in");
	expect(inchLabel(254)).toBe("10 in");
	expect(inchLabel(250.7742)).toBe("9.873 in");
});
