import type { SizeClaim } from "../../drawing/index.js";
import { cutSize, scoredSize } from "../size.js";
import type { Bench } from "../tool.js";
import type { Rail } from "./rails.js";
import { centreMarks, edgePoints } from "./shape.js";

const EDGE = "working edge";

/** Promises of a rail: its edge over the foot, its width, and its centre line. */
export function railClaims(bench: Bench, rail: Rail): SizeClaim[] {
	const { half, crown, side } = rail;
	const low = side / 2;
	return [
		...edgeClaims(bench, rail),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "rail",
			datum: "foot",
			axis: "y",
			at: [
				{ x: 0, y: 0 },
				{ x: 0, y: crown },
			],
			nominal: crown,
		}),
		cutSize(bench, {
			id: "width",
			kind: "length",
			feature: "rail",
			datum: "left side",
			axis: "x",
			at: [
				{ x: -half, y: low },
				{ x: half, y: low },
			],
			nominal: 2 * half,
		}),
		...centreMarks(rail).map(({ name, from, to }) =>
			scoredSize(bench, {
				id: `centre-line-${name}`,
				kind: "position",
				feature: `${name} centre mark`,
				datum: "left side",
				axis: "x",
				at: [
					{ x: -half, y: (from + to) / 2 },
					{ x: 0, y: (from + to) / 2 },
				],
				nominal: half,
			}),
		),
	];
}

function edgeClaims(bench: Bench, rail: Rail): SizeClaim[] {
	const [start, middle, end] = edgePoints(rail);
	const { radius, crown, side } = rail;
	if (radius === null) {
		return [
			cutSize(bench, {
				id: "straightness",
				kind: "straightness",
				feature: EDGE,
				datum: "the line through its ends",
				axis: "line",
				at: [end, start],
				nominal: 0,
			}),
		];
	}
	const at = [start, middle, end];
	return [
		cutSize(bench, {
			id: "radius",
			kind: "radius",
			feature: EDGE,
			datum: EDGE,
			axis: "line",
			at,
			nominal: radius,
		}),
		cutSize(bench, {
			id: "sagitta",
			kind: "sagitta",
			feature: EDGE,
			datum: "its chord",
			axis: "y",
			at,
			nominal: crown - side,
		}),
	];
}
