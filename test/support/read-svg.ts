import { XMLParser, XMLValidator } from "fast-xml-parser";
import type { Path, Point, Vertex } from "../../src/geometry/index.js";

export { auditSvg } from "./audit-svg.js";

export interface SvgPath {
	readonly path: Path;
	readonly data: string;
	readonly feature: string;
	readonly part: string | null;
	/** Radii as written, in the order of the arcs. */
	readonly radii: readonly number[];
}

export interface SvgText {
	readonly text: string;
	/** y up. */
	readonly at: Point;
	/** Radians, counter-clockwise. */
	readonly turn: number;
	readonly attributes: Attributes;
}

export interface SvgGroup {
	readonly attributes: Attributes;
	readonly paths: readonly SvgPath[];
	readonly texts: readonly SvgText[];
	/** Names of all elements in it, in order. */
	readonly names: readonly string[];
}

export interface SvgFile {
	readonly attributes: Attributes;
	readonly title: string;
	readonly desc: string;
	readonly groups: readonly SvgGroup[];
	/** Names of the root's elements, in order. */
	readonly names: readonly string[];
}

export type Attributes = Readonly<Record<string, string>>;

interface Element {
	readonly name: string;
	readonly attributes: Attributes;
	readonly children: readonly Element[];
	readonly text: string;
}

/** Characters of XML 1.0 (production 2) other than the first tens of control characters. */
const XML_TEXT = /^[\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]*$/u;

/**
 * An SVG drawing taken apart: y up, arcs as bulges.
 *
 * @throws Error if the text is no well-formed XML or holds path data of another form
 */
export function readSvg(text: string): SvgFile {
	const valid = XMLValidator.validate(text);
	if (valid !== true) throw new Error(`not well-formed: ${valid.err.msg}`);
	if (!XML_TEXT.test(text)) throw new Error("not well-formed: a character that XML does not know");
	const parser = new XMLParser({
		preserveOrder: true,
		ignoreAttributes: false,
		attributeNamePrefix: "",
		htmlEntities: true,
		trimValues: false,
		parseTagValue: false,
		parseAttributeValue: false,
	});
	const root = elementsOf(parser.parse(text)).find((e) => e.name === "svg");
	if (!root) throw new Error("no svg element");
	const textOf = (name: string) => root.children.find((e) => e.name === name)?.text ?? "";
	return {
		attributes: root.attributes,
		title: textOf("title"),
		desc: textOf("desc"),
		groups: root.children.filter((e) => e.name === "g").map(groupOf),
		names: root.children.map((e) => e.name),
	};
}

type Node = Record<string, unknown>;

function elementsOf(nodes: readonly Node[]): Element[] {
	return nodes.flatMap((node): Element[] => {
		const name = Object.keys(node).find((key) => key !== ":@");
		if (name === undefined || name.startsWith("#") || name.startsWith("?")) return [];
		const inner = node[name] as Node[];
		const text = inner.map((n) => (typeof n["#text"] === "string" ? n["#text"] : "")).join("");
		const attributes = (node[":@"] ?? {}) as Attributes;
		return [{ name, attributes, children: elementsOf(inner), text }];
	});
}

function groupOf({ attributes, children }: Element): SvgGroup {
	return {
		attributes,
		names: children.map((e) => e.name),
		paths: children
			.filter((e) => e.name === "path")
			.map(({ attributes: a }) => ({
				...readPathData(a.d ?? ""),
				data: a.d ?? "",
				feature: a["data-feature"] ?? "",
				part: a["data-part"] ?? null,
			})),
		texts: children.filter((e) => e.name === "text").map(textOf),
	};
}

function textOf({ attributes, text }: Element): SvgText {
	const form = /^translate\((-?[\d.]+) (-?[\d.]+)\) rotate\((-?[\d.]+)\)$/;
	const match = form.exec(attributes.transform ?? "");
	if (!match) throw new Error(`transform ${attributes.transform}`);
	const [x, y, degrees] = match.slice(1).map(Number);
	return { text, attributes, at: { x: x!, y: -y! }, turn: (-degrees! * Math.PI) / 180 };
}

/**
 * One contour of absolute M, L, A and Z, y up.
 *
 * The arc follows SVG 2, appendix B.2.4 for equal radii: the sweep is twice the angle whose
 * sine is half the chord over the radius, or the rest of the turn with the large-arc flag; a
 * radius too small for its chord counts as half the chord.
 */
export function readPathData(data: string): { path: Path; radii: number[] } {
	const points: Vertex[] = [];
	const radii: number[] = [];
	let closed = false;
	for (const [, letter, rest] of data.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
		const given = rest!.trim() === "" ? [] : rest!.trim().split(/[\s,]+/);
		const numbers = given.map(Number);
		if (closed) throw new Error(`something follows Z: ${data}`);
		if (!numbers.every(Number.isFinite)) throw new Error(`not a number: ${data}`);
		const [x, y] = numbers.slice(-2) as [number, number];
		const expected = { M: 2, L: 2, A: 7, Z: 0 }[letter!];
		if (expected !== numbers.length) throw new Error(`${letter} with ${numbers.length} numbers`);
		if ((letter === "M") !== (points.length === 0))
			throw new Error(`M in the wrong place: ${data}`);
		if (letter === "Z") closed = true;
		else {
			const last = points.at(-1);
			if (letter === "A" && last) {
				radii.push(numbers[0]!);
				points[points.length - 1] = { ...last, bulge: bulgeOfArc(last, { x, y: -y }, numbers) };
			}
			points.push({ x, y: -y, bulge: 0 });
		}
	}
	const last = points.at(-1);
	const first = points[0];
	const joined = closed && points.length > 1 && last!.x === first!.x && last!.y === first!.y;
	return { path: { points: joined ? points.slice(0, -1) : points, closed }, radii };
}

function bulgeOfArc(from: Point, to: Point, [rx, ry, , large, sweep]: readonly number[]): number {
	if (rx !== ry) throw new Error(`an ellipse: ${rx}, ${ry}`);
	const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
	const minor = 2 * Math.asin(Math.min(1, half / rx!));
	const angle = large === 1 ? 2 * Math.PI - minor : minor;
	return Math.tan(angle / 4) * (sweep === 1 ? -1 : 1);
}
