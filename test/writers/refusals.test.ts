import { describe, expect, it } from "vitest";
import type { Mark, Pens, Sheet } from "../../src/drawing/index.js";
import { rectangle, STAY, vertex } from "../../src/geometry/index.js";
import { writeDxf, writeSvg } from "../../src/writers/index.js";
import { drawingOf, handDrawing, PENS, partOf } from "../support/drawings.js";

const WRITERS: readonly (readonly [string, (sheet: Sheet, pens: Pens) => string])[] = [
	["SVG", writeSvg],
	["DXF R2000", (sheet, pens) => writeDxf(sheet, pens, "r2000")],
	["DXF R12", (sheet, pens) => writeDxf(sheet, pens, "r12")],
	["loose DXF", (sheet, pens) => writeDxf(sheet, pens, "loose")],
];

const SIZE = { minX: -10, minY: -10, maxX: 50, maxY: 50 };

/** A sheet with one mark of the given points. */
function withPoints(points: Mark["path"]["points"], closed = true, move = STAY): Sheet {
	const part = partOf("gauge", [{ operation: "cut", feature: "slot 7", path: { points, closed } }]);
	return { ...drawingOf(rectangle(0, 0, 1, 1)), size: SIZE, placed: [{ part, move }] };
}

describe.each(WRITERS)("%s", (_name, write) => {
	it.each([
		[
			"NaN in x",
			[vertex(Number.NaN, 0), vertex(1, 0), vertex(0, 1)],
			/slot 7 of gauge.*not finite/,
		],
		[
			"an infinite y",
			[vertex(0, Number.POSITIVE_INFINITY), vertex(1, 0), vertex(0, 1)],
			/not finite/,
		],
		["NaN in a bulge", [vertex(0, 0, Number.NaN), vertex(1, 0), vertex(0, 1)], /not finite/],
		["an infinite bulge", [vertex(0, 0, Number.NEGATIVE_INFINITY), vertex(1, 0)], /not finite/],
		["a repeated vertex", [vertex(0, 0), vertex(0, 0), vertex(0, 1)], /no length between vertex 0/],
		[
			"a closing piece without length",
			[vertex(0, 0), vertex(1, 0), vertex(1e-7, 0)],
			/no length between vertex 2/,
		],
		["a single point", [vertex(0, 0)], /two points/],
		[
			"a contour beyond the sheet",
			[vertex(0, 0), vertex(50.1, 0), vertex(0, 1)],
			/outside the sheet/,
		],
		[
			"an arc beyond the sheet",
			[vertex(0, 0, 1), vertex(30, 0), vertex(0, 1)],
			/outside the sheet/,
		],
	])("refuses %s", (_what, points, message) => {
		expect(() => write(withPoints(points), PENS)).toThrow(message);
	});

	it("refuses an open mark of zero length and a place that is no number", () => {
		expect(() => write(withPoints([vertex(3, 3), vertex(3, 3)], false), PENS)).toThrow(/no length/);
		const move = { ...STAY, turn: Number.NaN };
		expect(() => write(withPoints([vertex(0, 0), vertex(1, 0)], false, move), PENS)).toThrow(
			/place is not finite/,
		);
	});

	it("refuses a sheet without size", () => {
		for (const size of [
			{ ...SIZE, maxX: Number.NaN },
			{ ...SIZE, minY: Number.NEGATIVE_INFINITY },
		]) {
			expect(() => write({ ...handDrawing(), size }, PENS)).toThrow(RangeError);
		}
	});

	it("refuses colours that are not #rrggbb and pens without width", () => {
		for (const colour of ["red", "#fff", '#00000"', "#c2185b onload=", ""]) {
			const pens = { ...PENS, score: { colour, width: 0.1 } };
			expect(() => write(handDrawing(), pens)).toThrow(/not a colour/);
		}
		for (const width of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
			const pens = { ...PENS, score: { colour: "#000000", width } };
			expect(() => write(handDrawing(), pens)).toThrow(/width above 0/);
		}
	});

	it("refuses notes without place, size or turn", () => {
		const note = { text: "56 mm", at: { x: 0, y: 0 }, height: 2.5, turn: 0, width: 9 };
		for (const wrong of [
			{ height: 0 },
			{ height: Number.NaN },
			{ width: -1 },
			{ turn: Number.POSITIVE_INFINITY },
			{ at: { x: 0, y: Number.NaN } },
		]) {
			const sheet = { ...handDrawing(), notes: [{ ...note, ...wrong }] };
			expect(() => write(sheet, PENS)).toThrow(RangeError);
		}
	});
});

describe("a sheet without marks", () => {
	it("is refused by the DXF writer, which has no extents to give", () => {
		const empty = { ...handDrawing(), placed: [], marks: [] };
		expect(() => writeDxf(empty, PENS, "r2000")).toThrow(/nothing to take the extents of/);
	});
});
