import { type Part, type Sheet, sheetOfOne } from "../../src/drawing/index.js";
import { cautionsFor, type MaterialName } from "../../src/shop/index.js";
import { LETTERS } from "./made-parts.js";

/** A part's drawing as a job gets it: dimensioned, with its title block and cautions. */
export function sheetFor(part: Part, job = "Any neck", date: string | null = null): Sheet {
	const cautions = cautionsFor("laser", part.stock.material as MaterialName);
	return sheetOfOne(part, { job, date, cautions, kerf: 0 }, LETTERS, part.name, true);
}
