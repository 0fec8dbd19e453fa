import type { Path } from "../geometry/index.js";

/**
 * Letters as paths. Text starts at the origin, its baseline on y = 0, capitals `height` mm high.
 * Strokes are open paths for engraving; outlines are closed.
 */
export interface Lettering {
	/** Recorded in every label claim, so that a proof can draw the same strokes. */
	readonly name: string;
	/** Characters of the text that the font lacks, each once, in order. */
	missing(text: string): string[];
	/** Advance width, mm. @throws RangeError on a missing character */
	width(text: string, height: number): number;
	/** The strokes of a text. @throws RangeError on a missing character */
	paths(text: string, height: number): Path[];
}

/** ISO 3098 heights of capitals, mm. */
export const LETTER_HEIGHTS = [1.8, 2.5, 3.5, 5, 7, 10] as const;
