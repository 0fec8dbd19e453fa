/**
 * How frets divide a string: the frequency ratio of fret n to the open string.
 *
 * `listed` holds the ratio of frets 1, 2, 3 …; if its last entry is an octave (2) the list
 * repeats above it.
 */
export type Law =
	| { readonly kind: "equal"; readonly steps: number }
	| { readonly kind: "rule-of-18" }
	| { readonly kind: "listed"; readonly ratios: readonly number[] };

/** Twelve equal steps to the octave. */
export const TWELVE: Law = { kind: "equal", steps: 12 };

/** How far a listed octave may be from 2 and still repeat. */
const OCTAVE_SLACK = 1e-9;

/** The largest fret that a law gives; infinite unless it is a list that does not repeat. */
export function highestFret(law: Law): number {
	if (law.kind !== "listed" || repeats(law.ratios)) return Number.POSITIVE_INFINITY;
	return law.ratios.length;
}

function repeats(ratios: readonly number[]): boolean {
	const last = ratios.at(-1);
	return last !== undefined && Math.abs(last - 2) < OCTAVE_SLACK;
}

/**
 * Share of the string between the nut and fret n: 0 at the nut, 1 at the saddle.
 *
 * Equal steps: 1 − 2^(−n/m). Rule of 18: 1 − (17/18)^n (V. Galilei, Dialogo, 1581).
 * Computed from the nut, never from fret to fret: errors would add up. Between listed frets
 * the ratio is interpolated in cents.
 *
 * @param n - 0 or more, fractions allowed, at most `highestFret(law)`
 * @throws RangeError for a fret that the law does not have
 * @example fretFraction(TWELVE, 12) // 0.5
 */
export function fretFraction(law: Law, n: number): number {
	if (!(n >= 0) || n > highestFret(law)) throw new RangeError(`the division has no fret ${n}`);
	if (law.kind === "equal") return 1 - 2 ** (-n / law.steps);
	if (law.kind === "rule-of-18") return 1 - (17 / 18) ** n;
	return 1 - 1 / listedRatio(law.ratios, n);
}

function listedRatio(ratios: readonly number[], n: number): number {
	const whole = Math.floor(n);
	const part = n - whole;
	const at = (k: number): number => {
		if (k === 0) return 1;
		const octave = Math.floor((k - 1) / ratios.length);
		return 2 ** octave * ratios[(k - 1) % ratios.length]!;
	};
	if (part === 0) return at(whole);
	return at(whole) ** (1 - part) * at(whole + 1) ** part;
}

/**
 * Cents by which a slot error sounds: (1200/ln 2)·δ/(L·(1 − u)), first order.
 *
 * @param error - how far the slot is off toward the saddle, mm
 * @param sounding - length of the sounding string, fret to saddle, mm, greater than 0
 * @example centsOfError(0.1, 647.7 / 2) // 0.5346
 */
export function centsOfError(error: number, sounding: number): number {
	return ((1200 / Math.LN2) * error) / sounding;
}
