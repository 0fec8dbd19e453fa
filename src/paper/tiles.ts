import { type Ink, inkOf, type Mark, type Part, type TextLine } from "../drawing/index.js";
import {
	clipped,
	combined,
	type Extents,
	type Move,
	moved,
	movedExtents,
	movedPoint,
	type Point,
	shift,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { bodyOf } from "./body.js";
import { FreeRoom } from "./free-room.js";
import { isOnePage, layoutsOf, leastPages, type PageLayout } from "./layout.js";
import { offSeams } from "./off-seams.js";
import type { Paper } from "./paper.js";
import { inkMarks, type PageContent, type Print, type PrintFacts, printOf } from "./print.js";
import { crossesOf, seamInk } from "./seam-ink.js";

/** A part as it is to be printed: with its dimensions, or with more or less besides. */
export interface Printable {
	readonly part: Part;
	/** Its dimensions, or nothing. */
	readonly ink: Ink;
	/** All that is drawn besides where one page holds it, in its place beside the part. */
	readonly full: Ink | null;
	/** The same texts by themselves, for the room that tiles leave. */
	readonly blocks: readonly (readonly TextLine[])[];
}

/**
 * A part at its size on as few pages as may be: on one if it fits, turned by a quarter if that
 * helps, else in tiles whose seams keep off slots and notches.
 */
export function printOfPart(
	printable: Printable,
	paper: Paper,
	facts: Omit<PrintFacts, "grid" | "height" | "corrected" | "title">,
	letters: Lettering,
): Print {
	const { part, ink, full, blocks } = printable;
	const whole = full ? layoutsOf(part, full, paper).filter(isOnePage) : [];
	const best = leastPages(whole.length > 0 ? whole : layoutsOf(part, ink, paper));
	const [columns, rows] = [best.cuts.x.length + 1, best.cuts.y.length + 1];
	const grid = columns * rows > 1 ? { columns, rows } : null;
	const all = { ...facts, title: part.title, height: best.height, corrected: true, grid };
	const free = new FreeRoom(whole.length > 0 ? [] : blocks, letters);
	const contents = contentsOf(part, best, free, paper, letters);
	const rest = free.pages(bodyOf(paper, best.height));
	return printOf([...contents, ...rest.map(textPage)], paper, all, letters);
}

/** A page for what is said of a part where its pages leave no room. */
function textPage(ink: Ink): PageContent {
	return { marks: [], ink, rules: [], crosses: [], tile: null };
}

/** What every page shows: columns from the left, each from the top down. */
function contentsOf(
	part: Part,
	layout: PageLayout,
	free: FreeRoom,
	paper: Paper,
	letters: Lettering,
): PageContent[] {
	const { cuts, box, turn, height } = layout;
	const marks = turned(part.marks, turn);
	const ink = turned(inkMarks(offSeams(layout.ink, turn, cuts), letters), turn);
	const half = paper.overlap / 2;
	const body = bodyOf(paper, height);
	const crosses = crossesOf(cuts, box, paper.overlap);
	const spans = {
		x: spansOf(cuts.x, box.minX, box.maxX, half),
		y: spansOf(cuts.y, box.minY, box.maxY, half),
	};
	return spans.x.flatMap((x, column) =>
		spans.y.toReversed().map((y, i): PageContent => {
			const row = spans.y.length - 1 - i;
			const shown = { minX: x.shown[0], maxX: x.shown[1], minY: y.shown[0], maxY: y.shown[1] };
			const own = { minX: x.own[0], maxX: x.own[1], minY: y.own[0], maxY: y.own[1] };
			const place = shift(
				(body.minX + body.maxX - shown.minX - shown.maxX) / 2,
				free.isWanted
					? body.maxY - shown.maxY
					: (body.minY + body.maxY - shown.minY - shown.maxY) / 2,
			);
			const seen = movedExtents(shown, place);
			const onPage = (list: readonly Mark[], within: Extents) =>
				list.flatMap((mark) =>
					clipped(mark.path, within).map((path) => ({ ...mark, path: moved(path, place) })),
				);
			const { overlap } = paper;
			const seam = seamInk({ cuts, box, column, row, overlap, marks }, letters);
			const besides = [...onPage(ink, own), ...onPage(inkMarks(seam, letters), shown)];
			return {
				marks: onPage(marks, shown),
				ink: inkOf({ marks: besides, notes: [] }, free.filled({ ...body, maxY: seen.minY })),
				rules: [],
				crosses: crosses.filter((c) => isWithin(c, shown)).map((c) => movedPoint(c, place)),
				tile: {
					part,
					move: combined(turn, place),
					window: seen,
					own: movedExtents(own, place),
				},
			};
		}),
	);
}

function turned(marks: readonly Mark[], turn: Move): Mark[] {
	return marks.map((mark) => ({ ...mark, path: moved(mark.path, turn) }));
}

/** Of every page along one direction what it shows and what of that is its own. */
function spansOf(cuts: readonly number[], from: number, to: number, half: number) {
	return [from, ...cuts].map((start, i) => {
		const end = cuts[i] ?? to;
		const [a, b] = [i === 0 ? from : start - half, i === cuts.length ? to : end + half];
		return { own: [start, end] as const, shown: [a, b] as const };
	});
}

function isWithin({ x, y }: Point, { minX, minY, maxX, maxY }: Extents): boolean {
	return x > minX && x < maxX && y > minY && y < maxY;
}
