import {
	type Extents,
	extents,
	grown,
	type Path,
	type Point,
	SegmentGrid,
	segments,
} from "../geometry/index.js";
import { samplePoints, thinned } from "./sample-points.js";

/** Points that should lie on certain paths of a drawing, and how near. */
export interface Expected {
	readonly points: readonly Point[];
	readonly drawn: readonly { readonly path: Path; readonly box: Extents }[];
	readonly within: number;
}

/** Points of some promised paths, at most so many, expected on the paths of a drawing. */
export function expected(
	promised: readonly Path[],
	paths: readonly Path[],
	within: number,
	most: number,
): Expected {
	const drawn = paths.map((path) => ({ path, box: grown(extents(path), within) }));
	return { points: thinned(samplePoints(promised), most), drawn, within };
}

/** The share of the points, 0 to 1, that lie where they are expected once they are moved. */
export function fitShare({ points, drawn, within }: Expected, move: (p: Point) => Point): number {
	const places = points.map(move);
	const cells = new Set(places.map(({ x, y }) => cellKey(column(x), column(y))));
	const near = drawn.filter(({ box }) => touches(box, cells)).flatMap(({ path }) => segments(path));
	if (near.length === 0 || points.length === 0) return 0;
	const grid = new SegmentGrid(near, within);
	const met = places.filter((p) => grid.clearance(p, within) === null);
	return met.length / points.length;
}

/** Side of the squares by which the paths beside some points are chosen, mm: a letter or two. */
const CELL = 4;

function column(x: number): number {
	return Math.floor(x / CELL);
}

function cellKey(x: number, y: number): string {
	return `${x} ${y}`;
}

function touches({ minX, minY, maxX, maxY }: Extents, cells: ReadonlySet<string>): boolean {
	const [left, right] = [column(minX), column(maxX)];
	const [low, high] = [column(minY), column(maxY)];
	if ((right - left + 1) * (high - low + 1) > cells.size) return true;
	for (let x = left; x <= right; x++) {
		for (let y = low; y <= high; y++) if (cells.has(cellKey(x, y))) return true;
	}
	return false;
}
