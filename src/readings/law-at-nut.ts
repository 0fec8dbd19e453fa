import type { Law } from "../neck/index.js";
import { fitCurve, type SlotRow } from "./curve-fit.js";
import { chooseLaw, compare, type LawChoice } from "./law-choice.js";

/** Names of the two ways to fit in comparisons. */
export const THROUGH_NUT = "through the nut's end";
export const FREE_OFFSET = "free offset";

/** What leaving the nut's end free counts beside free ratios and odd slots. */
const OFFSET_COST = 1;

/**
 * The law of slots read from a nut whose end is told to be true.
 *
 * A nut that is out bends the law fitted through it, which then passes for other ratios or odd slots. So before any of
 * these is taken, the laws are tried with the nut free; what they say stands where it needs less, or as little as a free ratio,
 * and an F-test at 1 % finds the nut out.
 *
 * @returns the law, its fit with the nut free where that decided; null as of `chooseLaw`
 */
export function chooseLawAtNut(
	rows: readonly SlotRow[],
	told: Law,
	resolution: number,
): LawChoice | null {
	const through = chooseLaw(rows, told, false, resolution);
	const isRatio = through?.best.clean.fit.shape.kind === "ratio";
	// On equal terms the nut goes before a free ratio, and an odd slot before the nut.
	const allowed = (through?.best.cost ?? Number.POSITIVE_INFINITY) - (isRatio ? 0 : 1);
	if (allowed < OFFSET_COST) return through;
	const free = chooseLaw(rows, told, true, resolution);
	if (!free || free.best.cost + OFFSET_COST > allowed) return through;
	return isNutOut(free, resolution) ? free : through;
}

function isNutOut({ best }: LawChoice, resolution: number): boolean {
	const { fit } = best.clean;
	const fixed = fitCurve(fit.rows, fit.shape, false);
	if (!fixed || fit.df < 1) return false;
	return compare([THROUGH_NUT, FREE_OFFSET], fixed, fit, resolution).wins;
}
