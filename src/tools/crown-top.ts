import { distance, type Point } from "../geometry/index.js";
import {
	dropAt,
	edgePoint,
	fretLine,
	type Neck,
	radiusAt,
	slantedRadius,
	slantOf,
	stretches,
} from "../neck/index.js";
import type { Wire } from "./tool.js";

/** How a fret's crown is arched along the fret, mm. */
export interface CrownTop {
	readonly n: number;
	/** From edge to edge of the board, along the fret. */
	readonly length: number;
	/** Of the board under it, along the fret, where that is roundest. */
	readonly board: number;
	/** Of the crown's top: a caul that is no flatter touches the fret's ends first. */
	readonly radius: number;
	/** Height of the crown's middle over the chord between its ends; NaN where the board ends before them. */
	readonly sagitta: number;
}

/** Places along a slanted fret at which its section is looked at. */
const PLACES = 64;

/**
 * The crown of a fret on an arched board; null on a flat one.
 *
 * Square to the centre line the crown's top is a circle of R + h. Along a slant of φ it is R/cos²φ + h,
 * but only nearly a circle: the section is an ellipse, and skewed where the board's radius changes.
 * There the radius is that of the flattest circle over the fret's ends that lies under no part of
 * the section.
 */
export function crownTop(neck: Neck, wire: Wire, n: number): CrownTop | null {
	const { radius } = neck;
	if (radius === "flat") return null;
	const fret = fretLine(neck, n);
	const ends = [edgePoint(neck, fret, -1), edgePoint(neck, fret, 1)] as const;
	const [from, to] = ends.map(({ x }) => x).sort((a, b) => a - b) as [number, number];
	const between = stretches(radius).flatMap(({ x }) => (x > from && x < to ? [x] : []));
	const least = Math.min(...[from, ...between, to].map((x) => radiusAt(neck, x)!));
	const board = slantedRadius(least, slantOf(fret));
	const length = distance(...ends);
	const height = heightsOver(neck, wire, ends);
	const straight = board + wire.crownHeight;
	const slanted = () =>
		Array.from({ length: PLACES - 1 }, (_, i) => (i + 1) / PLACES).map((t) =>
			circleOver(length, (t - 0.5) * length, height(t)),
		);
	return {
		n,
		length,
		board,
		radius: fret.lean === 0 ? straight : Math.min(straight, ...slanted()),
		sagitta: height(0.5),
	};
}

/**
 * Height of the crown's top over the line between its ends, by its share of the way from the one to the
 * other; NaN where the board's arch ends before them.
 */
function heightsOver(neck: Neck, wire: Wire, [a, b]: readonly [Point, Point]) {
	const top = (t: number) => {
		const y = a.y + (b.y - a.y) * t;
		const radius = radiusAt(neck, a.x + (b.x - a.x) * t)! + wire.crownHeight;
		return Math.abs(y) <= radius ? -dropAt(radius, y) : Number.NaN;
	};
	const [start, end] = [top(0), top(1)];
	return (t: number) => top(t) - start - (end - start) * t;
}

/** Radius of the circle over a chord that passes a height at a distance from the chord's middle, mm. */
function circleOver(chord: number, s: number, height: number): number {
	const half = chord / 2;
	const below = ((half - s) * (half + s) - height * height) / (2 * height);
	return Math.hypot(half, below);
}
