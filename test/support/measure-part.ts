import type { Part, SizeClaim } from "../../src/drawing/index.js";
import type { Path, Point, Vertex } from "../../src/geometry/index.js";

/*
 * A part measured as one measures a cut piece: from its paths alone. Of a claim only what names
 * and places the feature is read, never its nominal; nothing of the tools is known here.
 */

/** An arc of a path, as its bulge gives it. */
export interface MeasuredArc {
	readonly start: Point;
	readonly end: Point;
	readonly radius: number;
	readonly sagitta: number;
}

/** A rectangular recess in a straight edge. */
export interface MeasuredNotch {
	readonly centre: number;
	readonly width: number;
	readonly depth: number;
	/** Height of the edge that it opens to. */
	readonly edge: number;
	readonly flanks: readonly [Point, Point];
}

interface Piece {
	readonly a: Vertex;
	readonly b: Point;
}

function pieces({ points, closed }: Path): Piece[] {
	return points
		.slice(0, closed ? points.length : -1)
		.map((a, i) => ({ a, b: points[(i + 1) % points.length]! }));
}

function gap(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

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

/** All arcs of a path: chord c and bulge b have the radius c(1 + b²)/4b and the sagitta c·b/2. */
export function arcsOf(path: Path): MeasuredArc[] {
	return pieces(path)
		.filter(({ a }) => a.bulge !== 0)
		.map(({ a, b }) => {
			const chord = gap(a, b);
			const bulge = Math.abs(a.bulge);
			const radius = (chord * (1 + bulge * bulge)) / (4 * bulge);
			return { start: a, end: b, radius, sagitta: (chord * bulge) / 2 };
		});
}

/** The direction of a straight piece in quarter turns, or null if it is an arc or slanted. */
function quarter({ a, b }: Piece): number | null {
	if (a.bulge !== 0) return null;
	const [dx, dy] = [b.x - a.x, b.y - a.y];
	if (Math.abs(dy) < 1e-9) return dx > 0 ? 0 : 2;
	if (Math.abs(dx) < 1e-9) return dy > 0 ? 1 : 3;
	return null;
}

/**
 * The notches of a contour that runs counter-clockwise: a turn to the left into the material, two
 * to the right around the floor, both flanks equally long.
 */
export function notchesOf(outline: Path): MeasuredNotch[] {
	const all = pieces(outline);
	return all.flatMap((floor, i) => {
		const into = all[(i + all.length - 1) % all.length]!;
		const out = all[(i + 1) % all.length]!;
		const [q, before, after] = [floor, into, out].map(quarter);
		if (q === null || before !== (q! + 1) % 4 || after !== (q! + 3) % 4) return [];
		const depth = gap(into.a, into.b);
		if (Math.abs(depth - gap(out.a, out.b)) > 1e-9) return [];
		const flanks = [into.a, out.b].sort((a, b) => a.x - b.x) as [Point, Point];
		const centre = (floor.a.x + floor.b.x) / 2;
		return [{ centre, width: gap(floor.a, floor.b), depth, edge: into.a.y, flanks }];
	});
}

/** Where paths of lines and arcs cross a line of constant y, rising x, each place once. */
export function crossingsAtHeight(paths: readonly Path[], y: number): number[] {
	const found = paths.flatMap(pieces).flatMap(({ a, b }): number[] => {
		if (a.bulge !== 0) return arcAtHeight(a, b, y);
		const [da, db] = [a.y - y, b.y - y];
		if (Math.abs(da) < 1e-9 && Math.abs(db) < 1e-9) return [];
		if (da * db > 1e-18) return [];
		return [a.x + ((b.x - a.x) * da) / (da - db)];
	});
	return once(found);
}

function arcAtHeight(a: Vertex, b: Point, y: number): number[] {
	const chord = gap(a, b);
	const rise = (1 - a.bulge * a.bulge) / (4 * a.bulge);
	const centre = {
		x: (a.x + b.x) / 2 - (b.y - a.y) * rise,
		y: (a.y + b.y) / 2 + (b.x - a.x) * rise,
	};
	const radius = (chord * (1 + a.bulge * a.bulge)) / (4 * Math.abs(a.bulge));
	const square = (radius - (y - centre.y)) * (radius + (y - centre.y));
	if (square < 0) return [];
	const root = Math.sqrt(square);
	return [centre.x - root, centre.x + root].filter((x) => {
		// On the arc's side of its chord: to the right of it where the arc turns left.
		const side = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
		return side * Math.sign(a.bulge) <= 1e-9 * chord;
	});
}

/** As `crossingsAtHeight`, for a line of constant x: rising y. */
export function crossingsAtPlace(paths: readonly Path[], x: number): number[] {
	const turned = paths.map(
		({ points, closed }): Path => ({
			closed,
			points: points.map((p) => ({ x: p.y, y: p.x, bulge: p.bulge === 0 ? 0 : -p.bulge })),
		}),
	);
	return crossingsAtHeight(turned, x);
}

function once(values: readonly number[]): number[] {
	return [...values].sort((a, b) => a - b).filter((v, i, all) => i === 0 || v - all[i - 1]! > 1e-9);
}

function nearest(values: readonly number[], wanted: number): number {
	const [first = Number.NaN, ...rest] = values;
	return rest.reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a), first);
}

/** A straight slot: a scored line, or a rectangle that is cut. */
export function slotOf(path: Path) {
	const { points } = path;
	if (!path.closed) {
		const [a, b] = [points[0]!, points.at(-1)!];
		return { ends: [a, b] as const, length: gap(a, b), width: 0 };
	}
	const [p, q, r, s] = points as [Vertex, Vertex, Vertex, Vertex];
	const middle = (a: Point, b: Point) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
	const [one, two] = [middle(p, s), middle(q, r)];
	return { ends: [one, two] as const, length: gap(one, two), width: gap(p, s) };
}

/** The x at which the middle line of a straight slot has this y. */
export function slotAtHeight(path: Path, y: number): number {
	const [a, b] = slotOf(path).ends;
	return a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
}

/** What a claim promises, measured on the part; NaN where the feature is not found. */
export function measured(part: Part, claim: SizeClaim): number {
	const own = pathsOf(part, claim.feature);
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

function notchAt(part: Part, claim: SizeClaim): MeasuredNotch | undefined {
	const [open] = claim.at;
	return notchesOf(outlineOf(part)).find(
		({ edge, flanks: [left, right] }) =>
			Math.abs(edge - open!.y) < 1e-9 && left.x < claim.at[1]!.x && right.x > claim.at[1]!.x,
	);
}

function position(part: Part, claim: SizeClaim, own: readonly Path[]): number {
	const [datum, at] = claim.at as [Point, Point];
	if (claim.axis === "line") {
		const [a, b] = slotOf(own[0]!).ends;
		const [dx, dy] = [at.x - datum.x, at.y - datum.y];
		const t =
			((a.x - datum.x) * (b.y - a.y) - (a.y - datum.y) * (b.x - a.x)) /
			(dx * (b.y - a.y) - dy * (b.x - a.x));
		return t * Math.hypot(dx, dy);
	}
	if (claim.axis === "y") return nearest(crossingsAtPlace(own, at.x), at.y) - datum.y;
	const slot = own.find((p) => p.points.length === 4 || (own.length === 1 && !p.closed));
	if (slot) return slotAtHeight(slot, at.y) - datum.x;
	if (own.length > 0) return nearest(crossingsAtHeight(own, at.y), at.x) - datum.x;
	const notch = notchAt(part, claim);
	if (notch) return notch.centre - datum.x;
	return nearest(crossingsAtHeight([outlineOf(part)], at.y), at.x) - datum.x;
}

/** Between the two places of the outline that a claim's ends name. */
function span(part: Part, { axis, at }: SizeClaim): number {
	const [a, b] = at as [Point, Point];
	const outline = [outlineOf(part)];
	const place = (p: Point) =>
		axis === "x"
			? nearest(crossingsAtHeight(outline, p.y), p.x)
			: nearest(crossingsAtPlace(outline, p.x), p.y);
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
