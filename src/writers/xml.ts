import { oneLine } from "./one-line.js";

const ENTITIES: Readonly<Record<string, string>> = {
	"&": "&amp;",
	"<": "&lt;",
	">": "&gt;",
	'"': "&quot;",
	"'": "&apos;",
};

/** Text that needs neither an entity nor a change: path data, names, most notes. */
const PLAIN = /^[ !#-%(-;=?-~]*$/;

/** A text for use in XML content or a quoted attribute, on one line. */
export function escaped(text: string): string {
	if (PLAIN.test(text)) return text;
	return oneLine(text).replace(/[&<>"']/g, (c) => ENTITIES[c]!);
}

type Attributes = Readonly<Record<string, string | null>>;

function opening(name: string, attributes: Attributes): string {
	let text = `<${name}`;
	for (const key in attributes) {
		const value = attributes[key];
		if (value !== null && value !== undefined) text += ` ${key}="${escaped(value)}"`;
	}
	return text;
}

/** An element without content; attributes that are null are left out. */
export function emptyElement(name: string, attributes: Attributes): string {
	return `${opening(name, attributes)}/>`;
}

/** An element that holds one text. */
export function textElement(name: string, attributes: Attributes, text: string): string {
	return `${opening(name, attributes)}>${escaped(text)}</${name}>`;
}

/** An element that holds others, one a line. */
export function parentElement(
	name: string,
	attributes: Attributes,
	children: readonly string[],
): string {
	return [`${opening(name, attributes)}>`, ...children, `</${name}>`].join("\n");
}
