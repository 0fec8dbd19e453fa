import { making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

/** Jobs whose shop sheet finds no room on its paper. */
export const SHOP_SHEET: readonly BadJob[] = [
	bad(
		"paper too narrow for the shop sheet's table",
		making("shop-sheet")
			.replace("make:", "paper: 143 x 297 mm\nmake:")
			.replace("  frets: 22", "  frets: 22\n  binding: 1.5 mm"),
		"page-too-narrow",
		"shop-sheet",
		"143 x 297 mm",
		"wider paper",
	),
	bad(
		"paper too low for the shop sheet's picture",
		making("shop-sheet")
			.replace("make:", "paper: 200 x 131 mm\nmake:")
			.replace("scale: 648 mm", "scale: 200 mm")
			.replace("nut: 43 mm, last-fret: 56 mm", "nut: 100 mm, last-fret: 110 mm")
			.replace("frets: 22", "frets: 12"),
		"page-too-low",
		"shop-sheet",
		"131 mm high",
		"higher paper",
	),
];
