import {
	type Document,
	isMap,
	isScalar,
	isSeq,
	type LineCounter,
	type Node,
	type Pair,
} from "yaml";
import type { Where } from "../problem/index.js";

type Keys = readonly (string | number)[];

/**
 * Line and column of a place in a YAML document: of the value, or of the key where the key
 * itself is at fault. A place that is missing is shown at the nearest one around it.
 */
export function locate(
	doc: Document.Parsed,
	lines: LineCounter,
	path: Keys,
	of: "value" | "key",
): Pick<Where, "line" | "column"> {
	const offset = offsetOf(doc, path, of);
	if (offset === null) return {};
	const { line, col } = lines.linePos(offset);
	return { line, column: col };
}

function offsetOf(doc: Document.Parsed, path: Keys, of: "value" | "key"): number | null {
	for (let length = path.length; length >= 0; length--) {
		const place = path.slice(0, length);
		const whole = length === path.length;
		const key = of === "key" || !whole ? keyOffset(doc, place) : null;
		if (key !== null) return key;
		const range = nodeAt(doc, place)?.range;
		if (range) return range[0];
	}
	return null;
}

/** Where the key of the last step of a path stands, or null for list entries. */
function keyOffset(doc: Document.Parsed, path: Keys): number | null {
	const last = path.at(-1);
	if (typeof last !== "string") return null;
	const range = (pairAt(nodeAt(doc, path.slice(0, -1)), last)?.key as Node | undefined)?.range;
	return range ? range[0] : null;
}

function nodeAt(doc: Document.Parsed, path: Keys): Node | null {
	return path.reduce<Node | null>((node, key) => {
		if (typeof key === "number") return isSeq(node) ? ((node.items[key] as Node) ?? null) : null;
		return (pairAt(node, key)?.value as Node) ?? null;
	}, doc.contents);
}

/** A key's pair; `{12: double}` has the number 12 for a key. */
function pairAt(node: Node | null, key: string): Pair | undefined {
	if (!isMap(node)) return undefined;
	return node.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === key);
}
