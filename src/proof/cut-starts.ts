import {
	distanceTo,
	type Extents,
	extents,
	extentsOfPoints,
	grown,
	moved,
	type Path,
	type Point,
	pointAt,
	type Segment,
	segmentExtents,
	segmentLength,
	segments,
	undone,
} from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { found } from "./found.js";
import { type LaidStroke, partName } from "./laid-strokes.js";
import type { PromisedFile } from "./types.js";

/** A start leaves a mark: so far from a working edge it does no harm, mm (common practice, no source). */
const OFF_WORKING_EDGE = 3;
/** What a start may lack of that, or of the best that its contour has, mm. */
const SLACK = 0.01;
/** Between places looked at along a contour, mm. */
const STEP = 0.5;
/** Most places looked at along a segment. */
const LOOKS = 64;

/** Closed cuts that begin nearer to a working edge than they need to, one finding for each part. */
export function startFaults(laid: readonly LaidStroke[], promised: PromisedFile): Problem[] {
	return promised.placed.flatMap(({ part }, i) => {
		if (part.nominal || part.working.length === 0) return [];
		const edges = part.working
			.flatMap(segments)
			.map((edge) => ({ edge, box: segmentExtents(edge) }));
		const near = laid
			.filter((s) => s.part === i && s.operation === "cut" && s.path.closed)
			.flatMap((stroke) => {
				const clear = nearStart(onPart(stroke.path, promised, i), edges);
				return clear === null ? [] : [{ stroke, clear }];
			});
		if (near.length === 0) return [];
		const { stroke, clear } = near.reduce((a, b) => (b.clear < a.clear ? b : a));
		const { x, y } = stroke.path.points[0]!;
		const facts = { part: partName(promised, stroke), count: near.length, clear, x, y };
		return [found("start-on-working-edge", "warning", { ...facts, least: OFF_WORKING_EDGE })];
	});
}

/** A path of a file in the own frame of one of its parts. */
function onPart(path: Path, { placed, stretch }: PromisedFile, i: number): Path {
	const points = path.points.map((v) => ({ ...v, x: v.x * stretch.x, y: v.y * stretch.y }));
	return moved({ closed: path.closed, points }, undone(placed[i]!.move));
}

interface Edge {
	readonly edge: Segment;
	readonly box: Extents;
}

/** How far a contour's start is from the working edges if it has a better place; else null. */
function nearStart(path: Path, edges: readonly Edge[]): number | null {
	const start = path.points[0]!;
	const clear = clearance(start, within(edges, extentsOfPoints([start])));
	if (clear >= OFF_WORKING_EDGE - SLACK) return null;
	const near = within(edges, extents(path));
	for (const segment of segments(path)) {
		const count = Math.min(LOOKS, Math.ceil(segmentLength(segment) / STEP) + 1);
		for (let k = 0; k < count; k++) {
			if (clearance(pointAt(segment, k / count), near) > clear + SLACK) return clear;
		}
	}
	return null;
}

/** The working edges that come near a box. */
function within(edges: readonly Edge[], around: Extents): readonly Segment[] {
	const { minX, minY, maxX, maxY } = grown(around, OFF_WORKING_EDGE);
	return edges
		.filter(
			({ box }) => box.minX <= maxX && box.maxX >= minX && box.minY <= maxY && box.maxY >= minY,
		)
		.map(({ edge }) => edge);
}

function clearance(p: Point, edges: readonly Segment[]): number {
	return edges.reduce((least, s) => Math.min(least, distanceTo(s, p)), Number.POSITIVE_INFINITY);
}
