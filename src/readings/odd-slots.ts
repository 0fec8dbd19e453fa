import { type CurveFit, fitCurve, type SlotRow } from "./curve-fit.js";
import type { Shape } from "./scale-laws.js";
import { tTails } from "./statistics.js";

/** Chance of calling any slot of a clean board odd (Bonferroni over its slots). */
const FALSE_ALARM = 0.01;

/** Frets of which one may be odd: with more, it is the law that is wrong. */
const FRETS_PER_ODD = 3;

/** A leverage this near to 1 leaves a residual without meaning. */
const OWN_FIT = 1 - 1e-9;

/** A law fitted to the slots that follow it. */
export interface CleanFit {
	readonly fit: CurveFit;
	readonly odd: readonly SlotRow[];
}

/**
 * Residuals over the standard error that they have if their own slot is left out of the fit.
 *
 * e/(s₍ᵢ₎·√(1 − hᵢ)) (Belsley, Kuh, Welsch, Regression Diagnostics, 1980; from memory); s₍ᵢ₎ is never below step/√12.
 *
 * @returns null for a slot that alone decides its own place, and with fewer than 2 degrees of freedom
 */
export function studentised(fit: CurveFit, resolution: number): (number | null)[] {
	const { residuals, leverage } = fit.linear;
	const floor = resolution ** 2 / 12;
	return residuals.map((e, i) => {
		const own = 1 - leverage[i]!;
		if (fit.df < 2 || leverage[i]! > OWN_FIT) return null;
		const without = Math.max(0, fit.rss - (e * e) / own) / (fit.df - 1);
		return e / Math.sqrt(Math.max(without, floor) * own);
	});
}

/**
 * A law fitted without the slots that are out.
 *
 * Generalised extreme studentised deviates (B. Rosner, Technometrics 25, 1983, 165-172; from memory): the worst slot is left out again
 * and again, up to one more than a third; those up to the last significant one are odd. Going on
 * past a slot that is not significant keeps two odd slots from hiding each other.
 *
 * @returns null if the law cannot be fitted, or more than a third of the slots would be odd
 */
export function fitWithoutOdd(
	rows: readonly SlotRow[],
	shape: Shape | ((rows: readonly SlotRow[]) => CurveFit | null),
	isOffset: boolean,
	resolution: number,
): CleanFit | null {
	const fitOf =
		typeof shape === "function" ? shape : (r: readonly SlotRow[]) => fitCurve(r, shape, isOffset);
	const first = fitOf(rows);
	if (!first) return null;
	const most = Math.floor(rows.length / FRETS_PER_ODD);
	const out: SlotRow[] = [];
	let fit = first;
	let clean: CleanFit = { fit, odd: [] };
	while (out.length <= most) {
		const worst = worstOf(fit, resolution);
		if (!worst) break;
		const rest = fit.rows.filter((r) => r !== worst.row);
		const next = fitOf(rest);
		if (!next) break;
		out.push(worst.row);
		fit = next;
		if (worst.isSignificant) clean = { fit, odd: [...out] };
	}
	return clean.odd.length > most ? null : clean;
}

function worstOf(
	fit: CurveFit,
	resolution: number,
): { readonly row: SlotRow; readonly isSignificant: boolean } | null {
	const t = studentised(fit, resolution).map((x) => Math.abs(x ?? 0));
	const size = Math.max(...t);
	if (size === 0) return null;
	const chance = tTails(size, fit.df - 1) * fit.rows.length;
	return { row: fit.rows[t.indexOf(size)]!, isSignificant: chance < FALSE_ALARM };
}
