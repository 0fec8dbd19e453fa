import { SegmentGrid } from "./grid.js";
import { type Meeting, meetings, REACH } from "./meetings.js";
import { type Path, SAME_POINT } from "./path.js";
import { type Segment, segmentLength, segments } from "./segment.js";

/** Two segments of a list that meet, by their places in it, and where. */
export interface Crossing extends Meeting {
	readonly first: number;
	readonly second: number;
}

/**
 * Where a path meets itself other than at the joints between neighbours; empty for a simple
 * path.
 */
export function selfCrossings(path: Path): Crossing[] {
	const all = segments(path);
	const last = all.length - 1;
	return crossingsApartFromJoints(
		new SegmentGrid(all),
		all.map((_, i) => (i < last ? i + 1 : path.closed ? 0 : -1)),
	);
}

/**
 * The crossings among segments other than where one leads into the next.
 *
 * @param nextOf - for each segment the place of the one that it leads into, −1 at an open end
 */
export function crossingsApartFromJoints(grid: SegmentGrid, nextOf: readonly number[]): Crossing[] {
	const all = grid.segments;
	const atStart = (u: number, i: number) => u * segmentLength(all[i]!) < SAME_POINT;
	const atEnd = (u: number, i: number) => (1 - u) * segmentLength(all[i]!) < SAME_POINT;
	return crossingsIn(grid).filter(({ first, second, onFirst, onSecond }) => {
		const leads = nextOf[first] === second && atEnd(onFirst, first) && atStart(onSecond, second);
		const follows = nextOf[second] === first && atEnd(onSecond, second) && atStart(onFirst, first);
		return !leads && !follows;
	});
}

/** All meetings between different segments of a list, `first` < `second`, in their order. */
export function crossingsAmong(all: readonly Segment[]): Crossing[] {
	return all.length === 0 ? [] : crossingsIn(new SegmentGrid(all));
}

function crossingsIn(grid: SegmentGrid): Crossing[] {
	const all = grid.segments;
	const result: Crossing[] = [];
	for (let first = 0; first < all.length; first++) {
		const box = grid.boxes[first]!;
		for (const second of grid.after(first)) {
			const other = grid.boxes[second]!;
			if (other.minX > box.maxX + REACH || other.maxX < box.minX - REACH) continue;
			if (other.minY > box.maxY + REACH || other.maxY < box.minY - REACH) continue;
			for (const { at, onFirst, onSecond } of meetings(all[first]!, all[second]!)) {
				result.push({ first, second, at, onFirst, onSecond });
			}
		}
	}
	return result;
}
