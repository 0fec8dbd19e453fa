import type { Path, Point } from "../geometry/index.js";
import { edgePoint, fretLine, type Neck, widthAt } from "../neck/index.js";
import { type Corner, outlineOf } from "./outline.js";
import { CORNER_RADIUS } from "./tool.js";

/** Rounded corners stay this far from a bend of the board's edge, mm. */
const OFF_BEND = 2 * CORNER_RADIUS;
/** A bend nearer than this to a corner is the corner, mm. */
const AT_CORNER = 1e-6;

/** Where the board's width changes its course, from the nut on. */
function bendsOf({ width }: Neck): number[] {
	return width.knots.map((k) => k.x).sort((a, b) => a - b);
}

/** An end toward the nut, moved on where a bend of the board's edge would meet its corners. */
export function beforeBends(neck: Neck, from: number): number {
	return bendsOf(neck).reduceRight(
		(end, x) => (Math.abs(x - end) < OFF_BEND ? x - OFF_BEND : end),
		from,
	);
}

/** An end toward the saddle, moved on where a bend of the board's edge would meet its corners. */
export function pastBends(neck: Neck, to: number): number {
	return bendsOf(neck).reduce((end, x) => (Math.abs(x - end) < OFF_BEND ? x + OFF_BEND : end), to);
}

/** A line across the board at the nut, shifted along the neck: its ends on the edges, bass first. */
export function nutLine(neck: Neck, shift: number): readonly [Point, Point] {
	const nut = fretLine(neck, 0);
	const moved = { ...nut, x: nut.x + shift };
	return [edgePoint(neck, moved, -1), edgePoint(neck, moved, 1)];
}

/** The corners of an end square to the centre line, rounded: below it and above. */
export function squareEnd(neck: Neck, x: number, margin: number): readonly [Corner, Corner] {
	const half = widthAt(neck, x) / 2 + margin;
	return [
		{ x, y: -half, round: CORNER_RADIUS },
		{ x, y: half, round: CORNER_RADIUS },
	];
}

/**
 * Both long sides of what lies on the board and is as wide as it or wider by a margin: below the
 * centre line and above, each from its corner at the one end to that at the other.
 */
export function boardSides(
	neck: Neck,
	from: readonly [Corner, Corner],
	to: readonly [Corner, Corner],
	margin: number,
): readonly [Corner[], Corner[]] {
	const side = (i: 0 | 1, sign: 1 | -1): Corner[] => [
		from[i],
		...neck.width.knots
			.map((k) => k.x)
			.filter((x) => x > from[i].x + AT_CORNER && x < to[i].x - AT_CORNER)
			.map((x) => ({ x, y: sign * (widthAt(neck, x) / 2 + margin) })),
		to[i],
	];
	return [side(0, -1), side(1, 1)];
}

/** The contour around two long sides, counter-clockwise. */
export function aroundSides([lower, upper]: readonly [Corner[], Corner[]]): Path {
	return outlineOf([...lower, ...upper.toReversed()]);
}
