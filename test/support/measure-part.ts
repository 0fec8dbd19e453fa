import type { Part, SizeClaim } from "../../src/drawing/index.js";
import type { Path, Point } from "../../src/geometry/index.js";
import {
	arcsOf,
	crossingsAtHeight,
	crossingsAtPlace,
	gap,
	type MeasuredArc,
	type MeasuredNotch,
	nearest,
	notchesOf,
	pieces,
	quarter,
	slotAtHeight,
	slotOf,
} from "./measure-path.js";

/*
 * A part measured as one measures a cut piece: from its paths alone. Of a claim only what names
 * and places the feature is read, never its nominal; nothing of the tools is known here.
 */

/** The closed path that is cut around everything else of the part. */
export function outlineOf(part: Part): Path {
	const cuts = part.marks.filter(({ operation, path }) => operation === "cut" && path.closed);
	const reach = ({ points }: Path) =>
		Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x));
	return cuts.map((m) => m.path).reduce((a, b) => (reach(b) > reach(a) ? b : a));
}

/** The paths that belong to a feature. */
export function pathsOf(part: Part, feature: string): Path[] {
	return part.marks.filter((m) => m.feature === feature).map((m) => m.path);
}

/** What a claim promises, measured on the part; NaN where the feature is not found. */
export function measured(part: Part, claim: SizeClaim): number {
	const own = pathsOf(part, claim.feature);
	const arched = inArch(part, claim);
	if (arched !== null) return arched;
	switch (claim.kind) {
		case "position":
			return position(part, claim, own);
		case "width":
		case "length":
			return claim.axis === "line" ? slotSize(claim, own) : span(part, claim);
		case "depth":
			return notchAt(part, claim)?.depth ?? Number.NaN;
		case "radius":
		case "sagitta":
			return arcOf(part, claim)?.[claim.kind] ?? Number.NaN;
		case "diameter":
			return diameter(own);
		case "angle": {
			const [a, b] = slotOf(own[0]!).ends;
			return Math.atan((b.x - a.x) / (b.y - a.y));
		}
		case "straightness":
			return straightness(part, claim);
	}
}

/**
 * Width, place or depth of a recess whose floor is an arc that the part claims under the same name:
 * from the arc's own ends, and from the top over the middle between them; null of anything else.
 */
function inArch(part: Part, { kind, feature, axis, at }: SizeClaim): number | null {
	if ((kind !== "width" && kind !== "position" && kind !== "depth") || axis === "line") return null;
	const named = part.claims.find((c) => c.kind === "radius" && c.feature === feature);
	if (!named) return null;
	const arc = arcOf(part, named as SizeClaim);
	if (!arc) return Number.NaN;
	const { start, end, sagitta } = arc;
	if (kind === "width") return gap(start, end);
	const away = (start[axis] + end[axis]) / 2 - at[0]![axis];
	return kind === "position" ? away : Math.abs(away) + sagitta;
}

function notchAt(part: Part, claim: SizeClaim): MeasuredNotch | undefined {
	const [open] = claim.at;
	return notchesOf(outlineOf(part)).find(
		({ edge, flanks: [left, right] }) =>
			Math.abs(edge - open!.y) < 1e-9 && left.x < claim.at[1]!.x && right.x > claim.at[1]!.x,
	);
}

function position(part: Part, claim: SizeClaim, own: readonly Path[]): number {
	const [datum, at] = claim.at as [Point, Point];
	const round = own.length === 1 ? centreOf(own[0]!) : null;
	if (round && claim.axis !== "line") return round[claim.axis] - datum[claim.axis];
	if (claim.axis === "line") {
		const [a, b] = slotOf(own[0]!).ends;
		const [dx, dy] = [at.x - datum.x, at.y - datum.y];
		const t =
			((a.x - datum.x) * (b.y - a.y) - (a.y - datum.y) * (b.x - a.x)) /
			(dx * (b.y - a.y) - dy * (b.x - a.x));
		return t * Math.hypot(dx, dy);
	}
	if (claim.axis === "y") {
		const lines = own.length > 0 ? own : [outlineOf(part)];
		return nearest(crossingsAtPlace(lines, at.x), at.y) - datum.y;
	}
	const slot = own.find((p) => p.points.length === 4 || (own.length === 1 && !p.closed));
	if (slot) return slotAtHeight(slot, at.y) - datum.x;
	if (own.length > 0) return nearest(crossingsAtHeight(own, at.y), at.x) - datum.x;
	const notch = notchAt(part, claim);
	if (notch) return notch.centre - datum.x;
	return nearest(crossingsAtHeight([outlineOf(part)], at.y), at.x) - datum.x;
}

/** Between the two places of the contours that a claim's ends name. */
function span(part: Part, { axis, at }: SizeClaim): number {
	const [a, b] = at as [Point, Point];
	const contours = part.marks
		.filter(({ operation, path }) => operation === "cut" && path.closed)
		.map(({ path }) => path);
	const place = (p: Point) =>
		axis === "x"
			? nearest(crossingsAtHeight(contours, p.y), p.x)
			: nearest(crossingsAtPlace(contours, p.x), p.y);
	return place(b) - place(a);
}

function slotSize({ at }: SizeClaim, own: readonly Path[]): number {
	const { length, width } = slotOf(own[0]!);
	const wanted = gap(at[0]!, at[1]!);
	return nearest([length, width], wanted);
}

function arcOf(part: Part, { at }: SizeClaim): MeasuredArc | undefined {
	const ends = [at[0]!, at[2]!];
	return arcsOf(outlineOf(part)).find(
		({ start, end }) =>
			ends.every((p) => Math.min(gap(p, start), gap(p, end)) < 1e-9) && gap(start, end) > 1,
	);
}

/** The centre of a full circle; null of any other path. */
function centreOf({ points, closed }: Path): Point | null {
	const [a, b] = points;
	if (!closed || points.length !== 2 || Math.abs(a!.bulge) !== 1 || b!.bulge !== a!.bulge)
		return null;
	return { x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 };
}

function diameter(own: readonly Path[]): number {
	const arcs = own.flatMap(arcsOf);
	return arcs.length === 2 ? 2 * arcs[0]!.radius : Number.NaN;
}

/** How far the lands between two places leave the line through the first, mm. */
function straightness(part: Part, { at }: SizeClaim): number {
	const [a, b] = at as [Point, Point];
	const [from, to] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
	const lands = pieces(outlineOf(part)).filter(
		(p) =>
			quarter(p) !== null &&
			quarter(p)! % 2 === 0 &&
			Math.abs(p.a.y - a.y) < 0.1 &&
			Math.min(p.a.x, p.b.x) > from - 1e-9 &&
			Math.max(p.a.x, p.b.x) < to + 1e-9,
	);
	if (lands.length === 0) return Number.NaN;
	const ends = lands.flatMap((p) => [p.a.x, p.b.x]);
	const whole = Math.abs(Math.min(...ends) - from) + Math.abs(Math.max(...ends) - to) < 1e-9;
	return whole
		? Math.max(...lands.flatMap((p) => [Math.abs(p.a.y - a.y), Math.abs(p.b.y - a.y)]))
		: Number.NaN;
}
