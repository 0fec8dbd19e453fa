import { type CurveFit, fitCurve, placeOf, varianceOf } from "./curve-fit.js";
import type { LawChoice } from "./law-choice.js";
import type { LawKind, Shape } from "./scale-laws.js";

/** Laws that the readings fit alike, and the frets that would tell them apart. */
export interface Undecided {
	readonly laws: readonly LawKind[];
	/** Frets to read; null if none on the neck would decide at this reading error. */
	readonly read: { readonly from: number; readonly to: number } | null;
}

/**
 * Sum of squares over the variance at which two laws are told apart for good: an F of 1 and many degrees of freedom
 * rejects at 1 % from 6.6; with 16 it does so on over nine boards in ten.
 */
const DECIDING = 16;

/** Share of the unread frets that is recommended at least: one slot may be odd. */
const LEAST_SHARE = 1 / 4;

/**
 * The laws that fit alike and the frets that would tell the chosen one from the next; null if one law is chosen.
 *
 * @param frets - the highest fret of the neck
 */
export function undecidedOf(
	{ best, alike }: LawChoice,
	frets: number,
	resolution: number,
): Undecided | null {
	const rival = alike[0];
	if (!rival) return null;
	const fits = [best, ...alike].map((e) => e.clean.fit);
	return {
		laws: fits.map((f) => f.shape.kind as LawKind),
		read: decidingFrets(best.clean.fit, rival.clean.fit.shape, frets, resolution),
	};
}

/**
 * The frets to read so that a fit's rival would be rejected, were the fit true: the last quarter of the unread frets or
 * the first one, whichever decides, and more of them until one does.
 */
function decidingFrets(
	fit: CurveFit,
	rival: Shape,
	frets: number,
	resolution: number,
): { readonly from: number; readonly to: number } | null {
	const enough = DECIDING * varianceOf(fit, resolution);
	const truth = (fret: number) =>
		fit.lengths.map((_, side) => ({ fret, at: placeOf(fit, fret, side), side }));
	const rows = fit.rows.map((r) => ({ ...r, at: placeOf(fit, r.fret, r.side) }));
	const isRead = new Set(fit.rows.map((r) => r.fret));
	const unread = Array.from({ length: frets }, (_, i) => i + 1).filter((n) => !isRead.has(n));
	const decides = (added: readonly number[]) => {
		const refit = fitCurve([...rows, ...added.flatMap(truth)], rival, fit.isOffset);
		return refit !== null && refit.rss >= enough;
	};
	for (let n = Math.max(1, Math.ceil(unread.length * LEAST_SHARE)); n <= unread.length; n++) {
		const range = [unread.slice(-n), unread.slice(0, n)].find(decides);
		if (range) return { from: range[0]!, to: range.at(-1)! };
	}
	return null;
}
