import { line, type Move, moved, movedPoint, type Path } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import { floorDepth, hasPockets } from "./cutter.js";
import type { Notch } from "./edge.js";

/** One working edge in the frame of its line: the edge on y = 0, its nut on the left. */
export interface Edge {
	/** Left end of the bar. */
	readonly left: number;
	readonly nutEnd: "butting" | "cleared";
	/** Where an arch over the nut ends; only with a cleared nut end. */
	readonly archEnd: number;
	readonly archDepth: number;
	/** Radius of the arch's inside corner. */
	readonly archRound: number;
	readonly notches: readonly Notch[];
	/** Whether the notch of a zero fret is one with the arch. */
	readonly zeroInArch: boolean;
	/** Of the notches, as far down as they have their full width. */
	readonly depth: number;
	/** How much of the edge may be lapped off. */
	readonly lapping: number;
	/** How much deeper a relieved floor reaches: the cutter's radius, or 0. */
	readonly relief: number;
	/** Right end of the bar. */
	readonly right: number;
}

/** Room for glue at the lower corner of a butting end, mm. */
export const GLUE_CHAMFER = 1;
/** A half circle, clockwise. */
const HALF_ROUND = -1;
const RELIEF_CHORD = 40;
export const RELIEF_SAGITTA = 4;

/** Where the working edge begins at the nut. */
export function landStart(edge: Edge): number {
	return edge.nutEnd === "cleared" ? edge.archEnd : edge.left + GLUE_CHAMFER;
}

/** Corners of a working edge from its left end to its right end, the end corner included. */
function edgeCorners(edge: Edge): Corner[] {
	const corners: Corner[] =
		edge.nutEnd === "butting"
			? [
					{ x: edge.left, y: GLUE_CHAMFER },
					{ x: edge.left + GLUE_CHAMFER, y: 0 },
				]
			: [
					{ x: edge.left, y: edge.archDepth, round: CORNER_RADIUS },
					{ x: edge.archEnd, y: edge.archDepth, round: edge.archRound },
					{ x: edge.archEnd, y: 0 },
				];
	for (const notch of edge.notches) {
		if (edge.zeroInArch && notch.fret === 0) continue;
		corners.push(...notchCorners(edge, notch));
	}
	corners.push({ x: edge.right, y: 0, round: CORNER_RADIUS });
	return corners;
}

/** A notch from its left mouth to its right: the contour goes left around its pockets. */
function notchCorners(edge: Edge, notch: Notch): Corner[] {
	const { relief } = edge;
	const y = floorDepth(edge, notch);
	const from = notch.centre - notch.width / 2;
	const to = notch.centre + notch.width / 2;
	const pocket = 2 * relief;
	const floor: Corner[] = hasPockets(notch.width, relief)
		? [
				{ x: from, y, bulge: HALF_ROUND },
				{ x: from + pocket, y },
				{ x: to - pocket, y, bulge: HALF_ROUND },
				{ x: to, y },
			]
		: [
				{ x: from, y },
				{ x: to, y },
			];
	return [{ x: from, y: 0 }, ...floor, { x: to, y: 0 }];
}

/** Top of a bar without a second working edge, right to left. */
function plainTop(edge: Edge, height: number, relief: boolean): Corner[] {
	const middle = (edge.left + edge.right) / 2;
	const half = RELIEF_CHORD / 2;
	const scoop: Corner[] = relief
		? [
				{ x: middle + half, y: height, bulge: (-2 * RELIEF_SAGITTA) / RELIEF_CHORD },
				{ x: middle - half, y: height },
			]
		: [];
	return [
		{ x: edge.right, y: height, round: CORNER_RADIUS },
		...scoop,
		{ x: edge.left, y: height, round: CORNER_RADIUS },
	];
}

/** The half turn that carries the second edge's frame onto the bar. */
export function halfTurn(edge: Edge, second: Edge, height: number): Move {
	return { x: edge.right + second.left, y: height, turn: Math.PI, mirror: false };
}

/**
 * The bar's contour, counter-clockwise. With a second edge the upper side is that edge after
 * a half turn, so that turning the bar over keeps numbers upright; both ends then belong to
 * a nut end each.
 */
export function barOutline(edge: Edge, height: number, second: Edge | null, relief: boolean): Path {
	const lower = edgeCorners(edge);
	const upper = second
		? edgeCorners(second).map((corner) => ({
				...corner,
				...movedPoint(corner, halfTurn(edge, second, height)),
			}))
		: plainTop(edge, height, relief);
	return outlineOf([...upper, ...lower]);
}

/**
 * The edges that do the work, as lines: the one on the wood across its notches, and a butting
 * end up to where the bar's upper corner begins.
 */
export function workingLines(edge: Edge, height: number, move: Move): Path[] {
	const { left, right, nutEnd } = edge;
	const lands = line({ x: landStart(edge), y: 0 }, { x: right - CORNER_RADIUS, y: 0 });
	const end = line({ x: left, y: GLUE_CHAMFER }, { x: left, y: height - CORNER_RADIUS });
	return (nutEnd === "butting" ? [lands, end] : [lands]).map((path) => moved(path, move));
}
