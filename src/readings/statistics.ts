import jStat from "jstat";
import type { Estimate } from "./estimate.js";

/** Chance that a value falls below the upper end of a two-sided 95 % interval. */
const UPPER_END = 0.975;

/**
 * The value below which Student's t falls with chance p; the normal one for infinite df.
 *
 * @param p - between 0 and 1, both excluded
 * @param df - degrees of freedom, greater than 0, or infinite
 * @throws RangeError outside these ranges
 * @example tQuantile(0.975, 10) // 2.2281…
 */
export function tQuantile(p: number, df: number): number {
	if (!(p > 0 && p < 1)) throw new RangeError(`no quantile at ${p}`);
	if (!(df > 0)) throw new RangeError(`no t distribution with ${df} degrees of freedom`);
	return df === Number.POSITIVE_INFINITY ? jStat.normal.inv(p, 0, 1) : jStat.studentt.inv(p, df);
}

/**
 * Chance that F with d1 and d2 degrees of freedom exceeds f.
 *
 * I(d2/2, d1/2) at d2/(d2 + d1·f): the upper tail itself, so that small chances keep their digits.
 *
 * @param f - 0 or more; infinite gives 0
 * @param d1 - greater than 0
 * @param d2 - greater than 0
 * @throws RangeError outside these ranges
 * @example fTail(4.9646, 1, 10) // 0.05
 */
export function fTail(f: number, d1: number, d2: number): number {
	if (!(f >= 0)) throw new RangeError(`F cannot be ${f}`);
	if (!(d1 > 0 && d2 > 0)) throw new RangeError(`no F distribution with ${d1} and ${d2}`);
	if (f === Number.POSITIVE_INFINITY) return 0;
	return jStat.ibeta(d2 / (d2 + d1 * f), d2 / 2, d1 / 2);
}

/**
 * Chance that |t| with df degrees of freedom exceeds a value.
 *
 * @param t - either sign
 * @param df - greater than 0, finite
 * @example tTails(2.2281, 10) // 0.05
 */
export function tTails(t: number, df: number): number {
	return fTail(t * t, 1, df);
}

/**
 * A value with its 95 % interval by Student's t.
 *
 * @param standard - standard error, 0 or more, in the value's unit
 * @param df - degrees of freedom behind the standard error; infinite where it is known
 * @throws RangeError for a negative standard error
 * @example estimate(650, 0.1, Infinity).high // 650.196
 */
export function estimate(value: number, standard: number, df: number): Estimate {
	if (!(standard >= 0)) throw new RangeError(`no standard error of ${standard}`);
	const reach = tQuantile(UPPER_END, df) * standard;
	return { value, standard, low: value - reach, high: value + reach };
}
