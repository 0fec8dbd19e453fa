import type { Entity } from "./dxf-entities.js";
import { activeView, type Contents, header, solidLine, textStyle } from "./dxf-header.js";
import { section, type Tag, tag, whole } from "./dxf-tags.js";

/** A whole R12 document (AC1009): no handles, no subclass markers. */
export function documentR12({ layers, entities, drawn, shown }: Contents<Entity>): Tag[] {
	const table = (name: string, records: readonly (readonly Tag[])[]): Tag[] => [
		tag(0, "TABLE"),
		tag(2, name),
		whole(70, records.length),
		...records.flatMap((tags) => [tag(0, name), ...tags]),
		tag(0, "ENDTAB"),
	];
	const layerRecords = layers.map(({ name, colour }) => [
		tag(2, name),
		whole(70, 0),
		whole(62, colour),
		tag(6, "CONTINUOUS"),
	]);
	return [
		...header("AC1009", drawn, []),
		...section("TABLES", [
			...table("VPORT", [activeView(shown)]),
			...table("LTYPE", [solidLine("CONTINUOUS", "Solid line")]),
			...table("LAYER", layerRecords),
			...table("STYLE", [textStyle("STANDARD")]),
			...table("APPID", [[tag(2, "ACAD"), whole(70, 0)]]),
		]),
		...section("BLOCKS", []),
		...section(
			"ENTITIES",
			entities.flatMap(({ type, layer, tags }) => [tag(0, type), tag(8, layer), ...tags]),
		),
		tag(0, "EOF"),
	];
}
