import type { SizeClaim } from "../../drawing/index.js";
import { cutSize, scoredSize } from "../size.js";
import type { Bench } from "../tool.js";
import type { Strip } from "./lay.js";

/** Promises of every string's line, of the centre line and of the strip around them. */
export function layoutClaims(bench: Bench, strip: Strip): SizeClaim[] {
	const { datum, strings, centre, left, right, height, edge } = strip;
	const onStrip = { datum: datum.name, kind: "position", axis: "x" } as const;
	const middle = { x: (left + right) / 2, y: height / 2 };
	return [
		...strings.map(({ n, distance, at }) =>
			scoredSize(bench, {
				...onStrip,
				id: `string-${n}`,
				feature: `string ${n}`,
				at: [datum.at, at],
				nominal: distance,
			}),
		),
		scoredSize(bench, {
			...onStrip,
			id: "centre-line",
			feature: "centre line",
			at: [datum.at, centre.at],
			nominal: Math.abs(datum.at.x),
		}),
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "strip",
			datum: "left end",
			axis: "x",
			at: [
				{ x: left, y: middle.y },
				{ x: right, y: middle.y },
			],
			nominal: right - left,
		}),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "strip",
			datum: "lower edge",
			axis: "y",
			at: [
				{ x: middle.x, y: 0 },
				{ x: middle.x, y: height },
			],
			nominal: height,
		}),
		cutSize(bench, {
			id: "working-edge",
			kind: "straightness",
			feature: "working edge",
			datum: "working edge",
			axis: "line",
			at: edge.points.map(({ x, y }) => ({ x, y })),
			nominal: 0,
		}),
	];
}
