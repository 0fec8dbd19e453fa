import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extents, pathLength, segments, signedArea } from "../../src/geometry/index.js";
import { readSvg } from "../../src/proof/index.js";
import { writeSvg } from "../../src/writers/index.js";
import { pathFault } from "../support/compare-paths.js";
import { expectedOf, handDrawing, PENS } from "../support/drawings.js";
import { FEW, madeExample } from "../support/examples.js";
import { svgOf, svgText } from "../support/proof-faults.js";
import { readSvg as readElsewhere } from "../support/read-svg.js";

const bytes = (text: string) => new TextEncoder().encode(text);

/** The bounds that the project's own audit of SVG files has: see audit-svg. */
const NEAR = 1e-6;
const NEAR_MIDDLE = 1.25e-6;

/** Corners of the only stroke, as "x,y" or "x,y,bulge". */
function cornersOf(inner: string, size?: string): string[] {
	const { strokes } = svgOf(inner, size);
	expect(strokes).toHaveLength(1);
	const clean = (n: number) => Number(n.toFixed(9)) + 0;
	return strokes[0]!.path.points.map(({ x, y, bulge }) =>
		[clean(x), clean(y), ...(bulge === 0 ? [] : [clean(bulge)])].join(","),
	);
}

function codesOf(inner: string, size?: string): string[] {
	return svgOf(inner, size).findings.map((f) => f.code);
}

describe("readSvg on what camber writes", () => {
	it.each(["heron-baritone", "wren-mandolin"])(
		"reads every mark and note of %s back to within 1e-6 mm, and finds nothing",
		async (example) => {
			const { files, drawings } = await madeExample(example, { formats: ["svg"], only: FEW });
			expect(drawings.length).toBeGreaterThan(2);
			for (const { sheet } of drawings) {
				const file = files.find((f) => f.sheet === sheet.name)!;
				const read = readSvg(file.bytes);
				expect(read.findings, file.name).toEqual([]);
				const { marks, notes } = expectedOf(sheet);
				expect(read.strokes.map((s) => s.operation)).toEqual(marks.map((m) => m.operation));
				const faults = marks.flatMap(({ path }, i) =>
					pathFault(path, read.strokes[i]!.path, NEAR, NEAR_MIDDLE),
				);
				expect(faults.filter(Boolean), file.name).toEqual([]);
				expect(read.texts.map((t) => t.text)).toEqual(notes.map((n) => n.text));
				for (const [i, { at, height, turn }] of notes.entries()) {
					const text = read.texts[i]!;
					expect(Math.hypot(text.at.x - at.x, text.at.y - at.y)).toBeLessThan(NEAR);
					expect(text.height).toBeCloseTo(height, 5);
					expect(text.turn).toBeCloseTo(turn, 7);
				}
				for (const [key, value] of Object.entries(sheet.size)) {
					expect(read.page![key as keyof typeof sheet.size]).toBeCloseTo(value, 5);
				}
			}
		},
	);
});

describe("two readers that share nothing", () => {
	it("read the same paths of a drawing of all kinds of arcs", () => {
		const text = writeSvg(handDrawing(), PENS);
		const own = readSvg(bytes(text)).strokes.map((s) => s.path);
		const other = readElsewhere(text).groups.flatMap((g) => g.paths.map((p) => p.path));
		expect(own.length).toBe(other.length);
		expect(own.length).toBeGreaterThan(20);
		for (const [i, { points, closed }] of own.entries()) {
			expect(closed).toBe(other[i]!.closed);
			expect(points.length).toBe(other[i]!.points.length);
			for (const [k, { x, y, bulge }] of points.entries()) {
				const p = other[i]!.points[k]!;
				expect([x, y]).toEqual([p.x, p.y + 0]);
				expect(bulge).toBeCloseTo(p.bulge, 12);
			}
		}
	});
});

describe("the size of an SVG", () => {
	const path = '<path d="M 0 0 L 10 0"/>';
	const lengthWith = (size: string) => pathLength(svgOf(path, size).strokes[0]!.path);

	it.each([
		["100mm", 10],
		["10cm", 10],
		["1in", 2.54],
		["96px", 2.54],
		["96", 2.54],
		["72pt", 2.54],
		["6pc", 2.54],
		["400Q", 10],
	])("is that of a width of %s: ten units of a hundred are %d mm", (given, mm) => {
		expect(lengthWith(`width="${given}" height="${given}"`)).toBeCloseTo(mm, 9);
	});

	it("is found to differ from a millimetre a unit, with its factor", () => {
		const { findings } = svgOf(path, 'width="200mm" height="200mm"');
		expect(findings).toMatchObject([
			{ code: "svg-size", severity: "warning", facts: { x: "2", y: "2" } },
		]);
	});

	it("is an error where the sides disagree, and the smaller scale counts, as it is shown", () => {
		const { findings, strokes } = svgOf(path, 'width="200mm" height="50mm"');
		expect(findings).toMatchObject([{ code: "svg-size", severity: "error" }]);
		expect(pathLength(strokes[0]!.path)).toBeCloseTo(5, 9);
	});

	it("is each side's own with preserveAspectRatio none, and circles are curves then", () => {
		const own = 'width="200mm" height="50mm" preserveAspectRatio="none"';
		const { findings, strokes } = svgOf('<circle cx="50" cy="50" r="10"/>', own);
		expect(findings.map((f) => f.code)).toEqual(["svg-size", "curve"]);
		const { minX, maxX, minY, maxY } = extents(strokes[0]!.path);
		expect([maxX - minX, maxY - minY]).toEqual([expect.closeTo(40, 3), expect.closeTo(10, 3)]);
		expect(Math.abs(signedArea(strokes[0]!.path))).toBeCloseTo(Math.PI * 20 * 5, 1);
	});

	it("is 96 units to the inch where none is given, as an error", () => {
		const { findings, strokes } = svgOf('<path d="M 0 0 L 96 0"/>', 'width="100%"');
		expect(findings).toMatchObject([{ code: "svg-no-size", severity: "error" }]);
		expect(pathLength(strokes[0]!.path)).toBeCloseTo(25.4, 9);
	});

	it("is found for an editor's pixels that come from rounded millimetres", () => {
		const text = svgText(path).replace(/width=.*viewBox="[^"]*"/u, (): string => {
			return 'width="210mm" height="297mm" viewBox="0 0 793.70079 1122.5197"';
		});
		const { findings, strokes, page } = readSvg(bytes(text));
		expect(findings).toMatchObject([{ code: "svg-size", severity: "warning" }]);
		expect(pathLength(strokes[0]!.path)).toBeCloseTo(2.6458333, 6);
		expect(page!.maxX - page!.minX).toBeCloseTo(210, 6);
	});
});

describe("path data", () => {
	it.each([
		["m 1 2 l 3 0 0 4 z", ["1,-2", "4,-2", "4,-6"]],
		["M1,2h3v4H1z", ["1,-2", "4,-2", "4,-6", "1,-6"]],
		["M1-2 4-2.5.5.25", ["1,2", "4,2.5", "0.5,-0.25"]],
		["M 1e1 -2E-1 L 0 0", ["10,0.2", "0,0"]],
		["M 0 0 A 5 5 0 0 1 10 0", ["0,0,-1", "10,0"]],
		["M 0 0 a5 5 0 0110 0", ["0,0,-1", "10,0"]],
		["M 0 0 A 5 5 0 0 0 5 5", ["0,0,0.414213562", "5,-5"]],
		["M 0 0 A 5 5 0 1 1 5 5", ["0,0,-2.414213562", "5,-5"]],
		["M 0 0 A 1 1 0 0 1 10 0", ["0,0,-1", "10,0"]],
		["M 0 0 A 0 9 0 0 1 10 0", ["0,0", "10,0"]],
		["M 0 0 L 5 0 L 5 5 L 0 0 Z", ["0,0", "5,0", "5,-5"]],
	])("%s is read", (data, corners) => expect(cornersOf(`<path d="${data}"/>`)).toEqual(corners));

	it("holds several contours; after z the next begins where the last began", () => {
		const { strokes, findings } = svgOf('<path d="m1 1h2v2z l 9 0 M 5 5 6 6"/>');
		expect(findings).toEqual([]);
		expect(strokes.map((s) => s.path.closed)).toEqual([true, false, false]);
		expect(strokes[1]!.path.points.map(({ x, y }) => [x, y])).toEqual([
			[1, -1],
			[10, -1],
		]);
	});

	it.each([
		["M 0 0 C 0 5.5228475 4.4771525 10 10 10", Math.PI * 5],
		["M 0 0 Q 10 0 10 10", 16.2322524],
		["M 0 0 Q 10 0 10 10 T 20 20", 2 * 16.2322524],
	])("%s is a curve: its length is that of the lines it becomes", (data, length) => {
		const { strokes, findings } = svgOf(`<path d="${data}"/>`);
		expect(findings).toMatchObject([{ code: "curve", facts: { place: "path 1" } }]);
		expect(segments(strokes[0]!.path).every((s) => s.kind === "line")).toBe(true);
		expect(Math.abs(pathLength(strokes[0]!.path) - length)).toBeLessThan(0.01);
	});

	it("mirrors the last control point for a smooth curve, and has none after a line", () => {
		const same = (a: string, b: string) =>
			expect(svgOf(`<path d="${a}"/>`).strokes).toEqual(svgOf(`<path d="${b}"/>`).strokes);
		same("m 1 1 c 0 3 4 3 4 0 s 4 -3 4 0", "M 1 1 C 1 4 5 4 5 1 C 5 -2 9 -2 9 1");
		same("m 1 1 l 4 0 s 4 -3 4 0", "M 1 1 L 5 1 C 5 1 9 -2 9 1");
		same("m 1 1 l 4 0 t 4 4 t 4 0", "M 1 1 L 5 1 Q 5 1 9 5 Q 13 9 13 5");
	});

	it("keeps the lines of an ellipse within 1e-4 mm of it", () => {
		const { strokes } = svgOf('<ellipse cx="0" cy="0" rx="40" ry="10"/>');
		const off = segments(strokes[0]!.path).map(({ start, end }) => {
			const [x, y] = [(start.x + end.x) / 2, (start.y + end.y) / 2];
			return (1 - Math.hypot(x / 40, y / 10)) * 40;
		});
		expect(Math.max(...off)).toBeLessThan(1e-4);
		expect(Math.min(...off)).toBeGreaterThan(0);
	});

	it.each([
		"M 0 0 L NaN 1",
		"M 0 0 L Infinity 1",
		"M 0 0 L 1e999 1",
		"M 0 0 L 1e8 1",
		"L 1 1",
		"M 0 0 L 1",
		"M 0 0 X 1 1",
		"M 0 0 A 1 1 0 2 0 1 1",
		"0 0 1 1",
	])("with %s in it is found to be no number, and left out", (data) => {
		const { strokes, findings } = svgOf(`<path d="M 9 9 L 8 8"/><path d="${data}"/>`);
		expect(findings).toMatchObject([
			{ code: "not-a-number", severity: "error", facts: { place: "path 2" } },
		]);
		expect(strokes).toHaveLength(1);
	});

	it("without length is found and left out, and so are repeated points", () => {
		const { strokes, findings } = svgOf(
			'<path d="M 1 1 L 1 1"/><path d="M 1 1 Z"/><path d="M 0 0 L 5 0 L 5 0 L 5 5 Z"/><path d="M 3 3"/>',
		);
		expect(findings).toMatchObject([{ code: "no-length", facts: { count: 3 } }]);
		expect(strokes.map((s) => s.path.points.length)).toEqual([3]);
	});
});

describe("basic shapes", () => {
	it.each([
		['<line x1="1" y1="2" x2="3" y2="4"/>', ["1,-2", "3,-4"]],
		['<polyline points="1,2 3,4 5 6"/>', ["1,-2", "3,-4", "5,-6"]],
		['<rect x="1" y="2" width="10" height="5"/>', ["1,-2", "11,-2", "11,-7", "1,-7"]],
		['<circle cx="5" cy="6" r="2"/>', ["7,-6,-1", "3,-6,-1"]],
		['<ellipse cx="5" cy="6" rx="2" ry="2"/>', ["7,-6,-1", "3,-6,-1"]],
		['<line x2="96px" y2="25.4mm"/>', ["0,0", "96,-96"]],
	])("%s is read", (inner, corners) => {
		expect(cornersOf(inner)).toEqual(corners);
		expect(codesOf(inner)).toEqual([]);
	});

	it("a rectangle with round corners keeps its arcs, and rx stands for ry", () => {
		const { strokes, findings } = svgOf('<rect x="10" y="10" width="20" height="10" rx="2"/>');
		expect(findings).toEqual([]);
		expect(Math.abs(signedArea(strokes[0]!.path))).toBeCloseTo(200 - (4 - Math.PI) * 4, 9);
		const arcs = segments(strokes[0]!.path).filter((s) => s.kind === "arc");
		expect(arcs.map((s) => s.radius)).toEqual(Array(4).fill(expect.closeTo(2, 9)));
	});

	it("a rectangle with corners as round as it is high is a slot with round ends", () => {
		const { strokes, findings } = svgOf('<rect width="20" height="10" rx="50" ry="5"/>');
		expect(findings.map((f) => f.code)).toEqual(["curve"]);
		expect(strokes[0]!.path.closed).toBe(true);
	});

	it("without size are found and left out", () => {
		const inner = '<circle r="0"/><rect width="5"/><line x1="3" x2="3"/><polygon points="1 1"/>';
		expect(svgOf(inner)).toMatchObject({ strokes: [], findings: [{ code: "no-length" }] });
	});

	it("with lengths that are none are found", () => {
		expect(codesOf('<circle r="50%"/><polygon points="1 x"/>')).toEqual(["not-a-number"]);
	});
});

describe("groups", () => {
	const line = '<path d="M 0 0 L 10 0"/>';

	it("name the operation by id or class, the nearest first", () => {
		const { strokes } = svgOf(
			`${line}<g id="cut">${line}<g id="g12">${line}<g class="pen Score">${line}</g></g></g><g id="other">${line}</g>`,
		);
		expect(strokes.map((s) => [s.operation, s.layer])).toEqual([
			[null, ""],
			["cut", "cut"],
			["cut", "cut"],
			["score", "Score"],
			[null, "other"],
		]);
	});

	it.each([
		["translate(5 6)", ["5,-6", "15,-6"]],
		["translate(5)", ["5,0", "15,0"]],
		["rotate(90)", ["0,0", "0,-10"]],
		["rotate(-90, 5, 0)", ["5,-5", "5,5"]],
		["matrix(0 1 -1 0 7 0)", ["7,0", "7,-10"]],
		["translate(1,2) rotate(180)", ["1,-2", "-9,-2"]],
		["", ["0,0", "10,0"]],
	])("with the rigid transform %s move what is in them", (transform, corners) => {
		const inner = `<g transform="${transform}">${line}</g>`;
		expect(cornersOf(inner)).toEqual(corners);
		expect(codesOf(inner)).toEqual([]);
	});

	it("nest their transforms, the inner first, and mirrored arcs turn the other way", () => {
		const arc = '<path transform="rotate(90)" d="M 0 0 A 5 5 0 0 1 10 0"/>';
		expect(cornersOf(`<g transform="translate(1 1)">${arc}</g>`)).toEqual(["1,-1,-1", "1,-11"]);
		expect(cornersOf(`<g transform="scale(-1 1)">${arc}</g>`)).toEqual(["0,0,1", "0,-10"]);
		expect(codesOf(`<g transform="scale(-1 1)">${arc}</g>`)).toEqual([]);
	});

	it.each(["scale(2)", "scale(1 2)", "skewX(10)", "skewY(-3)", "matrix(1 0 0 1.001 0 0)"])(
		"with %s are found to be not rigid, and read as they are shown",
		(transform) => {
			expect(svgOf(`<g transform="${transform}">${line}</g>`).findings).toMatchObject([
				{ code: "not-rigid", severity: "warning", facts: { place: "g 1" } },
			]);
		},
	);

	it("scaled alike along both axes keep their arcs; scaled unlike, they do not", () => {
		const circle = '<circle r="5"/>';
		const [alike, unlike] = [2, "2 3"].map((by) =>
			svgOf(`<g transform="scale(${by})">${circle}</g>`),
		);
		expect(segments(alike!.strokes[0]!.path)).toMatchObject([{ radius: 10 }, { radius: 10 }]);
		expect(unlike!.findings.map((f) => f.code)).toEqual(["not-rigid", "curve"]);
		const { maxX, maxY } = extents(unlike!.strokes[0]!.path);
		expect([maxX, maxY]).toEqual([expect.closeTo(10, 3), expect.closeTo(15, 3)]);
	});

	it("with a transform that cannot be read are found", () => {
		expect(codesOf(`<g transform="rotate(a)">${line}</g>`)).toEqual(["not-a-number"]);
		expect(codesOf(`<g transform="spin(3)">${line}</g>`)).toEqual(["not-a-number"]);
	});

	it("that are hidden are skipped with a note", () => {
		const inner = `<g display="none">${line}</g><g style="fill:none; display: none">${line}</g>`;
		expect(svgOf(inner)).toMatchObject({
			strokes: [],
			findings: [{ code: "not-shown", severity: "note", facts: { count: 2 } }],
		});
	});
});

describe("what is not read", () => {
	it.each(["use", "symbol", "image", "style", "switch", "svg", "foreignObject"])(
		"%s is named in a finding",
		(name) => {
			const { findings, strokes } = svgOf(`<${name}><path d="M 0 0 L 1 1"/></${name}>`);
			expect(findings).toMatchObject([{ code: "not-read", facts: { kind: name, count: 1 } }]);
			expect(strokes).toEqual([]);
		},
	);

	it("is not found for what draws nothing, nor for an editor's own elements", () => {
		const inner =
			'<title>a</title><desc/><metadata><b/></metadata><defs><path d="M 0 0 L 1 1"/></defs><ed:view xmlns:ed="urn:x"/>';
		expect(svgOf(inner)).toMatchObject({ strokes: [], findings: [] });
	});

	it.each([
		"@page { size: 210mm 297mm; margin: 0 }",
		" @page{margin:10mm;size:8.5in 11in;}\n",
		"<![CDATA[@page { size: 210mm 297mm }]]>",
	])("is not found for a style sheet that asks for paper and nothing else: %s", (rule) => {
		const inner = `<style>${rule}</style><g id="cut"><path d="M 0 0 L 1 1"/></g>`;
		expect(svgOf(inner)).toMatchObject({ strokes: [{ operation: "cut" }], findings: [] });
		const page = writeSvg(handDrawing(), PENS, { page: true });
		expect(readSvg(bytes(page))).toEqual(readSvg(bytes(writeSvg(handDrawing(), PENS))));
	});

	it.each([
		"",
		"path { stroke-width: 2 }",
		"@page { size: 210mm 297mm } path { display: none }",
		"@page { size: 210mm 297mm } @page { margin: 0 }",
		"@page { size: 210mm 297mm; transform: scale(2) }",
		"@page { size: 210mm 297mm; size: -1mm 2mm }",
		"@page { margin: 0 0 0 5mm } /* } */",
		"@page :first { margin: 0 }",
		"@page { size: 210mm 297mm }<a/>",
	])("is a style sheet that says anything else: %s", (rule) => {
		expect(svgOf(`<style>${rule}</style>`).findings).toMatchObject([
			{ code: "not-read", severity: "warning", facts: { kind: "style", count: 1 } },
		]);
	});

	it("is a transform in a style", () => {
		expect(codesOf('<g style="transform: scale(2)"/>')).toEqual(["not-read"]);
	});

	it("is many kinds of elements that a hostile file makes up: twenty are named", () => {
		const inner = Array.from({ length: 500 }, (_, i) => `<x${i}/>`).join("");
		expect(svgOf(inner).findings).toHaveLength(20);
	});

	it("is no prefix that stands for SVG itself", () => {
		const text = svgText('<path d="M 0 0 L 1 1"/>').replace(/<(\/?)(svg|path)/gu, "<$1svg:$2");
		expect(readSvg(bytes(text.replace("xmlns=", "xmlns:svg="))).strokes).toHaveLength(1);
	});
});

describe("text", () => {
	it("is kept with its place, height and turn, spans and entities put together", () => {
		const inner =
			'<g id="reference"><text transform="translate(3 4) rotate(-90)" font-size="10">a &lt; <tspan>b</tspan>&#x41;</text></g>';
		const { texts, findings } = svgOf(inner);
		expect(findings).toEqual([]);
		expect(texts).toEqual([
			{
				text: "a < bA",
				layer: "reference",
				at: { x: 3, y: -4 },
				height: expect.closeTo(7, 9),
				turn: expect.closeTo(Math.PI / 2, 12),
			},
		]);
	});

	it("is found to be lost anywhere else", () => {
		expect(svgOf('<g id="engrave"><text>Fret 7</text></g><text>x</text>').findings).toMatchObject([
			{
				code: "text-lost",
				severity: "warning",
				facts: { text: "Fret 7", layer: "engrave", count: 2 },
			},
		]);
	});
});

describe("bad files", () => {
	const good = svgText('<g id="cut"><path d="M 0 0 L 1 1"/></g>');
	const codes = (given: Uint8Array) => readSvg(given).findings.map((f) => f.code);

	it.each([
		["empty", ""],
		["no SVG", "<html/>"],
		["text", "hello"],
		["NUL", good.replace("M", "\u0000")],
		["a control character", good.replace("M", "\u0001")],
	])("are unreadable: %s", (_, text) => expect(codes(bytes(text))).toEqual(["unreadable"]));

	it("are unreadable with half a root", () => {
		expect(readSvg(new TextEncoder().encode("<svg")).findings[0]?.code).toBe("unreadable");
	});

	it("are unreadable as UTF-16", () => {
		expect(codes(new Uint8Array(Buffer.from(good, "utf16le")))).toEqual(["unreadable"]);
	});

	it("are truncated wherever they end within an element", () => {
		for (let end = 60; end < good.length - 1; end += 7) {
			expect(codes(bytes(good.slice(0, end))), good.slice(0, end)).toEqual(["truncated"]);
		}
	});

	it("may not define entities; a plain document type may stand", () => {
		const lol = '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>';
		expect(codes(bytes(lol + good))).toEqual(["unreadable"]);
		const plain = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "svg11.dtd">';
		expect(codes(bytes(plain + good))).toEqual([]);
	});

	it("are refused before they are parsed if they are too large", () => {
		expect(readSvg(new Uint8Array(100e6).fill(60)).findings).toMatchObject([
			{ code: "drawing-too-large", facts: { of: "bytes" } },
		]);
		expect(readSvg(bytes("<g/>".repeat(2e6))).findings).toMatchObject([
			{ code: "drawing-too-large", facts: { of: "tags" } },
		]);
	});

	it("are refused if they nest too deep or their curves are too many", () => {
		const deep = svgOf("<g>".repeat(5000) + "</g>".repeat(5000)).findings;
		expect(deep).toMatchObject([{ code: "drawing-too-large", facts: { of: "nested elements" } }]);
		const curve = `<path d="M 0 0 ${"c 1e6 1e6 -1e6 1e6 0 0".repeat(200)}"/>`;
		expect(codesOf(curve)).toContain("drawing-too-large");
	});

	it("never throw, whatever the bytes, and what is read can be measured", () => {
		const drawn = bytes(writeSvg(handDrawing(), PENS));
		const change = fc.record({
			at: fc.nat(drawn.length - 1),
			put: fc.oneof(
				fc.uint8Array({ maxLength: 6 }),
				fc
					.constantFrom("<", ">", '"', "NaN", "1e400", "-", " 0 0 ", "Z", "M", "<g>", "]]>", "&#0;")
					.map(bytes),
			),
			drop: fc.nat(12),
		});
		fc.assert(
			fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), fc.nat(9), (changes, cut) => {
				let all: number[] = [...drawn];
				for (const { at, put, drop } of changes) all.splice(at, drop, ...put);
				if (cut === 0) all = all.slice(0, all.length / 2);
				const read = readSvg(Uint8Array.from(all));
				for (const { path } of read.strokes) {
					expect(Number.isFinite(pathLength(path))).toBe(true);
					extents(path);
				}
			}),
			{ seed: 77_031, numRuns: 300 },
		);
	});
});
