import { boundaryOf, type SegmentRef } from "./offset-check.js";
import { OffsetError } from "./offset-error.js";
import { linked } from "./offset-joints.js";
import { type Loop, loopsOf } from "./offset-loops.js";
import { outermostPieces } from "./offset-pieces.js";
import { type Source, shiftedSegments } from "./offset-shift.js";
import type { Path } from "./path.js";

export type { SegmentRef } from "./offset-check.js";
export { OffsetError, type OffsetFault } from "./offset-error.js";
export type { Source } from "./offset-shift.js";

/** Contours at a distance from others, and what became of those. */
export interface Offset {
	/** Outer contours counter-clockwise, holes clockwise; lines and arcs. */
	readonly paths: readonly Path[];
	/** What each segment of each path comes from. */
	readonly sources: readonly (readonly Source[])[];
	/** The given segments with a piece in the result, in their order. */
	readonly survived: readonly SegmentRef[];
	/** The given segments without one: what is too narrow for the distance, in their order. */
	readonly vanished: readonly SegmentRef[];
	/** Contours more than came in: those that a contour split into, less the first. */
	readonly born: number;
	/** Contours fewer than came in: those that vanished or merged into another. */
	readonly died: number;
}

/** The smallest distance, mm: far above what ends of pieces may be apart to be one joint. */
const LEAST_DISTANCE = 1e-4;

/**
 * The exact offset of contours of lines and arcs: the boundary of all that is nearer than
 * `distance` to the material, or for a negative distance of what is left of the material when
 * all nearer than that to its boundary is taken away. Outside corners become arcs.
 *
 * All segments are shifted, cut where they meet, and kept where they are no nearer to the
 * contours than the distance; the rest joins into contours again. Points of the result are at
 * the distance from the contours within 1e-6 mm, nearly all within 1e-11.
 *
 * `paths.length === contours.length + born - died`. Of a gap or a tongue exactly as wide as
 * twice the distance nothing is left.
 *
 * @param contours - closed, none crossing; material on the left: outer contours
 *   counter-clockwise, holes clockwise
 * @param distance - mm; above 0 grows the material. 0 returns the contours; else at least
 *   0.0001 either way
 * @throws OffsetError (a RangeError) with `fault` for contours that cross or run the wrong way,
 *   for a distance that is none, and if the result does not close; nothing is repaired
 * @example offset([rectangle(0, 0, 10, 10)], -1).paths // one rectangle of 8 × 8
 */
export function offset(contours: readonly Path[], distance: number): Offset {
	if (!Number.isFinite(distance) || (distance !== 0 && Math.abs(distance) < LEAST_DISTANCE)) {
		throw new OffsetError("distance", `no offset by ${distance}: at least ${LEAST_DISTANCE} mm`);
	}
	if (contours.length === 0) return outcome([], [], 0);
	const boundary = boundaryOf(contours);
	if (distance === 0) {
		const same = contours.map((path, contour) => ({
			path,
			sources: path.points.map((_, segment) => ({ contour, segment, corner: false })),
		}));
		return outcome(same, boundary.refs, contours.length);
	}
	const shifted = shiftedSegments(boundary, distance);
	const pieces = outermostPieces(shifted, boundary, distance);
	return outcome(loopsOf(linked(pieces)), boundary.refs, contours.length);
}

function outcome(loops: readonly Loop[], refs: readonly SegmentRef[], given: number): Offset {
	const alive = Array.from({ length: given }, () => new Set<number>());
	for (const { sources } of loops) {
		for (const { contour, segment, corner } of sources) if (!corner) alive[contour]!.add(segment);
	}
	const isAlive = ({ contour, segment }: SegmentRef) => alive[contour]!.has(segment);
	return {
		paths: loops.map((l) => l.path),
		sources: loops.map((l) => l.sources),
		survived: refs.filter(isAlive),
		vanished: refs.filter((ref) => !isAlive(ref)),
		...kinship(loops, given),
	};
}

/** Contours and loops that share segments are one family; families grow and shrink. */
function kinship(loops: readonly Loop[], given: number): { born: number; died: number } {
	const elder = Array.from({ length: given }, (_, i) => i);
	const headOf = (i: number): number => (elder[i] === i ? i : headOf(elder[i]!));
	for (const { sources } of loops) {
		const head = headOf(sources[0]!.contour);
		for (const { contour } of sources) elder[headOf(contour)] = head;
	}
	const gain = elder.map(() => 0);
	for (let i = 0; i < given; i++) gain[headOf(i)]!--;
	for (const { sources } of loops) gain[headOf(sources[0]!.contour)]!++;
	const sum = (of: (g: number) => number) => gain.reduce((total, g) => total + of(g), 0);
	return { born: sum((g) => Math.max(0, g)), died: sum((g) => Math.max(0, -g)) };
}
