import type { Path } from "../geometry/index.js";
import { cleanedPath } from "./cleaned-path.js";
import { type DxfRecord, dxfRecords, type RawTag, textAt } from "./dxf-records.js";
import {
	type DxfShape,
	dxfShape,
	numbersAt,
	oldPolyline,
	placeOf,
	SHAPE_TYPES,
	sideOf,
} from "./dxf-shapes.js";
import { dxfScale } from "./dxf-units.js";
import { textOfBytes } from "./file-bytes.js";
import { Findings } from "./findings.js";
import { joinedPieces } from "./join-pieces.js";
import { MOST_LINES } from "./limits.js";
import { operationNamed } from "./operation-named.js";
import type { ReadDrawing, ReadStroke, ReadText } from "./types.js";

/** What is read of a file before its pieces are joined; `scale` is known before any entity. */
interface Reading {
	readonly findings: Findings;
	readonly strokes: Stroke[];
	readonly texts: ReadText[];
	scale: number;
	/** Whether any path of several segments was met: then lines are no pieces of one. */
	whole: boolean;
}

interface Stroke extends ReadStroke {
	readonly piece: boolean;
}

/**
 * A DXF drawing in millimetres, whoever wrote it: R12, R2000 and the same entities of later
 * versions. In a file without polylines, lines and arcs that meet end to end are one path again:
 * such a file does not say where a path ends, so that paths which meet end to end become one too.
 * Nothing is thrown: what cannot be read is found and left out.
 *
 * @example readDxf(new TextEncoder().encode("0")).findings[0]?.code // "unreadable"
 */
export function readDxf(bytes: Uint8Array): ReadDrawing {
	const findings = new Findings();
	const reading: Reading = { findings, strokes: [], texts: [], scale: 1, whole: false };
	const counted = { counted: "\n".charCodeAt(0), most: MOST_LINES, of: "lines" };
	const text = textOfBytes(bytes, findings, counted);
	if (text !== null) readText(text, reading);
	return {
		format: "dxf",
		page: null,
		strokes: reading.whole ? reading.strokes.map(plain) : joined(reading.strokes),
		texts: reading.texts,
		findings: findings.list(),
	};
}

function plain({ operation, layer, path }: Stroke): ReadStroke {
	return { operation, layer, path };
}

function readText(text: string, reading: Reading): void {
	const { findings } = reading;
	let section = "";
	let header: readonly RawTag[] = [];
	let scaled = false;
	let sections = 0;
	const polyline = new OldPolyline(reading);
	for (const record of dxfRecords(text)) {
		if (!("type" in record)) {
			if (sections > 0) findings.add("truncated", "error", { place: `line ${record.line}` });
			break;
		}
		if (record.type === "SECTION") {
			section = textAt(record.tags, 2)?.trim() ?? "";
			sections++;
			if (section === "HEADER") header = record.tags;
			if (section === "ENTITIES" && !scaled) {
				reading.scale = dxfScale(header, findings);
				scaled = true;
			}
		} else if (record.type === "ENDSEC") {
			polyline.end(false);
			section = "";
		} else if (section === "ENTITIES" && !polyline.takes(record)) readEntity(record, reading);
	}
	polyline.end(false);
	if (sections === 0)
		findings.add("unreadable", "error", { reason: "it has no sections of a DXF" });
}

/** An old polyline with the vertices that follow it, up to its SEQEND. */
class OldPolyline {
	private record: DxfRecord | null = null;
	private vertices: DxfRecord[] = [];

	constructor(private readonly reading: Reading) {}

	/** Whether a record belongs to a polyline; any other record ends it. */
	takes(record: DxfRecord): boolean {
		if (record.type === "VERTEX" && this.record) this.vertices.push(record);
		else if (record.type === "SEQEND") this.end(true);
		else {
			this.end(false);
			if (record.type !== "POLYLINE") return false;
			this.record = record;
		}
		return true;
	}

	end(properly: boolean): void {
		const { record, vertices, reading } = this;
		if (!record) return;
		this.record = null;
		this.vertices = [];
		if (!properly) reading.findings.add("dxf-unended", "error", { place: placeOf(record) });
		if (!isMeant(record, reading.findings)) return;
		const shape = oldPolyline(record, vertices, reading.findings);
		if (shape) keep(record, shape, reading);
	}
}

function readEntity(record: DxfRecord, reading: Reading): void {
	const { type } = record;
	const { findings } = reading;
	if (!isMeant(record, findings)) return;
	if (SHAPE_TYPES.has(type)) {
		const shape = dxfShape(record, findings);
		if (shape) keep(record, shape, reading);
	} else if (type === "TEXT" || type === "MTEXT") keepText(record, reading);
	else {
		const isDrawn = operationNamed(layerOf(record)) !== "reference";
		const kind = type.slice(0, 40) || "nothing";
		findings.add("not-read", isDrawn ? "error" : "warning", { kind }, `${type} ${isDrawn}`);
	}
}

/** Whether an entity is seen in the drawing itself, not on its paper or hidden. */
function isMeant(record: DxfRecord, findings: Findings): boolean {
	const on = (code: number) => textAt(record.tags, code)?.trim() === "1";
	if (on(67)) findings.add("not-read", "warning", { kind: "paper space" }, "paper space");
	else if (on(60)) findings.add("not-shown", "note", { place: placeOf(record) });
	else return true;
	return false;
}

function layerOf({ tags }: DxfRecord): string {
	return textAt(tags, 8)?.trim() ?? "0";
}

/** LINE alone is given in the drawing's axes; the others in their own, seen from one side. */
function keep(record: DxfRecord, shape: DxfShape, reading: Reading): void {
	const { findings, scale } = reading;
	const side = record.type === "LINE" ? "above" : sideOf(record);
	if (side === "tilted") {
		const kind = `tilted ${record.type}`;
		findings.add("not-read", "warning", { kind }, kind);
		return;
	}
	const flip = side === "below" ? -1 : 1;
	const points =
		scale === 1 && flip === 1
			? shape.points
			: shape.points.map((p) => ({
					x: flip * p.x * scale,
					y: p.y * scale,
					bulge: p.bulge === 0 ? 0 : flip * p.bulge,
				}));
	const path = cleanedPath(points, shape.closed, placeOf(record), findings);
	if (record.type === "LWPOLYLINE" || record.type === "POLYLINE") reading.whole = true;
	if (!path) return;
	const layer = layerOf(record);
	reading.strokes.push({ operation: operationNamed(layer), layer, path, piece: shape.piece });
}

function keepText(record: DxfRecord, reading: Reading): void {
	const { findings, scale } = reading;
	const layer = layerOf(record);
	const numbers = numbersAt(record, [10, 20, 40], findings);
	const degrees = textAt(record.tags, 50) === undefined ? [0] : numbersAt(record, [50], findings);
	if (!numbers || !degrees) return;
	const [x, y, height] = numbers.map((n) => n * scale) as [number, number, number];
	const parts = record.tags.filter(({ code }) => code === 1 || code === 3);
	const text = signsOf(parts.map(({ value }) => value).join("")).trim();
	if (operationNamed(layer) !== "reference") {
		findings.add("text-lost", "warning", { text: text || "empty text", layer: layer || "0" });
	}
	const turn = (degrees[0]! * Math.PI) / 180;
	reading.texts.push({ text, layer, at: { x, y }, height, turn });
}

/** A text with its characters by number put in, and the line breaks of MTEXT as spaces. */
function signsOf(value: string): string {
	return value
		.replace(/\\U\+([0-9A-Fa-f]{4})/gu, (_, hex: string) =>
			String.fromCharCode(Number.parseInt(hex, 16)),
		)
		.replace(/\\P/gu, " ");
}

/** Strokes with the pieces of each layer joined, in the order in which they begin. */
function joined(strokes: readonly Stroke[]): ReadStroke[] {
	const layers = new Map<string, number[]>();
	const result: { stroke: ReadStroke; order: number }[] = [];
	for (const [order, stroke] of strokes.entries()) {
		if (!stroke.piece) result.push({ stroke: plain(stroke), order });
		else if (!layers.get(stroke.layer)?.push(order)) layers.set(stroke.layer, [order]);
	}
	for (const orders of layers.values()) {
		const paths = orders.map((order): Path => strokes[order]!.path);
		for (const { path, order } of joinedPieces(paths)) {
			const at = orders[order]!;
			result.push({ stroke: { ...plain(strokes[at]!), path }, order: at });
		}
	}
	return result.sort((a, b) => a.order - b.order).map(({ stroke }) => stroke);
}
