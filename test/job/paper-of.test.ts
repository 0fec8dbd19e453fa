import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type PaperSize, usualPaper } from "../../src/fields/index.js";
import { paperOf } from "../../src/job/paper-of.js";
import {
	type PrinterValues,
	paperSchema,
	parsePaper,
	printerSchema,
} from "../../src/job/paper-schema.js";
import { bodyOf, type Paper, printable, SIDE } from "../../src/paper/index.js";
import { type Problem, problemText } from "../../src/problem/index.js";

const A4 = usualPaper("mm");
const USUAL: PrinterValues = { across: 1, along: 1, margin: 6, overlap: 15 };
const sheet = (width: number, height: number): PaperSize => ({ name: "sheet", width, height });
const roll = (width: number): PaperSize => ({ name: "roll", width, height: null });
const made = (size: PaperSize, values: Partial<PrinterValues> = {}) =>
	paperOf(size, { ...USUAL, ...values }) as Paper;
const refused = (size: PaperSize, values: Partial<PrinterValues> = {}) =>
	paperOf(size, { ...USUAL, ...values }) as Problem[];

/** What the block makes of its keys: the values, or its faults. */
function printer(keys: object) {
	const result = printerSchema("mm").safeParse(keys);
	return result.success
		? result.data
		: result.error.issues.map((i) => (i.code === "custom" ? i.params : i.code));
}

describe("parsePaper", () => {
	it("guesses at a mistyped name and says what there is", () => {
		const found = parsePaper("leter", "mm") as Problem;
		expect(found.where.path).toEqual(["--paper"]);
		expect(problemText(found)).toBe(
			'"leter" is no paper that camber knows. Did you mean "Letter"? Write it like one of these: A4, A3, Letter, Legal, Tabloid, 210 x 330 mm, roll 610 mm.',
		);
		expect(parsePaper("roll 24", "in")).toMatchObject({ name: "roll 609.6 mm", height: null });
	});

	it("tells of a turned paper that pages stay as they are fed", () => {
		expect(problemText(parsePaper("A4 landscape", "mm") as Problem)).toBe(
			'"A4 landscape" says more than the paper\'s name. Write A4: pages stay as they are fed, and what is drawn on them turns. Paper fed by its other edge is 297 x 210 mm.',
		);
	});
});

describe("paperSchema", () => {
	it("may be left out", () => {
		expect(paperSchema("mm").parse(undefined)).toBeUndefined();
		expect(paperSchema("mm").parse("a3")).toMatchObject({ name: "A3" });
	});
});

describe("printerSchema", () => {
	it("has a default for every key", () => {
		expect(printerSchema("mm").parse(undefined)).toEqual(USUAL);
		expect(printerSchema("in").parse({ margin: 0.25 })).toEqual({ ...USUAL, margin: 6.35 });
	});

	it.each([0.988, 0.996111, 1.012])("takes a factor of %d", (across) => {
		expect(printer({ across })).toMatchObject({ across });
	});

	it.each([
		[0, "printer-factor", undefined],
		[-1, "printer-factor", undefined],
		[0.98, "printer-misread", ""],
		[1.0125, "printer-misread", ""],
		[1.0151, "printer-misread", "inch rule"],
		[1.017, "printer-misread", "inch rule"],
		[1.0171, "printer-misread", ""],
		[0.985, "printer-misread", "metric rule"],
		[99.7, "printer-misread", "percent"],
		[0.4, "printer-misread", "percent"],
		[0.039, "printer-misread", "inches"],
		[25.3, "printer-misread", "inches"],
		[1e300, "printer-misread", ""],
		[1e-300, "printer-misread", ""],
	])("refuses %d as %s: %s", (along, code, slip) => {
		const [fault] = printer({ along }) as { code: string; facts: Record<string, string> }[];
		expect(fault).toMatchObject({ code });
		expect(fault!.facts.slip).toBe(slip);
	});

	it.each([
		[{ margin: "51 mm" }, "length-range"],
		[{ margin: -1 }, "length-range"],
		[{ overlap: 0 }, "length-range"],
		[{ overlap: "201 mm" }, "length-range"],
	])("refuses %j", (keys, code) => {
		expect(printer(keys)).toMatchObject([{ code }]);
	});
});

/** What the rules of 4 in take within the margins: 101.6 mm and their end marks, beside the page's strip. */
const RULES = SIDE + 106;
/** The same across the page, where the map of the tiles stands beside the rule. */
const ACROSS = RULES + 11;

describe("paperOf", () => {
	it("puts paper and printer together", () => {
		expect(made(A4, { across: 0.996, along: 1.002 })).toEqual({
			name: "A4",
			width: 210,
			height: 297,
			margin: 6,
			overlap: 15,
			made: { x: 0.996, y: 1.002 },
		});
	});

	it("takes every paper with a name and a roll", () => {
		for (const name of ["A4", "A3", "Letter", "Legal", "Tabloid", "roll 24 in", "roll 200 mm"]) {
			const size = parsePaper(name, "mm") as PaperSize;
			expect(made(size)).toMatchObject({ name: size.name });
		}
	});

	it("wants room for rules of 4 in both ways: 101.6 mm and their end marks", () => {
		// The texts and a body of 60 mm need less.
		const [wide, least] = [ACROSS + 2 * 6, RULES + 2 * 6];
		expect(made(sheet(wide, least))).toMatchObject({ width: wide });
		for (const size of [sheet(wide - 0.1, 200), sheet(200, least - 0.1)]) {
			const [found, ...more] = refused(size);
			expect(more).toEqual([]);
			expect(found).toMatchObject({
				code: "paper-too-small",
				where: { path: ["paper"] },
				facts: { width: wide, height: least, margin: 6 },
			});
		}
		expect(refused(roll(wide - 1))).toMatchObject([{ facts: { width: wide, height: "" } }]);
	});

	it("blames the margin where a usual one would do", () => {
		// A4 is 210 mm wide: margins of half of what the rules leave of it, and no more.
		const most = (210 - ACROSS) / 2;
		expect(refused(A4, { margin: 50 })).toMatchObject([
			{
				code: "paper-too-small",
				where: { path: ["printer", "margin"] },
				facts: { width: ACROSS + 100 },
			},
		]);
		expect(made(A4, { margin: most })).toMatchObject({ margin: most });
		expect(refused(A4, { margin: most + 0.1 })).toHaveLength(1);
	});

	it("takes an overlap of half the body's smaller side and no more", () => {
		// A4's body is its width less two margins, the strip beside it and 1 mm for letters' ends.
		const most = (210 - 12 - SIDE - 1) / 2;
		expect(made(A4, { overlap: most })).toMatchObject({ overlap: most });
		const [found] = refused(A4, { overlap: most + 0.1 });
		expect(found).toMatchObject({
			code: "overlap-too-wide",
			where: { path: ["printer", "overlap"] },
		});
		expect(found!.facts.most).toBeCloseTo(most, 9);
		expect(problemText(found!)).toContain(`Give ${most} mm or less`);
		// A roll's length does not count.
		expect(made(roll(610), { overlap: 200 })).toMatchObject({ overlap: 200 });
		expect(refused(roll(200), { overlap: 95 })[0]!.facts.most).toBeCloseTo(
			(200 - 12 - SIDE - 1) / 2,
			9,
		);
	});

	it("states a least paper that suffices, of which nothing can be spared", () => {
		const factor = fc.double({ min: 0.988, max: 1.012, noNaN: true });
		const margin = fc.double({ min: 0, max: 50, noNaN: true });
		fc.assert(
			fc.property(factor, factor, margin, (across, along, margin) => {
				const values = { across, along, margin };
				const { width, height } = refused(sheet(101, 101), values)[0]!.facts;
				const [w, h] = [Number(width), Number(height)];
				const paper = made(sheet(w, h), values);
				expect(paper).not.toBeInstanceOf(Array);
				const area = printable(paper, h);
				expect(area.maxY - area.minY).toBeGreaterThanOrEqual(RULES - 1e-9);
				const body = bodyOf(paper, h);
				expect(Math.min(body.maxX - body.minX, body.maxY - body.minY)).toBeGreaterThanOrEqual(
					60 - 1e-9,
				);
				expect(refused(sheet(w - 0.11, h), values)).toHaveLength(1);
				expect(refused(sheet(w, h - 0.11), values)).toHaveLength(1);
			}),
			{ seed: 610, numRuns: 200 },
		);
	});
});
