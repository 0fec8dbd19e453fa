import { line, moved, movedPoint, type Path } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import type { IndexEdge } from "./lay.js";
import type { IndexingSettings } from "./settings.js";

/** An edge from its left end to its right end, both corners rounded. */
function edgeCorners({ notches, left, right, move }: IndexEdge, depth: number): Corner[] {
	const corners: Corner[] = [
		{ x: left, y: 0, round: CORNER_RADIUS },
		...notches.flatMap(({ flank, to }) => [
			{ x: flank, y: 0 },
			{ x: flank, y: depth },
			{ x: to, y: depth },
			{ x: to, y: 0 },
		]),
		{ x: right, y: 0, round: CORNER_RADIUS },
	];
	return corners.map((corner) => ({ ...corner, ...movedPoint(corner, move) }));
}

/** The strip's contour, counter-clockwise. */
export function stripOutline(edges: readonly IndexEdge[], s: IndexingSettings): Path {
	const [first] = edges;
	const lower = edges.flatMap((edge) => edgeCorners(edge, s["notch-depth"]));
	if (edges.length > 1) return outlineOf(lower);
	const y = s["strip-height"];
	const round = CORNER_RADIUS;
	return outlineOf([...lower, { x: first!.right, y, round }, { x: first!.left, y, round }]);
}

/** The flanks that the pin lies against. */
export function workingFlanks({ notches, move }: IndexEdge, depth: number): Path[] {
	return notches.map(({ flank: x }) => moved(line({ x, y: 0 }, { x, y: depth }), move));
}
