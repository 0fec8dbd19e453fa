import { type Ink, inkOf, stroke, writing } from "../drawing/index.js";
import { movedPoint, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { MM_PER_INCH } from "../units/index.js";
import type { Rule } from "./document.js";

/** A rule drawn on a page, with the length that it promises. */
export interface DrawnRule {
	readonly ink: Ink;
	readonly rule: Rule;
}

/** How a rule's divisions are drawn, mm. */
const TICK = { end: 4, long: 3, short: 1.8 } as const;
const TEXT = 2.5;

/**
 * A rule in millimetres: a line from end to end, a stroke across every ten, its length beside it.
 *
 * @param from - its 0
 * @param turn - its direction, radians; strokes and text lie to the left of it
 * @param length - a multiple of 10 mm
 */
export function metricRule(
	letters: Lettering,
	from: Point,
	turn: number,
	length: number,
): DrawnRule {
	return drawnRule(letters, {
		from,
		turn,
		length,
		step: 10,
		long: 50,
		side: 1,
		text: `${length} mm`,
	});
}

/**
 * A rule in inches, its strokes to the right of its direction.
 *
 * @param inches - whole
 */
export function inchRule(letters: Lettering, from: Point, turn: number, inches: number): DrawnRule {
	const length = inches * MM_PER_INCH;
	const text = `${inches} in`;
	return drawnRule(letters, {
		from,
		turn,
		length,
		step: MM_PER_INCH / 2,
		long: MM_PER_INCH,
		side: -1,
		text,
	});
}

interface RuleShape {
	readonly from: Point;
	readonly turn: number;
	readonly length: number;
	readonly step: number;
	/** Every so many millimetres a longer stroke. */
	readonly long: number;
	/** 1: strokes to the left of its direction; -1: to the right. */
	readonly side: 1 | -1;
	readonly text: string;
}

function drawnRule(letters: Lettering, shape: RuleShape): DrawnRule {
	const { from, turn, length, step, long, side, text } = shape;
	const at = (along: number, off: number) =>
		movedPoint({ x: along, y: off * side }, { ...from, turn, mirror: false });
	const count = Math.round(length / step);
	const ticks = Array.from({ length: count + 1 }, (_, i) => {
		const along = (i * length) / count;
		const isLong = Math.abs(along / long - Math.round(along / long)) < 1e-9;
		const size = i === 0 || i === count ? TICK.end : isLong ? TICK.long : TICK.short;
		return stroke("rule", at(along, 0), at(along, size));
	});
	const inset = step * 0.15 + 0.4;
	const room = side > 0 ? TICK.short + 0.6 : TICK.short + 0.6 + TEXT;
	const written = writing(letters, text, at(inset, room), { turn, height: TEXT });
	const line = { from: at(0, 0), to: at(length, 0) };
	return { ink: inkOf(stroke("rule", line.from, line.to), ...ticks, written), rule: line };
}
