import type { Mark, Part, SizeClaim } from "../drawing/index.js";
import {
	type Offset,
	offset,
	type Path,
	type Point,
	pointAt,
	type SegmentRef,
	segmentLength,
	segments,
	startedAt,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";

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
 * Claims stay those of the finished part; scores, engraving and open cuts stay where they are.
 * Inside corners of the finished part keep a fillet of half the kerf: a round beam leaves it.
 *
 * What the beam is too wide for is refused, with its feature's name: a notch or slot that is not
 * wider than the kerf, an inside radius that is not above half of it.
 *
 * @param kerf - full width of the cut, mm, 0 or more; 0 returns the part as it is, and so does
 *   a part that is meant to be nominal
 * @example a hole of 5 mm at a kerf of 0.16 is cut along a circle of 4.84 mm
 */
export function compensated(part: Part, kerf: number): Compensated {
	const cuts = part.marks.filter((m) => m.operation === "cut" && m.path.closed);
	if (kerf === 0 || part.nominal || cuts.length === 0) return { ok: true, part };
	const contours = cuts.map((m) => m.path);
	const moved = offset(contours, pathMoved(part, kerf));
	const problems = [
		...lostFeatures(part, cuts, moved.vanished, kerf),
		...(moved.vanished.length === 0 && moved.paths.length !== cuts.length
			? [problem("contours-merge", [], { part: part.name, kerf })]
			: []),
	];
	if (problems.length > 0) return { ok: false, problems };
	const paths = pathsByContour(moved, contours);
	const marks = part.marks.map((mark): Mark => {
		const contour = cuts.indexOf(mark);
		return contour < 0 ? mark : { ...mark, path: paths[contour]! };
	});
	return { ok: true, part: { ...part, marks } };
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

function distance(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Features that the beam is too wide for, each once, with the size that is too small. */
function lostFeatures(
	part: Part,
	cuts: readonly Mark[],
	vanished: readonly SegmentRef[],
	kerf: number,
): Problem[] {
	const lost = new Map<string, Problem>();
	for (const { contour, segment } of vanished) {
		const mark = cuts[contour]!;
		const piece = segments(mark.path)[segment]!;
		const claim = claimAt(part, mark, pointAt(piece, 0.5));
		const feature = claim?.feature ?? mark.feature;
		const size = claim?.nominal ?? segmentLength(piece);
		const radius = piece.kind === "arc" && piece.radius <= kerf / 2;
		const code = radius ? "radius-below-half-kerf" : "narrower-than-kerf";
		const figure = radius ? piece.radius : size;
		if (lost.has(feature)) continue;
		lost.set(feature, problem(code, [], { part: part.name, feature, size: figure, kerf }));
	}
	return [...lost.values()];
}

/** How near a claim's points lie to the middle of a piece that they speak of, mm. */
const NEAR = 20;

/** The width or diameter claim that speaks of a piece: of the same feature, or else the nearest. */
function claimAt(part: Part, mark: Mark, middle: Point): SizeClaim | undefined {
	const sizes = part.claims.filter(
		(c): c is SizeClaim => (c.kind === "width" || c.kind === "diameter") && c.operation === "cut",
	);
	const own = sizes.filter((c) => c.feature === mark.feature);
	if (own.length > 0) return own.sort((a, b) => a.nominal - b.nominal)[0];
	const far = (c: SizeClaim) => Math.min(...c.at.map((p) => distance(p, middle)));
	const near = sizes.filter((c) => far(c) < NEAR).sort((a, b) => far(a) - far(b));
	return near[0];
}
