import { line, open, type Path, type Point, vertex } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import type { GaugeSettings } from "./settings.js";

/** Floor between the highest step and the wall, which its rounded corner takes, mm. */
const BESIDE_WALL = 2;
/** Least width of the wall that carries the upper jaw, and plate around the hole, mm. */
const LEAST_WALL = 10;
const AROUND_HOLE = 3;

/** A step: its height over the lower edge and where it begins and ends. */
export interface Step {
	readonly height: number;
	readonly from: number;
	readonly to: number;
}

/**
 * A gauge in its own frame: the lower edge on y = 0, the lowest step's end at x = 0. The jaw
 * rises in steps to the wall; the string is seen in the opening between it and the upper jaw.
 */
export interface Shape {
	readonly outline: Path;
	readonly steps: readonly Step[];
	readonly lower: Path;
	readonly stair: Path;
	readonly wall: number;
	readonly right: number;
	readonly roof: number;
	readonly top: number;
	readonly hole: { readonly at: Point; readonly diameter: number };
}

/** The steps, the lowest first. */
export function stepsOf(s: GaugeSettings): Step[] {
	const width = s["step-width"];
	const rising = s.heights.toSorted((a, b) => a - b);
	return rising.map((height, i) => ({ height, from: i * width, to: (i + 1) * width }));
}

/** The shape of a gauge whose upper jaw has room for its letters over the opening. */
export function shapeOf(
	s: GaugeSettings,
	letters: { readonly width: number; readonly height: number },
): Shape {
	const steps = stepsOf(s);
	const last = steps.at(-1)!;
	const diameter = s["gauge-hole"] === "none" ? 0 : s["gauge-hole"];
	const wall = Math.max(last.to + BESIDE_WALL, letters.width);
	const right = wall + Math.max(LEAST_WALL, diameter + 2 * AROUND_HOLE);
	const roof = last.height + s.throat;
	const forHole = last.height + diameter + 3 * AROUND_HOLE;
	const top = Math.ceil(Math.max(roof + letters.height, forHole) - 1e-9);
	const round = CORNER_RADIUS;
	const stair = steps.toReversed().flatMap(({ height, from, to }): Corner[] => [
		{ x: to === last.to ? wall : to, y: height, ...(to === last.to ? { round } : {}) },
		{ x: from, y: height },
	]);
	return {
		outline: outlineOf([
			{ x: 0, y: 0 },
			{ x: right, y: 0, round },
			{ x: right, y: top, round },
			{ x: 0, y: top, round },
			{ x: 0, y: roof, round },
			{ x: wall, y: roof, round },
			...stair,
		]),
		steps,
		lower: line({ x: 0, y: 0 }, { x: right - round, y: 0 }),
		stair: open(
			...steps.flatMap(({ height, from, to }) => [vertex(from, height), vertex(to, height)]),
		),
		wall,
		right,
		roof,
		top,
		hole: {
			at: { x: right - AROUND_HOLE - diameter / 2, y: top - AROUND_HOLE - diameter / 2 },
			diameter,
		},
	};
}
