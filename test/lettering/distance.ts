import { distanceTo, type Path, type Point, pointAt, segments } from "../../src/geometry/index.js";

/** Gives the distance from a point to the nearest of some paths. */
export function distanceToPaths(paths: readonly Path[]): (p: Point) => number {
	const all = paths.flatMap(segments);
	return (p) => all.reduce((least, s) => Math.min(least, distanceTo(s, p)), Infinity);
}

/** Gives the distance from a point to the nearest of some polylines. */
export function distanceToPolylines(lines: readonly (readonly Point[])[]): (p: Point) => number {
	return distanceToPaths(
		lines.map((line) => ({ points: line.map((q) => ({ ...q, bulge: 0 })), closed: false })),
	);
}

/** Points all along a path, `count` steps on every segment. */
export function pointsAlong(path: Path, count: number): Point[] {
	return segments(path).flatMap((s) =>
		Array.from({ length: count + 1 }, (_, i) => pointAt(s, i / count)),
	);
}
