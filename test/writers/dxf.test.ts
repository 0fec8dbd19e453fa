import { describe, expect, it } from "vitest";
import {
	arcFromBulge,
	circle,
	extents,
	line,
	rectangle,
	segments,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { type DxfFlavour, writeDxf } from "../../src/writers/index.js";
import { drawingOf, expectedOf, handDrawing, otherDrawing, PENS } from "../support/drawings.js";
import { auditDxf, numberAt, readDxf, textAt } from "../support/read-dxf.js";

const FLAVOURS: readonly DxfFlavour[] = ["r2000", "r12", "loose"];

describe.each(FLAVOURS)("writeDxf, %s", (flavour) => {
	it("writes a drawing that reads back as it was drawn", () => {
		const sheet = handDrawing();
		expect(auditDxf(writeDxf(sheet, PENS, flavour), flavour, expectedOf(sheet))).toEqual([]);
	});

	it("starts with its version", () => {
		const version = flavour === "r2000" ? "AC1015" : "AC1009";
		const start = `0\r\nSECTION\r\n2\r\nHEADER\r\n9\r\n$ACADVER\r\n1\r\n${version}\r\n`;
		expect(writeDxf(otherDrawing(), PENS, flavour).slice(0, start.length)).toBe(start);
	});

	it("declares layer 0 and the layers that are used, in the order of work", () => {
		const names = (text: string) =>
			readDxf(text)
				.tables.get("LAYER")!
				.records.map((r) => textAt(r.tags, 2));
		expect(names(writeDxf(handDrawing(), PENS, flavour))).toEqual([
			"0",
			"REFERENCE",
			"SCORE",
			"ENGRAVE",
			"CUT",
		]);
		expect(names(writeDxf(otherDrawing(), PENS, flavour))).toEqual(["0", "CUT"]);
	});

	it("gives the exact box, quadrant points of arcs included", () => {
		const sheet = drawingOf({ closed: true, points: [vertex(0, 0, 1), vertex(10, 0)] });
		const { header } = readDxf(writeDxf(sheet, PENS, flavour));
		expect(header.get("$EXTMIN")!.map((t) => t.value)).toEqual([
			"0.000000000",
			"-5.000000000",
			"0.000000000",
		]);
		expect(header.get("$EXTMAX")!.map((t) => t.value)).toEqual([
			"10.000000000",
			"0.000000000",
			"0.000000000",
		]);
	});

	it("writes a full circle as CIRCLE, whichever way it ran", () => {
		const text = writeDxf(drawingOf(circle({ x: 1.5, y: -2 }, 4.25)), PENS, flavour);
		const [only, ...others] = readDxf(text).entities;
		expect(others).toEqual([]);
		expect(only!.type).toBe("CIRCLE");
		expect([10, 20, 40].map((code) => numberAt(only!.tags, code))).toEqual([1.5, -2, 4.25]);
	});

	it("writes an open straight stroke as LINE", () => {
		const text = writeDxf(drawingOf(line({ x: 0, y: 1 }, { x: 2, y: 3 }), "score"), PENS, flavour);
		const [only] = readDxf(text).entities;
		expect(only).toMatchObject({ type: "LINE", layer: "SCORE" });
		expect([10, 20, 11, 21].map((code) => numberAt(only!.tags, code))).toEqual([0, 1, 2, 3]);
	});

	it("writes the same bytes whatever is written in between", () => {
		const alone = [writeDxf(handDrawing(), PENS, flavour), writeDxf(otherDrawing(), PENS, flavour)];
		const inTurns = [
			writeDxf(handDrawing(), PENS, flavour),
			writeDxf(otherDrawing(), PENS, flavour),
			writeDxf(handDrawing(), PENS, flavour),
			writeDxf(otherDrawing(), PENS, flavour),
		];
		expect(inTurns).toEqual([...alone, ...alone]);
	});

	it("puts a note where it stands, at its height and turn", () => {
		const texts = readDxf(writeDxf(handDrawing(), PENS, flavour)).entities.slice(-2);
		const values = texts.map(({ tags }) => [10, 20, 40, 50].map((code) => textAt(tags, code)));
		expect(values).toEqual([
			["20.000000000", "-7.000000000", "2.500000000", "0.000000000"],
			["3.000000000", "30.000000000", "3.500000000", "319.892954341"],
		]);
		expect(texts.map(({ tags }) => textAt(tags, 1))).toEqual(["56 mm", "R 254"]);
	});
});

describe("polylines", () => {
	it.each([
		["r2000", "LWPOLYLINE"],
		["r12", "POLYLINE"],
	] as const)("keep area and extents to the last decimals, %s", (flavour, type) => {
		const sheet = handDrawing();
		const cut = expectedOf(sheet).marks.filter((m) => m.feature === "outline");
		const read = readDxf(writeDxf(sheet, PENS, flavour)).entities.filter(
			(e) => e.type === type && e.layer === "CUT" && e.path!.points.length > 3,
		);
		expect(read).toHaveLength(3);
		for (const [i, { path }] of read.entries()) {
			expect(signedArea(path!)).toBeCloseTo(signedArea(cut[i]!.path), 6);
			for (const [key, value] of Object.entries(extents(cut[i]!.path))) {
				expect(extents(path!)[key as "minX"]).toBeCloseTo(value, 8);
			}
		}
	});

	it("have the bulge 0.0552866 for 10 in over 56 mm (DXF reference: 2·sagitta/chord)", () => {
		const [vertexTag] = readDxf(writeDxf(handDrawing(), PENS, "r2000"))
			.entities.find((e) => e.layer === "CUT" && e.type === "LWPOLYLINE")!
			.tags.filter((t) => t.code === 42);
		expect(vertexTag!.value).toBe("0.055286600000000");
		const arc = arcFromBulge({ x: 0, y: 0 }, { x: 56, y: 0 }, Number(vertexTag!.value));
		expect(arc.radius).toBeCloseTo(254, 3);
	});

	it("cut an arc of more than half a turn in two, so that rounding cannot blow it up", () => {
		const path = { closed: true, points: [vertex(0, 0, 1e5), vertex(1e-4, 0)] };
		const [only] = readDxf(writeDxf(drawingOf(path), PENS, "r2000")).entities;
		const arcs = segments(only!.path!).filter((s) => s.kind === "arc");
		expect(arcs).toHaveLength(2);
		for (const arc of arcs) expect(Math.abs(arc.radius - 2.5)).toBeLessThan(1e-8);
	});
});

describe("a loose file", () => {
	it("is lines, arcs and circles alone, arcs running counter-clockwise", () => {
		const notched = {
			closed: true,
			points: [
				vertex(0, 0),
				vertex(30, 0),
				vertex(30, 10),
				vertex(20, 10, -1),
				vertex(10, 10),
				vertex(0, 10),
			],
		};
		const { entities } = readDxf(writeDxf(drawingOf(notched), PENS, "loose"));
		expect(entities.map((e) => e.type)).toEqual(["LINE", "LINE", "LINE", "ARC", "LINE", "LINE"]);
		const { tags } = entities[3]!;
		// The bulge of −1 leads from (20, 10) clockwise, through (15, 5), to (10, 10).
		expect([10, 20, 40, 50, 51].map((code) => numberAt(tags, code))).toEqual([15, 10, 5, 180, 0]);
	});

	it("refuses an arc too flat for degrees with nine decimals", () => {
		const path = { closed: false, points: [vertex(0, 0, 1e-5), vertex(100, 0)] };
		expect(() => writeDxf(drawingOf(path, "score"), PENS, "loose")).toThrow(/too flat/);
		expect(auditDxf(writeDxf(drawingOf(path, "score"), PENS, "r12"), "r12")).toEqual([]);
	});
});

describe("R2000 handles", () => {
	it("count from 1 without a gap and end below $HANDSEED", () => {
		const file = readDxf(writeDxf(drawingOf(rectangle(0, 0, 4, 3)), PENS, "r2000"));
		const used = file.tags
			.slice(file.tags.findIndex((t) => t.value === "CLASSES"))
			.filter((t) => t.code === 5 || t.code === 105)
			.map((t) => Number.parseInt(t.value, 16))
			.sort((a, b) => a - b);
		expect(used).toEqual(used.map((_, i) => i + 1));
		expect(textAt(file.header.get("$HANDSEED")!, 5)).toBe(
			(used.length + 1).toString(16).toUpperCase(),
		);
	});
});
