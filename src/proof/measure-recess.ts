import type { SizeClaim } from "../drawing/index.js";
import type { Point } from "../geometry/index.js";
import { type Cut, crossings, nearestCut } from "./edges.js";
import type { Finished } from "./finished.js";
import { arcEnds } from "./measure-rounds.js";
import { along, axisOf, directionOf, dot, gap, minus, WINDOW } from "./plane.js";

/** Two edges that face each other on a line, as places along it, mm. */
export interface Facing {
	readonly from: number;
	readonly to: number;
}

/**
 * The two edges of contours nearest to two places of a line, mm along it from a. A recess lies
 * between edges where the line leaves the material and enters it again, a solid the other way.
 */
export function facingEdges(
	finished: Finished,
	a: Point,
	b: Point,
	kind: "recess" | "solid" | "any",
): Facing | null {
	const direction = directionOf(a, b);
	const size = gap(a, b);
	const first = crossings(finished.contours, a, direction, WINDOW);
	const second = crossings(finished.contours, b, direction, WINDOW);
	let best: Facing | null = null;
	let least = Number.POSITIVE_INFINITY;
	for (const from of first) {
		for (const to of second) {
			const beside = Math.abs(from.t) + Math.abs(to.t);
			if (!fits(from, to, kind) || from.t > to.t + size || beside >= least) continue;
			least = beside;
			best = { from: from.t, to: to.t + size };
		}
	}
	return best;
}

function fits(from: Cut, to: Cut, kind: "recess" | "solid" | "any"): boolean {
	if (kind === "any") return from.leaves !== to.leaves;
	const leaves = kind === "recess" ? 1 : -1;
	return from.leaves === leaves && to.leaves === -leaves;
}

/** Ends of one claim at those of another, mm. */
const SAME_PLACE = 1e-6;

/** The claim on the arc of a recess that is as wide as the arc's chord; none of another recess. */
function arcAcross(
	claims: readonly SizeClaim[],
	{ feature, at: [a, b] }: SizeClaim,
): SizeClaim | undefined {
	const isEnd = (p: Point) => Math.min(gap(p, a!), gap(p, b!)) < SAME_PLACE;
	return claims.find(
		(c) => c.kind === "radius" && c.feature === feature && isEnd(c.at[0]!) && isEnd(c.at[2]!),
	);
}

/**
 * The two sides of a recess, mm from the first end of the claim on its width: edges that face
 * each other, or, where the width is an arc's chord, the arc's ends. At a corner no line along
 * the width crosses anything for sure.
 */
export function recessSides(
	finished: Finished,
	claims: readonly SizeClaim[],
	width: SizeClaim,
): Facing | null {
	const [a, b] = width.at as [Point, Point];
	const arc = arcAcross(claims, width);
	if (!arc) return facingEdges(finished, a, b, "recess");
	const ends = arcEnds(finished, arc);
	if (!ends) return null;
	const way = directionOf(a, b);
	const [from, to] = ends.map((p) => dot(minus(p, a), way)).sort((p, q) => p - q);
	return { from: from!, to: to! };
}

/**
 * The claim on the width of a notch or slot across a direction, for a claim on its place or depth.
 * A steeply slanted slot's length is a width along that direction too: the smaller one is across.
 */
export function widthAcross(
	claims: readonly SizeClaim[],
	feature: string,
	direction: Point,
): SizeClaim | undefined {
	const across = claims.filter((c) => {
		if (c.kind !== "width" || c.feature !== feature || c.operation !== "cut") return false;
		return Math.abs(dot(directionOf(c.at[0]!, c.at[1]!), direction)) > LEAST_ACROSS;
	});
	return across.sort((a, b) => a.nominal - b.nominal)[0];
}

/** Cosine of the steepest slant at which a width still is one across. */
const LEAST_ACROSS = 0.2;

/** Whether a width is that of a recess: features that have a place or a depth are. */
export function isRecess(claims: readonly SizeClaim[], { feature }: SizeClaim): boolean {
	return claims.some((c) => c.feature === feature && (c.kind === "position" || c.kind === "depth"));
}

/**
 * The middle of a recess, mm from `at` along a direction; NaN where its edges are not found.
 *
 * @param width - the claim on its width
 */
export function recessMiddle(
	finished: Finished,
	claims: readonly SizeClaim[],
	width: SizeClaim,
	at: Point,
	direction: Point,
): number {
	const [a, b] = width.at as [Point, Point];
	const way = directionOf(a, b);
	if (arcAcross(claims, width)) {
		const sides = recessSides(finished, claims, width);
		if (!sides) return Number.NaN;
		return dot(minus(along(a, way, (sides.from + sides.to) / 2), at), direction);
	}
	const share = dot(way, direction);
	// A width across a slanted slot is longer by the slant's cosine along the measuring line.
	const half = gap(a, b) / 2 / share;
	const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
	const through =
		width.axis === "line" ? at : along(middle, direction, dot(minus(at, middle), direction));
	const ends = half > 0 ? half : -half;
	const from = along(through, direction, -ends);
	const facing = facingEdges(finished, from, along(through, direction, ends), "recess");
	return facing ? (facing.from + facing.to) / 2 - ends : Number.NaN;
}

/** From a notch's mouth corner to where its land is measured, mm. */
const ON_LAND = 0.05;

/** Depth of a recess: from the lands beside its mouth to its floor, mm. */
export function depthOf(
	finished: Finished,
	claims: readonly SizeClaim[],
	claim: SizeClaim,
): number {
	const [open, floor] = claim.at as [Point, Point];
	const axis = axisOf(claim.axis, open, floor);
	const into = dot(minus(floor, open), axis);
	const reach = Math.min(WINDOW, Math.abs(into) / 2);
	const bottom = nearestCut(crossings(finished.contours, floor, axis, reach));
	const edge = mouthHeight(finished, claims, claim, axis, reach);
	if (!bottom || edge === null) return Number.NaN;
	return (into + bottom.t - edge) * Math.sign(into);
}

/** Height of the lands on both sides of a mouth over the claimed point on the edge; null of none. */
function mouthHeight(
	finished: Finished,
	claims: readonly SizeClaim[],
	{ at: [open], feature }: SizeClaim,
	axis: Point,
	reach: number,
): number | null {
	const across = { x: -axis.y, y: axis.x };
	const width = widthAcross(claims, feature, across);
	if (!width) return nearestCut(crossings(finished.contours, open!, axis, reach))?.t ?? null;
	const facing = recessSides(finished, claims, width);
	const way = directionOf(width.at[0]!, width.at[1]!);
	const sides = facing ? [facing.from - ON_LAND, facing.to + ON_LAND] : [];
	const lands = sides.flatMap((side) => {
		const by = side + dot(minus(width.at[0]!, open!), way);
		const land = nearestCut(crossings(finished.contours, along(open!, way, by), axis, reach));
		return land ? [land.t] : [];
	});
	return lands.length === 0 ? null : lands.reduce((a, b) => a + b) / lands.length;
}
