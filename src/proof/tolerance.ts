import type { Claim } from "../drawing/index.js";
import { gap } from "./plane.js";

/**
 * ± by which a simulated cut is judged, mm: its arcs are chords 0.2 µm beside them, it keeps six
 * decimals, and the offset that it undoes may be off by as much; ten times all that.
 */
const SWEPT = 0.002;
/** What the points of an arc may be off by, mm: the last decimal that files keep. */
const LAST_DECIMAL = 1e-6;
/** A simulated cut rounds to that decimal going in and coming out, at an arc's ends as in its middle. */
const SWEPT_SAGITTA = 4 * LAST_DECIMAL;

/**
 * ± by which a claim is judged, in its own unit.
 *
 * @param scatter - how far the places that an arc was fitted to lie beside its circle, mm: arcs
 *   that stand for a stretched machine's ellipse leave it by a fifth of a micrometre
 */
export function toleranceOf(claim: Claim, isSwept: boolean, scatter = 0): number {
	const own = isSwept && claim.operation === "cut" ? Math.max(claim.file, SWEPT) : claim.file;
	if (claim.kind === "angle") {
		// Either end may be off by it, across the slot.
		return (2 * own) / gap(claim.at[1]!, claim.at[2]!);
	}
	if (claim.kind !== "radius") return own;
	const chord = gap(claim.at[0]!, claim.at[2]!);
	// r = chord²/8s + s/2 changes by r/s, nearly, for every micrometre of the sagitta s.
	const sagitta = (chord * chord) / (8 * claim.nominal);
	const least = isSwept && claim.operation === "cut" ? SWEPT_SAGITTA : LAST_DECIMAL;
	return Math.max(own, (Math.max(least, 2 * scatter) * claim.nominal) / sagitta);
}
