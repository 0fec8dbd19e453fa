import type { SizeClaim } from "../../drawing/index.js";
import { arcSagitta, bulgeOf, open, type Path, type Point, vertex } from "../../geometry/index.js";
import { outlineOf } from "../outline.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";

/** How far the handle's top lies under the end of the arc, mm: it must not meet the strings first. */
export const HANDLE_DROP = 1.5;

/** A gauge in its own frame: the arc's ends on y = 0, the head about x = 0, the handle to its right. */
export interface Shape {
	readonly radius: number;
	readonly width: number;
	readonly arc: readonly [Point, Point, Point];
	readonly bottom: number;
	/** Right end of the handle. */
	readonly end: number;
}

/** The shape of a gauge whose head is so wide and so high in its middle. */
export function shapeOf(radius: number, width: number, height: number, handle: number): Shape {
	const sagitta = arcSagitta(radius, width);
	const half = width / 2;
	return {
		radius,
		width,
		arc: [
			{ x: -half, y: 0 },
			{ x: 0, y: sagitta },
			{ x: half, y: 0 },
		],
		bottom: sagitta - height,
		end: half + handle,
	};
}

export function archOutline({ radius, width, arc, bottom, end }: Shape): Path {
	const round = CORNER_RADIUS;
	const [left, , right] = arc;
	return outlineOf([
		{ x: left.x, y: bottom, round },
		{ x: end, y: bottom, round },
		{ x: end, y: -HANDLE_DROP, round },
		{ x: right.x, y: -HANDLE_DROP },
		{ ...right, bulge: bulgeOf(radius, width) },
		left,
	]);
}

/** The working edge by itself, left to right. */
export function arcPath({ radius, width, arc: [left, , right] }: Shape): Path {
	return open(vertex(left.x, left.y, -bulgeOf(radius, width)), vertex(right.x, right.y));
}

/** Promises of the arc, the head and the whole. */
export function archClaims(bench: Bench, shape: Shape): SizeClaim[] {
	const { radius, width, arc, bottom, end } = shape;
	const [left, top, right] = arc;
	const edge = { feature: "working edge", datum: "working edge", at: arc };
	return [
		cutSize(bench, { ...edge, id: "radius", kind: "radius", axis: "line", nominal: radius }),
		cutSize(bench, {
			...edge,
			id: "sagitta",
			kind: "sagitta",
			datum: "its chord",
			axis: "y",
			nominal: top.y,
		}),
		cutSize(bench, {
			id: "head-width",
			kind: "length",
			feature: "head",
			datum: "left side",
			axis: "x",
			at: [
				{ x: left.x, y: -HANDLE_DROP / 2 },
				{ x: right.x, y: -HANDLE_DROP / 2 },
			],
			nominal: width,
		}),
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "gauge",
			datum: "left side",
			axis: "x",
			at: [
				{ x: left.x, y: (bottom - HANDLE_DROP) / 2 },
				{ x: end, y: (bottom - HANDLE_DROP) / 2 },
			],
			nominal: end - left.x,
		}),
		cutSize(bench, {
			id: "head-height",
			kind: "length",
			feature: "head",
			datum: "lower edge",
			axis: "y",
			at: [{ x: 0, y: bottom }, top],
			nominal: top.y - bottom,
		}),
		cutSize(bench, {
			id: "handle-height",
			kind: "length",
			feature: "handle",
			datum: "lower edge",
			axis: "y",
			at: [
				{ x: (right.x + end) / 2, y: bottom },
				{ x: (right.x + end) / 2, y: -HANDLE_DROP },
			],
			nominal: -HANDLE_DROP - bottom,
		}),
	];
}
