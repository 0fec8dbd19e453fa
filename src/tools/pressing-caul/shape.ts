import type { Mark } from "../../drawing/index.js";
import {
	arcSagitta,
	bulgeOf,
	circle,
	open,
	type Path,
	type Point,
	reversed,
	vertex,
} from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import type { CaulSettings } from "./settings.js";

/** A caul in its own frame: the arc's ends on y = 0, its back at y = height. */
export interface Shape {
	readonly radius: number;
	readonly width: number;
	readonly height: number;
	readonly arc: readonly [Point, Point, Point];
}

/** The shape of a caul; width and height leave a plate behind the arc. */
export function shapeOf(radius: number, width: number, height: number): Shape {
	const half = width / 2;
	const top = { x: 0, y: arcSagitta(radius, width) };
	return { radius, width, height, arc: [{ x: -half, y: 0 }, top, { x: half, y: 0 }] };
}

/** The working edge by itself, left to right. */
export function arcPath({ radius, width, arc: [left, , right] }: Shape): Path {
	return open(vertex(left.x, left.y, -bulgeOf(radius, width)), vertex(right.x, right.y));
}

/** The outline, with the mounting slot in its back if there is one. */
export function caulOutline({ radius, width, height, arc }: Shape, s: CaulSettings): Path {
	const round = CORNER_RADIUS;
	const [half, floor] = [s["mount-size"] / 2, height - s["slot-depth"]];
	const slot: Corner[] =
		s.mount === "slot"
			? [
					{ x: half, y: height },
					{ x: half, y: floor },
					{ x: -half, y: floor },
					{ x: -half, y: height },
				]
			: [];
	return outlineOf([
		{ x: width / 2, y: height, round },
		...slot,
		{ x: -width / 2, y: height, round },
		{ ...arc[0], bulge: -bulgeOf(radius, width) },
		arc[2],
	]);
}

/** Centres of the mounting holes, each with its name; none where there are none. */
export function holeCentres({ height }: Shape, s: CaulSettings): { at: Point; side: string }[] {
	if (s.mount !== "holes") return [];
	const y = height - mountDepth(s) + s["mount-size"] / 2;
	const x = s["hole-spacing"] / 2;
	return [
		{ at: { x: -x, y }, side: "left" },
		{ at: { x, y }, side: "right" },
	];
}

/** Plate behind a mounting hole, mm. */
const BEHIND_HOLE = 3;

/** How far the mount reaches down from the back, mm. */
export function mountDepth(s: CaulSettings): number {
	if (s.mount === "none") return 0;
	return s.mount === "slot" ? s["slot-depth"] : BEHIND_HOLE + s["mount-size"];
}

/** How far the mount reaches out from the middle, mm. */
export function mountReach(s: CaulSettings): number {
	if (s.mount === "none") return 0;
	return (s["mount-size"] + (s.mount === "holes" ? s["hole-spacing"] : 0)) / 2;
}

/** The mounting holes as they are cut. */
export function holeMarks(shape: Shape, s: CaulSettings): Mark[] {
	return holeCentres(shape, s).map(({ at, side }) => ({
		operation: "cut",
		path: reversed(circle(at, s["mount-size"] / 2)),
		feature: `mounting hole ${side}`,
	}));
}
