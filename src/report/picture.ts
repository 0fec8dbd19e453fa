import type { Pens, Sheet } from "../drawing/index.js";
import { fixed } from "../units/index.js";
import { writeSvg } from "../writers/index.js";
import { parentElement } from "../writers/xml.js";

/** What the lines of a title block are called. */
const BLOCK = "title block";
/** White under a drawing, mm. */
const MARGIN = 3;

/**
 * A sheet as a picture in a page, as wide as there is room but never larger than life: as it is
 * written, less what only programs read.
 */
export function pictureOf(sheet: Sheet, pens: Pens): string {
	const { minX, maxX } = sheet.size;
	const svg = writeSvg(sheet, pens)
		.replace(/^<\?xml[^>]*\?>\n/u, "")
		.replace(/\n<desc>[^<]*<\/desc>/u, "")
		.replace(/ data-[a-z]+="[^"]*"/gu, "")
		.replace(/<g id="[^"]*"/gu, "<g")
		.replace(/ d="[^"]*"/gu, (d) =>
			d.replace(/(\.\d*?)0+(?=[ "])/gu, "$1").replace(/\.(?=[ "])/gu, ""),
		)
		.replace(
			/ width="[^"]*" height="[^"]*"/u,
			` role="img" style="max-width:${fixed(maxX - minX, 1)}mm"`,
		)
		.trimEnd();
	return parentElement("figure", {}, [svg]);
}

/** A part's own drawing without the block under it: the page says the same in its own words. */
export function withoutBlock(sheet: Sheet): Sheet {
	const block = sheet.marks.filter(({ feature }) => feature === BLOCK);
	if (block.length === 0) return sheet;
	const top = Math.max(...block.flatMap(({ path }) => path.points.map(({ y }) => y)));
	return {
		...sheet,
		size: { ...sheet.size, minY: top + MARGIN },
		marks: sheet.marks.filter(({ feature }) => feature !== BLOCK),
		notes: sheet.notes.filter(({ at }) => at.y > top),
	};
}
