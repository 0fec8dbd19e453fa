import type { Path, Point, Vertex } from "../../src/geometry/index.js";

/*
 * Paths measured from their points and bulges alone, without the project's own geometry.
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

/** A piece of a path: from a vertex to the next point. */
export interface Piece {
	readonly a: Vertex;
	readonly b: Point;
}

/** The pieces of a path in order. */
export function pieces({ points, closed }: Path): Piece[] {
	return points
		.slice(0, closed ? points.length : -1)
		.map((a, i) => ({ a, b: points[(i + 1) % points.length]! }));
}

/** Distance of two points, mm. */
export function gap(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
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
export function quarter({ a, b }: Piece): number | null {
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

/** The value nearest to a wanted one; NaN of none. */
export function nearest(values: readonly number[], wanted: number): number {
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
