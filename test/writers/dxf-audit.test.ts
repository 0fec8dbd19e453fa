import { describe, expect, it } from "vitest";
import { type DxfFlavour, writeDxf } from "../../src/writers/index.js";
import { expectedOf, handDrawing, PENS } from "../support/drawings.js";
import { auditDxf } from "../support/read-dxf.js";

const SHEET = handDrawing();
const EXPECTED = expectedOf(SHEET);
const GOOD: Readonly<Record<DxfFlavour, string>> = {
	r2000: writeDxf(SHEET, PENS, "r2000"),
	r12: writeDxf(SHEET, PENS, "r12"),
	loose: writeDxf(SHEET, PENS, "loose"),
};

type Damage = (text: string) => string;

/** Replaces the one place, or the first, that a pattern names. @throws Error if there is none */
function swap(pattern: string | RegExp, by: string): Damage {
	return (text) => {
		const damaged = text.replace(pattern, () => by);
		if (damaged === text) throw new Error(`nothing to damage: ${pattern}`);
		return damaged;
	};
}

/** Groups as they stand in the file. */
function groups(...pairs: (string | number)[]): string {
	return pairs.map((p) => `${p}\r\n`).join("");
}

/** Applies to the text from the first place that is named. */
function after(start: string, damage: Damage): Damage {
	return (text) => {
		const at = text.indexOf(start);
		if (at < 0) throw new Error(`no ${start}`);
		return text.slice(0, at) + damage(text.slice(at));
	};
}

const inEntities = (damage: Damage) => after(groups(2, "ENTITIES"), damage);

/** Multiplies the reals of some groups, as a reader with the wrong unit would see them. */
function scaled(factor: number, from: string): Damage {
	return after(from, (text) => {
		const lines = text.split("\r\n");
		for (let i = 0; i + 1 < lines.length; i += 2) {
			if (/^(10|20|11|21|40)$/.test(lines[i]!)) {
				lines[i + 1] = (Number(lines[i + 1]) * factor).toFixed(9);
			}
		}
		return lines.join("\r\n");
	});
}

const LINE = groups(0, "LINE", 8, "CUT", 10, "0.0", 20, "0.0", 11, "1.0", 21, "1.0");

/** [what is done, in which flavour, how, the rule that must see it] */
const DAMAGES: readonly (readonly [string, DxfFlavour, Damage, string])[] = [
	["a line lost", "r12", swap("0\r\nEOF\r\n", "EOF\r\n"), "odd-lines"],
	["no end marker", "r12", swap("0\r\nEOF\r\n", ""), "eof"],
	["no final newline", "r12", swap("EOF\r\n", "EOF"), "final-newline"],
	["a bare line feed", "r12", swap("SECTION\r\n", "SECTION\n"), "line-end"],
	["a letter beyond ASCII", "r12", swap("R 254", "Ø 254"), "ascii"],
	["a code that is none", "r12", swap("\r\n8\r\n", "\r\nx\r\n"), "code"],
	["NaN", "r2000", inEntities(swap(/10\r\n[\d.]+/, "10\r\nNaN")), "real"],
	["NaN, its geometry", "r2000", inEntities(swap(/10\r\n[\d.]+/, "10\r\nNaN")), "geometry"],
	["an exponent", "loose", inEntities(swap(/10\r\n[\d.]+/, "10\r\n1.5e-7")), "real"],
	["a real as a flag", "r12", swap("66\r\n1\r\n", "66\r\n1.0\r\n"), "whole"],
	["another version", "r2000", swap("AC1015", "AC1009"), "$ACADVER"],
	["R2000's version on R12", "loose", swap("AC1009", "AC1015"), "$ACADVER"],
	["inches", "r2000", swap("$INSUNITS\r\n70\r\n4", "$INSUNITS\r\n70\r\n1"), "$INSUNITS"],
	["no unit", "r12", swap(groups(9, "$INSUNITS", 70, 4), ""), "$INSUNITS"],
	[
		"English measure",
		"loose",
		swap("$MEASUREMENT\r\n70\r\n1", "$MEASUREMENT\r\n70\r\n0"),
		"$MEASUREMENT",
	],
	["no CLASSES", "r2000", swap(groups(0, "SECTION", 2, "CLASSES", 0, "ENDSEC"), ""), "sections"],
	["no BLOCKS", "r12", swap(groups(0, "SECTION", 2, "BLOCKS", 0, "ENDSEC"), ""), "sections"],
	["no OBJECTS", "r2000", swap(/0\r\nSECTION\r\n2\r\nOBJECTS[\s\S]*?ENDSEC\r\n/, ""), "sections"],
	["no UCS table", "r2000", swap(/0\r\nTABLE\r\n2\r\nUCS[\s\S]*?ENDTAB\r\n/, ""), "table"],
	["no line types in R12", "r12", swap(/0\r\nTABLE\r\n2\r\nLTYPE[\s\S]*?ENDTAB\r\n/, ""), "table"],
	["no ByLayer", "r2000", swap("2\r\nByLayer", "2\r\nByColour"), "table-record"],
	["no opening view in R12", "r12", swap("2\r\n*ACTIVE", "2\r\nOTHER"), "table-record"],
	[
		"a wrong count in a table",
		"r2000",
		after("LAYER", swap(/70\r\n5\r\n/, "70\r\n9\r\n")),
		"table-count",
	],
	[
		"a wrong count in R12",
		"r12",
		after("2\r\nLAYER", swap(/70\r\n5\r\n/, "70\r\n9\r\n")),
		"table-count",
	],
	["no model space", "r2000", after("BLOCKS", swap("2\r\n*Model_Space", "2\r\nModel")), "block"],
	["no root dictionary", "r2000", after("OBJECTS", swap("ACAD_GROUP", "OTHER")), "root-dictionary"],
	["a marker lost", "r2000", swap("100\r\nAcDbPolyline\r\n", ""), "marker"],
	[
		"TEXT's second marker lost",
		"r2000",
		swap(/7\r\nStandard\r\n100\r\nAcDbText/, "7\r\nStandard"),
		"marker",
	],
	["a marker in R12", "r12", inEntities(swap("8\r\n", "100\r\nAcDbEntity\r\n8\r\n")), "marker"],
	["a handle lost", "r2000", inEntities(swap(/\r\n5\r\n[0-9A-F]+/, "")), "handle"],
	[
		"a handle repeated",
		"r2000",
		inEntities(swap(/\r\n5\r\n[0-9A-F]+/, "\r\n5\r\n1")),
		"handle-repeated",
	],
	["an owner lost", "r2000", inEntities(swap("330\r\n1\r\n", "")), "owner"],
	[
		"an owner that is not there",
		"r2000",
		inEntities(swap("330\r\n1\r\n", "330\r\nFFF\r\n")),
		"reference",
	],
	["a low $HANDSEED", "r2000", swap(/(?<=\$HANDSEED\r\n5\r\n)[0-9A-F]+/, "5"), "$HANDSEED"],
	["a light polyline in R12", "r12", inEntities(swap("CIRCLE", "LWPOLYLINE")), "entity-kind"],
	[
		"a polyline in a loose file",
		"loose",
		inEntities(swap("0\r\nARC", "0\r\nPOLYLINE")),
		"entity-kind",
	],
	["SEQEND lost", "r12", swap(/0\r\nSEQEND\r\n8\r\n[A-Z]+\r\n/, ""), "seqend"],
	["no vertices announced", "r12", swap("66\r\n1\r\n", "66\r\n0\r\n"), "vertices-follow"],
	[
		"a polyline of one vertex",
		"r12",
		swap(/(?:0\r\nVERTEX(?:\r\n(?!0\r\n).*)+\r\n){2}0\r\nSEQ/, "0\r\nSEQ"),
		"vertices",
	],
	["a wrong vertex count", "r2000", swap(/90\r\n\d+/, "90\r\n99"), "vertex-count"],
	["an undeclared layer", "r2000", inEntities(swap("8\r\nCUT", "8\r\nKNIFE")), "undeclared-layer"],
	[
		"a vertex on an undeclared layer",
		"r12",
		after("VERTEX", swap(/8\r\n[A-Z]+/, "8\r\nKNIFE")),
		"undeclared-layer",
	],
	["layer 0 lost", "loose", after("2\r\nLAYER", swap("2\r\n0", "2\r\n1")), "undeclared-layer"],
	[
		"a layer with a blank",
		"r12",
		after("2\r\nLAYER", swap("2\r\nCUT", "2\r\nCUT OUT")),
		"layer-name",
	],
	[
		"a layer without use",
		"r12",
		after("2\r\nLAYER", swap("2\r\nSCORE", "2\r\nSPARE")),
		"unused-layer",
	],
	[
		"a layer without line type",
		"r12",
		swap("6\r\nCONTINUOUS", "6\r\nDASHED"),
		"undeclared-line-type",
	],
	[
		"a text style that is not there",
		"r12",
		inEntities(swap("7\r\nSTANDARD", "7\r\nFANCY")),
		"undeclared-style",
	],
	["a colour beyond the index", "r12", swap(/62\r\n\d+/, "62\r\n300"), "layer-colour"],
	[
		"an open contour",
		"r2000",
		after("8\r\nCUT\r\n100", swap("70\r\n1", "70\r\n0")),
		"open-contour",
	],
	[
		"an open contour in R12",
		"r12",
		after("POLYLINE\r\n8\r\nCUT", swap("70\r\n1", "70\r\n0")),
		"open-contour",
	],
	[
		"a piece lost in a loose file",
		"loose",
		inEntities(swap(/0\r\nLINE\r\n8\r\nCUT(?:\r\n(?!0\r\n).*)+\r\n/, "")),
		"open-contour",
	],
	["a flipped bulge", "r2000", swap("42\r\n0.0552866", "42\r\n-0.0552866"), "geometry"],
	["a flipped bulge in R12", "r12", swap("42\r\n0.0552866", "42\r\n-0.0552866"), "geometry"],
	["a bulge lost", "r12", swap("42\r\n0.055286600000000", "42\r\n0.000000000000000"), "geometry"],
	["a vertex 0.1 µm off", "r2000", inEntities(swap("56.500000000", "56.500100000")), "geometry"],
	[
		"a radius 0.1 µm off",
		"loose",
		inEntities(swap("40\r\n3.000000000", "40\r\n3.000100000")),
		"geometry",
	],
	[
		"an arc from its other end",
		"loose",
		inEntities(swap(/(50\r\n[\d.]+\r\n)51/, "50\r\n0.0\r\n51")),
		"geometry",
	],
	["entities 25.4 times too large", "r12", scaled(25.4, groups(2, "ENTITIES")), "extents"],
	["everything 25.4 times too large", "r2000", scaled(25.4, groups(9, "$EXTMIN")), "geometry"],
	[
		"everything 25.4 times too large, loose",
		"loose",
		scaled(1 / 25.4, groups(9, "$EXTMIN")),
		"geometry",
	],
	["a wrong $EXTMAX", "loose", after("$EXTMAX", swap(/(?<=10\r\n)[\d.]+/, "1.0")), "extents"],
	["a vertex repeated", "r12", swap(/0\r\nVERTEX(?:\r\n(?!0\r\n).*)+\r\n/, ""), "geometry"],
	["an injected entity", "r12", swap("0\r\nTEXT", `${LINE}0\r\nTEXT`), "count"],
	["an entity lost", "r2000", inEntities(swap(/0\r\nCIRCLE(?:\r\n(?!0\r\n).*)+\r\n/, "")), "count"],
	["an entity on another layer", "loose", inEntities(swap("8\r\nSCORE", "8\r\nCUT")), "count"],
	["a note lost", "r12", swap(/0\r\nTEXT(?:\r\n(?!0\r\n).*)+\r\n/, ""), "count"],
	["a note moved", "r12", after("0\r\nTEXT", swap("20.000000000", "21.000000000")), "note"],
	[
		"a note on a cut layer",
		"r12",
		swap("TEXT\r\n8\r\nREFERENCE", "TEXT\r\n8\r\nCUT"),
		"note-layer",
	],
	["a note with a code of its own", "r12", swap("56 mm", "56%%d"), "note-text"],
];

describe("the audit of a DXF file", () => {
	it.each(["r2000", "r12", "loose"] as const)("finds nothing in a good file, %s", (flavour) => {
		expect(auditDxf(GOOD[flavour], flavour, EXPECTED)).toEqual([]);
	});

	it.each(DAMAGES)("finds %s (%s)", (_what, flavour, damage, rule) => {
		const damaged = damage(GOOD[flavour]);
		expect(damaged).not.toBe(GOOD[flavour]);
		const found = auditDxf(damaged, flavour, EXPECTED);
		expect(found.map((f) => f.rule)).toContain(rule);
	});

	it("finds a repeated vertex and a contour that crosses itself", () => {
		const [first] = /0\r\nVERTEX(?:\r\n(?!0\r\n).*)+\r\n/.exec(GOOD.r12) ?? [];
		const twice = swap(first!, first! + first!)(GOOD.r12);
		expect(auditDxf(twice, "r12").map((f) => f.rule)).toContain("repeated-vertex");
		const at = "10\r\n56.500000000\r\n20\r\n18.250000000";
		const crossed = swap(at, "10\r\n-5.000000000\r\n20\r\n18.250000000")(GOOD.r2000);
		expect(auditDxf(crossed, "r2000").map((f) => f.rule)).toContain("self-crossing");
	});

	it("tells the flavours apart", () => {
		expect(auditDxf(GOOD.r12, "loose", EXPECTED)).not.toEqual([]);
		expect(auditDxf(GOOD.r12, "r2000", EXPECTED)).not.toEqual([]);
		expect(auditDxf(GOOD.r2000, "r12", EXPECTED)).not.toEqual([]);
	});
});
