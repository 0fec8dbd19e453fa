import { distanceTo, type Path, type Point, SegmentGrid, segments } from "../geometry/index.js";

/** A place and how far it lies beside where it should, mm. */
export interface Off {
	readonly at: Point;
	readonly by: number;
}

/**
 * The point that lies farthest beside some paths; null if none lies farther than it may.
 *
 * @param most - mm
 * @param mayBe - points that may lie anywhere
 */
export function farthest(
	points: readonly Point[],
	paths: readonly Path[],
	most: number,
	mayBe: (p: Point) => boolean = () => false,
): Off | null {
	const all = paths.flatMap(segments);
	const grid = new SegmentGrid(all, most);
	let worst: Off | null = null;
	for (const at of points) {
		if (grid.clearance(at, most) === null || mayBe(at)) continue;
		const by = all.reduce(
			(least, s) => Math.min(least, distanceTo(s, at)),
			Number.POSITIVE_INFINITY,
		);
		if (by > (worst?.by ?? 0)) worst = { at, by };
	}
	return worst;
}
