import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type * as z from "zod";
import {
	inRange,
	type LengthRange,
	lengthField,
	lengthOrWord,
	rangeText,
	slipOf,
} from "../../src/fields/index.js";
import { parseLength } from "../../src/units/index.js";
import { faultsOf } from "../support/faults-of.js";

const text = { text: "a length" };

describe("rangeText", () => {
	it.each<[LengthRange, string]>([
		[{ from: 150, to: 2000 }, "150 to 2000 mm"],
		[{ above: 0, to: 30 }, "above 0, at most 30 mm"],
		[{ from: 15 }, "15 mm or more"],
		[{ above: 0 }, "above 0 mm"],
		[{ to: 5.5 }, "at most 5.5 mm"],
		[{ from: -20, to: 30 }, "-20 to 30 mm"],
		[{}, "any"],
		[{ from: 1, to: 2, unless: "--all" }, "1 to 2 mm (others with --all)"],
	])("says %j as %s", (range, said) => expect(rangeText(range)).toBe(said));

	it("leaves the unit out where there is none", () => {
		expect(rangeText({ from: 1, to: 150 }, "")).toBe("1 to 150");
	});
});

describe("inRange", () => {
	it("takes the ends of from and to, not that of above", () => {
		expect(inRange(0, { above: 0, to: 5 })).toBe(false);
		expect(inRange(5, { above: 0, to: 5 })).toBe(true);
		expect(inRange(0, { from: 0, to: 5 })).toBe(true);
		expect(inRange(5.000001, { from: 0, to: 5 })).toBe(false);
	});

	it("takes no NaN", () => {
		for (const range of [{ from: 0 }, { above: 0 }, { to: 5 }]) {
			expect(inRange(Number.NaN, range)).toBe(false);
		}
	});
});

describe("lengthField", () => {
	const field = lengthField("mm", { from: 150, to: 2000 }, text);

	// The inch is 25.4 mm exactly (international yard and pound agreement, 1959).
	it.each<[string | number, number]>([
		[648, 648],
		["648", 648],
		["64.8 cm", 648],
		["25.5 in", 647.7],
		["25 1/2 in", 647.7],
		['25-1/2"', 647.7],
		["25 ½″", 647.7],
		["0.648 m", 648],
		[150, 150],
		["2000 mm", 2000],
	])("reads %j as %d mm", (given, mm) => expect(field.parse(given)).toBeCloseTo(mm, 9));

	it("takes a number without unit in the file's unit", () => {
		const inches = lengthField("in", { from: 150, to: 2000 }, text);
		expect(inches.parse(25.5)).toBeCloseTo(647.7, 9);
		expect(inches.parse("648 mm")).toBe(648);
	});

	it.each<[string | number, string, object]>([
		[25.5, "length-range", { given: "25.5", mm: 25.5, slip: "25.5 in" }],
		[" 648 in ", "length-range", { given: "648 in", slip: "648 mm" }],
		["25,5 in", "decimal-comma", { given: "25,5 in" }],
		["648 ft", "unknown-unit", { unit: "ft" }],
		["long", "not-a-length", { given: "long" }],
		["1/0 in", "zero-denominator", { given: "1/0 in" }],
		["NaN", "not-finite", { given: "NaN" }],
	])("refuses %j: %s", (given, code, facts) => {
		expect(faultsOf(field, given)).toMatchObject([{ code, facts }]);
	});

	it.each([true, null, [648], { mm: 648 }, Number.NaN, Number.POSITIVE_INFINITY])(
		"refuses %j, which is no text and no number",
		(given) => expect(field.safeParse(given).success).toBe(false),
	);

	it("never lets a length through that is out of its range", () => {
		const given = fc.oneof(
			fc.double({ noNaN: true }),
			fc.tuple(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.constantFrom("mm", "cm", "in")),
		);
		fc.assert(
			fc.property(given, (value) => {
				const result = field.safeParse(Array.isArray(value) ? value.join(" ") : value);
				if (result.success) expect(inRange(result.data, { from: 150, to: 2000 })).toBe(true);
			}),
			{ seed: 1, numRuns: 300 },
		);
	});
});

describe("lengthOrWord", () => {
	const field: z.ZodType = lengthOrWord("mm", ["flat"], { above: 0 }, text);

	it("takes its word and a length", () => {
		expect(field.parse("flat")).toBe("flat");
		expect(field.parse("12 in")).toBeCloseTo(304.8, 9);
	});

	it("names its word when it refuses another", () => {
		expect(faultsOf(field, "flatt")).toMatchObject([
			{ code: "not-a-length", facts: { given: "flatt", words: "flat" } },
		]);
	});
});

describe("slipOf", () => {
	const scale: LengthRange = { from: 150, to: 2000 };

	it.each([
		["25.5", "25.5 in"],
		["25 1/2", "25 1/2 in"],
		["648 in", "648 mm"],
		["64.8 mm", "64.8 cm"],
		["64.8", "64.8 cm"],
		["1 mm", ""],
		["-648", ""],
		["0", ""],
		["long", ""],
	])("takes %s for %j", (given, meant) => expect(slipOf(given, scale)).toBe(meant));

	it("takes the first of in, mm and cm where the range has no lower end", () => {
		expect(slipOf("2.7 in", { above: 0, to: 8 })).toBe("2.7 mm");
		expect(slipOf("0.3 m", { above: 0, to: 8 })).toBe("0.3 in");
	});

	it("offers nothing that would be refused", () => {
		const ranges = fc.record({
			from: fc.double({ min: 0.1, max: 200, noNaN: true }),
			span: fc.double({ min: 1, max: 20, noNaN: true }),
		});
		fc.assert(
			fc.property(
				fc.double({ min: -1e4, max: 1e4, noNaN: true }),
				ranges,
				(given, { from, span }) => {
					const range = { from, to: from * span };
					const meant = slipOf(given, range);
					if (meant === "") return;
					const mm = parseLength(meant, "mm");
					expect(typeof mm === "number" && inRange(mm, range)).toBe(true);
				},
			),
			{ seed: 2, numRuns: 300 },
		);
	});
});
