import { type Ink, inkBoxes, type Part } from "../drawing/index.js";
import {
	around,
	type Extents,
	extents,
	grown,
	type Move,
	moved,
	movedExtents,
	movedPoint,
	type Point,
	STAY,
} from "../geometry/index.js";
import { bodyOf, pageHeight } from "./body.js";
import type { Paper } from "./paper.js";
import type { Cuts } from "./seam-ink.js";
import { type Avoid, seams } from "./seams.js";

/** A drawing lies as it is, or its x axis leads down the page. */
const TURNS = [0, -Math.PI / 2] as const;
/** White around what is drawn, mm. */
const AROUND = 2;
/** Room past a drawing's ends for the crosses of its seams, mm. */
const PAST = 10;
/** Nearest that a seam comes to a line beside it, and nearest that it should, mm. */
const CLEAR = { least: 1, well: 4 } as const;
/** Seams shun slots and notches before anything else, keep well clear of them and off labels where they can. */
const WEIGHT = { size: 1000, near: 3, label: 1 } as const;
/** What is longer than so many overlaps cannot be shunned. */
const TOO_LONG = 3;

/** How a drawing lies on pages. */
export interface PageLayout {
	/** What is drawn besides the part. */
	readonly ink: Ink;
	/** From the part's frame to the plane that the pages show together. */
	readonly turn: Move;
	/** What of that plane they show. */
	readonly box: Extents;
	readonly cuts: Cuts;
	/** Of every page. */
	readonly height: number;
}

/** A part with some ink, as it is and turned by a quarter. */
export function layoutsOf(part: Part, ink: Ink, paper: Paper): PageLayout[] {
	const boxes = [...part.marks.map((mark) => extents(mark.path)), ...inkBoxes(ink)];
	const drawn = grown(around(boxes), AROUND);
	return TURNS.map((angle) => {
		const turn = { ...STAY, turn: angle };
		return { ink, turn, ...cutUp(part, movedExtents(drawn, turn), turn, paper) };
	});
}

export function isOnePage({ cuts }: PageLayout): boolean {
	return cuts.x.length + cuts.y.length === 0;
}

/** The layout with the fewest pages, then with the least of a roll, then the first. */
export function leastPages(layouts: readonly PageLayout[]): PageLayout {
	const cost = ({ cuts, height }: PageLayout) =>
		(cuts.x.length + 1) * (cuts.y.length + 1) * 1e6 + height;
	return layouts.reduce((a, b) => (cost(b) < cost(a) ? b : a));
}

function cutUp(part: Part, box: Extents, turn: Move, paper: Paper) {
	const height = pageHeight(paper, box.maxY - box.minY);
	const room = sizeOf(bodyOf(paper, height));
	const { overlap } = paper;
	const avoid = avoided(part, turn, TOO_LONG * overlap);
	const cuts: Cuts = {
		x: seams({ from: box.minX, to: box.maxX, window: room.x, overlap, avoid: avoid.x }),
		y: seams({ from: box.minY, to: box.maxY, window: room.y, overlap, avoid: avoid.y }),
	};
	return { box: withCrosses(box, cuts, room), cuts, height };
}

function sizeOf({ minX, minY, maxX, maxY }: Extents): Point {
	return { x: maxX - minX, y: maxY - minY };
}

/** A drawing's box with room for the crosses at the ends of its seams, where the page has any. */
function withCrosses(box: Extents, cuts: Cuts, room: Point): Extents {
	const size = sizeOf(box);
	const past = (has: boolean, spare: number) => (has ? Math.min(PAST, Math.max(0, spare / 2)) : 0);
	const x = past(cuts.y.length > 0 && cuts.x.length === 0, room.x - size.x);
	const y = past(cuts.x.length > 0 && cuts.y.length === 0, room.y - size.y);
	const { minX, minY, maxX, maxY } = box;
	return { minX: minX - x, maxX: maxX + x, minY: minY - y, maxY: maxY + y };
}

/** Stretches of the page's axes in which a part has its slots, notches and labels. */
function avoided(part: Part, turn: Move, longest: number): Record<"x" | "y", Avoid[]> {
	const sizes = part.claims.flatMap((claim) => {
		const { kind, at } = claim;
		const own = kind === "position" ? at.slice(-1) : kind === "angle" ? at.slice(1) : at;
		return kind === "label" ? [] : [pointsBox(own.map((p) => movedPoint(p, turn)))];
	});
	const paths = part.marks
		.filter(({ operation }) => operation === "score" || operation === "cut")
		.map(({ path }) => extents(moved(path, turn)));
	const labels = part.marks
		.filter(({ operation }) => operation === "engrave")
		.map(({ path }) => extents(moved(path, turn)));
	const of = (axis: "x" | "y") => {
		const [low, high] = axis === "x" ? (["minX", "maxX"] as const) : (["minY", "maxY"] as const);
		const stretches = (boxes: readonly Extents[], clear: number, weight: number) =>
			boxes
				.filter((b) => b[high] - b[low] <= longest)
				.map((b) => ({ from: b[low] - clear, to: b[high] + clear, weight }));
		const lines = [...sizes, ...paths];
		return [
			...stretches(lines, CLEAR.least, WEIGHT.size),
			...stretches(lines, CLEAR.well, WEIGHT.near),
			...stretches(labels, CLEAR.least, WEIGHT.label),
		];
	};
	return { x: of("x"), y: of("y") };
}

function pointsBox(points: readonly Point[]): Extents {
	return around(points.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
}
