import { type Extents, extents } from "./measure.js";
import { meetings } from "./meetings.js";
import { type Path, type Point, SAME_POINT, type Vertex, vertex } from "./path.js";
import { type LineSegment, pointAt, type Segment, segmentLength, segments } from "./segment.js";

/** What lies no further outside than this runs along a side, mm. */
const ALONG = 1e-9;
/** How far the sides are drawn past their corners, mm, so that what leaves by a corner meets them. */
const PAST = 1;

/** A stretch of one segment, between two fractions of it. */
interface Stretch {
	readonly segment: Segment;
	readonly from: number;
	readonly to: number;
	readonly start: Point;
	readonly end: Point;
	readonly bulge: number;
}

/** A place on a segment. */
interface Stop {
	readonly u: number;
	readonly at: Point;
}

/**
 * The pieces of a path in an upright box, in the path's order and direction.
 *
 * Arcs stay arcs. A piece's new ends have the very coordinate of the side that they lie on. A path
 * wholly inside is returned as it is; a closed path that leaves the box comes as open pieces, the
 * one over its start in one. What runs along a side is inside, so that it comes with both of two
 * boxes that share the side; what only touches one from outside gives nothing, and neither does
 * a piece shorter than 1e-6 mm.
 *
 * @throws RangeError for a box without room
 * @example clipped(line({ x: 0, y: 5 }, { x: 30, y: 5 }), box) // (10, 5) to (20, 5) in a box from 10 to 20
 */
export function clipped(path: Path, box: Extents): Path[] {
	if (!(box.minX < box.maxX && box.minY < box.maxY)) throw new RangeError("a box without room");
	const around = extents(path);
	if (isBeside(around, box)) return [];
	if (isWithin(around, box)) return [path];
	const sides = sidesOf(box);
	const all = segments(path);
	const runs = runsOf(all.map((s, i) => stretchesIn(s, path.points[i]!.bulge, box, sides)));
	const isWhole = runs.length === 1 && runs[0]!.length === all.length && runs[0]!.every(isFull);
	if (isWhole) return [path];
	if (path.closed) joinOverStart(runs, all);
	return runs.map((run) => pathOf(run, box)).filter((piece) => lengthOf(piece) >= SAME_POINT);
}

function isBeside(a: Extents, box: Extents): boolean {
	return (
		a.maxX < box.minX - ALONG ||
		a.minX > box.maxX + ALONG ||
		a.maxY < box.minY - ALONG ||
		a.minY > box.maxY + ALONG
	);
}

function isWithin(a: Extents, box: Extents): boolean {
	return a.minX >= box.minX && a.maxX <= box.maxX && a.minY >= box.minY && a.maxY <= box.maxY;
}

function isInside({ x, y }: Point, box: Extents): boolean {
	const inX = x >= box.minX - ALONG && x <= box.maxX + ALONG;
	return inX && y >= box.minY - ALONG && y <= box.maxY + ALONG;
}

function sidesOf({ minX, minY, maxX, maxY }: Extents): LineSegment[] {
	const upright = (x: number): LineSegment => ({
		kind: "line",
		start: { x, y: minY - PAST },
		end: { x, y: maxY + PAST },
	});
	const level = (y: number): LineSegment => ({
		kind: "line",
		start: { x: minX - PAST, y },
		end: { x: maxX + PAST, y },
	});
	return [upright(minX), upright(maxX), level(minY), level(maxY)];
}

/** The stretches of a segment in the box: between two that follow each other it is outside. */
function stretchesIn(
	segment: Segment,
	bulge: number,
	box: Extents,
	sides: readonly LineSegment[],
): Stretch[] {
	const stops = stopsOf(segment, sides);
	const result: { from: Stop; to: Stop }[] = [];
	for (let i = 0; i + 1 < stops.length; i++) {
		const [from, to] = [stops[i]!, stops[i + 1]!];
		if (!isInside(pointAt(segment, (from.u + to.u) / 2), box)) continue;
		const last = result.at(-1);
		if (last?.to === from) last.to = to;
		else result.push({ from, to });
	}
	return result.map(({ from, to }) => {
		const share = to.u - from.u;
		const own = segment.kind === "line" || share === 1;
		const turn = own ? bulge : Math.tan((segment.sweep * share) / 4);
		return { segment, from: from.u, to: to.u, start: from.at, end: to.at, bulge: turn };
	});
}

/** A segment's ends and where it meets the sides, in its order; what is next to an end is the end. */
function stopsOf(segment: Segment, sides: readonly LineSegment[]): Stop[] {
	const ends = [
		{ u: 0, at: segment.start },
		{ u: 1, at: segment.end },
	] as const;
	const size = segmentLength(segment);
	if (size < SAME_POINT) return [...ends];
	const met = sides
		.flatMap((side) => meetings(segment, side))
		.filter(({ onFirst: u }) => u * size > SAME_POINT && (1 - u) * size > SAME_POINT)
		.map(({ onFirst, at }) => ({ u: onFirst, at }))
		.sort((a, b) => a.u - b.u);
	return [ends[0], ...met, ends[1]];
}

/** Stretches that lead from one segment into the next, as one. */
function runsOf(inside: readonly (readonly Stretch[])[]): Stretch[][] {
	const runs: Stretch[][] = [];
	let isGoingOn = false;
	for (const stretches of inside) {
		stretches.forEach((stretch, i) => {
			if (i === 0 && isGoingOn && stretch.from === 0) runs.at(-1)!.push(stretch);
			else runs.push([stretch]);
		});
		isGoingOn = stretches.at(-1)?.to === 1;
	}
	return runs;
}

/** Makes one of the first run and the last where they meet at a closed path's start. */
function joinOverStart(runs: Stretch[][], all: readonly Segment[]): void {
	const [first, last] = [runs[0], runs.at(-1)];
	if (!first || !last || first === last) return;
	const [begins, ends] = [first[0]!, last.at(-1)!];
	if (begins.segment !== all[0] || begins.from !== 0) return;
	if (ends.segment !== all.at(-1) || ends.to !== 1) return;
	runs.pop();
	runs[0] = [...last, ...first];
}

function isFull({ from, to }: Stretch): boolean {
	return from === 0 && to === 1;
}

function pathOf(run: readonly Stretch[], box: Extents): Path {
	const points = run.map(({ start, bulge }) => vertex(start.x, start.y, bulge));
	const { end } = run.at(-1)!;
	points.push(vertex(end.x, end.y));
	points[0] = onSide(points[0]!, box);
	points[points.length - 1] = onSide(points.at(-1)!, box);
	return { points, closed: false };
}

/** A vertex with the very coordinates of the sides that it is next to. */
function onSide({ x, y, bulge }: Vertex, box: Extents): Vertex {
	const settled = (value: number, low: number, high: number) =>
		Math.abs(value - low) <= SAME_POINT ? low : Math.abs(value - high) <= SAME_POINT ? high : value;
	return vertex(settled(x, box.minX, box.maxX), settled(y, box.minY, box.maxY), bulge);
}

/** The length of a piece over its chords: arcs too short to be made have one too. */
function lengthOf({ points }: Path): number {
	let sum = 0;
	for (let i = 1; i < points.length; i++) {
		sum += Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y);
	}
	return sum;
}
