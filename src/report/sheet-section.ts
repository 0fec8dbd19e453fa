import type { Pens } from "../drawing/index.js";
import { type Drawing, workText } from "../stages/draw.js";
import { trimmed } from "../units/index.js";
import { facts, section } from "./blocks.js";
import { pictureOf } from "./picture.js";
import { stockText } from "./stock-text.js";

/** A laid-out bed: its picture, its sheet and its work. */
export function sheetSection(
	{ sheet, placed, work, laid }: Drawing,
	i: number,
	of: number,
	pens: Pens,
): string {
	return section(`Sheet ${i + 1} of ${of}`, { id: sheet.name, class: "long" }, [
		facts([
			["stock", stockText(laid!.stock)],
			["used", `${trimmed(100 * laid!.used, 1)} % of the bed`],
			["work", workText(work)],
			["parts", placed.map(({ part }) => part.name).join(", ")],
		]),
		pictureOf(sheet, pens),
	]);
}
