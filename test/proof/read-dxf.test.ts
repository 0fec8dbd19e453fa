import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	extents,
	type Path,
	pathLength,
	pointAt,
	segments,
	signedArea,
} from "../../src/geometry/index.js";
import { readDxf } from "../../src/proof/index.js";
import { type DxfFlavour, writeDxf } from "../../src/writers/index.js";
import { wantedEntities } from "../support/audit-dxf-contents.js";
import { circleFault, gap, isCircle, pathFault } from "../support/compare-paths.js";
import { expectedOf, handDrawing, PENS } from "../support/drawings.js";
import { FEW, madeExample } from "../support/examples.js";
import { dxfOf, dxfText, LINE, POLYLINE } from "../support/proof-faults.js";
import { readDxf as readElsewhere } from "../support/read-dxf.js";

const bytes = (text: string) => new TextEncoder().encode(text);

/** The bounds that the project's own audit of DXF files has: see audit-dxf-contents. */
const NEAR = 2e-9;
const NEAR_BY_ANGLE = 1e-11;

const MM = "9 $INSUNITS\n70 4\n9 $MEASUREMENT\n70 1";

function faultOf(path: Path, read: Path, near = NEAR): string | null {
	return isCircle(path) ? circleFault(path, read, near) : pathFault(path, read, near);
}

/** Corners of the only stroke, as "x,y" or "x,y,bulge". */
function cornersOf(entities: string, header?: string): string[] {
	const { strokes } = dxfOf(entities, header);
	expect(strokes).toHaveLength(1);
	return corners(strokes[0]!.path);
}

function corners({ points }: Path): string[] {
	const clean = (n: number) => Number(n.toFixed(9)) + 0;
	return points.map(({ x, y, bulge }) =>
		[clean(x), clean(y), ...(bulge === 0 ? [] : [clean(bulge)])].join(","),
	);
}

function codesOf(entities: string, header?: string): string[] {
	return dxfOf(entities, header).findings.map((f) => f.code);
}

describe.each(["heron-baritone", "wren-mandolin"])("readDxf on what camber writes of %s", (job) => {
	it.each(["r2000", "r12"] satisfies DxfFlavour[])(
		"reads every mark and note back to within 2e-9 mm, and finds nothing: %s",
		async (dxf) => {
			const { files, drawings } = await madeExample(job, { formats: ["dxf"], dxf, only: FEW });
			expect(drawings.length).toBeGreaterThan(2);
			for (const { sheet } of drawings) {
				const file = files.find((f) => f.sheet === sheet.name)!;
				const { strokes, texts, findings } = readDxf(file.bytes);
				expect(findings, file.name).toEqual([]);
				const { marks, notes } = expectedOf(sheet);
				expect(strokes.map((s) => s.operation)).toEqual(marks.map((m) => m.operation));
				const faults = marks.map(({ path }, i) => faultOf(path, strokes[i]!.path));
				expect(faults.filter(Boolean), file.name).toEqual([]);
				expect(texts).toHaveLength(notes.length);
				for (const [i, { at, height, turn }] of notes.entries()) {
					const text = texts[i]!;
					expect(gap(text.at, at)).toBeLessThan(NEAR);
					expect(text.height).toBeCloseTo(height, 8);
					const over = text.turn - turn;
					expect(Math.hypot(Math.cos(over) - 1, Math.sin(over))).toBeLessThan(1e-9);
				}
			}
		},
	);

	it("reads every piece of a loose file back, and its cut contours joined again", async () => {
		const { files, drawings } = await madeExample(job, {
			formats: ["dxf"],
			dxf: "loose",
			only: FEW,
		});
		for (const { sheet } of drawings) {
			const file = files.find((f) => f.sheet === sheet.name)!;
			const { strokes, findings } = readDxf(file.bytes);
			expect(findings, file.name).toEqual([]);
			const expected = expectedOf(sheet);
			const closed = expected.marks.filter((m) => m.operation === "cut" && m.path.closed);
			const cut = strokes.filter((s) => s.operation === "cut" && s.path.closed);
			expect(cut.length, file.name).toBe(closed.length);
			const faults = closed.map(({ path }, i) => {
				const radii = segments(path).map((s) => (s.kind === "arc" ? s.radius : 0));
				return faultOf(path, cut[i]!.path, NEAR + NEAR_BY_ANGLE * Math.max(...radii));
			});
			expect(faults.filter(Boolean), file.name).toEqual([]);
			const wanted = wantedEntities(expected, "loose").flatMap((w) => segments(w.path));
			const read = strokes.flatMap((s) => segments(s.path));
			expect(read.length, file.name).toBe(wanted.length);
			const middles = read.map((s) => pointAt(s, 0.5));
			const lost = wanted.filter((s) => {
				const middle = pointAt(s, 0.5);
				return !middles.some((m) => gap(m, middle) < 1e-5);
			});
			// A circle's halves may lie the other way round than those that were drawn.
			const circles = expected.marks.filter((m) => isCircle(m.path)).length;
			expect(lost.length, file.name).toBeLessThanOrEqual(2 * circles);
		}
	});
});

describe("two readers that share nothing", () => {
	it("read the same paths of a drawing of all kinds of arcs", () => {
		const text = writeDxf(handDrawing(), PENS, "r2000");
		const own = readDxf(bytes(text)).strokes.map((s) => [s.layer, s.path]);
		const other = readElsewhere(text).entities.filter((e) => e.path !== null);
		expect(own).toEqual(other.map((e) => [e.layer, e.path]));
		expect(own.length).toBeGreaterThan(20);
	});
});

describe("the unit of a DXF", () => {
	const lengthIn = (header: string) => pathLength(dxfOf(LINE, header).strokes[0]!.path);

	it.each([
		[1, 0, 254, ["dxf-inch"]],
		[2, 0, 3048, ["dxf-unit"]],
		[4, 1, 10, []],
		[5, 1, 100, ["dxf-unit"]],
		[6, 1, 10_000, ["dxf-unit"]],
		[13, 1, 0.01, ["dxf-unit"]],
		[0, 1, 10, ["dxf-no-unit"]],
		[99, 1, 10, ["dxf-no-unit"]],
		[4, 0, 10, ["dxf-measurement"]],
		[1, 1, 254, ["dxf-inch", "dxf-measurement"]],
	])(
		"is that of $INSUNITS %d with $MEASUREMENT %d: ten units are %d mm",
		(units, system, mm, codes) => {
			const header = `9 $INSUNITS\n70 ${units}\n9 $MEASUREMENT\n70 ${system}`;
			expect(lengthIn(header)).toBeCloseTo(mm, 9);
			expect(codesOf(LINE, header)).toEqual(codes);
		},
	);

	it("is missing without a header's word, and millimetres are taken", () => {
		expect(codesOf(LINE, "9 $ACADVER\n1 AC1009")).toEqual(["dxf-no-unit"]);
		expect(lengthIn("")).toBe(10);
	});

	it("scales radii and text too", () => {
		const inch = "9 $INSUNITS\n70 1";
		const { strokes, texts } = dxfOf(
			"0 CIRCLE\n8 CUT\n10 1\n20 1\n40 2\n0 TEXT\n8 REFERENCE\n10 1\n20 2\n40 0.1\n1 note",
			inch,
		);
		expect(extents(strokes[0]!.path).maxX).toBeCloseTo(76.2, 9);
		expect(texts[0]).toMatchObject({ at: { x: 25.4, y: 50.8 }, height: expect.closeTo(2.54, 9) });
	});
});

describe("entities", () => {
	it("name the operation by their layer, in capitals or not", () => {
		const on = (layer: string) => dxfOf(LINE.replace("CUT", layer)).strokes[0];
		expect(on("CUT")).toMatchObject({ operation: "cut", layer: "CUT" });
		expect(on("Score")).toMatchObject({ operation: "score", layer: "Score" });
		expect(on("0")).toMatchObject({ operation: null, layer: "0" });
		expect(on("CUTTING")).toMatchObject({ operation: null });
	});

	it.each([
		["0 ARC\n8 CUT\n10 0\n20 0\n40 5\n50 0\n51 180", ["5,0,1", "-5,0"]],
		["0 ARC\n8 CUT\n10 0\n20 0\n40 5\n50 270\n51 0", ["0,-5,0.414213562", "5,0"]],
		["0 ARC\n8 CUT\n10 1\n20 0\n40 5\n50 0\n51 360", ["6,0,1", "-4,0,1"]],
		["0 CIRCLE\n8 CUT\n10 1\n20 2\n40 1e1", ["11,2,1", "-9,2,1"]],
		["0 LWPOLYLINE\n8 CUT\n90 2\n70 1\n10 0\n20 0\n42 -0.5\n10 4\n20 0", ["0,0,-0.5", "4,0"]],
		[`${POLYLINE}\n0 SEQEND`, ["0,0", "9,0", "9,9"]],
	])("are read: %s", (entity, expected) => {
		expect(cornersOf(entity)).toEqual(expected);
		expect(codesOf(entity)).toEqual([]);
	});

	it("closed by a flag are closed, others with the same ends are open", () => {
		const of = (flag: number) =>
			dxfOf(`0 LWPOLYLINE\n8 CUT\n90 3\n70 ${flag}\n10 0\n20 0\n10 4\n20 0\n10 4\n20 4`);
		expect([0, 1, 128, 129].map((flag) => of(flag).strokes[0]!.path.closed)).toEqual([
			false,
			true,
			false,
			true,
		]);
	});

	it("seen from below are mirrored, but for lines", () => {
		const below = "210 0\n220 0\n230 -1";
		expect(cornersOf(`0 CIRCLE\n8 CUT\n10 3\n20 2\n40 1\n${below}`)).toEqual([
			"-4,2,-1",
			"-2,2,-1",
		]);
		expect(cornersOf(`0 ARC\n8 CUT\n10 3\n20 2\n40 1\n50 0\n51 90\n${below}`)).toEqual([
			"-4,2,-0.414213562",
			"-3,3",
		]);
		expect(cornersOf(`${LINE}\n${below}`)).toEqual(["0,0", "10,0"]);
	});

	it("that are tilted are not read", () => {
		const { strokes, findings } = dxfOf("0 CIRCLE\n8 CUT\n10 3\n20 2\n40 1\n210 1\n220 0\n230 0");
		expect(strokes).toEqual([]);
		expect(findings).toMatchObject([{ code: "not-read", facts: { kind: "tilted CIRCLE" } }]);
	});

	it("of kinds that are not read are counted by kind", () => {
		const { findings } = dxfOf(
			"0 SPLINE\n0 INSERT\n2 block\n0 SPLINE\n0 ELLIPSE\n0 HATCH\n0 DIMENSION\n0 POINT",
		);
		expect(findings.map(({ code, facts }) => [code, facts.kind, facts.count])).toEqual([
			["not-read", "SPLINE", 2],
			["not-read", "INSERT", 1],
			["not-read", "ELLIPSE", 1],
			["not-read", "HATCH", 1],
			["not-read", "DIMENSION", 1],
			["not-read", "POINT", 1],
		]);
	});

	it("of blocks, on paper and hidden are not drawn", () => {
		const blocks = dxfText(LINE).replace("ENTITIES", "BLOCKS");
		expect(readDxf(bytes(blocks)).strokes).toEqual([]);
		expect(dxfOf(`${LINE}\n67 1`)).toMatchObject({ strokes: [], findings: [{ code: "not-read" }] });
		expect(dxfOf(`${LINE}\n60 1`)).toMatchObject({
			strokes: [],
			findings: [{ code: "not-shown" }],
		});
	});

	it("with another number of points than they say are found", () => {
		const entity = "0 LWPOLYLINE\n8 CUT\n90 5\n70 0\n10 0\n20 0\n10 4\n20 0";
		expect(dxfOf(entity).findings).toMatchObject([
			{ code: "dxf-count", facts: { given: "5", found: 2 } },
		]);
		expect(codesOf(entity.replace("90 5\n", ""))).toEqual(["dxf-count"]);
	});

	it("of old polylines without SEQEND are found, and read", () => {
		const { strokes, findings } = dxfOf(`${POLYLINE}\n${LINE}`);
		expect(findings.map((f) => f.code)).toEqual(["dxf-unended"]);
		expect(strokes.map((s) => s.path.points.length)).toEqual([3, 2]);
		expect(codesOf(POLYLINE)).toEqual(["dxf-unended"]);
	});

	it("of fitted polylines are found to be curves, and their frames left out", () => {
		const fitted = POLYLINE.replace("70 1", "70 5").replace("9\n20 0", "9\n20 0\n70 16");
		const { strokes, findings } = dxfOf(`${fitted}\n0 SEQEND`);
		expect(findings.map((f) => f.code)).toEqual(["curve"]);
		expect(corners(strokes[0]!.path)).toEqual(["0,0", "9,9"]);
		expect(codesOf(`${POLYLINE.replace("70 1", "70 64")}\n0 SEQEND`)).toEqual(["not-read"]);
	});

	it.each(["NaN", "inf", "0x10", "", "1,5", "1e999", "1e8"])(
		"with %s for a number are found and left out",
		(value) => {
			const { strokes, findings } = dxfOf(LINE.replace("11 10", `11 ${value}`));
			expect(strokes).toEqual([]);
			expect(findings).toMatchObject([{ code: "not-a-number", severity: "error" }]);
			expect(findings[0]!.facts.place).toBe("LINE in line 19");
		},
	);

	it("without length are found and left out, and so are repeated points", () => {
		const { strokes, findings } = dxfOf(
			`${LINE.replace("11 10", "11 0")}\n0 CIRCLE\n10 0\n20 0\n40 0\n0 LWPOLYLINE\n90 4\n70 1\n10 0\n20 0\n10 5\n20 0\n10 5\n20 5\n10 0\n20 0`,
		);
		expect(findings).toMatchObject([{ code: "no-length", facts: { count: 3 } }]);
		expect(strokes.map((s) => s.path.points.length)).toEqual([3]);
	});
});

describe("text", () => {
	const text = "0 TEXT\n8 REFERENCE\n10 3\n20 4\n40 2.5\n50 90\n1 7\\U+00B0 up";

	it("is kept with its place, height and turn", () => {
		expect(dxfOf(text)).toMatchObject({
			findings: [],
			texts: [
				{ text: "7° up", layer: "REFERENCE", at: { x: 3, y: 4 }, height: 2.5, turn: Math.PI / 2 },
			],
		});
	});

	it("is found to be lost on any other layer", () => {
		const both = `${text.replace("REFERENCE", "ENGRAVE")}\n0 MTEXT\n8 0\n10 0\n20 0\n40 3\n3 one\\P\n1 two`;
		expect(dxfOf(both)).toMatchObject({
			findings: [{ code: "text-lost", severity: "warning", facts: { count: 2 } }],
			texts: [{ text: "7° up" }, { text: "one two" }],
		});
	});
});

describe("pieces of exploded paths", () => {
	const lineOf = (x0: number, y0: number, x1: number, y1: number, layer = "CUT") =>
		`0 LINE\n8 ${layer}\n10 ${x0}\n20 ${y0}\n11 ${x1}\n21 ${y1}`;
	const square = [lineOf(0, 0, 9, 0), lineOf(9, 0, 9, 9), lineOf(9, 9, 0, 9), lineOf(0, 9, 0, 0)];
	const SQUARE = ["0,0", "9,0", "9,9", "0,9"];

	it("are joined in the file's order", () => expect(cornersOf(square.join("\n"))).toEqual(SQUARE));

	it("are joined whatever their order and direction", () => {
		const order = fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 });
		fc.assert(
			fc.property(order, fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }), (list, turns) => {
				const ends = [0, 1, 2, 3].map((i) => [SQUARE[i]!, SQUARE[(i + 1) % 4]!]);
				const text = list.map((i) => {
					const [a, b] = (turns[i] ? ends[i]! : [...ends[i]!].reverse()).map((p) => p.split(","));
					return lineOf(Number(a![0]), Number(a![1]), Number(b![0]), Number(b![1]));
				});
				const { strokes } = dxfOf(text.join("\n"));
				expect(strokes).toHaveLength(1);
				expect(strokes[0]!.path.closed).toBe(true);
				expect(Math.abs(signedArea(strokes[0]!.path))).toBe(81);
			}),
			{ seed: 4_711, numRuns: 60 },
		);
	});

	it("are joined over a gap of 9e-6 mm, and not over one of 2e-5", () => {
		const closed = (gapSize: number) => {
			const text = [...square.slice(0, 3), lineOf(0, 9 + gapSize, 0, 0)].join("\n");
			return dxfOf(text).strokes.map((s) => s.path.closed);
		};
		expect(closed(9e-6)).toEqual([true]);
		expect(closed(2e-5)).toEqual([false]);
	});

	it("stay apart on different layers", () => {
		expect(
			dxfOf([lineOf(0, 0, 9, 0), lineOf(9, 0, 9, 9, "SCORE")].join("\n")).strokes,
		).toHaveLength(2);
	});

	it("stay apart if the file has polylines: it says where its paths end", () => {
		expect(dxfOf(`${square.join("\n")}\n${POLYLINE}\n0 SEQEND`).strokes).toHaveLength(5);
	});

	it("that lie over each other stay two", () => {
		const { strokes } = dxfOf([lineOf(0, 0, 9, 0), lineOf(9, 0, 0, 0)].join("\n"));
		expect(strokes.map((s) => s.path.closed)).toEqual([false, false]);
	});

	it("of an arc run clockwise where the path does", () => {
		const arc = "0 ARC\n8 CUT\n10 5\n20 0\n40 5\n50 0\n51 180";
		expect(cornersOf([arc, lineOf(10, 0, 10, -4), lineOf(10, -4, 0, 0)].join("\n"))).toEqual([
			"0,0,-1",
			"10,0",
			"10,-4",
		]);
	});

	it("of two arcs make a circle", () => {
		const arc = (from: number, to: number) =>
			`0 ARC\n8 CUT\n10 5\n20 0\n40 5\n50 ${from}\n51 ${to}`;
		const { strokes } = dxfOf([arc(0, 180), arc(180, 0)].join("\n"));
		expect(strokes.map((s) => isCircle(s.path))).toEqual([true]);
	});
});

describe("bad files", () => {
	const good = dxfText(`${LINE}\n${POLYLINE}\n0 SEQEND`, MM);
	const codes = (given: Uint8Array) => readDxf(given).findings.map((f) => f.code);

	it.each([
		["empty", ""],
		["text", "hello\nthere"],
		["SVG", "<svg/>"],
		["EOF alone", "0\nEOF\n"],
		["NUL", `${good}\u0000`],
	])("are unreadable: %s", (_, text) => expect(codes(bytes(text))).toEqual(["unreadable"]));

	it("are unreadable with no more than a 0", () => {
		expect(readDxf(new TextEncoder().encode("0")).findings[0]?.code).toBe("unreadable");
	});

	it("are truncated without EOF, with a line too many or too few, or a code that is none", () => {
		const end = good.lastIndexOf("0\r\nEOF");
		const missing = good.indexOf("10\r\n0\r\n");
		for (const text of [
			good.slice(0, end),
			`${good.slice(0, missing)}${good.slice(missing + 4)}`,
			good.replace("8\r\nCUT", "eight\r\nCUT"),
		]) {
			expect(codes(bytes(text)), text).toContain("truncated");
		}
		expect(readDxf(bytes(good.slice(0, end))).strokes).toHaveLength(2);
	});

	it("may end their lines with a line feed alone, and hold a code page's letters", () => {
		const text = good.replaceAll("\r\n", "\n").replaceAll("CUT", "STÄRKE");
		const old = Uint8Array.from(text, (c) => c.charCodeAt(0));
		expect(readDxf(old)).toMatchObject({ findings: [], strokes: [{ layer: "STÄRKE" }, {}] });
	});

	it("are refused before they are read if they are too large", () => {
		expect(readDxf(new Uint8Array(100e6).fill(48)).findings).toMatchObject([
			{ code: "drawing-too-large", facts: { of: "bytes" } },
		]);
		expect(readDxf(bytes("0\nA\n".repeat(1.1e6))).findings).toMatchObject([
			{ code: "drawing-too-large", facts: { of: "lines" } },
		]);
	});

	it("are read although they heap their lines upon one point", () => {
		const heap = Array.from(
			{ length: 20_000 },
			(_, i) => `0\nLINE\n10\n0\n20\n0\n11\n${i + 1}\n21\n1`,
		);
		const text = good.replace(/0\r\nLINE[\s\S]*SEQEND/u, heap.join("\n"));
		expect(readDxf(bytes(text)).strokes).toHaveLength(10_000);
	});

	it.each(["r2000", "r12", "loose"] satisfies DxfFlavour[])(
		"never throw, whatever the bytes, and what is read can be measured: %s",
		(flavour) => {
			const drawn = bytes(writeDxf(handDrawing(), PENS, flavour));
			const change = fc.record({
				at: fc.nat(drawn.length - 1),
				put: fc.oneof(
					fc.uint8Array({ maxLength: 6 }),
					fc
						.constantFrom("0\r\n", "\r\n", "NaN", "1e400", "-", "0\r\nPOLYLINE\r\n", "0\r\nEOF\r\n")
						.map(bytes),
				),
				drop: fc.nat(12),
			});
			fc.assert(
				fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
					const all: number[] = [...drawn];
					for (const { at, put, drop } of changes) all.splice(at, drop, ...put);
					for (const { path } of readDxf(Uint8Array.from(all)).strokes) {
						expect(Number.isFinite(pathLength(path))).toBe(true);
						extents(path);
					}
				}),
				{ seed: 77_032, numRuns: 100 },
			);
		},
	);
});
