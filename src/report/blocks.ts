import { parentElement, textElement } from "../writers/xml.js";

type Attributes = Readonly<Record<string, string | null>>;

/** A section under its heading. */
export function section(
	title: string,
	attributes: Attributes,
	children: readonly string[],
): string {
	return parentElement("section", attributes, [textElement("h2", {}, title), ...children]);
}

/** Sentences as a list; a list must have entries. */
export function list(items: readonly string[]): string {
	return parentElement(
		"ul",
		{},
		items.map((item) => textElement("li", {}, item)),
	);
}

/** Names with what they stand for. */
export function facts(entries: readonly (readonly [name: string, value: string])[]): string {
	const children = entries.flatMap(([name, value]) => [
		textElement("dt", {}, name),
		textElement("dd", {}, value),
	]);
	return parentElement("dl", {}, children);
}

/** One row of texts. */
export function row(
	cells: readonly string[],
	attributes: Attributes = {},
	cell: "td" | "th" = "td",
): string {
	return parentRow(
		cells.map((text) => textElement(cell, {}, text)),
		attributes,
	);
}

/** One row of finished cells, on one line. */
export function parentRow(cells: readonly string[], attributes: Attributes = {}): string {
	return parentElement("tr", attributes, cells).replace(/\n/gu, "");
}

/**
 * A table in a frame that scrolls by itself where it is wider than the screen.
 *
 * @param isMany - sets a long table in columns, where there is room for two
 */
export function tableOf(
	heads: readonly string[],
	bodies: readonly string[],
	attributes: Attributes = {},
	isMany = false,
): string {
	const head = parentElement("thead", {}, [row(heads, {}, "th")]);
	const frame = { class: isMany ? "scroll many" : "scroll" };
	return parentElement("div", frame, [parentElement("table", attributes, [head, ...bodies])]);
}
