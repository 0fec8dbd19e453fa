import { Clipper, EndType, FillRule, type PathsD } from "clipper2-ts";
import type { Path } from "../../src/geometry/index.js";
import { inflated, polygonsOf } from "./cut-with-beam.js";

const DECIMALS = 6;
/** Waste around a part that the cutter comes from, mm. */
const AROUND = 40;

/**
 * What a round cutter of this diameter takes away around nominal contours without touching the
 * part: the waste made narrower all around by its radius, which its middle may reach, and wider
 * again by as much.
 */
export function milled(contours: readonly Path[], cutter: number): PathsD {
	const part = polygonsOf(contours);
	const all = part.flat();
	const [xs, ys] = [all.map((p) => p.x), all.map((p) => p.y)];
	const [x0, x1] = [Math.min(...xs) - AROUND, Math.max(...xs) + AROUND];
	const [y0, y1] = [Math.min(...ys) - AROUND, Math.max(...ys) + AROUND];
	const box = [
		{ x: x0, y: y0 },
		{ x: x1, y: y0 },
		{ x: x1, y: y1 },
		{ x: x0, y: y1 },
	];
	const waste = Clipper.differenceD([box], part, FillRule.NonZero, DECIMALS);
	return inflated(inflated(waste, -cutter / 2, EndType.Polygon), cutter / 2, EndType.Polygon);
}

/** Width of what is milled at a height, on both sides of a place. */
export function milledWidth(polygons: PathsD, x: number, y: number): number {
	const crossings = polygons.flatMap((polygon) =>
		polygon.flatMap((a, i) => {
			const b = polygon[(i + 1) % polygon.length]!;
			if (a.y > y === b.y > y) return [];
			return [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)];
		}),
	);
	const left = Math.max(...crossings.filter((c) => c <= x));
	const right = Math.min(...crossings.filter((c) => c > x));
	return right - left;
}
