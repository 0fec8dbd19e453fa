import {
	distanceTo,
	type Path,
	type Point,
	pointAt,
	type Segment,
	SegmentGrid,
	segments,
	tangentAt,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { Finished } from "./finished.js";
import type { PromisedPart } from "./types.js";

/** How far a contour may lie beside its outline, mm: as written, and as a beam leaves it. */
const BESIDE = { written: 0.001, cut: 0.002 } as const;
/** How far from an inside corner its round may be felt, in radii of the beam. */
const ROUND = 2;

/**
 * Where a finished part's contours leave its nominal outline, corners and edges that no claim
 * speaks of included; inside corners may keep the round of the beam.
 *
 * @returns one finding, with the place that is farthest off, or none
 */
export function outlineFaults(part: PromisedPart, { contours, kerf }: Finished): Problem[] {
	const nominal = part.outline.filter((path) => path.closed);
	if (nominal.length === 0 || contours.paths.length === 0) return [];
	const most = kerf > 0 ? BESIDE.cut : BESIDE.written;
	const rounds = kerf > 0 ? nominal.flatMap(insideCorners) : [];
	const isRound = (p: Point) =>
		rounds.some((c) => Math.hypot(p.x - c.x, p.y - c.y) < (ROUND * kerf) / 2);
	const off = [
		...farthest(contours.paths, nominal, most, isRound),
		...farthest(nominal, contours.paths, most, isRound),
	];
	const worst = off.reduce<Off | null>((a, b) => (a && a.by >= b.by ? a : b), null);
	if (!worst) return [];
	const { by, at } = worst;
	return [problem("outline-differs", [], { part: part.name, by, x: at.x, y: at.y, most })];
}

interface Off {
	readonly at: Point;
	readonly by: number;
}

/** Points of some paths that lie farther beside others than they may. */
function farthest(
	paths: readonly Path[],
	others: readonly Path[],
	most: number,
	isRound: (p: Point) => boolean,
): Off[] {
	const all = others.flatMap(segments);
	const grid = new SegmentGrid(all, most);
	return paths.flatMap(pointsOf).flatMap((at): Off[] => {
		if (grid.clearance(at, most) === null || isRound(at)) return [];
		return [{ at, by: Math.min(...all.map((s) => distanceTo(s, at))) }];
	});
}

/** Vertices and middles of a path's segments. */
function pointsOf(path: Path): Point[] {
	return segments(path).flatMap((s) => [s.start, pointAt(s, 0.5)]);
}

/** Corners at which a path with material on its left turns to the right. */
function insideCorners(path: Path): Point[] {
	const all = segments(path);
	return all.flatMap((next, i) => {
		const before = all.at(i - 1) as Segment;
		const [a, b] = [tangentAt(before, 1), tangentAt(next, 0)];
		return a.x * b.y - a.y * b.x < -1e-6 ? [next.start] : [];
	});
}
