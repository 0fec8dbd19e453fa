import { outlineOf, type Placed } from "../../drawing/index.js";
import {
	contains,
	type Extents,
	moved,
	type Path,
	segmentDistance,
	segmentExtents,
	segments,
} from "../../geometry/index.js";
import type { Bed } from "../machine.js";
import { EXACT, extentsOf, pathsOf } from "./corner.js";

/** A part at its place, ready to be measured. */
interface Lying {
	readonly name: string;
	readonly paths: readonly Path[];
	readonly outline: Path;
	readonly box: Extents;
}

/**
 * What is wrong with parts at their places, in words: paths in the margin, parts nearer to each
 * other than the spacing or one within another. Nothing of the packer is relied upon.
 */
export function layoutFaults(placed: readonly Placed[], bed: Bed): string[] {
	const { size, margin, spacing } = bed;
	const all = placed.map(
		(p): Lying => ({
			name: p.part.name,
			paths: pathsOf(p),
			outline: moved(outlineOf(p.part), p.move),
			box: extentsOf(p),
		}),
	);
	const outside = all.filter(
		({ box }) =>
			Math.min(box.minX, box.minY) < margin - EXACT ||
			box.maxX > size.x - margin + EXACT ||
			box.maxY > size.y - margin + EXACT,
	);
	const near = all.flatMap((a, i) =>
		all.slice(i + 1).flatMap((b) => {
			if (gapBetween(a.box, b.box) >= spacing - EXACT) return [];
			const apart = distanceBetween(a, b, spacing);
			return apart >= spacing - EXACT ? [] : [`${a.name} and ${b.name} are ${apart} apart`];
		}),
	);
	return [...outside.map(({ name }) => `${name} lies in the margin`), ...near];
}

/** Distance of two boxes, mm; 0 where they overlap. */
function gapBetween(a: Extents, b: Extents): number {
	const x = Math.max(0, b.minX - a.maxX, a.minX - b.maxX);
	const y = Math.max(0, b.minY - a.maxY, a.minY - b.maxY);
	return Math.hypot(x, y);
}

/** Distance between the paths of two parts, mm: 0 where one part lies within the other. */
function distanceBetween(a: Lying, b: Lying, most: number): number {
	const isWithin = (inner: Lying, outer: Lying) =>
		contains(outer.outline, inner.outline.points[0]!);
	if (isWithin(a, b) || isWithin(b, a)) return 0;
	const boxed = (paths: readonly Path[]) =>
		paths.flatMap(segments).map((segment) => ({ segment, box: segmentExtents(segment) }));
	const others = boxed(b.paths);
	let least = Number.POSITIVE_INFINITY;
	for (const one of boxed(a.paths)) {
		for (const other of others) {
			if (gapBetween(one.box, other.box) >= Math.min(most, least)) continue;
			least = Math.min(least, segmentDistance(one.segment, other.segment));
		}
	}
	return least;
}
