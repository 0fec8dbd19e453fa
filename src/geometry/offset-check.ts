import { type Crossing, crossingsApartFromJoints } from "./crossings.js";
import { SegmentGrid } from "./grid.js";
import { windingNumber } from "./inside.js";
import { OffsetError } from "./offset-error.js";
import { type Path, type Point, SAME_POINT } from "./path.js";
import { pointAt, type Segment, segmentLength, segments, tangentAt } from "./segment.js";

/** A segment of one of several contours, both counted from 0. */
export interface SegmentRef {
	readonly contour: number;
	readonly segment: number;
}

/** The segments of all contours in one list. */
export interface Boundary {
	readonly segments: readonly Segment[];
	readonly refs: readonly SegmentRef[];
	/** For each segment the place of the one that it leads into. */
	readonly nextOf: readonly number[];
	readonly grid: SegmentGrid;
	/** Whether contours touch themselves or each other. */
	readonly touching: boolean;
}

/** How far beside a contour its sides are looked at, mm: two points nearer than this are one. */
const BESIDE = SAME_POINT;
/** Stretches between crossings shorter than this may be the noise of a touch, mm. */
const NOISE = 1e-5;

/**
 * The segments of closed contours that bound material on their left.
 *
 * Touching is allowed, crossing is not: just left of every stretch between two meetings the
 * contours wind once around, just right of it not at all.
 *
 * @param contours - at least one
 * @throws OffsetError for paths that are no contours, cross, or run the wrong way round
 */
export function boundaryOf(contours: readonly Path[]): Boundary {
	const all: Segment[] = [];
	const refs: SegmentRef[] = [];
	const nextOf: number[] = [];
	for (const [contour, path] of contours.entries()) {
		checkContour(path, contour);
		const first = all.length;
		for (const [segment, s] of segments(path).entries()) {
			all.push(s);
			refs.push({ contour, segment });
			nextOf.push(segment + 1 < path.points.length ? all.length : first);
		}
	}
	const grid = new SegmentGrid(all);
	const crossings = crossingsApartFromJoints(grid, nextOf);
	const boundary = { segments: all, refs, nextOf, grid, touching: crossings.length > 0 };
	checkSides(boundary, crossings);
	return boundary;
}

function checkContour({ points, closed }: Path, contour: number): void {
	const refuse = (what: string, at?: Point) => {
		throw new OffsetError("not-a-contour", `contour ${contour} ${what}`, contour, at ?? null);
	};
	if (!closed) refuse("is open");
	if (points.length < 2) refuse("needs two points");
	for (const [i, v] of points.entries()) {
		if (![v.x, v.y, v.bulge].every(Number.isFinite)) refuse(`is not finite at vertex ${i}`);
		const next = points[(i + 1) % points.length]!;
		if (Math.hypot(next.x - v.x, next.y - v.y) < SAME_POINT) {
			refuse(`has no length between vertex ${i} and the next`, v);
		}
	}
}

function checkSides(boundary: Boundary, crossings: readonly Crossing[]): void {
	const { segments: all, refs, grid } = boundary;
	const met = new Map<number, Crossing>();
	for (const c of crossings) {
		for (const i of [c.first, c.second]) met.set(refs[i]!.contour, c);
	}
	for (const { segment, from, to } of stretches(boundary, crossings, new Set(met.keys()))) {
		if (hasSides(grid, all[segment]!, (from + to) / 2)) continue;
		const { contour } = refs[segment]!;
		const at = met.get(contour)?.at;
		if (at) {
			const place = `${at.x}, ${at.y}`;
			throw new OffsetError("crossing", `contour ${contour} crosses at ${place}`, contour, at);
		}
		const rule = "outer contours run counter-clockwise, holes within them clockwise";
		throw new OffsetError("wrong-side", `contour ${contour} runs the wrong way: ${rule}`, contour);
	}
}

/** A part of a segment between two fractions. */
interface Stretch {
	readonly segment: number;
	readonly from: number;
	readonly to: number;
}

/** Every stretch of the contours that meet something, one whole segment of each other one. */
function stretches(
	{ segments: all, refs }: Boundary,
	crossings: readonly Crossing[],
	met: ReadonlySet<number>,
): Stretch[] {
	const cuts = new Map<number, number[]>();
	const cut = (i: number, u: number) => cuts.set(i, [...(cuts.get(i) ?? []), u]);
	for (const c of crossings) {
		cut(c.first, c.onFirst);
		cut(c.second, c.onSecond);
	}
	const result: Stretch[] = [];
	const samples = new Map<number, number>();
	for (const [segment, { contour }] of refs.entries()) {
		if (!met.has(contour)) {
			const best = samples.get(contour);
			if (best === undefined || isClearer(all[segment]!, all[best]!)) samples.set(contour, segment);
			continue;
		}
		let from = 0;
		for (const to of [...(cuts.get(segment) ?? []), 1].sort((a, b) => a - b)) {
			if ((to - from) * segmentLength(all[segment]!) > NOISE) result.push({ segment, from, to });
			from = to;
		}
	}
	for (const segment of samples.values()) result.push({ segment, from: 0, to: 1 });
	return result;
}

/** Whether the sides of one segment are easier to tell than another's: lines, then long ones. */
function isClearer(one: Segment, other: Segment): boolean {
	if (one.kind !== other.kind) return one.kind === "line";
	return segmentLength(one) > segmentLength(other);
}

/** Whether there is material on the left of a segment and none on its right. */
function hasSides(grid: SegmentGrid, segment: Segment, u: number): boolean {
	const at = pointAt(segment, u);
	const { x, y } = tangentAt(segment, u);
	const beside = (side: number) => layersAt(grid, { x: at.x - y * side, y: at.y + x * side });
	return beside(BESIDE) === 1 && beside(-BESIDE) === 0;
}

/** How many layers of material there are at a point that is on no contour. */
export function layersAt(grid: SegmentGrid, p: Point): number {
	return windingNumber(grid.toTheRight(p), p);
}
