import type { SizeClaim } from "../drawing/index.js";
import { type Point, pointAt } from "../geometry/index.js";
import { crossings, nearestCut } from "./edges.js";
import type { Finished } from "./finished.js";
import { lineBetween } from "./measure-lines.js";
import { type Facing, facingEdges, isRecess, recessSides } from "./measure-recess.js";
import { along, axisOf, dot, gap, minus, WINDOW } from "./plane.js";
import { isTab } from "./tab-gaps.js";

/** Width or length, mm; NaN where its ends are not found. */
export function sizeOf(finished: Finished, claims: readonly SizeClaim[], claim: SizeClaim): number {
	const [a, b] = claim.at as [Point, Point];
	if (isTab(claim)) {
		const room = finished.tabs.get(claim.id);
		// The round ends of the cuts on either side reach half their width into the gap.
		return room ? room.size - finished.kerf : Number.NaN;
	}
	if (claim.axis === "line") return lineSize(finished, claims, claim);
	if (isRecess(claims, claim)) return between(recessSides(finished, claims, claim));
	return endOf(finished, claim, b, 1) - endOf(finished, claim, a, -1);
}

function lineSize(finished: Finished, claims: readonly SizeClaim[], claim: SizeClaim): number {
	const [a, b] = claim.at as [Point, Point];
	const isScore = claim.operation === "score";
	const ends = lineBetween(isScore ? finished.scores : finished.slits, a, b);
	// The beam is round: it cuts half its width beyond either end.
	if (ends) return gap(...ends) + (isScore ? 0 : finished.kerf);
	if (isScore) return Number.NaN;
	return between(facingEdges(finished, a, b, isRecess(claims, claim) ? "recess" : "any"));
}

function between(sides: Facing | null): number {
	return sides ? sides.to - sides.from : Number.NaN;
}

/**
 * Place of one end of a solid along the claim's axis: where a line along it crosses the edge, or, at a
 * corner that the line may just miss, the outermost point near it.
 */
function endOf(finished: Finished, claim: SizeClaim, p: Point, side: 1 | -1): number {
	const axis = axisOf(claim.axis, claim.at[0]!, claim.at[1]!);
	const away = side * Math.sign(dot(minus(claim.at[1]!, claim.at[0]!), axis));
	const cuts = crossings(finished.contours, p, axis, WINDOW).filter((c) => c.leaves === away);
	const place = dot(p, axis);
	const cut = nearestCut(cuts);
	if (claim.kind !== "length") return cut ? place + cut.t : Number.NaN;
	if (!cut) return outermost(finished, p, WINDOW, axis, away) ?? Number.NaN;
	const corner = outermost(finished, along(p, axis, cut.t), AT_CORNER, axis, away);
	return corner === null ? place + cut.t : away * Math.max(away * corner, away * (place + cut.t));
}

/** A tip lies this near to where a line along its side crosses the facets around it, mm. */
const AT_CORNER = 0.02;

/** Place along the axis of the outermost corner within reach of a point; null of none. */
function outermost(
	{ contours }: Finished,
	p: Point,
	reach: number,
	axis: Point,
	away: number,
): number | null {
	let most: number | null = null;
	for (const { segment, box } of contours.all) {
		if (box.minX > p.x + reach || box.maxX < p.x - reach) continue;
		if (box.minY > p.y + reach || box.maxY < p.y - reach) continue;
		for (const end of [segment.start, segment.end]) {
			if (gap(end, p) > reach) continue;
			const t = dot(end, axis);
			if (most === null || away * t > away * most) most = t;
		}
	}
	return most;
}

/** An edge is a land of a working edge if it lies within this of it, mm: less deep than any notch. */
const LAND_WINDOW = 0.5;
/** Sine of the steepest edge that still is a land out of true. */
const LAND_SLOPE = 0.3;

/** How far the lands between two places leave the line through them, mm; NaN where none reach both. */
export function straightnessOf({ contours }: Finished, { at }: SizeClaim): number {
	const [a, b] = at as [Point, Point];
	const size = gap(a, b);
	const way = axisOf("line", a, b);
	const across = { x: -way.y, y: way.x };
	let [first, last, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
	for (const { segment } of contours.all) {
		const ends = [segment.start, segment.end].map((p) => ({
			s: dot(minus(p, a), way),
			t: dot(minus(p, a), across),
		})) as [Placed, Placed];
		const [from, to] = ends[0].s < ends[1].s ? ends : [ends[1], ends[0]];
		if (to.s < ON_EDGE || from.s > size - ON_EDGE || to.s - from.s < ON_EDGE) continue;
		if (Math.max(Math.abs(from.t), Math.abs(to.t)) > LAND_WINDOW) continue;
		if (Math.abs(to.t - from.t) > LAND_SLOPE * (to.s - from.s)) continue;
		const middle = segment.kind === "arc" ? dot(minus(pointAt(segment, 0.5), a), across) : 0;
		const inside = [from, to].map((end) => heightAt(from, to, Math.min(size, Math.max(0, end.s))));
		most = Math.max(most, Math.abs(middle), ...inside.map(Math.abs));
		[first, last] = [Math.min(first, from.s), Math.max(last, to.s)];
	}
	return first < WINDOW && last > size - WINDOW ? most : Number.NaN;
}

interface Placed {
	readonly s: number;
	readonly t: number;
}

/** Pieces of an edge that reach less far into its length are the corners beside it, mm. */
const ON_EDGE = 1e-3;

function heightAt(from: Placed, to: Placed, s: number): number {
	return from.t + ((to.t - from.t) * (s - from.s)) / (to.s - from.s);
}
