import { pathLength, signedArea } from "./measure.js";
import { type Link, ONE_JOINT } from "./offset-joints.js";
import type { Shifted, Source } from "./offset-shift.js";
import { type Path, type Point, type Vertex, vertex } from "./path.js";
import { pointAt, segmentLength } from "./segment.js";

/** A contour of the offset with, for each of its segments, what it comes from. */
export interface Loop {
	readonly path: Path;
	readonly sources: readonly Source[];
}

/** A segment shorter than this joins its neighbours, mm: files could not hold its length. */
const SHORTEST = 2e-6;
/** A contour with a shorter way around is a trace of rounding, mm. */
const SHORTEST_AROUND = 1e-4;
/** Arcs that sweep further are made of two: a bulge is a tangent and grows without bounds. */
const WIDEST = 1.5 * Math.PI;

/**
 * The closed contours that links form. Every joint is left as often as it is arrived at. Where
 * contours touch any way on will do: a contour is closed as soon as it is back at any of its
 * joints, so that none touches itself.
 */
export function loopsOf(links: readonly Link[]): Loop[] {
	const leaving = new Map<number, Link[]>();
	for (const link of links) {
		const others = leaving.get(link.from);
		if (others) others.push(link);
		else leaving.set(link.from, [link]);
	}
	const result: Loop[] = [];
	for (const first of links) {
		if (!leaving.get(first.from)!.includes(first)) continue;
		for (const ring of ringsFrom(first, leaving)) {
			const loop = loopOf(ring);
			if (loop) result.push(loop);
		}
	}
	return result;
}

/** The rings met on the way from a link until nothing of that way is left; takes their links. */
function ringsFrom(first: Link, leaving: ReadonlyMap<number, Link[]>): Link[][] {
	const rings: Link[][] = [];
	const way: Link[] = [];
	const placeOf = new Map<number, number>();
	for (let link: Link | undefined = first; link; ) {
		const others = leaving.get(link.from)!;
		others.splice(others.indexOf(link), 1);
		placeOf.set(link.from, way.length);
		way.push(link);
		const place = placeOf.get(link.to);
		if (place !== undefined) {
			const ring = way.splice(place);
			for (const { from } of ring) placeOf.delete(from);
			rings.push(ring);
		}
		const last = way.at(-1);
		link = last && leaving.get(last.to)!.at(-1);
	}
	return rings;
}

/** A stretch of a shifted segment that may span several pieces. */
interface Stretch {
	readonly shifted: Shifted;
	readonly from: number;
	readonly to: number;
	readonly start: Point;
}

/** The contour of some links, or null if there is nothing to it. */
function loopOf(links: readonly Link[]): Loop | null {
	const stretches = withoutShort(withoutWide(joined(links)));
	if (stretches.length < 2) return null;
	const points = stretches.map((stretch, i): Vertex => {
		const { x, y } = stretch.start;
		const end = stretches[(i + 1) % stretches.length]!.start;
		return vertex(x, y, Math.tan(sweepOf(stretch, end) / 4));
	});
	const path = { points, closed: true };
	const around = pathLength(path);
	const isThin = Math.abs(signedArea(path)) < (around / 2) * ONE_JOINT;
	if (around < SHORTEST_AROUND || isThin) return null;
	return { path, sources: stretches.map((s) => s.shifted.source) };
}

/**
 * How far a stretch turns, 0 on a line. Its ends may have slid a little to meet its neighbours:
 * the sweep follows, so that the radius stays.
 */
function sweepOf({ shifted: { segment }, from, to, start }: Stretch, end: Point): number {
	if (segment.kind === "line") return 0;
	const { centre, radius, sweep } = segment;
	const slid = (u: number, p: Point) => {
		const was = pointAt(segment, u);
		const across = (was.x - centre.x) * (p.y - was.y) - (was.y - centre.y) * (p.x - was.x);
		return across / (radius * radius);
	};
	return sweep * (to - from) + slid(to, end) - slid(from, start);
}

/** Pieces that follow each other on one segment made one again. */
function joined(links: readonly Link[]): Stretch[] {
	const result: Stretch[] = [];
	for (const { piece } of links) {
		const last = result.at(-1);
		if (last?.shifted === piece.shifted && last.to === piece.from) {
			result[result.length - 1] = { ...last, to: piece.to };
		} else {
			result.push(piece);
		}
	}
	const [first, last] = [result[0]!, result.at(-1)!];
	if (result.length > 1 && last.shifted === first.shifted && last.to === first.from) {
		result[0] = { ...last, to: first.to };
		result.pop();
	}
	return result;
}

function withoutWide(stretches: readonly Stretch[]): Stretch[] {
	return stretches.flatMap((stretch) => {
		const { shifted, from, to } = stretch;
		const { segment } = shifted;
		if (segment.kind === "line" || Math.abs(segment.sweep) * (to - from) < WIDEST) return [stretch];
		const middle = (from + to) / 2;
		const start = pointAt(segment, middle);
		return [
			{ ...stretch, to: middle },
			{ ...stretch, from: middle, start },
		];
	});
}

/** Stretches too short to keep left out; their neighbours meet in the middle of the gap. */
function withoutShort(stretches: readonly Stretch[]): Stretch[] {
	const result: Stretch[] = [];
	let gap: Point | null = null;
	for (const [i, stretch] of stretches.entries()) {
		const start: Point = gap ?? stretch.start;
		const end = stretches[(i + 1) % stretches.length]!.start;
		const short = (stretch.to - stretch.from) * segmentLength(stretch.shifted.segment) < SHORTEST;
		if (short && Math.hypot(end.x - start.x, end.y - start.y) < SHORTEST) {
			gap = start;
			continue;
		}
		result.push(gap ? { ...stretch, start: short ? gap : between(gap, stretch.start) } : stretch);
		gap = null;
	}
	const first = result[0];
	if (gap && first) result[0] = { ...first, start: between(gap, first.start) };
	return result;
}

function between(a: Point, b: Point): Point {
	return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
