import { type Extents, type Segment, SegmentGrid, segments } from "../geometry/index.js";
import type { LaidStroke } from "./laid-strokes.js";

/** The segments of all cuts and scores together. */
export interface PathWeb {
	readonly strokes: readonly LaidStroke[];
	readonly segments: readonly Segment[];
	/** For each segment the stroke it belongs to. */
	readonly owner: readonly number[];
	/** For each segment the one that it leads into; −1 at an open end. */
	readonly nextOf: readonly number[];
	/** Pairs of segments that may meet or lie on each other, one of them at least of a cut. */
	readonly near: readonly (readonly [number, number])[];
}

/** Most segments of cuts and scores, ten times those of a full bed. */
export const MOST_PIECES = 50_000;
/** Most pairs looked at, and most that are kept: as many as a thousand full beds have. */
const MOST_LOOKS = 5_000_000;
const MOST_PAIRS = 500_000;
/** Paths nearer to each other than this are burned as one, mm: a fraction of any cut's width. */
export const ON_EACH_OTHER = 0.005;

/** The web of what is cut and scored, or null where a file heaps up so much that it is no template. */
export function pathWeb(laid: readonly LaidStroke[]): PathWeb | null {
	const strokes = laid.filter(({ operation }) => operation === "cut" || operation === "score");
	if (strokes.reduce((sum, { path }) => sum + path.points.length, 0) > MOST_PIECES) return null;
	const all: Segment[] = [];
	const owner: number[] = [];
	const nextOf: number[] = [];
	strokes.forEach(({ path }, k) => {
		const own = segments(path);
		const first = all.length;
		own.forEach((segment, i) => {
			all.push(segment);
			owner.push(k);
			const isLast = i === own.length - 1;
			nextOf.push(isLast ? (path.closed ? first : -1) : first + i + 1);
		});
	});
	const near = nearPairs(all, (i) => strokes[owner[i]!]!.operation === "cut");
	return near && { strokes, segments: all, owner, nextOf, near };
}

function nearPairs(
	all: readonly Segment[],
	isCut: (index: number) => boolean,
): [number, number][] | null {
	if (all.length === 0) return [];
	const grid = new SegmentGrid(all);
	const pairs: [number, number][] = [];
	let looks = 0;
	for (let i = 0; i < all.length; i++) {
		const others = grid.after(i);
		looks += others.length;
		if (looks > MOST_LOOKS || pairs.length > MOST_PAIRS) return null;
		for (const j of others) {
			if ((isCut(i) || isCut(j)) && areNear(grid.boxes[i]!, grid.boxes[j]!)) pairs.push([i, j]);
		}
	}
	return pairs;
}

function areNear(a: Extents, b: Extents): boolean {
	return (
		b.minX <= a.maxX + ON_EACH_OTHER &&
		a.minX <= b.maxX + ON_EACH_OTHER &&
		b.minY <= a.maxY + ON_EACH_OTHER &&
		a.minY <= b.maxY + ON_EACH_OTHER
	);
}

/** One key for two strokes, in whichever order. */
export function pairKey(a: number, b: number): string {
	return a < b ? `${a} ${b}` : `${b} ${a}`;
}
