import type { Ink } from "../drawing/index.js";
import type { Point } from "../geometry/index.js";

/** A length that a page promises, drawn from end to end, in true millimetres of the page. */
export interface Rule {
	readonly from: Point;
	readonly to: Point;
}

/** What a page of a document shows besides what every page carries. */
export interface DocumentPage {
	/** In true millimetres from the page's lower left corner, y up, within the page's body. */
	readonly ink: Ink;
	/** Lengths besides those that every page carries. */
	readonly rules: readonly Rule[];
}

/** Pages for people that show no part: a table, a check of the printer. */
export interface PaperDocument {
	/** File-name-safe and unique in the job. */
	readonly name: string;
	readonly tool: string;
	readonly title: string;
	/** Of the pages; a roll's is given here. */
	readonly height: number;
	readonly pages: readonly DocumentPage[];
	/** Whether what the printer makes of a millimetre is divided out: a check of the printer shows it instead. */
	readonly corrected: boolean;
}
