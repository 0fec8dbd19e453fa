import type { Finding } from "./compare-paths.js";
import { type DxfFile, type DxfRecord, textAt } from "./read-dxf.js";

/** Tables of R2000 with the records that must be there and the marker of each record. */
const TABLES = [
	["VPORT", "AcDbViewportTableRecord", ["*ACTIVE"]],
	["LTYPE", "AcDbLinetypeTableRecord", ["ByBlock", "ByLayer", "Continuous"]],
	["LAYER", "AcDbLayerTableRecord", ["0"]],
	["STYLE", "AcDbTextStyleTableRecord", ["Standard"]],
	["VIEW", "AcDbViewTableRecord", []],
	["UCS", "AcDbUCSTableRecord", []],
	["APPID", "AcDbRegAppTableRecord", ["ACAD"]],
	["DIMSTYLE", "AcDbDimStyleTableRecord", []],
	["BLOCK_RECORD", "AcDbBlockTableRecord", ["*Model_Space", "*Paper_Space"]],
] as const;

const ENTITY_MARKERS: Readonly<Record<string, readonly string[]>> = {
	LWPOLYLINE: ["AcDbEntity", "AcDbPolyline"],
	CIRCLE: ["AcDbEntity", "AcDbCircle"],
	LINE: ["AcDbEntity", "AcDbLine"],
	TEXT: ["AcDbEntity", "AcDbText", "AcDbText"],
	BLOCK: ["AcDbEntity", "AcDbBlockBegin"],
	ENDBLK: ["AcDbEntity", "AcDbBlockEnd"],
	DICTIONARY: ["AcDbDictionary"],
};

/** What strict readers of R2000 ask of tables, blocks, objects, markers and handles. */
export function structureR2000(file: DxfFile): Finding[] {
	return [...tableFaults(file), ...blockFaults(file), ...markerFaults(file), ...handleFaults(file)];
}

function markersOf({ tags }: DxfRecord): string {
	return tags
		.filter((t) => t.code === 100)
		.map((t) => t.value)
		.join(" ");
}

function tableFaults({ tables }: DxfFile): Finding[] {
	const found: Finding[] = [];
	for (const [name, marker, needed] of TABLES) {
		const table = tables.get(name);
		if (!table) {
			found.push({ rule: "table", detail: name });
			continue;
		}
		if (Number(textAt(table.head.tags, 70)) !== table.records.length) {
			found.push({ rule: "table-count", detail: name });
		}
		const names = table.records.map((r) => textAt(r.tags, 2));
		for (const record of needed) {
			if (!names.includes(record)) found.push({ rule: "table-record", detail: record });
		}
		for (const record of table.records) {
			if (record.type !== name) found.push({ rule: "table-record", detail: record.type });
			if (markersOf(record) !== `AcDbSymbolTableRecord ${marker}`) {
				found.push({ rule: "marker", detail: `${name}: ${markersOf(record)}` });
			}
		}
		if (!markersOf(table.head).startsWith("AcDbSymbolTable")) {
			found.push({ rule: "marker", detail: name });
		}
	}
	return found;
}

function blockFaults({ sections }: DxfFile): Finding[] {
	const found: Finding[] = [];
	const blocks = (sections.get("BLOCKS") ?? []).filter((r) => r.type === "BLOCK");
	for (const name of ["*Model_Space", "*Paper_Space"]) {
		if (!blocks.some((b) => textAt(b.tags, 2) === name)) {
			found.push({ rule: "block", detail: name });
		}
	}
	const [root, ...others] = sections.get("OBJECTS") ?? [];
	const groups = root && textAt(root.tags, 3) === "ACAD_GROUP" ? textAt(root.tags, 350) : null;
	if (root?.type !== "DICTIONARY" || !others.some((o) => textAt(o.tags, 5) === groups)) {
		found.push({ rule: "root-dictionary", detail: root?.type ?? "missing" });
	}
	return found;
}

function markerFaults({ sections }: DxfFile): Finding[] {
	return ["BLOCKS", "ENTITIES", "OBJECTS"].flatMap((name) =>
		(sections.get(name) ?? []).flatMap((record) => {
			const wanted = ENTITY_MARKERS[record.type]?.join(" ");
			return wanted === markersOf(record) ? [] : [{ rule: "marker", detail: record.type }];
		}),
	);
}

function handleFaults({ header, tables, sections }: DxfFile): Finding[] {
	const records = [
		...[...tables.values()].flatMap(({ head, records }) => [head, ...records]),
		...["BLOCKS", "ENTITIES", "OBJECTS"].flatMap((name) => sections.get(name) ?? []),
	];
	const found: Finding[] = [];
	const known = new Set<string>();
	let highest = 0;
	for (const record of records) {
		const handle = textAt(record.tags, record.type === "DIMSTYLE" ? 105 : 5);
		if (handle === undefined || !/^[1-9A-F][0-9A-F]*$/.test(handle)) {
			found.push({ rule: "handle", detail: `${record.type}: ${handle}` });
			continue;
		}
		if (known.has(handle)) found.push({ rule: "handle-repeated", detail: handle });
		known.add(handle);
		highest = Math.max(highest, Number.parseInt(handle, 16));
	}
	for (const { type, tags } of records) {
		if (!tags.some((t) => t.code === 330)) found.push({ rule: "owner", detail: type });
		for (const { code, value } of tags) {
			if (![330, 340, 350, 360].includes(code) || value === "0") continue;
			if (!known.has(value)) found.push({ rule: "reference", detail: `${type} ${code}: ${value}` });
		}
	}
	const seed = Number.parseInt(textAt(header.get("$HANDSEED") ?? [], 5) ?? "", 16);
	if (!(seed > highest)) found.push({ rule: "$HANDSEED", detail: `${seed} under ${highest}` });
	return found;
}

/** R12 knows no subclass markers, and the tables it has must be there. */
export function structureR12({ tags, tables }: DxfFile): Finding[] {
	const found: Finding[] = [];
	if (tags.some((t) => t.code === 100)) found.push({ rule: "marker", detail: "in R12" });
	for (const [name, record] of [
		["VPORT", "*ACTIVE"],
		["LTYPE", "CONTINUOUS"],
		["LAYER", "0"],
		["STYLE", "STANDARD"],
	] as const) {
		const table = tables.get(name);
		if (!table) found.push({ rule: "table", detail: name });
		else if (!table.records.some((r) => textAt(r.tags, 2) === record)) {
			found.push({ rule: "table-record", detail: record });
		}
		if (table && Number(textAt(table.head.tags, 70)) !== table.records.length) {
			found.push({ rule: "table-count", detail: name });
		}
	}
	return found;
}
