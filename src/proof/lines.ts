import {
	type Path,
	type Point,
	pathBetween,
	pathLength,
	pointAt,
	segments,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { farthest } from "./farthest.js";
import type { Finished } from "./finished.js";
import type { PromisedPart } from "./types.js";

/** How far a line may lie beside its place, mm. */
const BESIDE = 0.001;

/**
 * Whether every scored line and every single cut lies where it is promised, whole: a slot turned
 * about its middle keeps its place and its length, and a nut line has no claim of its own.
 *
 * @returns for scores and for single cuts the place that is farthest off, or none
 */
export function lineFaults(part: PromisedPart, finished: Finished): Problem[] {
	const single = part.outline.filter((path) => !path.closed);
	const cuts = part.kerf > 0 ? single.map((path) => drawnIn(path, part.kerf / 2)) : single;
	return [
		...fault(part, "score", part.scores, finished.scores.paths),
		...fault(part, "cut", cuts, finished.slits.paths),
	];
}

/** An open cut is drawn in by half the cut's width at both ends. */
function drawnIn(path: Path, by: number): Path {
	const size = pathLength(path);
	return size > 2 * by ? pathBetween(path, by, size - by) : path;
}

function fault(
	part: PromisedPart,
	operation: "score" | "cut",
	promised: readonly Path[],
	drawn: readonly Path[],
): Problem[] {
	if (promised.length === 0 || drawn.length === 0) return [];
	const missing = farthest(promised.flatMap(pointsOf), drawn, BESIDE);
	const added = farthest(drawn.flatMap(pointsOf), promised, BESIDE);
	const worst = added && added.by > (missing?.by ?? 0) ? added : missing;
	if (!worst) return [];
	const { at, by } = worst;
	return [problem("line-differs", [], { part: part.name, operation, by, x: at.x, y: at.y })];
}

/** Both ends of a path's segments and three places between. */
function pointsOf(path: Path): Point[] {
	return segments(path).flatMap((s) => [0, 0.25, 0.5, 0.75, 1].map((u) => pointAt(s, u)));
}
