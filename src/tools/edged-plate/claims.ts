import type { SizeClaim } from "../../drawing/index.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import { endsOf, type PlacedEdge, type Plate, reachOf } from "./plate.js";

/** From an edge's line to where its length is measured, mm. */
const UP = 1;

/**
 * The promise of an edge's length.
 *
 * @param name - "edge", which its number follows
 */
export function edgeLength(bench: Bench, plate: Plate, edge: PlacedEdge, name: string): SizeClaim {
	const feature = `${name} ${edge.number}`;
	return cutSize(bench, {
		id: `${name}-${edge.number}-length`,
		kind: "length",
		feature,
		datum: feature,
		axis: edge.quarters % 2 === 0 ? "x" : "y",
		at: endsOf(plate, edge, UP).sort((a, b) => a.x + a.y - b.x - b.y),
		nominal: edge.length,
	});
}

/**
 * Promises of the plate's own size, over its edges.
 *
 * @param beside - from an edge's middle to where it is measured, mm
 */
export function plateSize(bench: Bench, plate: Plate, beside: number): SizeClaim[] {
	return [overall(bench, plate, "x", beside), overall(bench, plate, "y", beside)];
}

function overall(bench: Bench, plate: Plate, axis: "x" | "y", beside: number): SizeClaim {
	const side = (quarters: number) => {
		const edge = plate.edges.find((e) => e.quarters === quarters);
		return edge ? reachOf(plate, edge) : plate.half[axis];
	};
	const [from, to] = axis === "x" ? [-side(3), side(1)] : [-side(0), side(2)];
	const on = (v: number) => (axis === "x" ? { x: v, y: beside } : { x: beside, y: v });
	return cutSize(bench, {
		id: axis === "x" ? "plate-width" : "plate-height",
		kind: "length",
		feature: "plate",
		datum: "plate",
		axis,
		at: [on(from), on(to)],
		nominal: to - from,
	});
}
