import type { Point } from "../../geometry/index.js";

/** How far the edge between the feet is relieved, mm. */
export const RELIEF = 2;
/** Lowest bar that is made by default, and plate around holes, mm. */
export const LEAST_HEIGHT = 20;
export const AROUND_HOLE = 5;

/** Baseline of the fret numbers, height of letters and what is between lines, mm. */
export const NUMBERS = RELIEF + 3;
export const TEXT = 2.5;
export const LEADING = 2;
export const NUMBER_TOP = NUMBERS + TEXT;
/** Over the numbers and two lines of letters, mm. */
export const ABOVE_LETTERS = NUMBER_TOP + 2 * (LEADING + TEXT) + 1;

/** A round hole through a sheet, about its middle, mm. */
export interface Hole extends Point {
	readonly diameter: number;
}
