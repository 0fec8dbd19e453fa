import { Resvg } from "@resvg/resvg-js";
import dxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import type { Pens, Sheet } from "../../src/drawing/index.js";
import { type Extents, line } from "../../src/geometry/index.js";
import { inches, parseLength } from "../../src/units/index.js";
import { writeDxf, writeSvg } from "../../src/writers/index.js";

/** The package's default export is the class itself at run time. */
const Parser = dxfParser as unknown as typeof import("dxf-parser").DxfParser;

/** A length as written, in mm. */
function mm(text: string): number {
	const value = parseLength(text, "mm");
	if (typeof value !== "number") throw new Error(`${text}: ${value.fault}`);
	return value;
}

const PEN = { colour: "#000000", width: 0.2 };
const PENS: Pens = { cut: PEN, score: PEN, engrave: PEN, tab: PEN, reference: PEN };

/** A sheet with one level line across the middle. */
function sheetOf(size: Extents): Sheet {
	const y = (size.minY + size.maxY) / 2;
	const path = line({ x: size.minX, y }, { x: size.maxX, y });
	const marks = [{ operation: "cut", path, feature: "line" } as const];
	return { name: "line", title: "Line", size, placed: [], marks, notes: [] };
}

/** The international inch is 25.4 mm exactly (yard and pound agreement, 1959). */
describe("the inch", () => {
	test("is 25.4 mm exactly, both ways", () => {
		expect(mm("1 in")).toBe(25.4);
		expect(mm("10 in")).toBe(254);
		expect(mm("5000 in")).toBe(127_000);
		expect(inches(127_000)).toBe("5000.0000");
	});

	test("divides into binary fractions without a remainder", () => {
		expect(mm("1/64 in") * 64).toBe(25.4);
		expect(mm("1/8 in")).toBe(3.175);
	});
});

/** CSS Values and Units: 1 in is 96 px. */
describe("the CSS pixel, 96 to the inch", () => {
	test("makes 480 mm 1814.173228 px", () => {
		expect((480 / mm("1 in")) * 96).toBeCloseTo(1814.173228, 6);
		expect(480 / mm("1/96 in")).toBeCloseTo(1814.173228, 6);
	});

	test("is how a renderer, in whole pixels, sizes a written sheet of 480 × 40 mm", () => {
		const svg = writeSvg(sheetOf({ minX: 0, minY: 0, maxX: 480, maxY: 40 }), PENS);
		const { width, height } = new Resvg(svg, { font: { loadSystemFonts: false } });
		expect(width).toBe(Math.round(480 / mm("1/96 in")));
		expect(height).toBe(Math.round(40 / mm("1/96 in")));
	});
});

/** PDF 1.7 (ISO 32000-1) 4.2: a unit of user space is 1/72 in. A4 is 210 × 297 mm (ISO 216). */
describe("the PDF unit, 72 to the inch", () => {
	test("makes 480 mm 1360.629921 units", () => {
		expect(480 / mm("1/72 in")).toBeCloseTo(1360.629921, 6);
	});

	test("makes A4 595.2756 × 841.8898 units", () => {
		expect(210 / mm("1/72 in")).toBeCloseTo(595.2756, 4);
		expect(297 / mm("1/72 in")).toBeCloseTo(841.8898, 4);
	});
});

/** DXF reference: $INSUNITS 4 is millimetres, 1 inches; $MEASUREMENT 1 is metric. */
describe("a DXF file", () => {
	test("holds 10 in as 254 units, which it calls millimetres", () => {
		const ten = { minX: 0, minY: 0, maxX: mm("10 in"), maxY: 1 };
		const read = new Parser().parseSync(writeDxf(sheetOf(ten), PENS, "r2000"));
		expect(read?.header.$INSUNITS).toBe(4);
		expect(read?.header.$MEASUREMENT).toBe(1);
		const [entity] = read?.entities ?? [];
		const [start, end] = (entity as unknown as { vertices: { x: number }[] }).vertices;
		expect(end!.x - start!.x).toBe(254);
	});
});
