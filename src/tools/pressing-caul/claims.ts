import type { SizeClaim } from "../../drawing/index.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { CaulSettings } from "./settings.js";
import { holeCentres, mountReach, type Shape } from "./shape.js";

/** Promises of arc, plate and mount. */
export function caulClaims(bench: Bench, shape: Shape, s: CaulSettings): SizeClaim[] {
	const { radius, width, height, arc } = shape;
	const edge = "working edge";
	const half = width / 2;
	const beside = (mountReach(s) + half) / 2;
	const size = (claim: Omit<SizeClaim, "operation" | "bench" | "file">) => cutSize(bench, claim);
	const across = (id: string, from: number, to: number, y: number, feature: string) => ({
		id,
		feature,
		axis: "x" as const,
		at: [
			{ x: from, y },
			{ x: to, y },
		],
		nominal: to - from,
	});
	// Drawn from the part outwards: what lies within must come before the whole.
	const arcOf = { feature: edge, datum: edge, at: arc };
	return [
		size({ ...arcOf, id: "radius", kind: "radius", axis: "line", nominal: radius }),
		size({
			...arcOf,
			id: "sagitta",
			kind: "sagitta",
			datum: "its chord",
			axis: "y",
			nominal: arc[1].y,
		}),
		size({
			id: "height",
			kind: "length",
			feature: "caul",
			datum: "back",
			axis: "y",
			at: [arc[2], { x: beside, y: height }],
			nominal: height,
		}),
		...mountClaims(bench, shape, s),
		size({
			...across("width", -half, half, height / 2, "caul"),
			kind: "length",
			datum: "left side",
		}),
	];
}

function mountClaims(bench: Bench, shape: Shape, s: CaulSettings): SizeClaim[] {
	const { width, height } = shape;
	const [half, depth] = [s["mount-size"] / 2, s["slot-depth"]];
	if (s.mount === "holes") {
		return holeCentres(shape, s).map(({ at, side }) =>
			cutSize(bench, {
				id: `mounting-hole-${side}`,
				kind: "diameter",
				feature: `mounting hole ${side}`,
				datum: `mounting hole ${side}`,
				axis: "line",
				at: [at],
				nominal: 2 * half,
				// One leader stands for both.
				...(side === "right" ? { series: "mounting hole right: diameter" } : {}),
			}),
		);
	}
	if (s.mount === "none") return [];
	const y = height - depth / 2;
	// Under the rounded corners of the back, over the floor of the slot.
	const beside = height - (depth + CORNER_RADIUS) / 2;
	const slot = { feature: "mounting slot", axis: "x" as const };
	return [
		cutSize(bench, {
			id: "shoulder",
			kind: "length",
			feature: "back beside the slot",
			datum: "left side",
			axis: "x",
			at: [
				{ x: -width / 2, y: beside },
				{ x: -half, y: beside },
			],
			nominal: width / 2 - half,
			// In the table alone: its figures are wider than it is on most boards.
			series: "back beside the slot: length",
		}),
		cutSize(bench, {
			...slot,
			id: "slot-width",
			kind: "width",
			datum: "mounting slot",
			at: [
				{ x: -half, y },
				{ x: half, y },
			],
			nominal: 2 * half,
		}),
		cutSize(bench, {
			...slot,
			id: "slot-depth",
			kind: "depth",
			datum: "back",
			axis: "y",
			at: [
				{ x: 0, y: height },
				{ x: 0, y: height - depth },
			],
			nominal: depth,
		}),
	];
}
