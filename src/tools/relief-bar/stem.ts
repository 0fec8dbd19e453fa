import type { Bench } from "../tool.js";
import { ABOVE_LETTERS, type Hole, LEAST_HEIGHT, NUMBER_TOP } from "./measures.js";
import type { BarSettings } from "./settings.js";

/** Least that the bar grips of the stem, common practice, no source, mm. */
const LEAST_GRIP = 8;
/** The dial's body stands so far over the bar's edge by default, so that it may be set lower too, mm. */
export const UNDER_BODY = 1;
/** Plate around a screw's hole and around dowels, mm. */
const AROUND_SCREW = 2;
export const AROUND_DOWEL = 3;

/** How the dial's stem lies between the cheeks, mm. */
export interface Stem {
	readonly diameter: number;
	/** Sheets between the cheeks: as many as the stem is thick. */
	readonly layers: number;
	/** How much thicker those sheets are than the stem. */
	readonly play: number;
	/** Flanks of the channel along the bar. */
	readonly from: number;
	readonly to: number;
	/** Height of the stem's lower end over the feet. */
	readonly end: number;
	/** Where a screw presses on the stem; null for none. */
	readonly screw: Hole | null;
}

/**
 * Sheets that make up a stem's thickness, and how much thicker they are than it, mm.
 *
 * @example sheetsFor(8, 3) // { layers: 3, play: 1 }
 */
export function sheetsFor(stem: number, sheet: number): { layers: number; play: number } {
	const layers = Math.ceil(stem / sheet - 1e-9);
	return { layers, play: Math.max(0, layers * sheet - stem) };
}

/** Where the stem's lower end hangs over the feet, the plunger half way in, mm. */
export function stemEnd(s: BarSettings): number {
	return s["dial-reach"]! - s["stem-length"];
}

/** The bar's height by default: just under the dial's body. */
export function heightUnderBody(s: BarSettings): number {
	return s["dial-reach"]! - UNDER_BODY;
}

/** How much of the stem the bar must grip, which its screw may ask for, mm. */
export function leastGrip(s: BarSettings): number {
	const screw = s["clamp-screw"] === "none" ? 0 : s["clamp-screw"];
	return Math.max(LEAST_GRIP, screw + 2 * AROUND_SCREW);
}

/** The least height of a laminated bar: for letters with dowels over them. */
export function leastForDowels({ dowel }: BarSettings): number {
	return dowel === "none"
		? LEAST_HEIGHT
		: Math.max(LEAST_HEIGHT, ABOVE_LETTERS + dowel + AROUND_DOWEL);
}

/** The stem in a bar of some height over the fret that is read; its grip is enough. */
export function stemIn(bench: Bench, s: BarSettings, readAt: number, height: number): Stem {
	const diameter = s["dial-stem"];
	const half = (diameter + s["stem-play"]) / 2;
	const end = stemEnd(s);
	const size = s["clamp-screw"];
	const screwAt = (d: number) => Math.max((end + height) / 2, NUMBER_TOP + AROUND_SCREW + d / 2);
	return {
		diameter,
		...sheetsFor(diameter, bench.stock.thickness),
		from: readAt - half,
		to: readAt + half,
		end,
		screw: size === "none" ? null : { x: readAt, y: screwAt(size), diameter: size },
	};
}

/** Dowels of the pieces left and right of the channel: two each, under the upper edge. */
export type Dowels = readonly [left: readonly [Hole, Hole], right: readonly [Hole, Hole]];

/**
 * Two dowels as far apart as a piece of the bar allows.
 *
 * @param start - where the piece begins, or what else is in the way
 * @param end - where it ends
 */
export function dowelsBetween(
	start: number,
	end: number,
	height: number,
	diameter: number,
): readonly [Hole, Hole] {
	const off = AROUND_DOWEL + diameter / 2;
	const y = height - off;
	return [
		{ x: start + off, y, diameter },
		{ x: end - off, y, diameter },
	];
}

/** The widest dowels of which two find room in a piece of this length, mm; below 0 for none. */
export function widestDowel(length: number): number {
	return (length - 3 * AROUND_DOWEL) / 2;
}
