import {
	crossingOf,
	fretNumbers,
	lineLength,
	type Neck,
	type StringLine,
} from "../../neck/index.js";
import { MATERIALS, thermalGrowth } from "../../shop/index.js";
import type { Bench, ShopStock } from "../tool.js";

/** One notch of a straightedge, in the frame of its line: x from the line's own nut point. */
export interface Notch {
	readonly fret: number;
	readonly centre: number;
	/** Width on the wood that the fret takes under the straightedge. */
	readonly footprint: number;
	/** Room on either side. */
	readonly clearance: number;
	/** What its clearance budget asks for on either side. */
	readonly budget: number;
	readonly width: number;
}

/** What a notch must have room for at one fret, each term ± mm, added linearly. */
export interface Budget {
	readonly thermal: number;
	readonly moisture: number;
	readonly cutting: number;
	readonly scale: number;
	readonly total: number;
}

/** Side clearance that a notch has where nothing asks for more (common practice, no source). */
export const USUAL_CLEARANCE = 0.75;

/** The budget at a distance from the nut: growth of the straightedge, the cut, the scale's interval. */
export function clearanceBudget(
	bench: Bench,
	{ neck, stock }: Pick<NotchRules, "neck" | "stock">,
	along: number,
	share: number,
): Budget {
	const material = MATERIALS[stock.material];
	const thermal = thermalGrowth(material, along, bench.temperatureSwing);
	const moisture = material.moisture * along;
	const cutting = bench.machine.tolerance;
	const scale = neck.scaleUncertainty * share;
	return { thermal, moisture, cutting, scale, total: thermal + moisture + cutting + scale };
}

export interface NotchRules {
	readonly neck: Neck;
	readonly line: StringLine;
	readonly stock: ShopStock;
	/** Side clearance set outright, or null for the budgeted one. */
	readonly clearance: number | null;
	readonly leastLand: number;
	/** Where the land before the first notch begins; null if there is none. */
	readonly landStart: number | null;
}

export interface Notches {
	readonly notches: readonly Notch[];
	/** Frets whose clearance had to shrink to the budget. */
	readonly shrunk: readonly number[];
	/** Pairs of frets that leave less land than the rules ask for, with what is left. */
	readonly tooTight: readonly { readonly fret: number; readonly land: number }[];
	/** The budget at the last fret, the largest. */
	readonly budget: Budget;
}

/**
 * The notches along a line, each centred on its fret. Where the usual clearance would leave
 * too little land, the frets on both sides of it go down to their budget.
 */
export function notchesAlong(bench: Bench, rules: NotchRules): Notches {
	const size = lineLength(rules.line);
	const drafts = fretNumbers(rules.neck).map((n) => {
		const { along, slant } = crossingOf(rules.neck, rules.line, n);
		const budget = clearanceBudget(bench, rules, Math.abs(along), along / size);
		const footprint =
			bench.wire.crownWidth / Math.cos(slant) + rules.stock.thickness * Math.tan(slant);
		const wanted = rules.clearance ?? Math.max(USUAL_CLEARANCE, budget.total);
		return { fret: n, centre: along, footprint, budget, wanted };
	});
	const tight = new Set<number>();
	const first = drafts[0]!;
	const start = rules.landStart ?? Number.NEGATIVE_INFINITY;
	if (first.centre - first.footprint / 2 - first.wanted - start < rules.leastLand) {
		tight.add(first.fret);
	}
	for (let i = 0; i + 1 < drafts.length; i++) {
		const [a, b] = [drafts[i]!, drafts[i + 1]!];
		const land = b.centre - a.centre - (a.footprint + b.footprint) / 2 - a.wanted - b.wanted;
		if (land < rules.leastLand) tight.add(a.fret).add(b.fret);
	}
	const notches = drafts.map(({ fret, centre, footprint, budget, wanted }): Notch => {
		const mayShrink = rules.clearance === null && tight.has(fret);
		const clearance = mayShrink ? Math.min(wanted, budget.total) : wanted;
		const width = footprint + 2 * clearance;
		return { fret, centre, footprint, clearance, budget: budget.total, width };
	});
	return {
		notches,
		shrunk: drafts.filter((d, i) => notches[i]!.clearance < d.wanted).map((d) => d.fret),
		tooTight: landsOf(notches).filter(({ land }) => land < rules.leastLand - 1e-9),
		budget: drafts.at(-1)!.budget,
	};
}

/** The land before each notch but the first, named by the fret at its far end. */
export function landsOf(notches: readonly Notch[]) {
	return notches.slice(1).map((notch, i) => {
		const before = notches[i]!;
		const land = notch.centre - notch.width / 2 - (before.centre + before.width / 2);
		return { fret: notch.fret, land };
	});
}
