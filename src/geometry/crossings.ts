import { segmentExtents } from "./measure.js";
import { type Meeting, meetings, REACH } from "./meetings.js";
import type { Path } from "./path.js";
import { type Segment, segmentLength, segments } from "./segment.js";

/** Two segments of a set that meet elsewhere than at a shared joint. */
export interface Crossing extends Meeting {
	readonly first: number;
	readonly second: number;
}

/**
 * Where a path meets itself other than at the joints between neighbours; empty for a simple
 * path. Boxes sorted by x keep it near linear for templates.
 */
export function selfCrossings(path: Path): Crossing[] {
	const all = segments(path);
	const last = all.length - 1;
	return crossingsAmong(all).filter(({ first, second, onFirst, onSecond }) => {
		const endOf = (u: number, i: number) => (1 - u) * segmentLength(all[i]!) < 1e-6;
		const startOf = (u: number, i: number) => u * segmentLength(all[i]!) < 1e-6;
		const follows = second === first + 1 && endOf(onFirst, first) && startOf(onSecond, second);
		const closes =
			path.closed &&
			first === 0 &&
			second === last &&
			startOf(onFirst, first) &&
			endOf(onSecond, second);
		return !follows && !closes;
	});
}

/** All meetings between different segments of a list, `first` < `second`. */
export function crossingsAmong(all: readonly Segment[]): Crossing[] {
	const boxes = all.map(segmentExtents);
	const order = all.map((_, i) => i).sort((a, b) => boxes[a]!.minX - boxes[b]!.minX);
	const result: Crossing[] = [];
	for (let a = 0; a < order.length; a++) {
		const i = order[a]!;
		const box = boxes[i]!;
		for (let b = a + 1; b < order.length; b++) {
			const j = order[b]!;
			const other = boxes[j]!;
			if (other.minX > box.maxX + REACH) break;
			if (other.minY > box.maxY + REACH || other.maxY < box.minY - REACH) continue;
			const [first, second] = i < j ? [i, j] : [j, i];
			for (const m of meetings(all[first]!, all[second]!)) result.push({ first, second, ...m });
		}
	}
	return result;
}
