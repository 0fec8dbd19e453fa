import type { Mark, Part } from "../drawing/index.js";
import {
	distance,
	type Offset,
	offset,
	type Path,
	type Point,
	pathBetween,
	pathLength,
	type SegmentRef,
	startedAt,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { lostFeatures } from "./lost.js";

/** How far a part's cut contours are moved for a kerf, mm. */
export function pathMoved(part: Part, kerf: number): number {
	return part.nominal ? 0 : kerf / 2;
}

/** A part as the machine is told to cut it, or why it cannot be cut. */
export type Compensated =
	| { readonly ok: true; readonly part: Part }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * A part whose cut contours are moved into the waste by half the width of the cut, so that what
 * is left has the nominal outline: outer contours grow, holes shrink, arcs stay arcs.
 *
 * An open cut is drawn in by half the kerf at both ends, so that what is cut is as long as it is
 * meant. Claims stay those of the finished part; scores and engraving stay where they are. Inside
 * corners of the finished part keep a fillet of half the kerf: a round beam leaves it.
 *
 * What the beam is too wide for is refused, with its feature's name: a notch or slot that is not
 * wider than the kerf, an open cut that is not longer, an inside radius that is not above half of it.
 *
 * @param kerf - full width of the cut, mm, 0 or more; 0 returns the part as it is, and so does
 *   a part that is meant to be nominal
 * @example a hole of 5 mm at a kerf of 0.16 is cut along a circle of 4.84 mm
 */
export function compensated(part: Part, kerf: number): Compensated {
	const all = part.marks.filter((m) => m.operation === "cut");
	if (kerf === 0 || part.nominal || all.length === 0) return { ok: true, part };
	const cuts = all.filter((m) => m.path.closed);
	const short = all.filter((m) => !m.path.closed && pathLength(m.path) <= kerf + LEAST_LEFT);
	const contours = cuts.map((m) => m.path);
	const moved = offset(contours, pathMoved(part, kerf));
	const problems = [
		...tooNarrow(part, cuts, moved.vanished, kerf),
		...short.map(({ feature, path }) =>
			problem("narrower-than-kerf", [], { part: part.name, feature, size: pathLength(path), kerf }),
		),
		...(moved.vanished.length === 0 && moved.paths.length !== cuts.length
			? [problem("contours-merge", [], { part: part.name, kerf })]
			: []),
	];
	if (problems.length > 0) return { ok: false, problems };
	const paths = pathsByContour(moved, contours);
	const marks = part.marks.map((mark): Mark => {
		if (mark.operation !== "cut") return mark;
		const contour = cuts.indexOf(mark);
		return { ...mark, path: contour < 0 ? drawnIn(mark.path, kerf / 2) : paths[contour]! };
	});
	return { ok: true, part: { ...part, marks } };
}

/** Least that must be left of an open cut's path, mm: what writers and machines still take for a line. */
const LEAST_LEFT = 0.01;

/** An open path without its first and last bit. */
function drawnIn(path: Path, by: number): Path {
	return pathBetween(path, by, pathLength(path) - by);
}

/** Each contour's moved path, begun next to where the contour begins. */
function pathsByContour(moved: Offset, contours: readonly Path[]): Path[] {
	const paths = [...contours];
	moved.paths.forEach((path, i) => {
		const { contour } = moved.sources[i]![0]!;
		paths[contour] = startedAt(path, nearestVertex(path, contours[contour]!.points[0]!));
	});
	return paths;
}

function nearestVertex(path: Path, to: Point): number {
	let best = 0;
	path.points.forEach((p, i) => {
		if (distance(p, to) < distance(path.points[best]!, to)) best = i;
	});
	return best;
}

/** Features that the beam is too wide for, each once, with the size that is too small. */
function tooNarrow(
	part: Part,
	cuts: readonly Mark[],
	vanished: readonly SegmentRef[],
	kerf: number,
): Problem[] {
	return lostFeatures(part, cuts, vanished).map(({ feature, piece, size }) => {
		const radius = piece.kind === "arc" && piece.radius <= kerf / 2;
		const code = radius ? "radius-below-half-kerf" : "narrower-than-kerf";
		const figure = radius ? piece.radius : size;
		return problem(code, [], { part: part.name, feature, size: figure, kerf });
	});
}
