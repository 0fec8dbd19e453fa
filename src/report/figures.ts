import type { Claim } from "../drawing/index.js";
import type { Measured } from "../proof/index.js";
import { fixed } from "../units/index.js";

/** Beyond this no figure is spelled out: the drawing is something else altogether. */
const MOST = 1e7;

/**
 * A figure of a claim to a tenth of a micrometre; angles in degrees with their sign, all else
 * in mm without a unit. "not found" for NaN.
 *
 * @example figureText({ kind: "angle" }, Math.PI / 6) // "30.0000°"
 */
export function figureText({ kind }: Pick<Claim, "kind">, value: number): string {
	if (Number.isNaN(value)) return "not found";
	const shown = kind === "angle" ? (value * 180) / Math.PI : value;
	const text = Math.abs(shown) < MOST ? fixed(shown, 4) : shown > 0 ? "over 1e7" : "under -1e7";
	return kind === "angle" ? `${text}°` : text;
}

/** "1 claim", "22 claims". */
export function counted(n: number, what: string): string {
	return `${n} ${what}${n === 1 ? "" : "s"}`;
}

/** How far off a measured figure is, in its tolerances: above 1 it fails; infinite where nothing was found. */
function badness({ deviation, tolerance }: Measured): number {
	return Number.isFinite(deviation) ? Math.abs(deviation) / tolerance : Number.POSITIVE_INFINITY;
}

/** Worst first; two that were not found are alike. */
export function compareBadness(a: Measured, b: Measured): number {
	const [one, two] = [badness(a), badness(b)];
	return one === two ? 0 : two - one;
}
