import { describe, expect, it } from "vitest";
import type { Sheet } from "../../src/drawing/index.js";
import { rectangle } from "../../src/geometry/index.js";
import { dxfText } from "../../src/writers/dxf-text.js";
import { type DxfFlavour, writeDxf, writeSvg } from "../../src/writers/index.js";
import { oneLine } from "../../src/writers/one-line.js";
import { expectedOf, PENS, partOf, sheetOf } from "../support/drawings.js";
import { auditDxf, readDxf, textAt } from "../support/read-dxf.js";
import { auditSvg, readSvg } from "../support/read-svg.js";

/** A label, and how it reads in a DXF and in an SVG file. */
const LABELS: readonly (readonly [given: string, dxf: string, svg: string])[] = [
	[`<&"'>]]>`, `<&"'>]]>`, `<&"'>]]>`],
	["a\r\nb\nc\rd", "a b c d", "a b c d"],
	["0\n0\nLINE\n8\nCUT", "0 0 LINE 8 CUT", "0 0 LINE 8 CUT"],
	["x\n0\nENDSEC\n0\nEOF", "x 0 ENDSEC 0 EOF", "x 0 ENDSEC 0 EOF"],
	["a\u0000b\u0007c\u001bd\u007fe\u0085f\u2028g", "a b c d e f g", "a b c d e f g"],
	["é ° Ø ½ 漢", "\\U+00E9 \\U+00B0 \\U+00D8 \\U+00BD \\U+6F22", "é ° Ø ½ 漢"],
	["45%%d %%c %%%", "45%\\U+FF05d %\\U+FF05c %\\U+FF05\\U+FF05", "45%%d %%c %%%"],
	["50 % of 2%", "50 % of 2%", "50 % of 2%"],
	[
		"\\P \\U+00B0 {\\fArial;x}",
		"\\U+FF3CP \\U+FF3CU+00B0 {\\U+FF3CfArial;x}",
		"\\P \\U+00B0 {\\fArial;x}",
	],
	["^J ^I", "\\U+FF3EJ \\U+FF3EI", "^J ^I"],
	["😀!", "\\U+FFFD!", "😀!"],
	["lone \ud83d half, \ufffe", "lone \\U+FFFD half, \\U+FFFD", "lone \ufffd half, \ufffd"],
	["&amp; &#65; <!-- -->", "&amp; &#65; <!-- -->", "&amp; &#65; <!-- -->"],
	["</text></g></svg>", "</text></g></svg>", "</text></g></svg>"],
];

/** The label as a note, as the name of a feature and in all that describes the sheet. */
function labelled(label: string): Sheet {
	const part = {
		...partOf("gauge", [{ operation: "cut", feature: label, path: rectangle(0, 0, 20, 10) }]),
		title: label,
		notes: [label],
	};
	const notes = [{ text: label, at: { x: 1, y: 2 }, height: 2.5, turn: 0, width: 15 }];
	const placed = [{ part, move: { x: 0, y: 0, turn: 0, mirror: false } }];
	return { ...sheetOf("hostile", { placed, notes }), title: label };
}

describe.each(LABELS)("the label %j", (label, dxf, svg) => {
	it.each(["r2000", "r12", "loose"] satisfies DxfFlavour[])(
		"adds nothing to a DXF file, %s",
		(flavour) => {
			const sheet = labelled(label);
			const text = writeDxf(sheet, PENS, flavour);
			expect(auditDxf(text, flavour, expectedOf(sheet))).toEqual([]);
			const plain = readDxf(writeDxf(labelled("plain"), PENS, flavour));
			expect(readDxf(text).tags).toHaveLength(plain.tags.length);
			expect(textAt(readDxf(text).entities.at(-1)!.tags, 1)).toBe(dxf);
		},
	);

	it("adds nothing to an SVG file and can be read in it", () => {
		const sheet = labelled(label);
		const text = writeSvg(sheet, PENS);
		const { marks, notes } = expectedOf(sheet);
		const named = marks.map((mark) => ({ ...mark, feature: svg }));
		expect(auditSvg(text, { marks: named, notes })).toEqual([]);
		const file = readSvg(text);
		expect(file.title).toBe(svg);
		expect(file.desc).toContain(svg);
		expect(file.groups[0]!.texts[0]!.text).toBe(svg);
	});
});

describe("a note that cannot be written", () => {
	const long = "x".repeat(256);

	it("is refused by R12 beyond 255 characters and by R2000 beyond 2049", () => {
		expect(() => writeDxf(labelled(long), PENS, "r12")).toThrow(/256 characters is too long/);
		expect(auditDxf(writeDxf(labelled(long), PENS, "r2000"), "r2000")).toEqual([]);
		expect(() => writeDxf(labelled("漢".repeat(300)), PENS, "r2000")).toThrow(/too long/);
	});

	it("is refused when nothing but blanks is left of it", () => {
		for (const text of ["", "  ", "\n\u0000"]) {
			expect(() => writeDxf(labelled(text), PENS, "r2000")).toThrow(/no text/);
			expect(() => writeSvg(labelled(text), PENS)).toThrow(/no text/);
		}
	});
});

describe("the examples of the docstrings", () => {
	it("hold", () => {
		expect(oneLine("a\r\nb\u0000c")).toBe("a b c");
		expect(dxfText("7° %%d")).toBe("7\\U+00B0 %\\U+FF05d");
	});
});
