import type { Extents } from "../geometry/index.js";
import { point, real, section, type Tag, tag, whole } from "./dxf-tags.js";

/** A layer as declared: its name and colour index. */
export interface Layer {
	readonly name: string;
	readonly colour: number;
}

/** Everything that both versions are written from. */
export interface Contents<Entity> {
	readonly layers: readonly Layer[];
	readonly entities: readonly Entity[];
	/** Box of all strokes, mm. */
	readonly drawn: Extents;
	/** Box of the sheet, shown when the file is opened. */
	readonly shown: Extents;
}

/**
 * The HEADER section. $INSUNITS 4 is millimetres and $MEASUREMENT 1 metric (DXF reference);
 * some readers go by the one, some by the other.
 *
 * @param more - variables of one version
 */
export function header(version: string, drawn: Extents, more: readonly Tag[]): Tag[] {
	const variable = (name: string, ...tags: Tag[]) => [tag(9, name), ...tags];
	return section("HEADER", [
		...variable("$ACADVER", tag(1, version)),
		...variable("$DWGCODEPAGE", tag(3, "ANSI_1252")),
		...more,
		...variable("$INSUNITS", whole(70, 4)),
		...variable("$MEASUREMENT", whole(70, 1)),
		...variable("$EXTMIN", ...point(10, drawn.minX, drawn.minY)),
		...variable("$EXTMAX", ...point(10, drawn.maxX, drawn.maxY)),
	]);
}

/** Settings of the view that a file opens with: from above, the whole sheet in sight. */
export function activeView({ minX, minY, maxX, maxY }: Extents): Tag[] {
	const width = maxX - minX;
	const height = maxY - minY;
	return [
		tag(2, "*ACTIVE"),
		whole(70, 0),
		...point(10, 0, 0, null),
		...point(11, 1, 1, null),
		...point(12, (minX + maxX) / 2, (minY + maxY) / 2, null),
		...point(13, 0, 0, null),
		...point(14, 10, 10, null),
		...point(15, 10, 10, null),
		...point(16, 0, 0, 1),
		...point(17, 0, 0),
		real(40, height),
		real(41, width / height),
		real(42, 50),
		real(43, 0),
		real(44, 0),
		real(50, 0),
		real(51, 0),
		...[71, 72, 73, 74, 75, 76, 77, 78].map((code) => whole(code, VIEW_SWITCHES[code] ?? 0)),
	];
}

/** Circle smoothness, fast zoom and icon of the opening view. */
const VIEW_SWITCHES: Readonly<Record<number, number>> = { 72: 1000, 73: 1, 74: 3 };

/** A line type without dashes: letters of its own group of codes, 65 for alignment A. */
export function solidLine(name: string, description: string): Tag[] {
	return [
		tag(2, name),
		whole(70, 0),
		tag(3, description),
		whole(72, 65),
		whole(73, 0),
		real(40, 0),
	];
}

/** The text style of notes: no fixed height, upright. */
export function textStyle(name: string): Tag[] {
	return [
		tag(2, name),
		whole(70, 0),
		real(40, 0),
		real(41, 1),
		real(50, 0),
		whole(71, 0),
		real(42, 2.5),
		tag(3, "txt"),
		tag(4, ""),
	];
}
