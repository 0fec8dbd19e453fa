import type { Point } from "../geometry/index.js";
import {
	type FretLine,
	fretLine,
	type Neck,
	pointOnFret,
	type StringLine,
	saddleLine,
} from "./neck.js";

/** The centre line from the theoretical nut to the saddle. */
export function centreLine(neck: Neck): StringLine {
	return { nut: { x: 0, y: 0 }, saddle: { x: saddleLine(neck).x, y: 0 } };
}

/**
 * Every string's line, from bass to treble. Courses are equally spaced between their
 * centres; the two strings of a course lie half the pair gap to either side.
 *
 * @throws RangeError if the neck has no strings
 */
export function stringLines(neck: Neck): StringLine[] {
	const { strings } = neck;
	if (!strings) throw new RangeError("the neck has no strings");
	const nut = fretLine(neck, 0);
	const saddle = saddleLine(neck);
	const atNut = heights(strings.atNut, strings.count, strings.pairGap);
	const atSaddle = heights(strings.atSaddle, strings.count, strings.pairGap);
	return atNut.map((y, i) => ({
		nut: pointOnFret(nut, y * neck.trebleSide),
		saddle: pointOnFret(saddle, atSaddle[i]! * neck.trebleSide),
	}));
}

/** Distances of the strings from the centre line, treble positive. */
function heights(spread: number, count: number, pairGap: number): number[] {
	const outer = (spread - pairGap) / 2;
	const centres = Array.from({ length: count }, (_, i) =>
		count === 1 ? 0 : -outer + (2 * outer * i) / (count - 1),
	);
	if (pairGap === 0) return centres;
	return centres.flatMap((y) => [y - pairGap / 2, y + pairGap / 2]);
}

/** How a fret crosses a straight line along the neck. */
export interface LineCrossing {
	readonly n: number;
	/** Distance along the line from its nut point, mm. */
	readonly along: number;
	/** Angle between the fret and the square of the line, radians, unsigned. */
	readonly slant: number;
	readonly at: Point;
}

/** Where fret n crosses a line, by intersection; exact for any straight line. */
export function crossingOf(neck: Neck, line: StringLine, n: number): LineCrossing {
	return crossingWith(line, fretLine(neck, n));
}

/** Length of a line from the theoretical nut to the saddle, mm. */
export function lineLength(line: StringLine): number {
	return Math.hypot(line.saddle.x - line.nut.x, line.saddle.y - line.nut.y);
}

/** The point of a line at a distance from its nut point, mm; negative before it. */
export function pointAlong(line: StringLine, along: number): Point {
	const t = along / lineLength(line);
	return {
		x: line.nut.x + (line.saddle.x - line.nut.x) * t,
		y: line.nut.y + (line.saddle.y - line.nut.y) * t,
	};
}

function crossingWith(line: StringLine, fret: FretLine): LineCrossing {
	const dx = line.saddle.x - line.nut.x;
	const dy = line.saddle.y - line.nut.y;
	const size = Math.hypot(dx, dy);
	const t = (fret.x + line.nut.y * fret.lean - line.nut.x) / (dx - dy * fret.lean);
	const cosine = Math.abs(fret.lean * dx + dy) / (Math.hypot(fret.lean, 1) * size);
	return {
		n: fret.n,
		along: t * size,
		slant: Math.asin(Math.min(1, cosine)),
		at: { x: line.nut.x + dx * t, y: line.nut.y + dy * t },
	};
}
