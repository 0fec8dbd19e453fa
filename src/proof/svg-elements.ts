import { XMLParser, XMLValidator } from "fast-xml-parser";
import type { Findings } from "./findings.js";
import { DEEPEST } from "./limits.js";

export type Attributes = Readonly<Record<string, string>>;

/** An element of an XML file, without its comments. */
export interface Element {
	/** Without the prefix of its namespace, if that is SVG's own by custom. */
	readonly name: string;
	readonly attributes: Attributes;
	readonly children: readonly Element[];
	/** Its own text and that of its children, in order. */
	readonly text: string;
}

type Node = Readonly<Record<string, unknown>>;

/** Characters of XML 1.0 (production 2). */
const NO_XML = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u;

/**
 * The root of an SVG file, or null with a finding. Entities of its own are not taken in: a few
 * lines of them may stand for gigabytes.
 */
export function svgRoot(text: string, findings: Findings): Element | null {
	const fail = (reason: string) => {
		findings.add("unreadable", "error", { reason });
		return null;
	};
	if (/<!ENTITY|<!DOCTYPE[^<>[]*\[/iu.test(text)) return fail("it defines entities of its own");
	if (NO_XML.test(text)) return fail("it holds characters that XML does not know");
	if (!/<(?:svg:)?svg[\s>/]/u.test(text)) return fail("it has no svg element");
	const valid = XMLValidator.validate(text);
	if (valid !== true) {
		findings.add("truncated", "error", { place: `line ${valid.err.line}` });
		return null;
	}
	try {
		const nodes = parser().parse(text) as readonly Node[];
		const root = elementsOf(nodes).find((e) => e.name === "svg");
		return root ?? fail("it has no svg element");
	} catch (error) {
		if (!/nested/iu.test(String(error))) return fail("its elements cannot be told apart");
		findings.add("drawing-too-large", "error", { limit: DEEPEST, of: "nested elements" });
		return null;
	}
}

function parser(): XMLParser {
	return new XMLParser({
		preserveOrder: true,
		ignoreAttributes: false,
		attributeNamePrefix: "",
		processEntities: false,
		trimValues: false,
		parseTagValue: false,
		parseAttributeValue: false,
		maxNestedTags: DEEPEST,
	});
}

function elementsOf(nodes: readonly Node[]): Element[] {
	const result: Element[] = [];
	for (const node of nodes) {
		let name = "";
		for (const key in node) if (key !== ":@") name = key;
		if (name === "" || name.startsWith("#") || name.startsWith("?")) continue;
		const inner = node[name] as readonly Node[];
		result.push({
			name: name.startsWith("svg:") ? name.slice(4) : name,
			attributes: (node[":@"] ?? {}) as Attributes,
			children: inner.length === 0 ? [] : elementsOf(inner),
			text: inner.length === 0 ? "" : textOf(inner),
		});
	}
	return result;
}

function textOf(nodes: readonly Node[]): string {
	let text = "";
	for (const node of nodes) {
		for (const [key, value] of Object.entries(node)) {
			if (key === "#text") text += plainText(String(value));
			else if (key === "tspan") text += textOf(value as readonly Node[]);
		}
	}
	return text;
}

const NAMED: Readonly<Record<string, string>> = {
	lt: "<",
	gt: ">",
	amp: "&",
	quot: '"',
	apos: "'",
};

/** A text with XML's own five entities and the numbered characters put in. */
export function plainText(text: string): string {
	if (!text.includes("&")) return text;
	return text.replace(
		/&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|([a-z]{2,4}));/giu,
		(all, ten, hex, name) => {
			if (name) return Object.hasOwn(NAMED, name) ? NAMED[name]! : all;
			const code = Number.parseInt(ten ?? hex, ten ? 10 : 16);
			return code <= 0x10ffff ? String.fromCodePoint(code) : all;
		},
	);
}
