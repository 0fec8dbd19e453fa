import type { SizeClaim } from "../../drawing/index.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import type { Shape } from "./shape.js";

/** Promises of the arc and of the plate around it. */
export function gaugeClaims(
	bench: Bench,
	radius: number,
	width: number,
	shape: Shape,
): SizeClaim[] {
	const { arc, sagitta, bottom, top } = shape;
	const edge = "working edge";
	const middle = (bottom + top) / 2;
	return [
		cutSize(bench, {
			id: "radius",
			kind: "radius",
			feature: edge,
			datum: edge,
			axis: "line",
			at: arc,
			nominal: radius,
		}),
		cutSize(bench, {
			id: "sagitta",
			kind: "sagitta",
			feature: edge,
			datum: "its chord",
			axis: "y",
			at: arc,
			nominal: sagitta,
		}),
		cutSize(bench, {
			id: "width",
			kind: "length",
			feature: "gauge",
			datum: "left side",
			axis: "x",
			at: [
				{ x: -width / 2, y: middle },
				{ x: width / 2, y: middle },
			],
			nominal: width,
		}),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "gauge",
			datum: "back",
			axis: "y",
			at: [bottom === 0 ? arc[2] : { x: 0, y: bottom }, { x: 0, y: top }],
			nominal: top - bottom,
		}),
	];
}
