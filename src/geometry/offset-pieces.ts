import { crossingsAmong } from "./crossings.js";
import { SegmentGrid } from "./grid.js";
import { type Boundary, layersAt } from "./offset-check.js";
import type { Shifted } from "./offset-shift.js";
import type { Point } from "./path.js";
import { pointAt, type Segment, segmentLength } from "./segment.js";

/** A stretch of a shifted segment between two places where it meets others. */
export interface Piece {
	readonly shifted: Shifted;
	/** Fractions of the shifted segment. */
	readonly from: number;
	readonly to: number;
	readonly start: Point;
	readonly middle: Point;
	readonly end: Point;
	readonly length: number;
	/** How much nearer than the distance its middle is to the boundary, mm: noise, or a tail. */
	readonly short: number;
}

/** Cuts of one segment no further apart than this are one, mm: more than REACH past an end. */
const SAME_CUT = 2e-8;
/** A middle may be nearer to the boundary than the distance by this much, mm: rounding. */
const ROUNDING = 1e-9;

/** A grid with more cells than this to the distance is too fine to look around in. */
const MOST_CELLS = 4;

/** Where a shifted segment is cut. */
interface Cut {
	readonly u: number;
	readonly at: Point;
}

/**
 * The shifted segments cut where they meet, and of the pieces those that are nowhere nearer to
 * the boundary than the distance.
 *
 * No shifted segment meets another within a piece, so its middle speaks for all of it. Whether
 * it lies on the right side needs a check only where contours touch: the way to it from its
 * own segment, square and as long as the distance, meets no other contour but where it starts.
 */
export function outermostPieces(
	shifted: readonly Shifted[],
	boundary: Boundary,
	distance: number,
): Piece[] {
	const size = Math.abs(distance);
	const fine = boundary.grid.cell * MOST_CELLS < size;
	const grid = fine ? new SegmentGrid(boundary.segments, size) : boundary.grid;
	const isBeyond = (p: Point) => distance > 0 === (layersAt(boundary.grid, p) === 0);
	const result: Piece[] = [];
	const cuts = cutsOf(shifted);
	for (const [i, one] of shifted.entries()) {
		const { segment } = one;
		const length = segmentLength(segment);
		const ends = distinct(cuts[i]!, segment, length);
		for (let k = 1; k < ends.length; k++) {
			const { u: from, at: start } = ends[k - 1]!;
			const { u: to, at: end } = ends[k]!;
			const middle = pointAt(segment, (from + to) / 2);
			const clear = grid.clearance(middle, size - ROUNDING);
			if (clear === null || (boundary.touching && !isBeyond(middle))) continue;
			const [long, short] = [(to - from) * length, size - clear];
			result.push({ shifted: one, from, to, start, middle, end, length: long, short });
		}
	}
	return result;
}

function cutsOf(shifted: readonly Shifted[]): Cut[][] {
	const cuts = shifted.map((): Cut[] => []);
	for (const c of crossingsAmong(shifted.map((s) => s.segment))) {
		cuts[c.first]!.push({ u: c.onFirst, at: c.at });
		cuts[c.second]!.push({ u: c.onSecond, at: c.at });
	}
	return cuts;
}

/** The cuts in order with the segment's ends, those that are one taken once. */
function distinct(cuts: Cut[], { start, end }: Segment, length: number): Cut[] {
	const ends: Cut[] = [{ u: 0, at: start }];
	for (const cut of cuts.sort((a, b) => a.u - b.u)) {
		if ((cut.u - ends.at(-1)!.u) * length > SAME_CUT) ends.push(cut);
	}
	if (ends.length > 1 && (1 - ends.at(-1)!.u) * length <= SAME_CUT) ends.pop();
	ends.push({ u: 1, at: end });
	return ends;
}
