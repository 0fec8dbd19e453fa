import type { Operation } from "../drawing/index.js";
import {
	distanceTo,
	extents,
	fractionOfAngle,
	type Path,
	type Point,
	pathLength,
	pointAt,
	type Segment,
	segmentLength,
} from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { found } from "./found.js";
import { type LaidStroke, partName } from "./laid-strokes.js";
import { ON_EACH_OTHER, type PathWeb, pairKey } from "./path-web.js";
import type { PromisedFile } from "./types.js";

/** Shorter overlaps are joints, mm. */
const LEAST = 0.1;

/** Most pairs that are told one by one. */
const MOST_TOLD = 20;

/** Two strokes that run along each other. */
export interface Doubled {
	readonly first: number;
	readonly second: number;
	/** How far in all, mm. */
	readonly length: number;
	/** A place where they do. */
	readonly at: Point;
}

/**
 * Pairs of which one at least is a cut and that lie on each other, or a cut that does so itself, by
 * `pairKey`. Scored lines may share a stretch: the cross of a marker lies on the centre line.
 */
export function doubledPairs({ segments, owner, near }: PathWeb): Map<string, Doubled> {
	const pairs = new Map<string, Doubled>();
	for (const [i, j] of near) {
		const shared = overlap(segments[i]!, segments[j]!);
		if (!shared) continue;
		const [first, second] = [owner[i]!, owner[j]!];
		const key = pairKey(first, second);
		const known = pairs.get(key);
		const length = shared.length + (known?.length ?? 0);
		pairs.set(key, { first, second, length, at: known?.at ?? shared.at });
	}
	return pairs;
}

/** The stretch of one segment along which another lies on it; null if it is short. */
function overlap(a: Segment, b: Segment): { length: number; at: Point } | null {
	const us = [b.start, b.end].flatMap((p) =>
		distanceTo(a, p) < ON_EACH_OTHER ? [fractionAt(a, p)] : [],
	);
	if (distanceTo(b, a.start) < ON_EACH_OTHER) us.push(0);
	if (distanceTo(b, a.end) < ON_EACH_OTHER) us.push(1);
	if (us.length < 2) return null;
	const [low, high] = [Math.min(...us), Math.max(...us)];
	const length = (high - low) * segmentLength(a);
	const at = pointAt(a, (low + high) / 2);
	// Lines and arcs that share both ends may part between them.
	return length > LEAST && distanceTo(b, at) < ON_EACH_OTHER ? { length, at } : null;
}

/** Where a point next to a segment stands along it, 0 to 1. */
function fractionAt(s: Segment, p: Point): number {
	if (s.kind === "arc") {
		const angle = Math.atan2(p.y - s.centre.y, p.x - s.centre.x);
		return fractionOfAngle(s, angle, ON_EACH_OTHER / s.radius) ?? 0;
	}
	const [dx, dy] = [s.end.x - s.start.x, s.end.y - s.start.y];
	const along = ((p.x - s.start.x) * dx + (p.y - s.start.y) * dy) / (dx * dx + dy * dy);
	return Math.min(1, Math.max(0, along));
}

/** One finding for each pair of cuts, and one for what is scored or engraved twice. */
export function doubledFaults(
	laid: readonly LaidStroke[],
	web: PathWeb,
	pairs: ReadonlyMap<string, Doubled>,
	promised: PromisedFile,
): Problem[] {
	const lying = [...pairs.values()].slice(0, MOST_TOLD).map(({ first, length, at: { x, y } }) => {
		const stroke = web.strokes[first]!;
		const facts = { part: partName(promised, stroke), operation: "cut", count: 1 };
		return found("doubled", "error", { ...facts, length, x, y });
	});
	return [
		...lying,
		...(["score", "engrave"] as const).flatMap((o) => drawnTwice(o, laid, promised)),
	];
}

function drawnTwice(
	operation: Operation,
	laid: readonly LaidStroke[],
	promised: PromisedFile,
): Problem[] {
	const seen = new Set<string>();
	const twice = laid.filter((stroke) => {
		if (stroke.operation !== operation) return false;
		const key = shapeKey(stroke.path);
		if (seen.has(key)) return true;
		seen.add(key);
		return false;
	});
	const [first] = twice;
	if (!first) return [];
	const { x, y } = first.path.points[0]!;
	const facts = { part: partName(promised, first), operation, count: twice.length };
	return [found("doubled", "error", { ...facts, length: pathLength(first.path), x, y })];
}

/** The same for paths of the same corners and box, whichever way they run and wherever they begin. */
function shapeKey(path: Path): string {
	const near = (n: number) => Math.round(n / ON_EACH_OTHER);
	const { minX, minY, maxX, maxY } = extents(path);
	const corners = path.points.map(({ x, y }) => `${near(x)} ${near(y)}`).sort();
	return [near(minX), near(minY), near(maxX), near(maxY), ...corners].join(",");
}
