import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { edgeLength, plateSize } from "../edged-plate/claims.js";
import { onPlate, type PlacedEdge, type Plate } from "../edged-plate/plate.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import { arcOf, type Notch } from "./notch.js";

/** Promises of every notch and its feet, and of the plate around them. */
export function gaugeClaims(bench: Bench, plate: Plate<Notch>): SizeClaim[] {
	const { section, foot } = plate.edges[0]!;
	return [
		...plate.edges.flatMap((notch) => notchClaims(bench, plate, notch)),
		// Over the middle of a foot: there is nothing in the middle of a tongue.
		...plateSize(bench, plate, (section.width + foot) / 2),
	];
}

/** Points by their rising x or y. */
function rising(...points: Point[]): Point[] {
	return points.sort((a, b) => a.x + a.y - b.x - b.y);
}

/** What a claim of a notch adds to its name. */
type Own = Omit<SizeClaim, "id" | "feature" | "operation" | "bench" | "file">;

/** Section, place and feet of one notch. */
function notchClaims(bench: Bench, plate: Plate, notch: PlacedEdge<Notch>): SizeClaim[] {
	const { number, quarters, foot, section } = notch;
	const { width, height, radius, rise } = section;
	const feature = `notch ${number}`;
	const [along, up] = quarters % 2 === 0 ? (["x", "y"] as const) : (["y", "x"] as const);
	const on = (x: number, y = 0) => onPlate(plate, notch, { x, y });
	const arc = arcOf(plate, notch);
	const chord = rising(arc[0], arc[2]);
	const floor = [on(0), on(0, height)];
	const half = notch.length / 2;
	const place = [rising(on(-half), on(half))[0]!, on(0)];
	const tongue = `end of tongue ${number}`;
	const own: [string, Own][] = [
		["width", { kind: "width", datum: feature, axis: along, at: chord, nominal: width }],
		["depth", { kind: "depth", datum: "feet", axis: up, at: floor, nominal: height }],
		["radius", { kind: "radius", datum: feature, axis: "line", at: arc, nominal: radius }],
		["sagitta", { kind: "sagitta", datum: "its chord", axis: up, at: arc, nominal: rise }],
		["place", { kind: "position", datum: tongue, axis: along, at: place, nominal: half }],
	];
	return [
		...own.map(([id, claim]) => {
			const series = id === "place" ? "notch from its tongue's end" : `notch ${id}`;
			return cutSize(bench, { id: `notch-${number}-${id}`, feature, ...claim, series });
		}),
		footStraight(bench, number, "first", [on(-half), on(foot - half)]),
		footStraight(bench, number, "second", [on(half - foot), on(half)]),
		{ ...edgeLength(bench, plate, notch, "tongue"), series: "tongue length" },
	];
}

/** That a foot lies on the line of its tongue: both do, so that they are level. */
function footStraight(bench: Bench, number: number, which: string, at: readonly Point[]) {
	return cutSize(bench, {
		id: `tongue-${number}-${which}-foot`,
		kind: "straightness",
		feature: `${which} foot of tongue ${number}`,
		datum: "feet",
		axis: "line",
		at,
		nominal: 0,
		series: "feet straightness",
	});
}
