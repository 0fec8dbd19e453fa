import type { SizeClaim } from "../../drawing/index.js";
import { movedPoint } from "../../geometry/index.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import { panelOf } from "./labels.js";
import type { IndexEdge, IndexNotch } from "./lay.js";
import type { IndexingSettings } from "./settings.js";

/** Which edge a claim speaks of: "" for the first, "second " for the other. */
export type EdgeName = "" | "second ";

/** Promises of an edge's notches, each flank from the nut's line. */
export function edgeClaims(
	bench: Bench,
	edge: IndexEdge,
	s: IndexingSettings,
	name: EdgeName,
	edges: number,
): SizeClaim[] {
	const on = (x: number, y: number) => movedPoint({ x, y }, edge.move);
	const feature = `${name}lower edge`;
	const straight = cutSize(bench, {
		id: name === "" ? "edge" : "second-edge",
		kind: "straightness",
		feature,
		datum: feature,
		axis: "line",
		at: [on(edge.left + CORNER_RADIUS, 0), on(edge.right - CORNER_RADIUS, 0)],
		nominal: 0,
	});
	const { low, high } = panelOf(s, edges);
	const nut = on(0, (low + high) / 2);
	return [
		...edge.notches.flatMap((notch) => notchClaims(bench, notch, s, name, { on, nut })),
		straight,
	];
}

function notchClaims(
	bench: Bench,
	{ fret, flank, to }: IndexNotch,
	s: IndexingSettings,
	name: EdgeName,
	{ on, nut }: { on: (x: number, y: number) => SizeClaim["at"][0]; nut: SizeClaim["at"][0] },
): SizeClaim[] {
	const depth = s["notch-depth"];
	const feature = `${name}notch ${fret}`;
	const id = `${name === "" ? "" : "second-"}notch-${fret}`;
	const middle = (flank + to) / 2;
	return [
		cutSize(bench, {
			id: `${id}-flank`,
			kind: "position",
			feature: `${name}flank ${fret}`,
			datum: `${name}theoretical nut`,
			axis: "x",
			at: [nut, on(flank, depth / 2)],
			nominal: flank,
		}),
		cutSize(bench, {
			id: `${id}-width`,
			kind: "width",
			feature,
			datum: feature,
			axis: "x",
			at: [on(flank, depth / 2), on(to, depth / 2)],
			nominal: to - flank,
			series: `${name}notch width`,
		}),
		cutSize(bench, {
			id: `${id}-depth`,
			kind: "depth",
			feature,
			datum: `${name}lower edge`,
			axis: "y",
			at: [on(middle, 0), on(middle, depth)],
			nominal: depth,
			series: `${name}notch depth`,
		}),
	];
}

/** From the strip's end to where its height is measured, mm. */
const HEIGHT_IN = 3;

/** Promises of the strip as a whole. */
export function stripClaims(bench: Bench, edge: IndexEdge, s: IndexingSettings): SizeClaim[] {
	const { left, right } = edge;
	const height = s["strip-height"];
	const [x, y] = [right - HEIGHT_IN, height / 2];
	const common = { kind: "length", feature: "strip" } as const;
	return [
		cutSize(bench, {
			...common,
			id: "length",
			datum: "nut end",
			axis: "x",
			at: [
				{ x: left, y },
				{ x: right, y },
			],
			nominal: right - left,
		}),
		cutSize(bench, {
			...common,
			id: "height",
			datum: "lower edge",
			axis: "y",
			at: [
				{ x, y: 0 },
				{ x, y: height },
			],
			nominal: height,
		}),
	];
}
