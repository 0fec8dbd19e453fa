import {
	distanceTo,
	extents,
	type Path,
	pathLength,
	pointAt,
	segments,
} from "../geometry/index.js";
import type { ReadStroke } from "./types.js";

/**
 * Whether two files hold the same strokes in the same order: as many of each operation, each
 * point of one on the path of the other and each as long as the other, within `near`. How a path
 * is cut into segments, where a closed one begins and which way an open one runs do not count.
 *
 * @param near - mm
 */
export function areSame(a: readonly ReadStroke[], b: readonly ReadStroke[], near: number): boolean {
	if (a.length !== b.length) return false;
	return a.every((stroke, i) => {
		const other = b[i]!;
		return stroke.operation === other.operation && isSamePath(stroke.path, other.path, near);
	});
}

/**
 * Whether strokes that are the same also begin at the same places; a full circle may begin
 * anywhere, since formats that know circles say nothing of it.
 */
export function beginAlike(
	a: readonly ReadStroke[],
	b: readonly ReadStroke[],
	near: number,
): boolean {
	return a.every(({ path }, i) => {
		const [from, other] = [path.points[0]!, b[i]!.path.points[0]!];
		const isRound = path.closed && path.points.every(({ bulge }) => bulge !== 0);
		return isRound || Math.hypot(from.x - other.x, from.y - other.y) <= near;
	});
}

function isSamePath(a: Path, b: Path, near: number): boolean {
	if (a.closed !== b.closed) return false;
	const [one, two] = [extents(a), extents(b)];
	const off = Math.max(
		Math.abs(one.minX - two.minX),
		Math.abs(one.minY - two.minY),
		Math.abs(one.maxX - two.maxX),
		Math.abs(one.maxY - two.maxY),
		Math.abs(pathLength(a) - pathLength(b)) / Math.max(1, a.points.length),
	);
	return off <= near && liesOn(a, b, near) && liesOn(b, a, near);
}

/** Whether every vertex of a path and the middle of every arc is on another. */
function liesOn(path: Path, other: Path, near: number): boolean {
	const all = segments(other);
	const middles = segments(path).flatMap((s) => (s.kind === "arc" ? [pointAt(s, 0.5)] : []));
	return [...path.points, ...middles].every((p) => all.some((s) => distanceTo(s, p) <= near));
}
