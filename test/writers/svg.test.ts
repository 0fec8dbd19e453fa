import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { around, circle, extents, line, signedArea, vertex } from "../../src/geometry/index.js";
import { CAP_HEIGHT, writeSvg } from "../../src/writers/index.js";
import { drawingOf, expectedOf, handDrawing, otherDrawing, PENS } from "../support/drawings.js";
import { auditSvg, readPathData, readSvg } from "../support/read-svg.js";

/** The path data of a drawing with a single mark. */
function dataOf(sheet: ReturnType<typeof drawingOf>): string {
	return readSvg(writeSvg(sheet, PENS)).groups[0]!.paths[0]!.data;
}

describe("writeSvg", () => {
	it("writes a drawing that reads back as it was drawn", () => {
		const sheet = handDrawing();
		expect(auditSvg(writeSvg(sheet, PENS), expectedOf(sheet))).toEqual([]);
	});

	it("keeps areas and extents within rounding", () => {
		const sheet = handDrawing();
		const read = readSvg(writeSvg(sheet, PENS)).groups.flatMap((g) => g.paths);
		const drawn = expectedOf(sheet).marks;
		for (const [i, { path }] of read.entries()) {
			const wanted = drawn[i]!.path;
			if (path.closed) expect(signedArea(path)).toBeCloseTo(signedArea(wanted), 3);
			for (const [key, value] of Object.entries(extents(wanted))) {
				expect(Math.abs(extents(path)[key as "minX"] - value)).toBeLessThan(2e-6);
			}
		}
		const all = around(read.map(({ path }) => extents(path)));
		expect(all.minX).toBeCloseTo(sheet.size.minX + 5, 5);
		expect(all.maxY).toBeCloseTo(sheet.size.maxY - 5, 5);
	});

	it("turns y downward once: a rising line goes to negative y", () => {
		expect(dataOf(drawingOf(line({ x: 0, y: 0 }, { x: 1, y: 2 }), "score"))).toBe(
			"M 0.000000 0.000000 L 1.000000 -2.000000",
		);
	});

	it("gives an arc to the right of its chord sweep flag 0 after the flip, the other 1", () => {
		const arc = (bulge: number) =>
			dataOf(drawingOf({ closed: false, points: [vertex(0, 0, bulge), vertex(2, 0)] }, "score"));
		const quarter = Math.tan(Math.PI / 8);
		expect(arc(quarter)).toBe("M 0.000000 0.000000 A 1.414214 1.414214 0 0 0 2.000000 0.000000");
		expect(arc(-quarter)).toBe("M 0.000000 0.000000 A 1.414214 1.414214 0 0 1 2.000000 0.000000");
	});

	it("writes a full circle as four quarter arcs that close", () => {
		expect(dataOf(drawingOf(circle({ x: 10, y: 5 }, 3)))).toBe(
			"M 13.000000 -5.000000 A 3.000000 3.000000 0 0 0 10.000000 -8.000000 " +
				"A 3.000000 3.000000 0 0 0 7.000000 -5.000000 A 3.000000 3.000000 0 0 0 10.000000 -2.000000 " +
				"A 3.000000 3.000000 0 0 0 13.000000 -5.000000 Z",
		);
	});

	it("keeps a circle round where half arcs would be 1.5 µm off by rounding alone", () => {
		const [x, y, r] = [12.3456784, -4.1234567, 2.3456786];
		const { path } = readPathData(dataOf(drawingOf(circle({ x, y }, r))));
		const box = extents(path);
		for (const [got, wanted] of [
			[box.minX, x - r],
			[box.maxX, x + r],
			[box.minY, y - r],
			[box.maxY, y + r],
		] as const) {
			expect(Math.abs(got - wanted)).toBeLessThan(1.3e-6);
		}
	});

	it("keeps a near-full circle although its ends almost meet", () => {
		const path = { closed: false, points: [vertex(0, 0, 1e5), vertex(1e-4, 0)] };
		const sheet = drawingOf(path, "engrave");
		const text = writeSvg(sheet, PENS);
		expect(auditSvg(text, expectedOf(sheet))).toEqual([]);
		expect(extents(readSvg(text).groups[0]!.paths[0]!.path).maxX).toBeCloseTo(2.5, 2);
	});

	it("puts one group per operation in the order of work, with its pen", () => {
		const { groups, title, desc } = readSvg(writeSvg(handDrawing(), PENS));
		expect(groups.map((g) => g.attributes.id)).toEqual(["reference", "score", "engrave", "cut"]);
		expect(groups.map((g) => g.attributes.class)).toEqual(groups.map((g) => g.attributes.id));
		expect(groups[2]!.attributes.stroke).toBe("#5d4037");
		expect(groups[2]!.attributes["stroke-width"]).toBe("0.150000");
		expect(title).toBe("Drawing hand");
		expect(desc).toContain("Part gauge (gauge): plywood, 3 mm thick. Working edge: lower edge.");
		expect(desc).toContain("Keep it dry.");
	});

	it("keeps the order in which marks of one operation were given", () => {
		const score = readSvg(writeSvg(handDrawing(), PENS)).groups[1]!;
		expect(score.paths.map((p) => `${p.feature} of ${p.part}`).slice(0, 3)).toEqual([
			"slot 7 of gauge",
			"slot 8 of gauge",
			"slot 7 of turned",
		]);
	});

	it("starts as an XML document with one svg element", () => {
		const start = '<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg"';
		expect(writeSvg(otherDrawing(), PENS).slice(0, start.length)).toBe(start);
	});

	it("leaves out groups that would be empty", () => {
		expect(readSvg(writeSvg(otherDrawing(), PENS)).names).toEqual(["title", "desc", "g"]);
	});

	it("asks for paper of the sheet's size when told to, and changes nothing else", () => {
		const sheet = handDrawing();
		const paper = { ...sheet, size: { minX: -20, minY: -60.5, maxX: 190, maxY: 236.5 } };
		const [plain, page] = [writeSvg(paper, PENS), writeSvg(paper, PENS, { page: true })];
		const style = "<style>@page { size: 210mm 297mm; margin: 0 }</style>\n";
		expect(page).toContain(`</desc>\n${style}<g `);
		expect(page.replace(style, "")).toBe(plain);
		expect(writeSvg(paper, PENS, {})).toBe(plain);
		expect(plain).not.toContain("style");
	});

	it("asks for paper with at most six decimals", () => {
		const size = { minX: -20, minY: -60, maxX: 195.9, maxY: 219.4 + 1 / 3 };
		expect(writeSvg({ ...handDrawing(), size }, PENS, { page: true })).toContain(
			"size: 215.9mm 279.733333mm;",
		);
	});

	it("writes notes as text of their own width, turned the way they were", () => {
		const [reference] = readSvg(writeSvg(handDrawing(), PENS)).groups;
		const [, turned] = reference!.texts;
		expect(turned!.text).toBe("R 254");
		expect(turned!.attributes).toEqual({
			transform: "translate(3.000000 -30.000000) rotate(40.107046)",
			"font-family": "sans-serif",
			"font-size": (3.5 / CAP_HEIGHT).toFixed(6),
			textLength: "11.250000",
			lengthAdjust: "spacingAndGlyphs",
			fill: "#607d8b",
			stroke: "none",
		});
	});

	it("writes the same bytes whatever is written in between", () => {
		const alone = [writeSvg(handDrawing(), PENS), writeSvg(otherDrawing(), PENS)];
		const inTurns = [
			writeSvg(handDrawing(), PENS),
			writeSvg(otherDrawing(), PENS),
			writeSvg(handDrawing(), PENS),
			writeSvg(otherDrawing(), PENS),
		];
		expect(inTurns).toEqual([...alone, ...alone]);
	});
});

/** Colour of the pixel that holds a place in mm from the upper left corner, at 10 px/mm. */
function pixels(svg: string) {
	const image = new Resvg(svg, {
		dpi: 254,
		background: "#ffffff",
		font: { loadSystemFonts: false },
	}).render();
	const at = (x: number, y: number) =>
		image.pixels.subarray((Math.floor(y * 10) * image.width + Math.floor(x * 10)) * 4).slice(0, 3);
	return { width: image.width, height: image.height, at: (x: number, y: number) => [...at(x, y)] };
}

describe("a renderer of another maker", () => {
	it("finds 480 mm to be 1814.173228 px at 96 px/in (CSS Values and Units)", () => {
		const sheet = { ...drawingOf(line({ x: 5, y: 5 }, { x: 475, y: 5 }), "score") };
		const text = writeSvg({ ...sheet, size: { minX: 0, minY: 0, maxX: 480, maxY: 10 } }, PENS);
		const image = new Resvg(text, { font: { loadSystemFonts: false } });
		expect([image.width, image.height]).toEqual([Math.round(1814.173228), Math.round(37.795276)]);
		expect(pixels(text)).toMatchObject({ width: 4800, height: 100 });
	});

	it("draws arcs on the side that their bulge says, and four quarters as a circle", () => {
		const wide = { ...PENS, cut: { colour: "#ff0000", width: 0.4 } };
		const path = {
			closed: true,
			points: [vertex(0, 0, 0.5), vertex(20, 0), vertex(20, 20, 0.5), vertex(0, 20)],
		};
		const lens = pixels(writeSvg(drawingOf(path), wide));
		// The sheet runs from x −5 and y −10 to y 30: 5 mm around the outline.
		expect(lens).toMatchObject({ width: 300, height: 400 });
		expect(lens.at(15, 35)).toEqual([255, 0, 0]);
		expect(lens.at(15, 5)).toEqual([255, 0, 0]);
		expect(lens.at(15, 25)).toEqual([255, 255, 255]);
		const ring = pixels(writeSvg(drawingOf(circle({ x: 0, y: 0 }, 4)), wide));
		for (const [x, y] of [
			[5, 9],
			[13, 9],
			[9, 5],
			[9, 13],
			[9 + 4 * Math.SQRT1_2, 9 + 4 * Math.SQRT1_2],
		] as const) {
			expect(ring.at(x, y)).toEqual([255, 0, 0]);
		}
		expect(ring.at(9, 9)).toEqual([255, 255, 255]);
	});
});
