import { describe, expect, it } from "vitest";
import type * as z from "zod";
import { bedField, kerfField, parseSheet, speedField } from "../../src/fields/index.js";

const TEXT = { text: "test" };

/** What a field makes of a value: the value, or the codes of its faults. */
function read(field: z.ZodType, given: unknown) {
	const result = field.safeParse(given);
	if (result.success) return result.data;
	return result.error.issues.map((issue) =>
		issue.code === "custom" ? issue.params?.code : issue.code,
	);
}

describe("speedField", () => {
	it("reads lengths a second or a minute, and bare numbers in the file's unit", () => {
		const mm = speedField("mm", TEXT);
		expect(read(mm, "12 mm/s")).toBe(12);
		expect(read(mm, "720 mm / min")).toBe(12);
		expect(read(mm, 80)).toBe(80);
		expect(read(mm, "0.5 in/s")).toBeCloseTo(12.7, 12);
		expect(read(speedField("in", TEXT), 2)).toBeCloseTo(50.8, 12);
	});

	it.each([["12 mm/h"], ["fast"], [0], ["-3 mm/s"], [".inf"]])("refuses %s", (given) => {
		expect(read(speedField("mm", TEXT), given)).toEqual(["speed"]);
	});
});

describe("bedField", () => {
	const field = bedField("mm", { from: 20, to: 5000 }, TEXT);

	it.each([
		["600 x 400 mm", 600, 400],
		["600x400", 600, 400],
		["24 × 16 in", 609.6, 406.4],
		["24 in x 400 mm", 609.6, 400],
		['24" x 16"', 609.6, 406.4],
	])("reads %s", (given, x, y) => {
		const bed = read(field, given) as { x: number; y: number };
		expect(bed.x).toBeCloseTo(x, 9);
		expect(bed.y).toBeCloseTo(y, 9);
	});

	it.each([
		["0 x 400 mm", ["length-range"]],
		["-600 x 0 mm", ["length-range", "length-range"]],
		["600 mm", ["bed"]],
		["600 x 400 x 3 mm", ["bed"]],
		["a x b", ["bed"]],
		[600, ["invalid_type"]],
	])("refuses %s", (given, codes) => {
		expect(read(field, given)).toEqual(codes);
	});
});

describe("kerfField", () => {
	const field = kerfField("mm", { from: 0, to: 2 }, ["acrylic", "mdf"], TEXT);

	it("reads one width or one a sheet", () => {
		expect(read(field, "0.16 mm")).toBe(0.16);
		expect(read(field, { "acrylic 3 mm": 0.16, "MDF 1/8 in": "0.2 mm" })).toEqual([
			{ material: "acrylic", thickness: 3, kerf: 0.16 },
			{ material: "mdf", thickness: 3.175, kerf: 0.2 },
		]);
	});

	it("reads no sheet from other names", () => {
		for (const name of ["acrylic", "3 mm", "glass 3 mm", "acrylic 0 mm", "acrylic thin", ""]) {
			expect(parseSheet(name, "mm", ["acrylic", "mdf"]), name).toBeNull();
		}
	});
});
