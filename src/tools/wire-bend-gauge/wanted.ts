import { radiusFromSagitta } from "../../geometry/index.js";
import { fretNumbers } from "../../neck/index.js";
import { trimmed } from "../../units/index.js";
import { crownTop } from "../crown-top.js";
import type { Bench } from "../tool.js";
import { longestFret } from "./longest.js";
import type { BendSettings } from "./settings.js";

/** One gauge to be made. */
export interface Bend {
	/** Of the wire over its crown, mm. */
	readonly radius: number;
	/** What it is bent for: "all frets", "fret 7". */
	readonly serves: string;
	/** By how much: "15 % tighter", "rise 0.3 mm". */
	readonly by: string;
	/** Of the board along the fret, mm; null on a flat one. */
	readonly board: number | null;
	/** For the part's name. */
	readonly tag: string;
}

/** Over-bend of wire, percent of the board's radius: between 10 and 25 (common practice, no source). */
const USUAL_OVER_BEND = 15;
/** Rise of wire over the width of a flat board, mm (common practice, no source). */
const USUAL_RISE = 0.3;

/**
 * Radius over the crown of wire that is bent tighter than the board: the board's less so many
 * percent, and the crown's height, since crown and tang are bent about one centre.
 *
 * @example overBent(304.8, 15, 1.3) // 260.38
 */
export function overBent(board: number, percent: number, crownHeight: number): number {
	return board * (1 - percent / 100) + crownHeight;
}

/** The gauges asked for: one for each fret that is named, else one for all wire. */
export function wantedBends(bench: Bench, s: BendSettings): Bend[] {
	const { neck, wire } = bench;
	const named = s["bend-for"] && [...new Set(s["bend-for"])];
	if (neck.radius === "flat") {
		const rise = s.rise ?? USUAL_RISE;
		const radius = radiusFromSagitta(longestFret(neck), rise);
		const by = `rise ${trimmed(rise, 3)} mm`;
		return [{ radius, serves: "all frets", by, board: null, tag: "" }];
	}
	const percent = s["over-bend"] ?? USUAL_OVER_BEND;
	const bent = (n: number) => {
		const { board } = crownTop(neck, wire, n)!;
		return { board, radius: overBent(board, percent, wire.crownHeight) };
	};
	const by = `${trimmed(percent, 2)} % tighter`;
	if (named) {
		return named.map((n) => ({ ...bent(n), serves: `fret ${n}`, by, tag: `fret-${n}` }));
	}
	const tightest = fretNumbers(neck)
		.map(bent)
		.reduce((a, b) => (b.radius < a.radius ? b : a));
	return [{ ...tightest, serves: "all frets", by, tag: "" }];
}
