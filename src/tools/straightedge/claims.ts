import type { SizeClaim } from "../../drawing/index.js";
import { type Move, movedPoint, type Point } from "../../geometry/index.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import { floorDepth, hasPockets } from "./cutter.js";
import type { Notch } from "./edge.js";
import type { Laid } from "./lay.js";
import { type Edge, GLUE_CHAMFER, landStart } from "./outline.js";

/** Which edge a claim speaks of: "" for the first, "second " for the other. */
export type EdgeName = "" | "second ";

/** Promises of one edge, carried onto the bar by `move`. */
export function edgeClaims(bench: Bench, laid: Laid, move: Move, edgeName: EdgeName): SizeClaim[] {
	const { cut, edge } = laid;
	const on = (x: number, y: number) => movedPoint({ x, y }, move);
	const prefix = edgeName.trim() === "" ? "" : "second-";
	const nut = edgeName === "" ? "theoretical nut" : "theoretical nut of the second edge";
	const workingEdge = `${edgeName}working edge`;
	const claims = cut.notches
		.filter(({ fret }) => fret > 0 || !edge.zeroInArch)
		.flatMap((notch) => notchClaims(bench, notch, edge, on, { edgeName, prefix, nut }));
	claims.push(
		cutSize(bench, {
			id: `${prefix}working-edge`,
			kind: "straightness",
			feature: workingEdge,
			datum: workingEdge,
			axis: "line",
			at: [on(landStart(edge), 0), on(edge.right - CORNER_RADIUS, 0)],
			nominal: 0,
		}),
	);
	if (edge.nutEnd === "cleared") {
		claims.push(
			cutSize(bench, {
				id: `${prefix}arch-end`,
				kind: "position",
				feature: `${edgeName}arch end`,
				datum: nut,
				axis: "x",
				at: [on(0, 0), on(edge.archEnd, (edge.archDepth - edge.archRound) / 2)],
				nominal: edge.archEnd,
			}),
		);
	} else if (edge.left !== 0) {
		claims.push(
			cutSize(bench, {
				id: `${prefix}nut-face`,
				kind: "position",
				feature: "actual nut face",
				datum: nut,
				axis: "x",
				at: [on(0, 0), on(edge.left, 2 * GLUE_CHAMFER)],
				nominal: edge.left,
			}),
		);
	}
	return claims;
}

function notchClaims(
	bench: Bench,
	notch: Notch,
	edge: Edge,
	on: (x: number, y: number) => Point,
	names: { readonly edgeName: EdgeName; readonly prefix: string; readonly nut: string },
): SizeClaim[] {
	const { fret, centre, width } = notch;
	const { depth, relief } = edge;
	const floor = floorDepth(edge, notch);
	const feature = `${names.edgeName}notch ${fret}`;
	const id = `${names.prefix}notch-${fret}`;
	const [left, right] = [centre - width / 2, centre + width / 2];
	return [
		cutSize(bench, {
			id: `${id}-centre`,
			kind: "position",
			feature,
			datum: names.nut,
			axis: "x",
			at: [on(0, 0), on(centre, 0)],
			nominal: centre,
		}),
		cutSize(bench, {
			id: `${id}-width`,
			kind: "width",
			feature,
			datum: feature,
			axis: "x",
			at: [on(left, depth / 2), on(right, depth / 2)],
			nominal: width,
			series: `${names.edgeName}notch width`,
		}),
		cutSize(bench, {
			id: `${id}-depth`,
			kind: "depth",
			feature,
			datum: `${names.edgeName}working edge`,
			axis: "y",
			at: [on(centre, 0), on(centre, floor)],
			nominal: floor,
			series: `${names.edgeName}notch depth`,
		}),
		...(hasPockets(width, relief)
			? [
					cutSize(bench, {
						id: `${id}-relief-depth`,
						kind: "depth",
						feature,
						datum: `${names.edgeName}working edge`,
						axis: "y",
						at: [on(left + relief, 0), on(left + relief, depth + relief)],
						nominal: depth + relief,
						series: `${names.edgeName}relief depth`,
					}),
				]
			: []),
	];
}

/** From a bar's end to where its height is measured: past the rounded corner, before any notch, mm. */
const HEIGHT_IN = 2;

/** Promises of the bar as a whole. */
export function barClaims(
	bench: Bench,
	edge: Edge,
	second: Edge | null,
	height: number,
): SizeClaim[] {
	const right = edge.right - HEIGHT_IN;
	const foot = edge.nutEnd === "cleared" ? edge.archDepth : 0;
	return [
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "bar",
			datum: "nut end",
			axis: "x",
			at: [
				{ x: edge.left, y: (height + foot) / 2 },
				{ x: edge.right, y: height / 2 },
			],
			nominal: edge.right - edge.left,
		}),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "bar",
			datum: "working edge",
			axis: "y",
			at: [
				{ x: right, y: 0 },
				{ x: second ? edge.left + HEIGHT_IN : right, y: height },
			],
			nominal: height,
		}),
	];
}
