import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LengthFault, parseLength, type Unit } from "../../src/units/index.js";

function faultOf(given: string | number, bare: Unit = "mm"): LengthFault["fault"] | number {
	const result = parseLength(given, bare);
	return typeof result === "number" ? result : result.fault;
}

describe("a length is read as people write it", () => {
	test.each([
		["648", 648],
		["648 mm", 648],
		["648mm", 648],
		["64.8 cm", 648],
		["0.648 m", 648],
		["25.5 in", 647.7],
		["25.5 inch", 647.7],
		["25.5 inches", 647.7],
		["25 1/2 in", 647.7],
		['25-1/2"', 647.7],
		["25 ½″", 647.7],
		["25½″", 647.7],
		["25-½ in", 647.7],
		["25½”", 647.7],
		["25 1/2''", 647.7],
		['0.110"', 2.794],
		['.110"', 2.794],
		["1/64 in", 0.396875],
		["1 / 64 in", 0.396875],
		["¼ in", 6.35],
		["¾ in", 19.05],
		["⅛ in", 3.175],
		["⅜ in", 9.525],
		["⅝ in", 15.875],
		["⅞ in", 22.225],
		["7 IN", 177.8],
		["7 Mm", 7],
		["  7 mm  ", 7],
		["+7 mm", 7],
		["-7 mm", -7],
		["−7 mm", -7],
		["-½ in", -12.7],
		["-1 1/2 in", -38.1],
		["0", 0],
	])("%s is %d mm", (given, mm) => {
		expect(parseLength(given, "mm")).toBeCloseTo(mm, 12);
	});

	test.each([
		["mm", 12],
		["cm", 120],
		["m", 12_000],
		["in", 304.8],
	] as const)("a number without a unit is in %s where the file says so", (bare, mm) => {
		expect(parseLength("12", bare)).toBeCloseTo(mm, 9);
		expect(parseLength(12, bare)).toBeCloseTo(mm, 9);
		expect(parseLength("12 mm", bare)).toBe(12);
	});
});

describe("what is no length is refused, and says why", () => {
	test.each(["64,8 cm", "648,0", "1,000 mm", "-2,5"])("a decimal comma: %s", (given) => {
		expect(parseLength(given, "mm")).toEqual({ fault: "decimal-comma", given });
	});

	test.each([
		["25 furlong", "furlong"],
		["25 ft", "ft"],
		["2'", "'"],
		["2′", "′"],
		["7 µm", "µm"],
		["3 constructor", "constructor"],
	])("an unknown unit: %s", (given, unit) => {
		expect(parseLength(given, "mm")).toEqual({ fault: "unknown-unit", given, unit });
	});

	test.each(["1/0 in", "25 1/0", "0/0"])("a fraction over zero: %s", (given) => {
		expect(faultOf(given)).toBe("zero-denominator");
	});

	test.each([
		"NaN",
		".nan",
		"-Infinity",
		".inf",
		"inf",
		"9".repeat(400),
		Number.NaN,
		Number.POSITIVE_INFINITY,
		Number.NEGATIVE_INFINITY,
	])("what is not finite: %s", (given) => {
		expect(faultOf(given)).toBe("not-finite");
	});

	test("a number that leaves the range of numbers once it is in mm", () => {
		expect(faultOf(1e308, "m")).toBe("not-finite");
	});

	test.each([
		"",
		" ",
		"long",
		"mm",
		"mm 5",
		"5 6",
		"5.5 1/2 in",
		"25 in 1/2",
		"25 -1/2 in",
		"25--1/2 in",
		"25 1/2 1/4 in",
		"1/2/3",
		"5.",
		"1e3",
		"0x10",
		"5 %",
		"__proto__",
		"5 __proto__",
		"- 5",
	])("text: '%s'", (given) => {
		expect(faultOf(given)).toBe("not-a-length");
	});
});

test("a length in sixty-fourths is the same however its fraction is written", () => {
	fc.assert(
		fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 1, max: 63 }), (whole, top) => {
			const expected = (whole + top / 64) * 25.4;
			for (const text of [
				`${whole} ${top}/64 in`,
				`${whole}-${top}/64"`,
				`${whole + top / 64} in`,
			]) {
				expect(parseLength(text, "mm")).toBeCloseTo(expected, 10);
			}
		}),
		{ seed: 1, numRuns: 200, endOnFailure: true },
	);
});

test("a text gives a finite length or a fault, never an error and never NaN", () => {
	const piece = fc.constantFrom("1", "0", "25", ".", ",", "/", "-", " ", "½", "in", '"', "mm", "x");
	fc.assert(
		fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
			const result = parseLength(pieces.join(""), "in");
			if (typeof result === "number") expect(Number.isFinite(result)).toBe(true);
			else expect(result.given).toBe(pieces.join(""));
		}),
		{ seed: 2, numRuns: 500, endOnFailure: true },
	);
});
