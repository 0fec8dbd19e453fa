import type { Problem } from "../problem/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import { tQuantile } from "./statistics.js";

/** A place in the readings, as problems name it. */
export type ReadingPath = readonly (string | number)[];

/** The board's radius at one station as readings give it. */
export interface RadiusEstimate {
	/** What was read, in a few words: "bar 50 mm". */
	readonly label: string;
	/**
	 * mm; null where the reading itself shows no camber (curvature 0 or below). `high` is infinite
	 * where a flat board cannot be excluded. The ends are those of the curvature, inverted: far from
	 * even about the value on flat boards.
	 */
	readonly radius: Estimate | null;
	/** 1/R, in 1/mm; above 0 on a cambered board, 0 on a flat one. */
	readonly curvature: Estimate;
	/** Whether 0 lies within the curvature's 95 % interval: the board may be flat. */
	readonly flat: boolean;
	/** Longest chord that was read, mm. */
	readonly chord: number;
	/** What decided, doubts, and what the reading leaves open. */
	readonly notes: readonly Problem[];
}

/** Curvature of the section that was touched, before balls and crowns are taken off. */
export interface SectionCurvature {
	readonly curvature: Estimate;
	readonly chord: number;
	readonly notes: readonly Problem[];
}

/** Reach of a 95 % interval in standard errors that are known. */
export function reach95(): number {
	return tQuantile(0.975, Number.POSITIVE_INFINITY);
}

/** Standard deviation of a reading to a step: uniform over the step, r/√12. */
export function stepSd(resolution: number): number {
	return resolution / Math.sqrt(12);
}

/**
 * Standard errors by which a curvature must lie below 0 before a board counts as hollow: a zero and a
 * reading, each off by half a step, are off by a step together, 3.5 of them.
 */
export const BEYOND_DOUBT = 4;

/** Radii outside of these are doubted, mm: an inch figure taken for millimetres is 25.4 times off. */
const LEAST_LIKELY = 100;
const GREATEST_LIKELY = 5000;

/**
 * The estimate for a surface that lies `inside` mm within the one that was touched.
 *
 * Parallel surfaces: R = R′ − o, so κ = κ′/(1 − oκ′), which rises evenly with κ′; the standard
 * error grows by 1/(1 − oκ′)².
 *
 * @param inside - 0 or more, mm: balls' radius and crown height
 */
export function radiusEstimate(
	label: string,
	section: SectionCurvature,
	inside: number,
): RadiusEstimate {
	const within = (k: number) => k / (1 - inside * k);
	const { value, standard, low, high } = section.curvature;
	const curvature: Estimate = {
		value: within(value),
		standard: standard / (1 - inside * value) ** 2,
		low: within(low),
		high: within(high),
	};
	const radius = radiusOf(curvature);
	const flat = curvature.low <= 0;
	const notes = [...section.notes, ...(flat ? [] : doubtsAbout(radius!.value))];
	return { label, radius, curvature, flat, chord: section.chord, notes };
}

/** Doubts about a radius that no usual board has. */
function doubtsAbout(radius: number): Problem[] {
	if (radius >= LEAST_LIKELY && radius <= GREATEST_LIKELY) return [];
	return [note("radius-unlikely", [], { radius, least: LEAST_LIKELY, most: GREATEST_LIKELY })];
}

/**
 * A curvature's interval as a radius': the ends change places. Null for a curvature of 0 or below;
 * `high` is infinite where the curvature's interval reaches 0.
 */
export function radiusOf(curvature: Estimate): Estimate | null {
	const { value, standard, low, high } = curvature;
	if (!(value > 0)) return null;
	return {
		value: 1 / value,
		standard: standard / value ** 2,
		low: 1 / high,
		high: low > 0 ? 1 / low : Number.POSITIVE_INFINITY,
	};
}

/**
 * Standard error for weighing and joint tests: the interval's half width in known standard errors,
 * so that few readings that happen to agree do not weigh like many.
 */
export function weighingSd({ low, high }: Estimate): number {
	return (high - low) / 2 / reach95();
}
