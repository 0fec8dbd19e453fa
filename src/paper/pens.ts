import type { Pens } from "../drawing/index.js";

/**
 * How paper is drawn: all in black, since many printers make dots of grey and coloured lines;
 * what is done along a line shows by its width, mm (ISO 128's steps).
 */
export const PAPER_PENS: Pens = {
	reference: { colour: "#000000", width: 0.13 },
	tab: { colour: "#000000", width: 0.35 },
	score: { colour: "#000000", width: 0.25 },
	engrave: { colour: "#000000", width: 0.18 },
	cut: { colour: "#000000", width: 0.25 },
};
