import type { Point } from "../geometry/index.js";

/** How far from its claimed place a feature is looked for, mm. */
export const WINDOW = 1;

/** Distance of two points, mm. */
export function gap(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

/** A vector from one point to another. */
export function minus(a: Point, b: Point): Point {
	return { x: a.x - b.x, y: a.y - b.y };
}

export function dot(a: Point, b: Point): number {
	return a.x * b.x + a.y * b.y;
}

/** Above 0 where b points to the left of a. */
export function cross(a: Point, b: Point): number {
	return a.x * b.y - a.y * b.x;
}

/** A point so far along a direction. */
export function along(p: Point, direction: Point, by: number): Point {
	return { x: p.x + direction.x * by, y: p.y + direction.y * by };
}

/** Unit vector from a to b; not a number where both are one point. */
export function directionOf(a: Point, b: Point): Point {
	const size = gap(a, b);
	return { x: (b.x - a.x) / size, y: (b.y - a.y) / size };
}

/** Along which direction a claim is measured. */
export function axisOf(axis: "x" | "y" | "line", a: Point, b: Point): Point {
	if (axis === "x") return { x: 1, y: 0 };
	return axis === "y" ? { x: 0, y: 1 } : directionOf(a, b);
}
