import type { Path, Point } from "../../src/geometry/index.js";

export { auditDxf } from "./audit-dxf.js";

/** A group as it stands in the file. */
export interface RawTag {
	readonly code: number;
	readonly value: string;
}

/** A 0 group with all that follows up to the next one. */
export interface DxfRecord {
	readonly type: string;
	readonly tags: readonly RawTag[];
}

export interface DxfTable {
	readonly head: DxfRecord;
	readonly records: readonly DxfRecord[];
}

/** An entity; an old polyline has taken in its vertices. */
export interface DxfEntity extends DxfRecord {
	readonly layer: string;
	/** Null for texts and for what has no path. */
	readonly path: Path | null;
	readonly vertices: readonly DxfRecord[];
	/** Whether an old polyline is ended by SEQEND. */
	readonly ended: boolean;
}

export interface DxfFile {
	readonly tags: readonly RawTag[];
	readonly sectionNames: readonly string[];
	readonly header: ReadonlyMap<string, readonly RawTag[]>;
	readonly tables: ReadonlyMap<string, DxfTable>;
	readonly sections: ReadonlyMap<string, readonly DxfRecord[]>;
	readonly entities: readonly DxfEntity[];
}

/** The first value of a group code in a record. */
export function textAt(tags: readonly RawTag[], code: number): string | undefined {
	return tags.find((t) => t.code === code)?.value;
}

export function numberAt(tags: readonly RawTag[], code: number): number {
	return Number(textAt(tags, code) ?? Number.NaN);
}

/** Code and value of every two lines, whatever they hold. */
export function readTags(text: string): RawTag[] {
	const lines = text.split(/\r?\n/);
	const tags: RawTag[] = [];
	for (let i = 0; i + 1 < lines.length; i += 2) {
		tags.push({ code: Number(lines[i]), value: lines[i + 1]! });
	}
	return tags;
}

/** A DXF file taken apart by its groups alone; faults are left for the audit to find. */
export function readDxf(text: string): DxfFile {
	const tags = readTags(text);
	const records: DxfRecord[] = [];
	for (const tag of tags) {
		if (tag.code === 0) records.push({ type: tag.value, tags: [] });
		else (records.at(-1)?.tags as RawTag[] | undefined)?.push(tag);
	}
	const sectionNames: string[] = [];
	const sections = new Map<string, DxfRecord[]>();
	let header: RawTag[] = [];
	let open: DxfRecord[] | null = null;
	for (const record of records) {
		if (record.type === "SECTION") {
			const name = textAt(record.tags, 2) ?? "";
			sectionNames.push(name);
			open = [];
			sections.set(name, open);
			if (name === "HEADER") header = record.tags.slice(1);
		} else if (record.type === "ENDSEC") open = null;
		else open?.push(record);
	}
	return {
		tags,
		sectionNames,
		header: variablesOf(header),
		tables: tablesOf(sections.get("TABLES") ?? []),
		sections,
		entities: entitiesOf(sections.get("ENTITIES") ?? []),
	};
}

function variablesOf(tags: readonly RawTag[]): Map<string, RawTag[]> {
	const result = new Map<string, RawTag[]>();
	let name = "";
	for (const tag of tags) {
		if (tag.code === 9) {
			name = tag.value;
			result.set(name, []);
		} else result.get(name)?.push(tag);
	}
	return result;
}

function tablesOf(records: readonly DxfRecord[]): Map<string, DxfTable> {
	const result = new Map<string, DxfTable>();
	let open: DxfRecord[] | null = null;
	for (const record of records) {
		if (record.type === "TABLE") {
			open = [];
			result.set(textAt(record.tags, 2) ?? "", { head: record, records: open });
		} else if (record.type === "ENDTAB") open = null;
		else open?.push(record);
	}
	return result;
}

function entitiesOf(records: readonly DxfRecord[]): DxfEntity[] {
	const result: DxfEntity[] = [];
	for (let i = 0; i < records.length; i++) {
		const record = records[i]!;
		const vertices: DxfRecord[] = [];
		let ended = true;
		if (record.type === "POLYLINE") {
			while (records[i + 1]?.type === "VERTEX") vertices.push(records[++i]!);
			ended = records[i + 1]?.type === "SEQEND";
			if (ended) i++;
		}
		const layer = textAt(record.tags, 8) ?? "";
		result.push({ ...record, layer, path: pathOf(record, vertices), vertices, ended });
	}
	return result;
}

function pathOf({ type, tags }: DxfRecord, vertices: readonly DxfRecord[]): Path | null {
	const x = numberAt(tags, 10);
	const y = numberAt(tags, 20);
	const radius = numberAt(tags, 40);
	const closed = (numberAt(tags, 70) & 1) === 1;
	if (type === "LINE") {
		const end = { x: numberAt(tags, 11), y: numberAt(tags, 21), bulge: 0 };
		return { closed: false, points: [{ x, y, bulge: 0 }, end] };
	}
	if (type === "CIRCLE") {
		const points = [
			{ x: x + radius, y, bulge: 1 },
			{ x: x - radius, y, bulge: 1 },
		];
		return { closed: true, points };
	}
	if (type === "ARC") return arcPath({ x, y }, radius, numberAt(tags, 50), numberAt(tags, 51));
	if (type === "LWPOLYLINE") return { closed, points: lightVertices(tags) };
	if (type !== "POLYLINE") return null;
	const points = vertices.map((v) => ({
		x: numberAt(v.tags, 10),
		y: numberAt(v.tags, 20),
		bulge: Number(textAt(v.tags, 42) ?? 0),
	}));
	return { closed, points };
}

/** ARC always runs counter-clockwise, in degrees (DXF reference, ARC). */
function arcPath(centre: Point, radius: number, from: number, to: number): Path {
	const sweep = ((((to - from) % 360) + 360) % 360) * (Math.PI / 180);
	const at = (degrees: number, bulge: number) => ({
		x: centre.x + radius * Math.cos((degrees * Math.PI) / 180),
		y: centre.y + radius * Math.sin((degrees * Math.PI) / 180),
		bulge,
	});
	return { closed: false, points: [at(from, Math.tan(sweep / 4)), at(to, 0)] };
}

function lightVertices(tags: readonly RawTag[]) {
	const points: { x: number; y: number; bulge: number }[] = [];
	for (const { code, value } of tags) {
		if (code === 10) points.push({ x: Number(value), y: Number.NaN, bulge: 0 });
		const last = points.at(-1);
		if (last && code === 20) last.y = Number(value);
		if (last && code === 42) last.bulge = Number(value);
	}
	return points;
}
