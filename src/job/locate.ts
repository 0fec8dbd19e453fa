import { type Document, isMap, isScalar, type LineCounter, type Node } from "yaml";
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
		const node = (length === 0 ? doc.contents : doc.getIn(place, true)) as Node | undefined;
		if (node?.range) return node.range[0];
	}
	return null;
}

/** Where the key of the last step of a path stands, or null for list entries. */
function keyOffset(doc: Document.Parsed, path: Keys): number | null {
	const last = path.at(-1);
	if (typeof last !== "string") return null;
	const parent = path.length === 1 ? doc.contents : doc.getIn(path.slice(0, -1), true);
	if (!isMap(parent)) return null;
	const pair = parent.items.find(({ key }) => isScalar(key) && String(key.value) === last);
	const range = (pair?.key as Node | undefined)?.range;
	return range ? range[0] : null;
}
