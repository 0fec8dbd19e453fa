import type { Paper } from "../../src/paper/index.js";

function paper(name: string, width: number, height: number | null): Paper {
	return { name, width, height, margin: 6, overlap: 15, made: { x: 1, y: 1 } };
}

/** Papers of a true printer (ISO 216; ANSI/ASME Y14.1 for Letter). */
export const A3 = paper("A3", 297, 420);
export const A4 = paper("A4", 210, 297);
export const A5 = paper("A5", 148, 210);
export const LETTER = paper("Letter", 215.9, 279.4);
export const ROLL = paper("roll 610 mm", 610, null);
