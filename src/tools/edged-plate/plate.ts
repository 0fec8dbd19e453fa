import type { Path, Point } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { cutterRadius } from "../straightedge/cutter.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";

/** Sides of a plate in the order in which edges take them: quarter turns of the lower side. */
const TURNS = [0, 2, 1, 3] as const;
/** Edges on a plate, at most. */
export const MOST_EDGES = TURNS.length;

/** An edge that does the work. */
export interface WorkingEdge {
	/** Counted from 1. */
	readonly number: number;
	/** From end to end, mm. */
	readonly length: number;
}

/** An edge on its side of the plate. */
export type PlacedEdge<E extends WorkingEdge = WorkingEdge> = E & {
	/** How often a quarter turn counter-clockwise carries the lower side to it. */
	readonly quarters: number;
};

/** How a plate's edges stand out from its body, and how its corners are. */
export interface Relief {
	/** How far an edge stands before the body: more than a nut stands over what it lies on, mm. */
	readonly height: number;
	/** Body beside either end of an edge, at least, mm. */
	readonly shoulder: number;
	/** Radius of the corners beside it, which do no work. */
	readonly round: number;
	/** Legs of the body's corners that are cut off straight, mm; 0 where they are only rounded. */
	readonly chamfer: number;
}

/** A plate: its body, about the origin, and the edges that stand out in the middle of its sides. */
export interface Plate<E extends WorkingEdge = WorkingEdge> {
	readonly edges: readonly PlacedEdge<E>[];
	/** Half the body's size. */
	readonly half: Point;
	readonly relief: Relief;
}

/** Edges on the sides that they take. */
export function placed<E extends WorkingEdge>(edges: readonly E[]): PlacedEdge<E>[] {
	return edges.map((edge, i) => ({ ...edge, quarters: TURNS[i]! }));
}

/** Corners beside an edge are as round as the cutter, so that a mill can follow them. */
export function reliefOf(bench: Bench): Relief {
	const round = Math.max(CORNER_RADIUS, cutterRadius(bench));
	return { height: round + 3.5, shoulder: round + CORNER_RADIUS + 1, round, chamfer: 0 };
}

/** A point turned by quarters counter-clockwise. */
export function turned<P extends Point>(p: P, quarters: number): P {
	const [c, s] = [
		[1, 0],
		[0, 1],
		[-1, 0],
		[0, -1],
	][quarters]! as [number, number];
	return { ...p, x: c * p.x - s * p.y, y: s * p.x + c * p.y };
}

/** From the plate's middle to the line of an edge, mm. */
export function reachOf({ half, relief }: Plate, { quarters }: PlacedEdge): number {
	return (quarters % 2 === 0 ? half.y : half.x) + relief.height;
}

/** A point of an edge's own frame, x from its middle and y up from its line, on the plate. */
export function onPlate<P extends Point>(plate: Plate, edge: PlacedEdge, p: P): P {
	return turned({ ...p, y: p.y - reachOf(plate, edge) }, edge.quarters);
}

/** Both ends of an edge, in the contour's order, `up` from its line. */
export function endsOf(plate: Plate, edge: PlacedEdge, up = 0): [Point, Point] {
	return [
		onPlate(plate, edge, { x: -edge.length / 2, y: up }),
		onPlate(plate, edge, { x: edge.length / 2, y: up }),
	];
}

/**
 * The plate's contour, counter-clockwise.
 *
 * @param profileOf - the corners of an edge from end to end, in its own frame
 */
export function plateOutline<E extends WorkingEdge>(
	plate: Plate<E>,
	profileOf: (edge: E) => readonly Corner[],
): Path {
	return outlineOf([0, 1, 2, 3].flatMap((quarters) => sideCorners(plate, quarters, profileOf)));
}

/** A side from its first corner on: along the body, out to the edge and back. */
function sideCorners<E extends WorkingEdge>(
	plate: Plate<E>,
	quarters: number,
	profileOf: (edge: E) => readonly Corner[],
): Corner[] {
	const { half, relief, edges } = plate;
	const [across, down] = quarters % 2 === 0 ? [half.x, half.y] : [half.y, half.x];
	const edge = edges.find((e) => e.quarters === quarters);
	const { round, chamfer } = relief;
	const first = [
		...(chamfer > 0 ? [{ x: -across, y: chamfer - down }] : []),
		{ x: chamfer - across, y: -down },
	].map((corner) => turned({ ...corner, round: CORNER_RADIUS }, quarters));
	if (!edge) return first;
	const end = edge.length / 2;
	return [
		...first,
		turned({ x: -end, y: -down, round }, quarters),
		...profileOf(edge).map((corner) => onPlate(plate, edge, corner)),
		turned({ x: end, y: -down, round }, quarters),
	];
}
