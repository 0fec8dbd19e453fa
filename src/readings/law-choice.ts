import type { Law } from "../neck/index.js";
import { type CurveFit, fitCurve, type SlotRow } from "./curve-fit.js";
import { bestJoin } from "./join-search.js";
import { type CleanFit, fitWithoutOdd } from "./odd-slots.js";
import { fixedShapes, type LawKind, mixture, RATIO, type Shape } from "./scale-laws.js";
import { fTail } from "./statistics.js";

/** Chance of taking a richer model where the simpler one is true. */
export const RICHER_AT = 0.01;

/** One F-test of a model against a richer one that contains it. */
export interface Comparison {
	readonly simpler: string;
	readonly richer: string;
	readonly f: number;
	readonly df1: number;
	readonly df2: number;
	/** Chance of such an F if the simpler model is true, times the joins searched. */
	readonly p: number;
	/** Whether the richer model is taken: p below 1 %. */
	readonly wins: boolean;
}

/** One law with the slots that it calls odd, and whether any richer law beats it. */
export interface Explanation {
	readonly clean: CleanFit;
	readonly isAdequate: boolean;
	/** What it needs beyond a fixed law: free parameters and odd slots. */
	readonly cost: number;
	readonly comparisons: readonly Comparison[];
	/** Laws that too few readings left untested. */
	readonly untested: readonly LawKind[];
}

/** The law that the readings follow, and those that they follow alike. */
export interface LawChoice {
	readonly best: Explanation;
	/** Other fixed laws that the same slots fit as well. */
	readonly alike: readonly Explanation[];
}

/** Shares of the string that differ by less are the same place: a hair of 1e-6 mm. */
const SAME = 1e-9;

/** What a law adds to a fixed one: a ratio; a second ratio and its join. */
const EXTRA = { ratio: 1, "two-ratios": 3 } as const;

/**
 * F-test of a model against one that contains it; the residual variance is never taken below step²/12.
 *
 * @param searched - how many richer models were tried for the best (Bonferroni)
 */
export function compare(
	names: readonly [string, string],
	simpler: CurveFit,
	richer: { readonly rss: number; readonly df: number },
	resolution: number,
	searched = 1,
): Comparison {
	const df1 = simpler.df - richer.df;
	const variance = Math.max(richer.rss / richer.df, resolution ** 2 / 12);
	const f = Math.max(0, simpler.rss - richer.rss) / df1 / variance;
	const p = Math.min(1, fTail(f, df1, richer.df) * searched);
	return { simpler: names[0], richer: names[1], f, df1, df2: richer.df, p, wins: p < RICHER_AT };
}

/**
 * The simplest law that no richer one beats, with the fewest slots called odd.
 *
 * Every law is given its odd slots first, and a law is weighed together with them: an odd slot counts as much as a free
 * ratio. So a wrong law does not pass for odd slots, nor an odd slot for another law.
 *
 * @returns null if under every law more than a third of the slots would be odd, or too few are read
 */
export function chooseLaw(
	rows: readonly SlotRow[],
	told: Law,
	isOffset: boolean,
	resolution: number,
): LawChoice | null {
	const explain = (shape: Shape | null) => explanation(rows, shape, told, isOffset, resolution);
	const fixed = fixedShapes(told).flatMap((shape) => explain(shape) ?? []);
	const found = fixed.filter((e) => e.isAdequate);
	if (leastCost(found) > 0) {
		const ratio = explain(RATIO);
		if (ratio?.isAdequate) found.push(ratio);
	}
	if (leastCost(found) >= EXTRA["two-ratios"]) {
		const two = explain(null);
		if (two) found.push(two);
	}
	const least = found.filter((e) => e.cost === leastCost(found));
	const best = bestOf(least);
	if (!best) return null;
	const isFixed = (e: Explanation) => e.clean.fit.shape.start.length === 0;
	return { best, alike: isFixed(best) ? least.filter((e) => e !== best && isFixed(e)) : [] };
}

function leastCost(found: readonly Explanation[]): number {
	return Math.min(Number.POSITIVE_INFINITY, ...found.map((e) => e.cost));
}

/** The told law before another fixed one; otherwise the smaller sum of squares. */
function bestOf(least: readonly Explanation[]): Explanation | undefined {
	const isTold = (e: Explanation) => e.clean.fit.shape.kind === "told";
	const isRatio = (e: Explanation) => e.clean.fit.shape.kind === "ratio";
	const told = least.find(isTold);
	const rivals = told ? least.filter((e) => e === told || isRatio(e)) : least;
	return [...rivals].sort((a, b) => a.clean.fit.rss - b.clean.fit.rss)[0];
}

/** A law (null: two ratios) with its odd slots, tested against the richer laws on the rest. */
function explanation(
	rows: readonly SlotRow[],
	shape: Shape | null,
	told: Law,
	isOffset: boolean,
	resolution: number,
): Explanation | null {
	const clean = fitWithoutOdd(rows, shape ?? ((r) => twoFit(r, isOffset)), isOffset, resolution);
	if (!clean) return null;
	const { kind } = clean.fit.shape;
	const extra = kind === "ratio" || kind === "two-ratios" ? EXTRA[kind] : 0;
	const tests = testsOf(clean.fit, told, resolution);
	const isAdequate = kind === "two-ratios" || !tests.comparisons.some((c) => c.wins);
	return { clean, isAdequate, cost: extra + clean.odd.length, ...tests };
}

function twoFit(rows: readonly SlotRow[], isOffset: boolean): CurveFit | null {
	const single = fitCurve(rows, RATIO, isOffset);
	return single && (bestJoin(single)?.fit ?? null);
}

/** The F-tests that a fit must stand: against the ratio, two ratios, and a listed law's mixture. */
function testsOf(
	fit: CurveFit,
	told: Law,
	resolution: number,
): Pick<Explanation, "comparisons" | "untested"> {
	const { kind } = fit.shape;
	const ratio = kind === "ratio" ? fit : fitCurve(fit.rows, RATIO, fit.isOffset);
	if (!ratio || ratio.df < 1) return { comparisons: [], untested: ["ratio", "two-ratios"] };
	if (told.kind === "listed" && kind === "told")
		return { comparisons: [mixed("told", fit, ratio, told, resolution)], untested: [] };
	const comparisons: Comparison[] = [];
	if (kind !== "ratio" && kind !== "two-ratios")
		comparisons.push(compare([kind, "ratio"], fit, ratio, resolution));
	if (told.kind === "listed" && ratio.df > 1)
		comparisons.push(mixed("ratio", ratio, ratio, told, resolution));
	if (comparisons.some((c) => c.wins)) return { comparisons, untested: [] };
	const two = bestJoin(ratio);
	if (!two) return { comparisons, untested: ["two-ratios"] };
	comparisons.push(compare(["ratio", "two-ratios"], ratio, two.fit, resolution, two.searched));
	return { comparisons, untested: [] };
}

/** A fit against the mixture of the told list and the free ratio, which holds one parameter more than the ratio. */
function mixed(
	name: string,
	fit: CurveFit,
	ratio: CurveFit,
	told: Law,
	resolution: number,
): Comparison {
	const list = fixedShapes(told)[0]!;
	const shape = mixture(list, ratio.free[0]!);
	const isSame = fit.rows.every(
		(r) => Math.abs(list.share(r.fret, []) - ratio.shape.share(r.fret, ratio.free)) < SAME,
	);
	const both = isSame ? null : fitCurve(fit.rows, shape, fit.isOffset);
	const df = ratio.df - 1;
	const rss = Math.min(both?.rss ?? Number.POSITIVE_INFINITY, fit.rss);
	if (df < 1 || isSame)
		return { simpler: name, richer: "mixture", f: 0, df1: 1, df2: df, p: 1, wins: false };
	return compare([name, "mixture"], fit, { rss, df }, resolution);
}
