import { arcSagitta, bulgeOf, open, type Path, type Point, vertex } from "../../geometry/index.js";
import { outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import type { Face } from "./settings.js";

/** A gauge's shape in its own frame: the arc's ends on y = 0, its top at y = sagitta. */
export interface Shape {
	readonly outline: Path;
	readonly arc: readonly [Point, Point, Point];
	readonly sagitta: number;
	readonly bottom: number;
	readonly top: number;
}

/** The shape of a gauge of this radius; width and height leave a plate behind the arc. */
export function shapeOf(face: Face, radius: number, width: number, height: number): Shape {
	const half = width / 2;
	const sagitta = arcSagitta(radius, width);
	const bulge = bulgeOf(radius, width);
	const left = { x: -half, y: 0 };
	const right = { x: half, y: 0 };
	const arc = [left, { x: 0, y: sagitta }, right] as const;
	const round = CORNER_RADIUS;
	if (face === "concave") {
		const outline = outlineOf([
			{ x: half, y: height, round },
			{ x: -half, y: height, round },
			{ ...left, bulge: -bulge },
			right,
		]);
		return { outline, arc, sagitta, bottom: 0, top: height };
	}
	const bottom = sagitta - height;
	const outline = outlineOf([
		{ x: -half, y: bottom, round },
		{ x: half, y: bottom, round },
		{ ...right, bulge },
		left,
	]);
	return { outline, arc, sagitta, bottom, top: sagitta };
}

/** The working edge by itself, left to right. */
export function arcPath({ arc: [left, , right], sagitta }: Shape): Path {
	const bulge = (-2 * sagitta) / (right.x - left.x);
	return open(vertex(left.x, left.y, bulge), vertex(right.x, right.y));
}
