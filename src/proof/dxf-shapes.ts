import { type Point, type Vertex, vertex } from "../geometry/index.js";
import { type DxfRecord, type RawTag, textAt } from "./dxf-records.js";
import type { Findings } from "./findings.js";
import { wholeNumber } from "./number-reader.js";

/** What an entity draws, in the file's units. */
export interface DxfShape {
	readonly points: readonly Vertex[];
	readonly closed: boolean;
	/** A piece of an exploded path, maybe: LINE and ARC. */
	readonly piece: boolean;
}

/** Kinds of entities that draw a path by themselves. */
export const SHAPE_TYPES: ReadonlySet<string> = new Set(["LINE", "ARC", "CIRCLE", "LWPOLYLINE"]);

/** Whether an entity's own axes look from below (DXF reference, object coordinate systems). */
export type Side = "above" | "below" | "tilted";

/** The side from which an entity is drawn, by its extrusion direction. */
export function sideOf({ tags }: DxfRecord): Side {
	const [x, y, z] = [210, 220, 230].map((code) => wholeNumber(textAt(tags, code) ?? "0"));
	if (textAt(tags, 230) === undefined) return "above";
	if (Math.abs(x!) > 1e-9 || Math.abs(y!) > 1e-9) return "tilted";
	return z! > 0 ? "above" : "below";
}

/** The place of a record for a message. */
export function placeOf({ type, line }: DxfRecord): string {
	return `${type} in line ${line}`;
}

/** Group values as numbers; null with a finding if one is missing or no number. */
export function numbersAt(
	record: DxfRecord,
	codes: readonly number[],
	findings: Findings,
): number[] | null {
	const result: number[] = [];
	for (const code of codes) {
		const text = textAt(record.tags, code);
		const value = wholeNumber(text ?? "");
		if (!Number.isFinite(value)) {
			findings.noNumber(text ?? "", placeOf(record));
			return null;
		}
		result.push(value);
	}
	return result;
}

/** The path of a LINE, ARC, CIRCLE or LWPOLYLINE; null with a finding where it has none. */
export function dxfShape(record: DxfRecord, findings: Findings): DxfShape | null {
	const { type } = record;
	if (type === "LWPOLYLINE") return lightPolyline(record, findings);
	if (type === "LINE") {
		const ends = numbersAt(record, [10, 20, 11, 21], findings);
		if (!ends) return null;
		const [x0, y0, x1, y1] = ends as [number, number, number, number];
		return { points: [vertex(x0, y0), vertex(x1, y1)], closed: false, piece: true };
	}
	const codes = type === "CIRCLE" ? [10, 20, 40] : [10, 20, 40, 50, 51];
	const numbers = numbersAt(record, codes, findings);
	if (!numbers) return null;
	const [x, y, radius, from, to] = numbers as [number, number, number, number, number];
	if (!(radius > 0)) {
		findings.add("no-length", "warning", { place: placeOf(record) });
		return null;
	}
	return type === "CIRCLE" || isFullTurn(from, to)
		? { points: [vertex(x + radius, y, 1), vertex(x - radius, y, 1)], closed: true, piece: false }
		: { points: arcPoints({ x, y }, radius, from, to), closed: false, piece: true };
}

function isFullTurn(from: number, to: number): boolean {
	return from !== to && (to - from) % 360 === 0;
}

/** ARC always runs counter-clockwise, in degrees (DXF reference, ARC). */
function arcPoints(centre: Point, radius: number, from: number, to: number): Vertex[] {
	const sweep = ((((to - from) % 360) + 360) % 360) * (Math.PI / 180);
	const at = (degrees: number, bulge: number) => {
		const angle = (degrees * Math.PI) / 180;
		return vertex(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle), bulge);
	};
	return [at(from, Math.tan(sweep / 4)), at(to, 0)];
}

function lightPolyline(record: DxfRecord, findings: Findings): DxfShape | null {
	const points: { x: number; y: number; bulge: number }[] = [];
	for (const tag of record.tags) {
		const { code } = tag;
		if (code !== 10 && code !== 20 && code !== 42) continue;
		const value = numberOf(tag, record, findings);
		if (value === null) return null;
		if (code === 10) points.push({ x: value, y: Number.NaN, bulge: 0 });
		const last = points.at(-1);
		if (last && code === 20) last.y = value;
		if (last && code === 42) last.bulge = value;
	}
	const count = wholeNumber(textAt(record.tags, 90) ?? "");
	if (count !== points.length) {
		const given = textAt(record.tags, 90)?.trim() || "none";
		findings.add("dxf-count", "error", { place: placeOf(record), given, found: points.length });
	}
	return { points, closed: isClosed(record), piece: false };
}

function numberOf(tag: RawTag, record: DxfRecord, findings: Findings): number | null {
	const value = wholeNumber(tag.value);
	if (Number.isFinite(value)) return value;
	findings.noNumber(tag.value, placeOf(record));
	return null;
}

function flagsOf({ tags }: DxfRecord): number {
	return Number(textAt(tags, 70) ?? 0) | 0;
}

function isClosed(record: DxfRecord): boolean {
	return (flagsOf(record) & 1) === 1;
}

/** Flags of POLYLINE and VERTEX (DXF reference, group 70). */
const FITTED = 2 | 4;
const MESH = 16 | 64;
const FRAME = 16;

/** The path of an old polyline and its vertices; null with a finding where it has none. */
export function oldPolyline(
	record: DxfRecord,
	vertices: readonly DxfRecord[],
	findings: Findings,
): DxfShape | null {
	const flags = flagsOf(record);
	if (flags & MESH) {
		findings.add("not-read", "warning", { kind: "POLYLINE mesh" }, "POLYLINE mesh");
		return null;
	}
	if (flags & FITTED) findings.add("curve", "warning", { place: placeOf(record) });
	const points: Vertex[] = [];
	for (const v of vertices) {
		if (flagsOf(v) & FRAME) continue;
		const place = numbersAt(v, [10, 20], findings);
		const bulge = textAt(v.tags, 42) === undefined ? [0] : numbersAt(v, [42], findings);
		if (!place || !bulge) return null;
		points.push(vertex(place[0]!, place[1]!, bulge[0]!));
	}
	return { points, closed: isClosed(record), piece: false };
}
