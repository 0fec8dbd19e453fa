import type { Point } from "../geometry/index.js";
import type { Findings } from "./findings.js";
import { readNumbers } from "./number-reader.js";
import type { Pen } from "./pen.js";
import type { Attributes, Element } from "./svg-elements.js";
import { svgUnits } from "./svg-length.js";
import { drawPathData } from "./svg-path-data.js";

/** Elements that draw a line. */
export const SHAPES: ReadonlySet<string> = new Set([
	"path",
	"line",
	"polyline",
	"polygon",
	"rect",
	"circle",
	"ellipse",
]);

/** Draws one of the basic shapes (SVG 2, 9.3 and 10). */
export function drawShape(element: Element, pen: Pen, place: string, findings: Findings): void {
	const { name, attributes } = element;
	const sizes = (...keys: readonly string[]) => sizesOf(attributes, keys, place, findings);
	if (name === "path") drawPathData(attributes.d ?? "", pen, place, findings);
	else if (name === "line") {
		const ends = sizes("x1", "y1", "x2", "y2");
		if (ends) drawPoints(ends, false, pen);
	} else if (name === "polyline" || name === "polygon") {
		const points = readNumbers(attributes.points ?? "");
		if (!points?.every(Number.isFinite)) findings.noNumber(attributes.points ?? "", place);
		else drawPoints(points, name === "polygon", pen);
	} else if (name === "circle") {
		const [x, y, r] = sizes("cx", "cy", "r") ?? [];
		if (r !== undefined) drawEllipse({ x: x!, y: y! }, { x: r, y: r }, pen, place, findings);
	} else if (name === "ellipse") {
		const [x, y, rx, ry] = sizes("cx", "cy", "rx", "ry") ?? [];
		if (ry !== undefined) drawEllipse({ x: x!, y: y! }, { x: rx!, y: ry }, pen, place, findings);
	} else if (name === "rect") drawRectangle(attributes, pen, place, findings);
}

/** Lengths of an element, 0 where they are not given; null with a finding if one is none. */
function sizesOf(
	attributes: Attributes,
	keys: readonly string[],
	place: string,
	findings: Findings,
): number[] | null {
	const values = keys.map((key) => svgUnits(attributes[key] ?? "0"));
	const bad = values.findIndex((value) => !Number.isFinite(value));
	if (bad < 0) return values;
	findings.noNumber(attributes[keys[bad]!] ?? "", place);
	return null;
}

/** Points as x, y, x, y …; an odd last number is left out, as SVG does. */
function drawPoints(numbers: readonly number[], closed: boolean, pen: Pen): void {
	for (let i = 0; i + 1 < numbers.length; i += 2) {
		if (i === 0) pen.moveTo(numbers[i]!, numbers[i + 1]!);
		else pen.lineTo(numbers[i]!, numbers[i + 1]!);
	}
	if (closed && numbers.length > 3) pen.close();
	pen.lift();
}

function drawEllipse({ x, y }: Point, r: Point, pen: Pen, place: string, findings: Findings): void {
	if (!(r.x > 0) || !(r.y > 0)) {
		findings.add("no-length", "warning", { place });
		return;
	}
	pen.moveTo(x + r.x, y);
	pen.arcTo(r, 0, false, true, { x: x - r.x, y });
	pen.arcTo(r, 0, false, true, { x: x + r.x, y });
	pen.close();
}

function drawRectangle(a: Attributes, pen: Pen, place: string, findings: Findings): void {
	const round = (key: "rx" | "ry", other: "rx" | "ry") =>
		a[key] === undefined || a[key] === "auto" ? (a[other] ?? "0").replace("auto", "0") : a[key];
	const given = { ...a, rx: round("rx", "ry"), ry: round("ry", "rx") };
	const sizes = sizesOf(given, ["x", "y", "width", "height", "rx", "ry"], place, findings);
	if (!sizes) return;
	const [x, y, w, h] = sizes as [number, number, number, number];
	if (!(w > 0) || !(h > 0)) {
		findings.add("no-length", "warning", { place });
		return;
	}
	const [rx, ry] = [Math.min(sizes[4]!, w / 2), Math.min(sizes[5]!, h / 2)];
	const corners = [
		[x + w, y, 0, 1],
		[x + w, y + h, -1, 0],
		[x, y + h, 0, -1],
		[x, y, 1, 0],
	] as const;
	const rounded = rx > 0 && ry > 0;
	pen.moveTo(rounded ? x + rx : x, y);
	for (const [cx, cy, ux, uy] of corners) {
		if (!rounded) {
			pen.lineTo(cx, cy);
			continue;
		}
		const isSide = ux === 0 ? rx < w / 2 : ry < h / 2;
		if (isSide) pen.lineTo(cx - uy * rx, cy + ux * ry);
		pen.arcTo({ x: rx, y: ry }, 0, false, true, { x: cx + ux * rx, y: cy + uy * ry });
	}
	pen.close();
}
