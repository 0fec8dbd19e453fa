import type { SizeClaim } from "../../drawing/index.js";
import { edgeLength, plateSize } from "../edged-plate/claims.js";
import { endsOf, type Plate } from "../edged-plate/plate.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";

/** Promises of every edge, and of the plate around them. */
export function plateClaims(bench: Bench, plate: Plate): SizeClaim[] {
	const edges = plate.edges.flatMap((edge) => {
		const feature = `edge ${edge.number}`;
		const straight = cutSize(bench, {
			id: `edge-${edge.number}-straight`,
			kind: "straightness",
			feature,
			datum: feature,
			axis: "line",
			at: endsOf(plate, edge),
			nominal: 0,
		});
		return [edgeLength(bench, plate, edge, "edge"), straight];
	});
	return [...edges, ...plateSize(bench, plate, 0)];
}
