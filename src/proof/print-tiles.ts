import {
	clipped,
	type Extents,
	extents,
	grown,
	moved,
	movedExtents,
	movedPoint,
	type Path,
	type Point,
	pointAt,
	SegmentGrid,
	segments,
	undone,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { farthest } from "./farthest.js";
import { found } from "./found.js";
import { isWork, type PrintPage, type TilePage, workInPart } from "./print-page.js";
import type { PromisedTile, ReadStroke } from "./types.js";

/** What may lie outside a window, mm: the budget of a written file. */
const OUTSIDE = 0.001;
/** What two pages may show differently, mm: that budget for each. */
const APART = 0.002;
/** Shares of points from which on a page shows what is promised, and below which it does not. */
const SHOWS = { surely: 0.95, hardly: 0.5 } as const;
/** What points of a page's own piece may be beside their paths, mm. */
const BESIDE = 0.05;

/** Paths of no operation, and what a page shows of a part beyond its window, or without one. */
export function windowFaults({ strokes, promised, nth }: PrintPage): Problem[] {
	const strays = strokes.filter(({ operation }) => operation === null);
	const unknown = [...new Set(strays.map(({ layer }) => layer))].map((layer) => {
		const there = strays.filter((s) => s.layer === layer);
		const { x, y } = there[0]!.path.points[0]!;
		return found("layer-unknown", "error", { layer: layer || "none", count: there.length, x, y });
	});
	const work = strokes.filter(isWork);
	if (!promised.tile) {
		const [first] = work;
		if (!first) return unknown;
		const { x, y } = first.path.points[0]!;
		return [...unknown, problem("strays-on-page", [], { page: nth, count: work.length, x, y })];
	}
	return [...unknown, ...outside(work, promised.tile.window, nth)];
}

function outside(work: readonly ReadStroke[], shown: Extents, page: number): Problem[] {
	const off = work.flatMap(({ path }) => {
		const box = extents(path);
		const x = box.minX < shown.minX - OUTSIDE ? box.minX : box.maxX;
		const y = box.minY < shown.minY - OUTSIDE ? box.minY : box.maxY;
		const by = Math.max(shown.minX - x, x - shown.maxX, shown.minY - y, y - shown.maxY);
		return by > OUTSIDE ? [{ by, x, y }] : [];
	});
	if (off.length === 0) return [];
	const worst = off.reduce((a, b) => (b.by > a.by ? b : a));
	return [problem("outside-window", [], { page, count: off.length, ...worst })];
}

/** Pages that show what is promised of another page instead of their own piece. */
export function orderFaults(pages: readonly TilePage[]): Problem[] {
	return pages.flatMap((page) => {
		if (!(shareOf(page, page.tile) < SHOWS.hardly)) return [];
		const other = pages.find((p) => p !== page && shareOf(page, p.tile) >= SHOWS.surely);
		return other ? [problem("page-order", [], { page: page.nth, other: other.nth })] : [];
	});
}

/** The share of points of a tile's cuts and scores that a page draws; NaN of a tile without any. */
function shareOf({ strokes }: PrintPage, { part, move, window }: PromisedTile): number {
	const drawn = strokes.filter(isWork).flatMap(({ path }) => segments(path));
	const due = [...part.outline, ...part.scores]
		.flatMap((path) => clipped(moved(path, move), window))
		.flatMap(pointsOf);
	if (due.length === 0) return Number.NaN;
	if (drawn.length === 0) return 0;
	const grid = new SegmentGrid(drawn, BESIDE);
	return due.filter((p) => grid.clearance(p, BESIDE) === null).length / due.length;
}

/** Where two pages of a part show differently what both of them show. */
export function overlapFaults(pages: readonly TilePage[]): Problem[] {
	const views = pages.map((page) => ({ page, window: windowInPart(page), work: workInPart(page) }));
	return views.flatMap((a, i) =>
		views.slice(i + 1).flatMap((b) => {
			if (a.page.tile.part !== b.page.tile.part) return [];
			const shared = grown(common(a.window, b.window), -OUTSIDE);
			if (!(shared.minX < shared.maxX && shared.minY < shared.maxY)) return [];
			return differ(a.work, b.work, shared).map(({ operation, by, at }) => {
				const { x, y } = movedPoint(at, a.page.tile.move);
				const facts = { page: a.page.nth, other: b.page.nth, operation, by, x, y };
				return problem("pages-differ", [], facts);
			});
		}),
	);
}

/** For each operation the place within a box that is farthest from what the other page shows. */
function differ(a: readonly ReadStroke[], b: readonly ReadStroke[], box: Extents) {
	return (["cut", "score", "engrave"] as const).flatMap((operation) => {
		const of = (all: readonly ReadStroke[]) =>
			all.filter((s) => s.operation === operation).map(({ path }) => path);
		const [one, two] = [of(a), of(b)];
		const worst = [beside(one, two, box), beside(two, one, box)]
			.flatMap((off) => off ?? [])
			.sort((p, q) => q.by - p.by)[0];
		return worst ? [{ operation, ...worst }] : [];
	});
}

function beside(shown: readonly Path[], other: readonly Path[], box: Extents) {
	const points = shown.flatMap((path) => clipped(path, box)).flatMap(pointsOf);
	if (points.length === 0) return null;
	if (other.length > 0) return farthest(points, other, APART);
	return { at: points[0]!, by: Math.min(box.maxX - box.minX, box.maxY - box.minY) };
}

function pointsOf(path: Path): Point[] {
	return segments(path).flatMap((s) => [0, 0.25, 0.5, 0.75, 1].map((u) => pointAt(s, u)));
}

function common(a: Extents, b: Extents): Extents {
	return {
		minX: Math.max(a.minX, b.minX),
		minY: Math.max(a.minY, b.minY),
		maxX: Math.min(a.maxX, b.maxX),
		maxY: Math.min(a.maxY, b.maxY),
	};
}

function windowInPart({ tile }: TilePage): Extents {
	return boxInPart(tile, tile.window);
}

/** A box of a page in the frame of its part: moves are quarter turns. */
export function boxInPart({ move }: PromisedTile, box: Extents): Extents {
	return movedExtents(box, undone(move));
}
