import type { WrittenPrint } from "../stages/print.js";
import { trimmed } from "../units/index.js";
import { parentElement, textElement } from "../writers/xml.js";
import { row, section, tableOf } from "./blocks.js";

/** What goes on paper: how many pages each takes, and what was made up for. */
export function paperSection(prints: readonly WrittenPrint[]): string[] {
	if (prints.length === 0) return [];
	const rows = prints.map(({ print, format }) => {
		const { name, paper, pages, grid, made } = print;
		const tiles = grid ? `${grid.columns} x ${grid.rows}` : "";
		const factors =
			made.x === 1 && made.y === 1
				? "none"
				: `${trimmed(made.x, 6)} across, ${trimmed(made.y, 6)} along`;
		return row([name, format, paper.name, String(pages.length), tiles, factors]);
	});
	const heads = ["print", "format", "paper", "pages", "tiles", "divided by"];
	const words =
		"Print at actual size (100 %), no fitting to the page, and check the rules of every page before you use it.";
	return [
		section("Paper", {}, [
			tableOf(heads, [parentElement("tbody", {}, rows)], { class: "names" }),
			textElement("p", { class: "small" }, words),
		]),
	];
}
