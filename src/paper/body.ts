import type { Extents } from "../geometry/index.js";
import type { Paper } from "./paper.js";

/** Strip beside the body that the rule up the page takes, mm. */
export const SIDE = 13;
/** From this printable width on the page's texts fit on a line each, mm. */
const WIDE = 180;
const BAND = { wide: 34, narrow: 54 } as const;

/** Strip under the body that the rule across the page and the texts take, mm. */
export function bandUnder({ minX, maxX }: Extents): number {
	return maxX - minX >= WIDE ? BAND.wide : BAND.narrow;
}

/**
 * What a printer reaches of a page, in true millimetres: within its margins both in the file and
 * on the paper, whichever way it is off. A page is corrected about its middle.
 *
 * @param height - of the page: the paper's, or how much of a roll is used
 */
export function printable({ width, margin, made }: Paper, height: number): Extents {
	const half = (size: number, factor: number) => (size / 2 - margin) * Math.min(1, factor);
	const [x, y] = [half(width, made.x), half(height, made.y)];
	return {
		minX: width / 2 - x,
		maxX: width / 2 + x,
		minY: height / 2 - y,
		maxY: height / 2 + y,
	};
}

/** Letters reach a little past the width that they are set to, mm: the body ends before the margin. */
const INSET = 1;

/** What the rules and texts of a page leave to its drawing, true millimetres of the page. */
export function bodyOf(paper: Paper, height: number): Extents {
	const area = printable(paper, height);
	return {
		minX: area.minX + SIDE,
		minY: area.minY + bandUnder(area),
		maxX: area.maxX - INSET,
		maxY: area.maxY - INSET,
	};
}

/** Lowest page that holds the rules, mm within its margins. */
const LEAST = 120;

/**
 * How high a page is: the paper, or what of a roll a drawing takes, in whole millimetres.
 *
 * @param drawing - height of what the body is to hold
 */
export function pageHeight(paper: Paper, drawing: number): number {
	if (paper.height !== null) return paper.height;
	const band = bandUnder(printable(paper, 1000));
	const inside = Math.max(LEAST, band + INSET + drawing) / Math.min(1, paper.made.y);
	return Math.ceil(inside + 2 * paper.margin - 1e-9);
}
