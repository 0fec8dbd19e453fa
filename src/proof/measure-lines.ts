import type { SizeClaim } from "../drawing/index.js";
import type { Path, Point } from "../geometry/index.js";
import { pathLength } from "../geometry/index.js";
import { type Cut, crossings, type Edges, nearestCut } from "./edges.js";
import type { Finished } from "./finished.js";
import { recessMiddle, widthAcross } from "./measure-recess.js";
import { holeOf } from "./measure-rounds.js";
import { axisOf, dot, gap, minus, WINDOW } from "./plane.js";

/** Lines that are features of their own; the others may be a datum, as the nut's line is. */
export type FeatureLines = ReadonlySet<Path>;

/** A datum that is drawn lies this near to its claimed place, mm; else the part's own frame is it. */
const DATUM_WINDOW = 0.5;

/** The lines, scored or cut once, that position claims are about. */
export function featureLines(finished: Finished, claims: readonly SizeClaim[]): Set<Path> {
	const found = new Set<Path>();
	for (const claim of claims) {
		if (claim.kind !== "position") continue;
		const [datum, at] = claim.at as [Point, Point];
		if (gap(datum, at) < SAME_PLACE) continue;
		const edges = linesOf(finished, claim);
		const cut = nearestCut(crossings(edges, at, axisOf(claim.axis, datum, at), WINDOW));
		if (cut) found.add(edges.paths[cut.path]!);
	}
	return found;
}

const SAME_PLACE = 1e-9;

function linesOf(finished: Finished, { operation }: SizeClaim): Edges {
	return operation === "score" ? finished.scores : finished.slits;
}

/**
 * Distance of a feature from its datum along the claim's axis, mm; NaN where it is not found. A round
 * hole is where the middle of the circle through its edge is.
 *
 * A second edge is turned by half a turn: its distances count the other way, as its claims say.
 */
export function positionOf(
	finished: Finished,
	claims: readonly SizeClaim[],
	features: FeatureLines,
	claim: SizeClaim,
): number {
	const [datum, at] = claim.at as [Point, Point];
	const apart = dot(minus(at, datum), axisOf(claim.axis, datum, at));
	const sense = apart * claim.nominal < 0 ? -1 : 1;
	return sense * distanceOf(finished, claims, features, claim);
}

function distanceOf(
	finished: Finished,
	claims: readonly SizeClaim[],
	features: FeatureLines,
	claim: SizeClaim,
): number {
	const [datum, at] = claim.at as [Point, Point];
	const axis = axisOf(claim.axis, datum, at);
	const round = claims.find((c) => c.kind === "diameter" && c.feature === claim.feature);
	if (round) {
		const hole = holeOf(finished, round);
		return hole ? dot(minus(hole.centre, datum), axis) : Number.NaN;
	}
	const apart = dot(minus(at, datum), axis);
	const width = widthAcross(claims, claim.feature, axis);
	if (width && claim.operation === "cut" && !isSlit(finished, width)) {
		const middle = recessMiddle(finished, claims, width, at, axis);
		return apart + middle - datumOf(finished, features, datum, axis);
	}
	if (gap(datum, at) < SAME_PLACE) return onDatum(finished, features, claim, axis);
	const cuts = crossings(linesOf(finished, claim), at, axis, WINDOW);
	const edges = claim.operation === "cut" ? crossings(finished.contours, at, axis, WINDOW) : [];
	const found = nearestCut([...cuts, ...edges]);
	if (!found) return Number.NaN;
	return apart + found.t - datumOf(finished, features, datum, axis);
}

/** Whether a width claim tells the length of a single cut. */
function isSlit({ slits }: Finished, { at }: SizeClaim): boolean {
	return lineBetween(slits, at[0]!, at[1]!) !== null;
}

/** How far the datum's own line lies from its claimed place; 0 where none is drawn. */
function datumOf(finished: Finished, features: FeatureLines, datum: Point, axis: Point): number {
	const cuts = [finished.scores, finished.slits].flatMap((edges) =>
		crossings(edges, datum, axis, DATUM_WINDOW).filter((c) => !features.has(edges.paths[c.path]!)),
	);
	return nearestCut(cuts)?.t ?? 0;
}

/** A feature on its datum's line: the longest line there is the datum, the nearest other the feature. */
function onDatum(
	finished: Finished,
	features: FeatureLines,
	claim: SizeClaim,
	axis: Point,
): number {
	const edges = linesOf(finished, claim);
	const cuts = crossings(edges, claim.at[1]!, axis, WINDOW).filter(
		(c) => !features.has(edges.paths[c.path]!),
	);
	if (cuts.length === 0) return Number.NaN;
	const size = (c: Cut) => pathLength(edges.paths[c.path]!);
	const longest = cuts.reduce((a, b) => (size(b) > size(a) ? b : a));
	const rest = cuts.filter((c) => c.path !== longest.path);
	return rest.length === 0 ? longest.t : nearestCut(rest)!.t - longest.t;
}

/** The open line whose ends are nearest to two places, its ends in their order; null of none. */
export function lineBetween(edges: Edges, a: Point, b: Point): readonly [Point, Point] | null {
	let best: readonly [Point, Point] | null = null;
	let least = WINDOW;
	for (const { points, closed } of edges.paths) {
		if (closed) continue;
		const [from, to] = [points[0]!, points.at(-1)!];
		for (const ends of [[from, to] as const, [to, from] as const]) {
			const beside = Math.max(gap(ends[0], a), gap(ends[1], b));
			if (beside < least) [least, best] = [beside, ends];
		}
	}
	return best;
}

/** How much of a slot lies beyond the two places of its flanks that its slant is measured at. */
const FROM_END = 0.1;

/** Signed turn of a slot from the y axis, radians; NaN where it is not found. */
export function angleOf(
	finished: Finished,
	claims: readonly SizeClaim[],
	claim: SizeClaim,
): number {
	const [, a, b] = claim.at as [Point, Point, Point];
	const ends = lineBetween(linesOf(finished, claim), a, b) ?? middles(finished, claims, claim);
	if (!ends) return Number.NaN;
	const [from, to] = ends;
	return Math.atan((to.x - from.x) / (to.y - from.y));
}

/** Two places of the middle line of a slot that is cut to a width. */
function middles(finished: Finished, claims: readonly SizeClaim[], claim: SizeClaim) {
	const [, a, b] = claim.at as [Point, Point, Point];
	const axis = { x: 1, y: 0 };
	const width = widthAcross(claims, claim.feature, axis);
	if (!width || claim.operation !== "cut") return null;
	const [from, to] = [FROM_END, 1 - FROM_END].map((u) => {
		const p = { x: a.x + (b.x - a.x) * u, y: a.y + (b.y - a.y) * u };
		return { x: p.x + recessMiddle(finished, claims, width, p, axis), y: p.y };
	});
	return [from!, to!] as const;
}
