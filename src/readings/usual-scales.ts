import { MM_PER_INCH } from "../units/index.js";
import type { Estimate } from "./estimate.js";

/** A usual scale length near a fitted one. */
export interface UsualScale {
	readonly name: string;
	/** mm. */
	readonly length: number;
	/** Usual less fitted, mm. */
	readonly off: number;
}

/** A usual length this near is named even outside the interval, mm. */
const NEAR = 1;

/** Usual scale lengths, in; ends of the range where a range is usual. Common practice, no source. */
const USUAL_IN: readonly (readonly [string, number])[] = [
	["ukulele, short end", 13],
	["mandolin", 13.875],
	["mandolin", 14],
	["ukulele, long end", 20],
	["short guitar", 24.75],
	["guitar", 25],
	["long guitar", 25.5],
	["classical guitar", 650 / MM_PER_INCH],
	["banjo", 26.25],
	["baritone, short end", 27],
	["baritone, long end", 30],
	["short bass", 30],
	["bass", 32],
	["bass", 34],
	["long bass", 35],
];

/**
 * Usual scale lengths within a fitted one's interval or 1 mm of it, nearest first. For information: a fit is never
 * moved onto one.
 */
export function usualScales(scale: Estimate): UsualScale[] {
	return USUAL_IN.map(([name, inches]) => {
		const length = inches * MM_PER_INCH;
		return { name, length, off: length - scale.value };
	})
		.filter((u) => Math.abs(u.off) <= NEAR || (u.length >= scale.low && u.length <= scale.high))
		.sort((a, b) => Math.abs(a.off) - Math.abs(b.off));
}
