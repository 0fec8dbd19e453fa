import { textOfBytes } from "./file-bytes.js";
import { Findings } from "./findings.js";
import { MOST_TAGS } from "./limits.js";
import { isRigid, type Matrix, mappedPoint, product, readTransform, sizeOf } from "./matrix.js";
import { operationNamed } from "./operation-named.js";
import { Pen } from "./pen.js";
import { type Attributes, type Element, plainText, svgRoot } from "./svg-elements.js";
import { svgUnits } from "./svg-length.js";
import { drawShape, SHAPES } from "./svg-shapes.js";
import { svgSize } from "./svg-size.js";
import type { ReadDrawing, ReadStroke, ReadText } from "./types.js";

/** Height of capitals in a usual sans-serif font, as a share of its size (from memory). */
const CAPITALS = 0.7;

/** Elements that draw nothing where they stand; what uses them is found by itself. */
const SILENT: ReadonlySet<string> = new Set([
	"title",
	"desc",
	"metadata",
	"defs",
	"linearGradient",
	"radialGradient",
	"pattern",
	"marker",
	"clipPath",
	"mask",
	"filter",
	"script",
	"view",
]);

/** What holds for the elements of a group. */
interface Surroundings {
	readonly matrix: Matrix;
	readonly layer: string;
	readonly operation: ReadStroke["operation"];
}

interface Reading {
	readonly strokes: ReadStroke[];
	readonly texts: ReadText[];
	readonly findings: Findings;
	/** How many elements of each name were met. */
	readonly met: Map<string, number>;
}

/**
 * An SVG drawing in millimetres, y up, whoever wrote it. Units are taken from the file; arcs of
 * circles stay arcs, other curves become lines within 1e-4 mm. Nothing is thrown: what cannot be
 * read is found and left out.
 *
 * @example readSvg(new TextEncoder().encode("<svg")).findings[0]?.code // "unreadable"
 */
export function readSvg(bytes: Uint8Array): ReadDrawing {
	const findings = new Findings();
	const reading: Reading = { strokes: [], texts: [], findings, met: new Map() };
	const counted = { counted: "<".charCodeAt(0), most: MOST_TAGS, of: "tags" };
	const text = textOfBytes(bytes, findings, counted);
	const root = text === null ? null : svgRoot(text, findings);
	const size = root && svgSize(root.attributes, findings);
	if (root && size) {
		const around = { matrix: size.matrix, layer: "", operation: null };
		const inner = { ...around, matrix: matrixIn(root.attributes, around.matrix, "svg", findings) };
		for (const child of root.children) readElement(child, inner, reading);
	}
	return {
		format: "svg",
		page: size?.page ?? null,
		strokes: reading.strokes,
		texts: reading.texts,
		findings: findings.list(),
	};
}

function readElement(element: Element, around: Surroundings, reading: Reading): void {
	const { name, attributes } = element;
	const { findings, met } = reading;
	if (SILENT.has(name) || name.includes(":") || isPageRule(element)) return;
	const nth = (met.get(name) ?? 0) + 1;
	met.set(name, nth);
	const place = `${name} ${nth}`;
	if (isHidden(attributes)) {
		findings.add("not-shown", "note", { place });
		return;
	}
	const matrix = matrixIn(attributes, around.matrix, place, findings);
	if (name === "g" || name === "a") {
		const inner = { ...around, ...namedBy(attributes, around), matrix };
		for (const child of element.children) readElement(child, inner, reading);
	} else if (SHAPES.has(name)) {
		const pen = new Pen(matrix, place, findings);
		drawShape(element, pen, place, findings);
		const { layer, operation } = around;
		for (const path of pen.paths) reading.strokes.push({ operation, layer, path });
	} else if (name === "text") readText(element, { ...around, matrix }, place, reading);
	else {
		const isDrawn = around.operation !== "reference" && name !== "style";
		findings.add("not-read", isDrawn ? "error" : "warning", { kind: name }, `${name} ${isDrawn}`);
	}
}

/** A length of CSS that is not below 0. */
const LENGTH = String.raw`\d+(?:\.\d+)?(?:mm|cm|q|in|pt|pc|px)`;
const PAGE_SETTING = new RegExp(
	String.raw`^(?:size\s*:\s*${LENGTH}\s+${LENGTH}|margin\s*:\s*(?:0|${LENGTH}))$`,
	"iu",
);

/** Whether a style sheet only says what paper to print on: one rule, of size and margin. */
function isPageRule({ name, text, children }: Element): boolean {
	if (name !== "style" || children.length > 0) return false;
	const settings = /^\s*@page\s*\{([^{}]*)\}\s*$/iu.exec(text)?.[1]?.split(";");
	if (!settings) return false;
	return settings.map((s) => s.trim()).every((s) => s === "" || PAGE_SETTING.test(s));
}

function isHidden({ display, visibility, style = "" }: Attributes): boolean {
	if (display === "none" || visibility === "hidden") return true;
	return /(?:^|;)\s*(?:display\s*:\s*none|visibility\s*:\s*hidden)/u.test(style);
}

/** The matrix within an element: its own transform first, then that around it. */
function matrixIn(a: Attributes, around: Matrix, place: string, findings: Findings): Matrix {
	if (a.style?.includes("transform")) {
		findings.add("not-read", "error", { kind: "transform in a style" }, "transform in a style");
	}
	if (a.transform === undefined) return around;
	const own = readTransform(a.transform);
	if (!own) {
		findings.noNumber(a.transform, place);
		return around;
	}
	if (!isRigid(own)) findings.add("not-rigid", "warning", { place });
	return product(around, own);
}

/** The layer by a group's id or class, if one of them is an operation; else what is around. */
function namedBy({ id = "", class: kinds = "" }: Attributes, around: Surroundings) {
	for (const name of [id, ...kinds.split(/\s+/u)]) {
		const operation = operationNamed(name);
		if (operation) return { layer: name, operation };
	}
	return { layer: around.operation ? around.layer : plainText(id) || around.layer };
}

function readText(element: Element, around: Surroundings, place: string, reading: Reading): void {
	const { attributes } = element;
	const text = element.text.replace(/\s+/gu, " ").trim();
	const style = /(?:^|;)\s*font-size\s*:\s*([^;]+)/u.exec(attributes.style ?? "")?.[1];
	const size = svgUnits(attributes["font-size"] ?? style ?? "16");
	const [x, y] = [svgUnits(attributes.x ?? "0"), svgUnits(attributes.y ?? "0")];
	const { matrix, layer, operation } = around;
	const at = mappedPoint(matrix, x, y);
	const height = size * CAPITALS * sizeOf(matrix);
	if (![at.x, at.y, height].every(Number.isFinite)) {
		reading.findings.noNumber(text, place);
		return;
	}
	if (text === "") return;
	if (operation !== "reference") {
		reading.findings.add("text-lost", "warning", { text, layer: layer || "no group" });
	}
	reading.texts.push({ text, layer, at, height, turn: Math.atan2(matrix.b, matrix.a) });
}
