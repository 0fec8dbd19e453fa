import { type Ink, inkOf, type Mark, NOTHING, stroke, writing } from "../drawing/index.js";
import { clipped, type Extents, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";

/** The seams of a drawing: where lines across the page and up it cut it into tiles. */
export interface Cuts {
	readonly x: readonly number[];
	readonly y: readonly number[];
}

/** Which tile of a drawing is meant. */
export interface TilePlace {
	readonly cuts: Cuts;
	/** Of all that the pages show together. */
	readonly box: Extents;
	readonly column: number;
	/** From the lowest, which is the last page of its column. */
	readonly row: number;
	readonly overlap: number;
	/** Of the part, that texts keep off. */
	readonly marks: readonly Mark[];
}

/** Length of a cross's arms, at most, and from the box's edge to the middle of the outermost. */
const ARM = 4;
/** A seam is drawn in dashes, so that nobody takes it for a slot, mm. */
const DASH = 1.5;
const GAP = 4;
const TEXT = 2.5;
/** Places that are tried for a text, mm apart. */
const STEP = 3;
/** From the end of a seam to its first dash and to its text: past the cross, mm. */
const INSET = 10;
/** Least half of an overlap that a line of text stands in, mm. */
const TEXT_ROOM = 4.5;

/**
 * Middles of the crosses: on every seam at its ends and where it meets the seams of the other
 * direction, so that all pages beside a cross show it.
 */
export function crossesOf({ x, y }: Cuts, box: Extents, overlap: number): Point[] {
	const arm = armOf(overlap);
	const xs = [box.minX + arm, ...x, box.maxX - arm];
	const ys = [box.minY + arm, ...y, box.maxY - arm];
	const all = [
		...x.flatMap((at) => ys.map((end) => ({ x: at, y: end }))),
		...y.flatMap((at) => xs.map((end) => ({ x: end, y: at }))),
	];
	return all.filter((p, i) => all.findIndex((q) => q.x === p.x && q.y === p.y) === i);
}

function armOf(overlap: number): number {
	return Math.min(ARM, 0.45 * overlap);
}

/**
 * Crosses, dashed seams and what to do at them, of one tile: the page before is glued under the
 * next one, which is cut off along the seam.
 */
export function seamInk(place: TilePlace, letters: Lettering): Ink {
	const { cuts, box, column, row, overlap, marks } = place;
	const rows = cuts.y.length + 1;
	const pageOf = (c: number, r: number) => c * rows + rows - r;
	const x = { from: cuts.x[column - 1] ?? box.minX, to: cuts.x[column] ?? box.maxX };
	const y = { from: cuts.y[row - 1] ?? box.minY, to: cuts.y[row] ?? box.maxY };
	const seam = (isUpright: boolean, at: number, page: number | null) => {
		const along = isUpright ? y : x;
		return seamLine(
			{
				isUpright,
				at,
				...along,
				half: overlap / 2,
				texts: textsAt(page),
				isOver: page === null,
				marks,
			},
			letters,
		);
	};
	return inkOf(
		...crossesOf(cuts, box, overlap).map((p) => cross(p, armOf(overlap))),
		column > 0 ? seam(true, x.from, null) : NOTHING,
		column < cuts.x.length ? seam(true, x.to, pageOf(column + 1, row)) : NOTHING,
		row < cuts.y.length ? seam(false, y.to, null) : NOTHING,
		row > 0 ? seam(false, y.from, pageOf(column, row - 1)) : NOTHING,
	);
}

/** What may be written at a seam, the plainest first. */
function textsAt(page: number | null): string[] {
	return page === null
		? ["cut off along the dashes, through the crosses", "cut off along the dashes", "cut here"]
		: [`page ${page} is glued over this, cross on cross`, `glue page ${page} over this`];
}

interface Seam {
	readonly isUpright: boolean;
	readonly at: number;
	/** The stretch of it that is this tile's. */
	readonly from: number;
	readonly to: number;
	/** Half of the overlap. */
	readonly half: number;
	readonly texts: readonly string[];
	/** Whether this tile lies over its neighbour: its text is on what is cut off. */
	readonly isOver: boolean;
	readonly marks: readonly Mark[];
}

function seamLine(seam: Seam, letters: Lettering): Ink {
	const { at, from, to } = seam;
	const count = Math.max(1, Math.floor((to - from - 2 * INSET) / (DASH + GAP)));
	const start = (from + to - count * (DASH + GAP) + GAP) / 2;
	const dashes = Array.from({ length: count }, (_, i) => {
		const along = start + i * (DASH + GAP);
		return stroke("seam", pointOn(seam, along, at), pointOn(seam, along + DASH, at));
	});
	return inkOf(...dashes, seamText(seam, letters));
}

function pointOn({ isUpright }: Seam, along: number, across: number): Point {
	return isUpright ? { x: across, y: along } : { x: along, y: across };
}

/** The plainest text that has a place clear of the part's lines beside the seam, or the shortest. */
function seamText(seam: Seam, letters: Lettering): Ink {
	const { isUpright, at, from, to, half, texts, isOver, marks } = seam;
	if (half < TEXT_ROOM) return NOTHING;
	const middle = at + (isOver === isUpright ? -half / 2 : half / 2);
	const places = texts.flatMap((text) => {
		const length = letters.width(text, TEXT);
		const count = Math.max(0, Math.floor((to - from - 2 * INSET - length) / STEP) + 1);
		return Array.from({ length: count }, (_, i) => ({
			text,
			length,
			along: from + INSET + i * STEP,
		}));
	});
	const isFree = ({ along, length }: (typeof places)[number]) => {
		const a = pointOn(seam, along, middle - TEXT);
		const b = pointOn(seam, along + length, middle + TEXT);
		const room = { minX: a.x, minY: a.y, maxX: b.x, maxY: b.y };
		return marks.every(({ path }) => clipped(path, room).length === 0);
	};
	const chosen = places.find(isFree) ?? places.at(-1);
	if (!chosen) return NOTHING;
	const start = pointOn(seam, chosen.along, middle + (isUpright ? TEXT / 2 : -TEXT / 2));
	return writing(letters, chosen.text, start, { turn: isUpright ? Math.PI / 2 : 0 });
}

function cross({ x, y }: Point, arm: number): Ink {
	return inkOf(
		stroke("cross", { x: x - arm, y }, { x: x + arm, y }),
		stroke("cross", { x, y: y - arm }, { x, y: y + arm }),
	);
}
