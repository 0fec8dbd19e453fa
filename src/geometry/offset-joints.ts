import { OffsetError } from "./offset-error.js";
import type { Piece } from "./offset-pieces.js";
import type { Point } from "./path.js";

/** Ends of pieces no further apart than this are one joint, mm. */
export const ONE_JOINT = 2e-7;
/**
 * Ends that nothing else joins are one joint up to this far apart, mm. Segments that go on
 * nearly straight overlap by distance times turn, and at so small an angle rounding may hide
 * where they meet. The gap is along both, so that closing it moves neither sideways.
 */
const LONGEST_GAP = 1e-5;
/** A piece back to its own joint shorter than this is nothing, mm. */
const NOTHING = 1e-5;
/**
 * The longest piece that may be left over at a joint, mm. Where shifted segments part at so
 * small an angle that one is nearer to the boundary by rounding only, both pieces stay.
 */
const LONGEST_TAIL = 0.01;

/** A piece between two joints, which are numbers. */
export interface Link {
	readonly piece: Piece;
	readonly from: number;
	readonly to: number;
}

/**
 * The pieces as links between joints, so that at every joint as many arrive as leave.
 *
 * Pieces on each other are taken once; pieces on each other that run opposite ways bound
 * nothing (a notch exactly as wide as it is grown shut) and both go.
 *
 * @throws OffsetError if more than rounding is left over
 */
export function linked(pieces: readonly Piece[]): readonly Link[] {
	const joints = jointsOf(pieces.flatMap((p) => [p.start, p.end]));
	const links = pieces.map((piece, i) => {
		return { piece, from: joints[2 * i]!, to: joints[2 * i + 1]! };
	});
	return withoutTails(bridged(withoutDoubles(withoutNothing(links))));
}

function withoutNothing(links: readonly Link[]): Link[] {
	return links.filter(({ piece, from, to }) => from !== to || piece.length > NOTHING);
}

/** The joint of every point: the lowest number among all points that hang together with it. */
function jointsOf(points: readonly Point[]): number[] {
	const joint = points.map((_, i) => i);
	const rootOf = (i: number): number => {
		let at = i;
		while (joint[at] !== at) at = joint[at]!;
		joint[i] = at;
		return at;
	};
	for (const [i, j] of nearPairs(points, ONE_JOINT)) {
		const [a, b] = [rootOf(i), rootOf(j)];
		if (a !== b) joint[Math.max(a, b)] = Math.min(a, b);
	}
	return points.map((_, i) => rootOf(i));
}

/** Pairs of points no further apart than `reach`, found by cells that are far larger. */
function* nearPairs(points: readonly Point[], reach: number): Generator<readonly [number, number]> {
	const cells = new Map<number, number[]>();
	const size = 500 * reach;
	for (const [i, p] of points.entries()) {
		const [lastX, lastY] = [Math.floor((p.x + reach) / size), Math.floor((p.y + reach) / size)];
		for (let x = Math.floor((p.x - reach) / size); x <= lastX; x++) {
			for (let y = Math.floor((p.y - reach) / size); y <= lastY; y++) {
				// Different cells may share a key: points in them are then merely compared.
				const key = Math.imul(x, 73_856_093) ^ Math.imul(y, 19_349_663);
				const cell = cells.get(key);
				if (cell === undefined) {
					cells.set(key, [i]);
					continue;
				}
				for (const j of cell) {
					const q = points[j]!;
					if (Math.hypot(p.x - q.x, p.y - q.y) <= reach) yield [j, i];
				}
				cell.push(i);
			}
		}
	}
}

function withoutDoubles(links: readonly Link[]): Link[] {
	const between = new Map<number, Link[]>();
	const joints = 1 + links.reduce((most, { from, to }) => Math.max(most, from, to), 0);
	const opposed = new Set<Link>();
	for (const link of links) {
		const key = Math.min(link.from, link.to) * joints + Math.max(link.from, link.to);
		const known = between.get(key);
		const twin = known?.find((other) => lieOnEachOther(link.piece, other.piece));
		if (twin && twin.from !== link.from) opposed.add(twin);
		else if (!twin && known) known.push(link);
		else if (!known) between.set(key, [link]);
	}
	return [...between.values()].flat().filter((link) => !opposed.has(link));
}

function lieOnEachOther({ middle: a }: Piece, { middle: b }: Piece): boolean {
	return Math.hypot(a.x - b.x, a.y - b.y) <= ONE_JOINT;
}

/** Arriving less leaving links of every joint where they are not as many. */
function surplusOf(links: readonly Link[]): Map<number, number> {
	const surplus = new Map<number, number>();
	for (const { from, to } of links) {
		surplus.set(from, (surplus.get(from) ?? 0) - 1);
		surplus.set(to, (surplus.get(to) ?? 0) + 1);
	}
	for (const [joint, n] of surplus) if (n === 0) surplus.delete(joint);
	return surplus;
}

/** Joints where a link too many arrives made one with such where one too many leaves. */
function bridged(links: readonly Link[]): readonly Link[] {
	const surplus = surplusOf(links);
	if (surplus.size === 0) return links;
	const places = new Map<number, Point>();
	for (const { piece, from, to } of links) places.set(from, piece.start).set(to, piece.end);
	const open = [...surplus.keys()];
	const points = open.map((joint) => places.get(joint)!);
	const gap = ([i, j]: readonly [number, number]) =>
		Math.hypot(points[i]!.x - points[j]!.x, points[i]!.y - points[j]!.y);
	const bridge = new Map<number, number>();
	for (const [i, j] of [...nearPairs(points, LONGEST_GAP)].sort((p, q) => gap(p) - gap(q))) {
		const [a, b] = [open[i]!, open[j]!];
		if (bridge.has(a) || bridge.has(b) || surplus.get(a)! * surplus.get(b)! >= 0) continue;
		bridge.set(a, a).set(b, a);
	}
	const across = (joint: number) => bridge.get(joint) ?? joint;
	return withoutNothing(
		links.map(({ piece, from, to }) => ({ piece, from: across(from), to: across(to) })),
	);
}

/** The links that arrive at and leave a joint. */
interface Joint {
	readonly arriving: Set<Link>;
	readonly leaving: Set<Link>;
}

/** Removes, at joints with more links one way than the other, those that are nearest in. */
function withoutTails(links: readonly Link[]): readonly Link[] {
	const open = [...surplusOf(links).keys()];
	if (open.length === 0) return links;
	const joints = new Map<number, Joint>();
	const jointAt = (i: number): Joint => {
		const joint = joints.get(i) ?? { arriving: new Set(), leaving: new Set() };
		joints.set(i, joint);
		return joint;
	};
	for (const link of links) {
		jointAt(link.from).leaving.add(link);
		jointAt(link.to).arriving.add(link);
	}
	const kept = new Set(links);
	for (let i = open.pop(); i !== undefined; i = open.pop()) {
		const { arriving, leaving } = jointAt(i);
		if (arriving.size === leaving.size) continue;
		const tail = innermost(arriving.size > leaving.size ? arriving : leaving);
		kept.delete(tail);
		jointAt(tail.from).leaving.delete(tail);
		jointAt(tail.to).arriving.delete(tail);
		open.push(tail.from, tail.to);
	}
	return [...kept];
}

function innermost(links: Iterable<Link>): Link {
	const [tail] = [...links].sort((a, b) => b.piece.short - a.piece.short);
	const { length, shifted, middle } = tail!.piece;
	if (length > LONGEST_TAIL) {
		const { contour, segment } = shifted.source;
		const what = `the offset of segment ${segment} of contour ${contour} leads nowhere`;
		throw new OffsetError("broken", `${what} near ${middle.x}, ${middle.y}`, contour, middle);
	}
	return tail!;
}
