import { line, type Path, type Point } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { cutterRadius } from "../straightedge/cutter.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { RockerEdge } from "./edges.js";

/** Sides of a plate in the order in which edges take them: quarter turns of the lower side. */
const TURNS = [0, 2, 1, 3] as const;
/** Edges on a plate, at most. */
export const MOST_EDGES = TURNS.length;

/** An edge on its side of the plate. */
export interface PlacedEdge extends RockerEdge {
	/** How often a quarter turn counter-clockwise carries the lower side to it. */
	readonly quarters: number;
}

/** How a plate's edges stand out from its body. */
export interface Relief {
	/** How far an edge stands before the body: more than a nut stands over the crowns, mm. */
	readonly height: number;
	/** Body beside either end of an edge, at least, mm. */
	readonly shoulder: number;
	/** Radius of the corners beside it, which do no work. */
	readonly round: number;
}

/** A plate: its body, about the origin, and the edges that stand out from its sides. */
export interface Plate {
	readonly edges: readonly PlacedEdge[];
	/** Half the body's size. */
	readonly half: Point;
	readonly relief: Relief;
}

/** Edges on the sides that they take. */
export function placed(edges: readonly RockerEdge[]): PlacedEdge[] {
	return edges.map((edge, i) => ({ ...edge, quarters: TURNS[i]! }));
}

/** Corners beside an edge are as round as the cutter, so that a mill can follow them. */
export function reliefOf(bench: Bench): Relief {
	const round = Math.max(CORNER_RADIUS, cutterRadius(bench));
	return { height: round + 3.5, shoulder: round + CORNER_RADIUS + 1, round };
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

/** Both ends of an edge, in the contour's order, `up` from its line. */
export function endsOf(plate: Plate, edge: PlacedEdge, up = 0): [Point, Point] {
	const y = up - reachOf(plate, edge);
	return [
		turned({ x: -edge.length / 2, y }, edge.quarters),
		turned({ x: edge.length / 2, y }, edge.quarters),
	];
}

/** The plate's contour, counter-clockwise. */
export function plateOutline(plate: Plate): Path {
	return outlineOf([0, 1, 2, 3].flatMap((quarters) => sideCorners(plate, quarters)));
}

/** A side from its first corner on: along the body, out to the edge and back. */
function sideCorners(plate: Plate, quarters: number): Corner[] {
	const { half, relief, edges } = plate;
	const [across, down] = quarters % 2 === 0 ? [half.x, half.y] : [half.y, half.x];
	const edge = edges.find((e) => e.quarters === quarters);
	const corners: Corner[] = [{ x: -across, y: -down, round: CORNER_RADIUS }];
	if (edge) {
		const end = edge.length / 2;
		const out = -down - relief.height;
		corners.push(
			{ x: -end, y: -down, round: relief.round },
			{ x: -end, y: out },
			{ x: end, y: out },
			{ x: end, y: -down, round: relief.round },
		);
	}
	return corners.map((corner) => turned(corner, quarters));
}

/** The edges that do the work. */
export function workingLines(plate: Plate): Path[] {
	return plate.edges.map((edge) => line(...endsOf(plate, edge)));
}
