import {
	distance,
	type Path,
	type Point,
	pathLength,
	pointAt,
	type Segment,
	segments,
	tangentAt,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { farthest } from "./farthest.js";
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
 * Every vertex and every middle of what is left must lie on the outline, and be as long: nothing
 * of the outline is missing then.
 *
 * @returns one finding, with the place that is farthest off, or none
 */
export function outlineFaults(part: PromisedPart, { contours, kerf }: Finished): Problem[] {
	const nominal = part.outline.filter((path) => path.closed);
	if (nominal.length === 0 || contours.paths.length !== nominal.length) return [];
	const most = kerf > 0 ? BESIDE.cut : BESIDE.written;
	const corners = kerf > 0 ? nominal.flatMap(insideCorners) : [];
	const isRound = (p: Point) => corners.some((c) => distance(p, c) < (ROUND * kerf) / 2);
	const worst = farthest(contours.paths.flatMap(pointsOf), nominal, most, isRound);
	if (worst) {
		const { by, at } = worst;
		return [problem("outline-differs", [], { part: part.name, by, x: at.x, y: at.y, most })];
	}
	const [is, due] = [lengthOf(contours.paths), lengthOf(nominal)];
	const rounds = corners.length * SHORTCUT * kerf;
	const slack = most * nominal.reduce((sum, path) => sum + path.points.length, 0);
	if (is <= due + slack && is >= due - rounds - slack) return [];
	return [problem("outline-length", [], { part: part.name, measured: is, nominal: due })];
}

/** By how much a beam's round shortens an inside corner at most, in kerfs: a sharp one by twice its radius. */
const SHORTCUT = 1;

function lengthOf(paths: readonly Path[]): number {
	return paths.reduce((sum, path) => sum + pathLength(path), 0);
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
