import { bulgeOf, line, open, type Path, type Point, vertex } from "../../geometry/index.js";
import { outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import type { Rail } from "./rails.js";

/** From the working edge's ends down to the centre line's upper mark, from the foot up to the lower one, mm. */
const MARK_OFF = 4;
/** Length of both marks, mm. */
const MARK = 6;
/** What a mark takes of a rail's height, mm. */
export const MARK_ROOM = MARK_OFF + MARK;

/** Start, middle and end of a rail's edge, right to left. */
export function edgePoints({ half, crown, side }: Rail): readonly [Point, Point, Point] {
	return [
		{ x: half, y: side },
		{ x: 0, y: crown },
		{ x: -half, y: side },
	];
}

function bulgeOfEdge({ radius, half }: Rail): number {
	return radius === null ? 0 : bulgeOf(radius, 2 * half);
}

/** The rail's contour: foot on the bench, the edge that the sled rides on above. */
export function railOutline(rail: Rail): Path {
	const [right, , left] = edgePoints(rail);
	const round = CORNER_RADIUS;
	return outlineOf([
		{ x: left.x, y: 0, round },
		{ x: right.x, y: 0, round },
		{ ...right, bulge: bulgeOfEdge(rail) },
		left,
	]);
}

/** The edge by itself. */
export function railEdge(rail: Rail): Path {
	const [right, , left] = edgePoints(rail);
	return open(vertex(right.x, right.y, bulgeOfEdge(rail)), vertex(left.x, left.y));
}

/** The foot between its rounded corners: the edge's height is counted from it. */
export function railFoot({ half }: Rail): Path {
	return line({ x: CORNER_RADIUS - half, y: 0 }, { x: half - CORNER_RADIUS, y: 0 });
}

/** A scored piece of the centre line. */
export interface CentreMark {
	readonly name: "upper" | "lower";
	readonly from: number;
	readonly to: number;
}

/** The centre line's marks under the edge and over the foot. */
export function centreMarks({ side }: Rail): CentreMark[] {
	return [
		{ name: "upper", from: side - MARK_ROOM, to: side - MARK_OFF },
		{ name: "lower", from: MARK_OFF, to: MARK_ROOM },
	];
}

export function markPath({ from, to }: CentreMark): Path {
	return line({ x: 0, y: from }, { x: 0, y: to });
}
