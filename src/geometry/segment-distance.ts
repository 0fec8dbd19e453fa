import { meetings } from "./meetings.js";
import type { Point } from "./path.js";
import { distanceTo, fractionOfAngle, pointAt, type Segment } from "./segment.js";

/**
 * Distance between two segments, mm: 0 where they meet.
 *
 * @example the lines from (0, 0) to (10, 0) and from (0, 3) to (10, 4) are 3 apart
 */
export function segmentDistance(a: Segment, b: Segment): number {
	if (meetings(a, b).length > 0) return 0;
	return Math.min(
		...[a.start, a.end, ...facing(a, b)].map((p) => distanceTo(b, p)),
		...[b.start, b.end, ...facing(b, a)].map((p) => distanceTo(a, p)),
	);
}

/** The points of an arc where its normal passes another arc's centre or is square to a line. */
function facing(arc: Segment, other: Segment): Point[] {
	if (arc.kind === "line") return [];
	const { centre } = arc;
	const toward =
		other.kind === "arc"
			? Math.atan2(other.centre.y - centre.y, other.centre.x - centre.x)
			: Math.atan2(other.end.x - other.start.x, other.start.y - other.end.y);
	return [toward, toward + Math.PI].flatMap((angle) => {
		const fraction = fractionOfAngle(arc, angle);
		return fraction === null ? [] : [pointAt(arc, fraction)];
	});
}
