import type { Entity } from "./dxf-entities.js";
import { activeView, type Contents, header, solidLine, textStyle } from "./dxf-header.js";
import { point, section, type Tag, tag, whole } from "./dxf-tags.js";

/** Hands out the handles of one document. */
class Handles {
	private last = 0;

	next(): string {
		this.last += 1;
		return this.last.toString(16).toUpperCase();
	}
}

interface Record {
	readonly subclass: string;
	readonly tags: readonly Tag[];
	/** Given where something else refers to the record. */
	readonly handle?: string;
}

/** "0" is the owner of what nothing owns. */
const NOBODY = "0";

/**
 * A whole R2000 document (AC1015): every table, block and dictionary that strict readers ask
 * for, handles counted from 1.
 */
export function documentR2000(contents: Contents<Entity>): Tag[] {
	const handles = new Handles();
	const model = handles.next();
	const paper = handles.next();
	const body = [
		...section("CLASSES", []),
		...section("TABLES", tables(handles, contents, model, paper)),
		...section("BLOCKS", [
			...block(handles, "*Model_Space", model, []),
			...block(handles, "*Paper_Space", paper, [whole(67, 1)]),
		]),
		...section(
			"ENTITIES",
			contents.entities.flatMap((entity) => entityTags(handles, entity, model)),
		),
		...section("OBJECTS", objects(handles)),
		tag(0, "EOF"),
	];
	const seed = [tag(9, "$HANDSEED"), tag(5, handles.next())];
	return [...header("AC1015", contents.drawn, seed), ...body];
}

function tables(
	handles: Handles,
	{ layers, shown }: Contents<Entity>,
	model: string,
	paper: string,
): Tag[] {
	const named = (subclass: string, ...tags: Tag[]): Record => ({ subclass, tags });
	const lineTypes = ["ByBlock", "ByLayer", "Continuous"].map((name) =>
		named("AcDbLinetypeTableRecord", ...solidLine(name, name === "Continuous" ? "Solid line" : "")),
	);
	const layerRecords = layers.map(({ name, colour }) =>
		named(
			"AcDbLayerTableRecord",
			tag(2, name),
			whole(70, 0),
			whole(62, colour),
			tag(6, "Continuous"),
		),
	);
	const blockRecord = (name: string, handle: string): Record => ({
		...named("AcDbBlockTableRecord", tag(2, name), tag(340, NOBODY)),
		handle,
	});
	return [
		...table(handles, "VPORT", [named("AcDbViewportTableRecord", ...activeView(shown))]),
		...table(handles, "LTYPE", lineTypes),
		...table(handles, "LAYER", layerRecords),
		...table(handles, "STYLE", [named("AcDbTextStyleTableRecord", ...textStyle("Standard"))]),
		...table(handles, "VIEW", []),
		...table(handles, "UCS", []),
		...table(handles, "APPID", [named("AcDbRegAppTableRecord", tag(2, "ACAD"), whole(70, 0))]),
		...table(handles, "DIMSTYLE", [
			named("AcDbDimStyleTableRecord", tag(2, "Standard"), whole(70, 0)),
		]),
		...table(handles, "BLOCK_RECORD", [
			blockRecord("*Model_Space", model),
			blockRecord("*Paper_Space", paper),
		]),
	];
}

/** DIMSTYLE alone has a marker of its own on the table and gives handles in group 105. */
function table(handles: Handles, name: string, records: readonly Record[]): Tag[] {
	const own = handles.next();
	const dimensions = name === "DIMSTYLE";
	return [
		tag(0, "TABLE"),
		tag(2, name),
		tag(5, own),
		tag(330, NOBODY),
		tag(100, "AcDbSymbolTable"),
		whole(70, records.length),
		...(dimensions ? [tag(100, "AcDbDimStyleTable"), whole(71, records.length)] : []),
		...records.flatMap(({ subclass, tags, handle }) => [
			tag(0, name),
			tag(dimensions ? 105 : 5, handle ?? handles.next()),
			tag(330, own),
			tag(100, "AcDbSymbolTableRecord"),
			tag(100, subclass),
			...tags,
		]),
		tag(0, "ENDTAB"),
	];
}

function block(handles: Handles, name: string, owner: string, space: readonly Tag[]): Tag[] {
	const entity = (type: string, subclass: string) => [
		tag(0, type),
		tag(5, handles.next()),
		tag(330, owner),
		tag(100, "AcDbEntity"),
		...space,
		tag(8, "0"),
		tag(100, subclass),
	];
	return [
		...entity("BLOCK", "AcDbBlockBegin"),
		tag(2, name),
		whole(70, 0),
		...point(10, 0, 0),
		tag(3, name),
		tag(1, ""),
		...entity("ENDBLK", "AcDbBlockEnd"),
	];
}

function entityTags(handles: Handles, entity: Entity, owner: string): Tag[] {
	const { type, layer, subclass, tags, markedTwice } = entity;
	if (subclass === null) throw new RangeError(`${type} is no record of R2000`);
	return [
		tag(0, type),
		tag(5, handles.next()),
		tag(330, owner),
		tag(100, "AcDbEntity"),
		tag(8, layer),
		tag(100, subclass),
		...tags,
		...(markedTwice ? [tag(100, subclass)] : []),
	];
}

/** The root dictionary and the empty dictionary of groups that it must hold. */
function objects(handles: Handles): Tag[] {
	const root = handles.next();
	const groups = handles.next();
	const dictionary = (handle: string, owner: string, ...entries: Tag[]) => [
		tag(0, "DICTIONARY"),
		tag(5, handle),
		tag(330, owner),
		tag(100, "AcDbDictionary"),
		whole(281, 1),
		...entries,
	];
	return [
		...dictionary(root, NOBODY, tag(3, "ACAD_GROUP"), tag(350, groups)),
		...dictionary(groups, root),
	];
}
