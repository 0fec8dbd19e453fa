import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import type { Crate, Dowels, Joints } from "./crate.js";
import { slotPlaces } from "./outline.js";

const EDGE = "working edge";

/** Promises of a rib: its edge, its height over the edge's middle, joints and holes. */
export function ribClaims(bench: Bench, crate: Crate): SizeClaim[] {
	const { width, sagitta, top, joints, dowels } = crate;
	const low = top - (joints?.depth ?? top / 2);
	return [
		...edgeClaims(bench, crate),
		sizeBetween(bench, "width", "x", "rib", "left side", [
			{ x: -width / 2, y: low / 2 },
			{ x: width / 2, y: low / 2 },
		]),
		sizeBetween(bench, "height-over-edge", "y", "rib", "middle of the working edge", [
			{ x: 0, y: sagitta },
			{ x: 0, y: top },
		]),
		...(joints
			? [-joints.at, joints.at].flatMap((x, i) =>
					slotClaims(bench, joints, {
						n: i + 1,
						x,
						mouth: top,
						datum: "middle of the rib",
						into: -1,
					}),
				)
			: []),
		...(dowels ? dowelClaims(bench, dowels) : []),
	];
}

function edgeClaims(bench: Bench, { radius, width, sagitta }: Crate): SizeClaim[] {
	const at: Point[] = [
		{ x: -width / 2, y: 0 },
		{ x: 0, y: sagitta },
		{ x: width / 2, y: 0 },
	];
	const of = (id: SizeClaim["kind"], axis: "y" | "line", datum: string, nominal: number) =>
		cutSize(bench, { id, kind: id, feature: EDGE, datum, axis, at, nominal });
	if (radius === null) return [straight(bench, [at[0]!, at[2]!])];
	return [of("radius", "line", EDGE, radius), of("sagitta", "y", "its chord", sagitta)];
}

function straight(bench: Bench, at: readonly [Point, Point]): SizeClaim {
	return cutSize(bench, {
		id: "straightness",
		kind: "straightness",
		feature: EDGE,
		datum: "the line through its ends",
		axis: "line",
		at,
		nominal: 0,
	});
}

function sizeBetween(
	bench: Bench,
	id: string,
	axis: "x" | "y",
	feature: string,
	datum: string,
	at: readonly [Point, Point],
): SizeClaim {
	const [a, b] = at;
	const nominal = axis === "x" ? b.x - a.x : b.y - a.y;
	return cutSize(bench, { id, kind: "length", feature, datum, axis, at, nominal });
}

interface SlotPlace {
	readonly n: number;
	readonly x: number;
	/** Height of the edge that it opens to, and the way into the plate. */
	readonly mouth: number;
	readonly into: 1 | -1;
	readonly datum: string;
}

function slotClaims(bench: Bench, { width, depth }: Joints, place: SlotPlace): SizeClaim[] {
	const { n, x, mouth, into, datum } = place;
	const feature = `slot ${n}`;
	const middle = mouth + (into * depth) / 2;
	return [
		cutSize(bench, {
			id: `slot-${n}-position`,
			kind: "position",
			feature,
			datum,
			axis: "x",
			at: [
				{ x: 0, y: mouth },
				{ x, y: mouth },
			],
			nominal: x,
		}),
		cutSize(bench, {
			id: `slot-${n}-width`,
			kind: "width",
			feature,
			datum: "its left flank",
			axis: "x",
			at: [
				{ x: x - width / 2, y: middle },
				{ x: x + width / 2, y: middle },
			],
			nominal: width,
			series: "slot width",
		}),
		cutSize(bench, {
			id: `slot-${n}-depth`,
			kind: "depth",
			feature,
			datum: into > 0 ? "lower edge" : "upper edge",
			axis: "y",
			at: [
				{ x, y: mouth },
				{ x, y: mouth + into * depth },
			],
			nominal: depth,
			series: "slot depth",
		}),
	];
}

function dowelClaims(bench: Bench, { x, y, diameter }: Dowels): SizeClaim[] {
	return [-x, x].map((at, i) =>
		cutSize(bench, {
			id: `dowel-hole-${i + 1}`,
			kind: "diameter",
			feature: `dowel hole ${i + 1}`,
			datum: `dowel hole ${i + 1}`,
			axis: "line",
			at: [{ x: at, y }],
			nominal: diameter,
			series: "dowel hole diameter",
		}),
	);
}

/** Promises of a rail: its slots from its left end, and the lower edge of a flat beam. */
export function railClaims(bench: Bench, crate: Crate, joints: Joints): SizeClaim[] {
	const { depth, height, length } = joints;
	const [first] = slotPlaces(crate, joints);
	const land = (first! - joints.width / 2) / 2;
	const over = (depth + height) / 2;
	return [
		sizeBetween(bench, "length", "x", "rail", "left end", [
			{ x: 0, y: over },
			{ x: length, y: over },
		]),
		sizeBetween(bench, "height", "y", "rail", "lower edge", [
			{ x: land, y: 0 },
			{ x: land, y: height },
		]),
		...(crate.radius === null
			? [
					straight(bench, [
						{ x: 0, y: 0 },
						{ x: length, y: 0 },
					]),
				]
			: []),
		...slotPlaces(crate, joints).flatMap((x, i) =>
			slotClaims(bench, joints, { n: i + 1, x, mouth: 0, datum: "left end", into: 1 }),
		),
	];
}
