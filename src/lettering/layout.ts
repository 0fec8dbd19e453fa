import { moved, movedPoint, type Path, type Point } from "../geometry/index.js";
import type { Lettering } from "./lettering.js";

/** A text that has its place. */
export interface PlacedText {
	/** Left end of the baseline, as read. */
	readonly at: Point;
	/** Advance width, mm. */
	readonly width: number;
	readonly paths: Path[];
}

/**
 * A text set so that the left end, the middle or the right end of its baseline lies on a point.
 *
 * @param height - of capitals, mm
 * @param at - where `align` says
 * @param turn - of the baseline, radians counter-clockwise
 * @throws RangeError on a character that the lettering lacks
 * @example placedText(letters, "12", 2.5, { x: 10, y: 0 }, 0, "right").at.x // 10 − its width
 */
export function placedText(
	lettering: Lettering,
	text: string,
	height: number,
	at: Point,
	turn: number,
	align: "left" | "centre" | "right",
): PlacedText {
	const width = lettering.width(text, height);
	const back = { left: 0, centre: width / 2, right: width }[align];
	const move = { x: at.x, y: at.y, turn, mirror: false };
	const left = movedPoint({ x: -back, y: 0 }, move);
	const paths = lettering
		.paths(text, height)
		.map((path) => moved(path, { ...move, x: left.x, y: left.y }));
	return { at: left, width, paths };
}
