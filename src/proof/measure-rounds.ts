import type { SizeClaim } from "../drawing/index.js";
import { type Path, type Point, pointAt, type Segment, segments } from "../geometry/index.js";
import { fittedCircle } from "./circle-fit.js";
import type { Finished } from "./finished.js";
import { cross, gap, minus, WINDOW } from "./plane.js";

/** An arc or a hole as it is measured. */
export interface Round {
	readonly value: number;
	/** Farthest that its edge lies beside the circle, mm. */
	readonly outOfRound: number;
	/** Farthest that the places it was fitted to lie beside the circle, mm: how well it is known. */
	readonly scatter: number;
	/** How far its middle lies from its claimed place, mm; of a hole. */
	readonly offPlace: number;
}

/** A hole, with where its middle is found. */
export interface Hole extends Round {
	readonly centre: Point;
}

/** An arc is measured at so many places of each of its pieces. */
const STEPS = 8;

/** Places on an edge that are measured: the ends of its straight pieces, and along its arcs. */
function placesOn(all: readonly Segment[]): Point[] {
	const last = all.at(-1);
	const places = all.flatMap((s) =>
		s.kind === "line" ? [s.start] : Array.from({ length: STEPS }, (_, i) => pointAt(s, i / STEPS)),
	);
	return last ? [...places, last.end] : [];
}

/** Farthest that places lie beside a circle, mm. */
function outOfRound(places: readonly Point[], centre: Point, radius: number): number {
	return places.reduce((most, p) => Math.max(most, Math.abs(gap(p, centre) - radius)), 0);
}

/** The middles of pieces: where a straight one lies farthest from its arc. */
function middlesOf(all: readonly Segment[]): Point[] {
	return all.map((s) => pointAt(s, 0.5));
}

/** The hole about a place: its diameter from the circle through its edge; null of none. */
export function holeOf({ contours }: Finished, { at: [centre] }: SizeClaim): Hole | null {
	let best: Hole | null = null;
	for (const path of contours.paths) {
		const all = segments(path);
		const places = placesOn(all);
		const fit = fittedCircle(places.slice(1));
		if (!fit) continue;
		const offPlace = gap(fit.centre, centre!);
		if (offPlace > WINDOW || (best && offPlace >= best.offPlace)) continue;
		const beside = outOfRound([...places, ...middlesOf(all)], fit.centre, fit.radius);
		// Any contour has a circle through it as well as it goes; a hole is near to its own.
		if (beside > fit.radius / 2) continue;
		const scatter = outOfRound(places, fit.centre, fit.radius);
		best = { value: 2 * fit.radius, outOfRound: beside, scatter, offPlace, centre: fit.centre };
	}
	return best;
}

/** The ends of the edge between an arc's claimed ends; null where it is not found. */
export function arcEnds({ contours }: Finished, { at }: SizeClaim): readonly [Point, Point] | null {
	const [start, middle, end] = at as [Point, Point, Point];
	return runBetween(contours.paths, start, middle, end)?.ends ?? null;
}

/** The edge between the claimed ends of an arc, from the one to the other. */
interface Run {
	readonly ends: readonly [Point, Point];
	readonly all: readonly Segment[];
}

/** The corner at an arc's end is blunt by the facets of the sweep around it, within this, mm. */
const AT_CORNER = 0.02;

/** Radius or sagitta of an arc, below 0 where it bends to the other side; null where it is not found. */
export function arcOf({ contours }: Finished, { kind, at }: SizeClaim): Round | null {
	const [start, middle, end] = at as [Point, Point, Point];
	const run = runBetween(contours.paths, start, middle, end);
	if (!run || run.all.length === 0) return null;
	const [a, b] = run.ends;
	const isOff = (p: Point) => gap(p, a) > AT_CORNER && gap(p, b) > AT_CORNER;
	const places = placesOn(run.all).filter(isOff);
	const fit = fittedCircle(places.map((p) => minus(p, a)));
	if (!fit) return null;
	const centre = { x: fit.centre.x + a.x, y: fit.centre.y + a.y };
	const chord = minus(b, a);
	const size = gap(a, b);
	const over = (p: Point) => cross(chord, minus(p, a)) / size;
	const claimed = Math.sign(cross(minus(end, start), minus(middle, start)));
	const halfWay = run.all[Math.floor(run.all.length / 2)]!;
	const side = Math.sign(over(pointAt(halfWay, run.all.length % 2 === 1 ? 0.5 : 0)));
	const height = claimed * (cross(chord, fit.centre) / size) + claimed * side * fit.radius;
	const value = kind === "radius" ? claimed * side * fit.radius : height;
	const scatter = outOfRound(places, centre, fit.radius);
	const between = outOfRound(middlesOf(run.all).filter(isOff), centre, fit.radius);
	return { value, outOfRound: Math.max(scatter, between), scatter, offPlace: 0 };
}

/**
 * The run of a contour between the corners nearest to an arc's claimed ends: of the two ways
 * around, the one that comes nearer to its claimed middle.
 */
function runBetween(paths: readonly Path[], start: Point, middle: Point, end: Point): Run | null {
	let best: { path: Path; i: number; j: number; beside: number } | null = null;
	for (const path of paths) {
		const [i, j] = [nearestVertex(path, start), nearestVertex(path, end)];
		const beside = Math.max(gap(path.points[i]!, start), gap(path.points[j]!, end));
		if (i !== j && beside < WINDOW && !(best && beside >= best.beside))
			best = { path, i, j, beside };
	}
	if (!best) return null;
	const { path, i, j } = best;
	const all = segments(path);
	const stretch = (from: number, to: number) =>
		from < to ? all.slice(from, to) : [...all.slice(from), ...all.slice(0, to)];
	const near = (part: readonly Segment[]) =>
		part
			.flatMap((s) => [pointAt(s, 0.5), s.end])
			.reduce((m, p) => Math.min(m, gap(p, middle)), 1e9);
	const [one, two] = [stretch(i, j), stretch(j, i)];
	return {
		ends: [path.points[i]!, path.points[j]!],
		all: near(one) <= near(two) ? one : two,
	};
}

function nearestVertex({ points }: Path, to: Point): number {
	let best = 0;
	points.forEach((p, i) => {
		if (gap(p, to) < gap(points[best]!, to)) best = i;
	});
	return best;
}
