import type { PaperSize } from "../fields/index.js";
import { bandUnder, bodyOf, type Paper, printable, SIDE } from "../paper/index.js";
import { type Problem, problem } from "../problem/index.js";
import { type PrinterValues, USUAL_MARGIN } from "./paper-schema.js";

/** What a rule of 4 in takes with its end marks, from where it begins, mm. */
const RULE_ROOM = 106;
/** What the map of the tiles takes beside it, mm. */
const MAP_ROOM = 11;
/** Least side of a body that is worth laying out on, mm. */
const LEAST_BODY = 60;
/** Lengths nearer than this are one, mm. */
const SAME = 1e-9;

/** The paper that a job prints on, or why no page can be laid out on it. */
export function paperOf(size: PaperSize, printer: PrinterValues): Paper | Problem[] {
	const { across, along, margin, overlap } = printer;
	const paper: Paper = { ...size, margin, overlap, made: { x: across, y: along } };
	const small = tooSmall(paper);
	if (small) return [small];
	const most = mostOverlap(paper);
	if (overlap <= most + SAME) return paper;
	return [problem("overlap-too-wide", ["printer", "overlap"], { overlap, most, name: paper.name })];
}

/** Least that a printer must reach of this paper for rules, texts and a body, mm. */
function leastOf(paper: Paper) {
	const band = bandUnder(printable(paper, paper.height ?? 0));
	const rules = SIDE + RULE_ROOM;
	return { x: rules + MAP_ROOM, y: Math.max(rules, band + LEAST_BODY) };
}

/** Whether a page has room for its rules, its texts and a body; a roll is as long as is needed. */
function hasRoom(paper: Paper): boolean {
	const { minX, maxX, minY, maxY } = printable(paper, paper.height ?? 0);
	const least = leastOf(paper);
	if (!(maxX - minX >= least.x - SAME)) return false;
	return paper.height === null || maxY - minY >= least.y - SAME;
}

function tooSmall(paper: Paper): Problem | null {
	if (hasRoom(paper)) return null;
	const { name, margin, made } = paper;
	const least = leastOf(paper);
	const side = (room: number, factor: number) => upToTenth(room / Math.min(1, factor) + 2 * margin);
	const isMargin = hasRoom({ ...paper, margin: Math.min(margin, USUAL_MARGIN) });
	return problem("paper-too-small", isMargin ? ["printer", "margin"] : ["paper"], {
		name,
		margin,
		width: side(least.x, made.x),
		height: paper.height === null ? "" : side(least.y, made.y),
	});
}

/** A length that is told as one that suffices, tenths of a millimetre. */
function upToTenth(length: number): number {
	return Math.ceil(length * 10 - SAME) / 10;
}

/** Half of the body's smaller side: with more, three pages would show the same place. */
function mostOverlap(paper: Paper): number {
	const { minX, maxX, minY, maxY } = bodyOf(paper, paper.height ?? 0);
	const width = maxX - minX;
	return (paper.height === null ? width : Math.min(width, maxY - minY)) / 2;
}
