import type { DxfFlavour } from "../../src/writers/index.js";
import { contents, contours, extentsAgree } from "./audit-dxf-contents.js";
import { structureR12, structureR2000 } from "./audit-dxf-structure.js";
import type { Expected, Finding } from "./compare-paths.js";
import { type DxfFile, numberAt, readDxf, textAt } from "./read-dxf.js";

/**
 * All that is wrong with a DXF file of a flavour: its form, header, structure, references and
 * contours, and, against what is expected, its entities and their geometry.
 *
 * Cut contours are taken to be closed.
 */
export function auditDxf(text: string, flavour: DxfFlavour, expected?: Expected): Finding[] {
	const file = readDxf(text);
	return [
		...form(text),
		...headerValues(file, flavour),
		...(flavour === "r2000" ? structureR2000(file) : structureR12(file)),
		...kinds(file, flavour),
		...declared(file),
		...contours(file, flavour, expected),
		...extentsAgree(file),
		...(expected ? contents(file, flavour, expected) : []),
	];
}

/** Lines, codes and the form of values by the range of their code (DXF reference). */
function form(text: string): Finding[] {
	const found: Finding[] = [];
	const lines = text.split("\r\n");
	if (lines.pop() !== "") found.push({ rule: "final-newline", detail: "missing" });
	if (lines.some((line) => /[\r\n]/.test(line)))
		found.push({ rule: "line-end", detail: "not CRLF" });
	if (lines.length % 2 !== 0) found.push({ rule: "odd-lines", detail: String(lines.length) });
	if (lines.at(-2) !== "0" || lines.at(-1) !== "EOF") {
		found.push({ rule: "eof", detail: String(lines.at(-1)) });
	}
	if (!/^[ -~\r\n]*$/.test(text)) found.push({ rule: "ascii", detail: "other characters" });
	for (let i = 0; i + 1 < lines.length; i += 2) {
		const code = lines[i]!;
		const value = lines[i + 1]!;
		const where = `line ${i + 2}, group ${code}: ${value}`;
		if (!/^\d+$/.test(code)) found.push({ rule: "code", detail: where });
		else if (isReal(Number(code)) && !/^-?\d+\.\d+$/.test(value)) {
			found.push({ rule: "real", detail: where });
		} else if (isWhole(Number(code)) && !/^-?\d+$/.test(value)) {
			found.push({ rule: "whole", detail: where });
		}
	}
	return found;
}

function isReal(code: number): boolean {
	return (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239);
}

function isWhole(code: number): boolean {
	return (code >= 60 && code <= 99) || (code >= 170 && code <= 179) || (code >= 270 && code <= 289);
}

function headerValues({ header, sectionNames }: DxfFile, flavour: DxfFlavour): Finding[] {
	const wanted = [
		["$ACADVER", 1, flavour === "r2000" ? "AC1015" : "AC1009"],
		["$INSUNITS", 70, "4"],
		["$MEASUREMENT", 70, "1"],
	] as const;
	const order =
		flavour === "r2000"
			? "HEADER CLASSES TABLES BLOCKS ENTITIES OBJECTS"
			: "HEADER TABLES BLOCKS ENTITIES";
	const found: Finding[] = [];
	for (const [name, code, value] of wanted) {
		const given = textAt(header.get(name) ?? [], code);
		if (given !== value) found.push({ rule: name, detail: String(given) });
	}
	const names = sectionNames.join(" ");
	if (names !== order) found.push({ rule: "sections", detail: names });
	return found;
}

const KINDS: Readonly<Record<DxfFlavour, readonly string[]>> = {
	r2000: ["LWPOLYLINE", "CIRCLE", "LINE", "TEXT"],
	r12: ["POLYLINE", "CIRCLE", "LINE", "TEXT"],
	loose: ["ARC", "CIRCLE", "LINE", "TEXT"],
};

function kinds({ entities }: DxfFile, flavour: DxfFlavour): Finding[] {
	const found: Finding[] = [];
	for (const { type, tags, vertices, ended, path } of entities) {
		if (!KINDS[flavour].includes(type)) found.push({ rule: "entity-kind", detail: type });
		if (!ended) found.push({ rule: "seqend", detail: "missing" });
		if (type === "POLYLINE" && textAt(tags, 66) !== "1") {
			found.push({ rule: "vertices-follow", detail: String(textAt(tags, 66)) });
		}
		if (type === "POLYLINE" && vertices.length < 2) found.push({ rule: "vertices", detail: "few" });
		if (type === "LWPOLYLINE" && numberAt(tags, 90) !== path?.points.length) {
			found.push({ rule: "vertex-count", detail: `${textAt(tags, 90)}` });
		}
	}
	return found;
}

/** Every layer, line type and text style that is used must be declared. */
function declared({ tables, entities, sections }: DxfFile): Finding[] {
	const names = (table: string) =>
		new Set(tables.get(table)?.records.map((r) => textAt(r.tags, 2) ?? "") ?? []);
	const [layers, lineTypes, styles] = [names("LAYER"), names("LTYPE"), names("STYLE")];
	const found: Finding[] = [];
	const check = (kind: string, known: ReadonlySet<string>, used: string | undefined) => {
		if (used !== undefined && !known.has(used)) found.push({ rule: kind, detail: used });
	};
	if (!layers.has("0")) found.push({ rule: "undeclared-layer", detail: "0" });
	for (const name of layers) {
		if (!/^[A-Z0-9_$-]{1,31}$/.test(name)) found.push({ rule: "layer-name", detail: name });
	}
	const used = new Set([...entities.map((e) => e.layer), "0"]);
	for (const name of layers) {
		if (!used.has(name)) found.push({ rule: "unused-layer", detail: name });
	}
	for (const record of [...(sections.get("ENTITIES") ?? []), ...(sections.get("BLOCKS") ?? [])]) {
		check("undeclared-layer", layers, textAt(record.tags, 8) ?? "");
		check("undeclared-line-type", lineTypes, textAt(record.tags, 6));
		check("undeclared-style", styles, textAt(record.tags, 7));
	}
	for (const { tags } of tables.get("LAYER")?.records ?? []) {
		check("undeclared-line-type", lineTypes, textAt(tags, 6) ?? "");
		const colour = numberAt(tags, 62);
		if (!(colour >= 1 && colour <= 255)) found.push({ rule: "layer-colour", detail: `${colour}` });
	}
	return found;
}
