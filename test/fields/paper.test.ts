import { describe, expect, it } from "vitest";
import * as z from "zod";
import { type PaperSize, paperField, paperFromText, usualPaper } from "../../src/fields/index.js";
import { shapeProblems } from "../../src/job/shape.js";
import type { Problem } from "../../src/problem/index.js";
import type { Unit } from "../../src/units/index.js";

const NO_GUESS = () => "";
const read = (given: string, unit: Unit = "mm") =>
	paperFromText(given, unit, NO_GUESS, ["--paper"]) as PaperSize;
const refused = (given: string, unit: Unit = "mm") =>
	paperFromText(given, unit, NO_GUESS, ["--paper"]) as Problem;

/** What the field makes of a job's value: the paper, or its problems with their places. */
function field(paper: unknown, unit: Unit = "mm") {
	const schema = z.strictObject({ paper: paperField(unit, NO_GUESS) });
	const result = schema.safeParse({ paper });
	if (result.success) return result.data.paper;
	const problems = shapeProblems(schema, { paper }, result.error.issues, []);
	return problems.map(({ code, where }) => `${where.path.join(".")}: ${code}`);
}

describe("paperFromText", () => {
	it.each([
		// ISO 216:2007, main series A.
		["A4", 210, 297],
		["A3", 297, 420],
		// ANSI/ASME Y14.1, sizes A (8.5 x 11 in) and B (11 x 17 in), in millimetres of 25.4 to the inch.
		["Letter", 215.9, 279.4],
		["Tabloid", 279.4, 431.8],
		// 8.5 x 14 in: common practice, no source.
		["Legal", 215.9, 355.6],
	])("knows %s", (name, width, height) => {
		for (const given of [name, name.toLowerCase(), ` ${name.toUpperCase()} `]) {
			const size = read(given);
			expect(size.name).toBe(name);
			expect(size.width).toBeCloseTo(width, 9);
			expect(size.height).toBeCloseTo(height, 9);
		}
	});

	it("knows papers of ISO 216 by its law: A0 is a square metre, each halves the one before", () => {
		const [a3, a4] = [read("A3"), read("A4")];
		expect(a4.height).toBe(a3.width);
		expect(Math.floor(a3.height! / 2)).toBe(a4.width);
		// ISO 216: sides in the ratio of 1 to the square root of 2, rounded to whole millimetres.
		for (const [n, { width }] of [[3, a3] as const, [4, a4] as const]) {
			expect(Math.abs(1000 * 2 ** (-1 / 4 - n / 2) - width)).toBeLessThan(1);
		}
	});

	it.each([
		["210 x 330 mm", "mm", "210 x 330 mm", 210, 330],
		["210x330", "mm", "210 x 330 mm", 210, 330],
		["8.5 × 13 in", "mm", "215.9 x 330.2 mm", 215.9, 330.2],
		["8 1/2 x 13", "in", "215.9 x 330.2 mm", 215.9, 330.2],
		["21 cm X 330 mm", "mm", "210 x 330 mm", 210, 330],
		["330 x 210 mm", "mm", "330 x 210 mm", 330, 210],
		["roll 610 mm", "mm", "roll 610 mm", 610, null],
		["Roll 24 in", "mm", "roll 609.6 mm", 609.6, null],
		["roll 24", "in", "roll 609.6 mm", 609.6, null],
	])("reads %s where a number is in %s", (given, unit, name, width, height) => {
		const size = read(given, unit as Unit);
		expect(size.name).toBe(name);
		expect(size.width).toBeCloseTo(width, 9);
		if (height === null) expect(size.height).toBeNull();
		else expect(size.height).toBeCloseTo(height, 9);
	});

	it.each([
		["A5", "paper-unknown"],
		["executive", "paper-unknown"],
		["", "paper-unknown"],
		["roll", "paper-unknown"],
		["210", "paper-unknown"],
		["A4 landscape", "paper-words"],
		["letter turned", "paper-words"],
		["210 x 330 x 2 mm", "not-a-length"],
		["210 x", "paper-unknown"],
		["wide x 330", "paper-unknown"],
		["210,5 x 330 mm", "decimal-comma"],
		["210 x 330,5 mm", "decimal-comma"],
		["49 x 330 mm", "length-range"],
		["210 x 5001 mm", "length-range"],
		["-210 x 330 mm", "length-range"],
		["roll 99 mm", "length-range"],
		["roll 2001 mm", "length-range"],
		["roll A4", "not-a-length"],
		["roll 24 feet", "unknown-unit"],
	])("refuses %j", (given, code) => {
		expect(refused(given)).toMatchObject({ code, severity: "error", where: { path: ["--paper"] } });
	});

	it("says what paper that is fed by its other edge is called", () => {
		expect(refused("letter landscape").facts).toMatchObject({
			name: "Letter",
			turned: "279.4 x 215.9 mm",
		});
	});
});

describe("paperField", () => {
	it("takes a text or a map of two sides, whichever is the longer", () => {
		expect(field("a4")).toEqual({ name: "A4", width: 210, height: 297 });
		expect(field({ width: "21 cm", height: 330 })).toEqual(field("210 x 330 mm"));
		expect(field({ width: 330, height: 210 })).toMatchObject({ width: 330, height: 210 });
		expect(field({ width: 8.5, height: 13 }, "in")).toMatchObject({ name: "215.9 x 330.2 mm" });
	});

	it.each([
		["A4 portrait", ["paper: paper-words"]],
		["A9", ["paper: paper-unknown"]],
		[4, ["paper: wrong-kind"]],
		[null, ["paper: no-value"]],
		[undefined, ["paper: missing"]],
		[{ width: 10, height: 6000 }, ["paper.width: length-range", "paper.height: length-range"]],
		[{ width: 210 }, ["paper.height: missing"]],
		[{ width: 210, height: 330, turn: true }, ["paper.turn: unknown-key"]],
	])("refuses %j", (given, problems) => {
		expect(field(given)).toEqual(problems);
	});
});

describe("usualPaper", () => {
	it("is Letter where lengths are in inches, else A4", () => {
		expect(usualPaper("in").name).toBe("Letter");
		for (const unit of ["mm", "cm", "m"] as const) expect(usualPaper(unit).name).toBe("A4");
	});
});
