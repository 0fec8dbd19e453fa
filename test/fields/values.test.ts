import { describe, expect, it } from "vitest";
import {
	choiceField,
	colourField,
	countField,
	flagField,
	kelvinField,
	numberField,
	textField,
} from "../../src/fields/index.js";
import { faultsOf } from "../support/faults-of.js";

const text = { text: "a value" };

describe("countField", () => {
	const field = countField({ from: 1, to: 150 }, text);

	it.each([1, 22, 150])("takes %d", (n) => expect(field.parse(n)).toBe(n));
	it.each([0, -1, 1.5, 151, 1e300])("refuses %d", (given) => {
		expect(faultsOf(field, given)).toEqual([
			{ code: "count", facts: { given, allowed: "a whole number, 1 to 150" } },
		]);
	});
	it.each(["22", null, true, Number.NaN])("refuses %j, which is no number", (given) => {
		expect(field.safeParse(given).success).toBe(false);
	});
});

describe("numberField", () => {
	const field = numberField({ from: 0, to: 150 }, text);

	it.each([0, 7.5, 150])("takes %d", (n) => expect(field.parse(n)).toBe(n));
	it.each([-0.1, 150.1])("refuses %d", (given) => {
		expect(faultsOf(field, given)).toMatchObject([{ code: "number-range", facts: { given } }]);
	});
});

describe("choiceField and flagField", () => {
	it("take their words and no others", () => {
		const field = choiceField(["right", "left"], text);
		expect(field.parse("left")).toBe("left");
		expect(field.safeParse("Left").success).toBe(false);
		expect(flagField(text).parse(false)).toBe(false);
		for (const given of ["false", 0, null]) {
			expect(flagField(text).safeParse(given).success).toBe(false);
		}
	});
});

describe("textField", () => {
	const field = textField({ most: 10 }, text);

	it("takes 1 to its most characters, without the spaces around them", () => {
		expect(field.parse("  a neck ")).toBe("a neck");
		expect(field.parse(1959)).toBe("1959");
		expect(field.parse("x".repeat(10))).toBe("x".repeat(10));
	});

	it("refuses an empty text, spaces alone and one character more", () => {
		expect(faultsOf(field, "")).toMatchObject([{ code: "text-length", facts: { size: 0 } }]);
		expect(faultsOf(field, "   ")).toMatchObject([{ code: "text-length", facts: { given: "" } }]);
		expect(faultsOf(field, "x".repeat(11))).toMatchObject([
			{ code: "text-length", facts: { size: 11, most: 10 } },
		]);
	});

	it.each(["a\nb", "a\tb", "a\u0000b", "a\u007fb", "a\u0085b"])(
		"refuses a control character: %j",
		(given) => expect(faultsOf(field, given)).toMatchObject([{ code: "text-control" }]),
	);
});

describe("kelvinField", () => {
	const field = kelvinField({ from: 0, to: 60 }, text);

	it.each<[string | number, number]>([
		[10, 10],
		["10 K", 10],
		["7.5K", 7.5],
		["0", 0],
		[60, 60],
	])("reads %j", (given, kelvin) => expect(field.parse(given)).toBe(kelvin));

	it.each([-1, 61, "10 C", "10 F", "ten", "", "10 k", "1e1"])("refuses %j", (given) => {
		expect(faultsOf(field, given)).toMatchObject([
			{ code: "kelvin", facts: { given: String(given), allowed: "0 to 60 K" } },
		]);
	});
});

describe("colourField", () => {
	const field = colourField(text);

	it.each(["#0b7a75", "#FFFFFF"])("takes %s", (c) => expect(field.parse(c)).toBe(c));
	it.each(["red", "#fff", "0b7a75", "#0b7a7g", "#0b7a75ff", " #0b7a75", "#0b7a75\n"])(
		"refuses %j",
		(given) => expect(faultsOf(field, given)).toMatchObject([{ code: "colour" }]),
	);
});
