import type { Problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { highestLineBetween, highestLineUnder, ROUNDING } from "./dress-line.js";
import { dipOfRelief, type FretHeights, type FretTop, limitOf } from "./fret-heights.js";

/** What dressing does to one fret. */
export interface DressedFret {
	readonly fret: number;
	readonly x: number;
	/** Elevation of the dressed top. */
	readonly target: number;
	/** Taken off at the crown's highest place. */
	readonly off: number;
	/** Crown height over the wood afterwards. */
	readonly left: number;
	readonly standard: number;
	/** Whether less than the least crown would be left. */
	readonly under: boolean;
}

/** The dressing that takes least metal and leaves every top on one curve. */
export interface DressPlan {
	readonly frets: readonly DressedFret[];
	/** The frets that hold the curve down: there nothing is below it to take. */
	readonly holding: readonly number[];
	readonly most: { readonly fret: number; readonly off: number };
	/** Sum of what comes off all frets. */
	readonly total: number;
	readonly under: readonly number[];
	readonly leastCrown: number;
	readonly relief: number;
	/** A suggestion from the figures above, no order. */
	readonly suggestion: "leave" | "dress" | "re-fret";
	readonly notes: readonly Problem[];
}

/** Line and plan over some tops; the wanted relief keeps its ends where all tops have theirs. */
function planOver(tops: readonly FretTop[], heights: FretHeights, leastCrown: number) {
	const { relief } = heights;
	const [first, last] = [heights.tops[0]!.x, heights.tops.at(-1)!.x];
	const below = (x: number) => relief * dipOfRelief(x, first, last);
	const spots = tops.map(({ x, wood, least }) => ({
		x,
		height: wood + least + below(x),
		least: wood + leastCrown + below(x),
	}));
	const enough = highestLineBetween(spots);
	const line = enough ?? highestLineUnder(spots);
	const frets = tops.map(({ fret, x, wood, greatest, standard }): DressedFret => {
		const target = line.height + line.slope * (x - line.x) - below(x);
		const left = target - wood;
		const under = left < leastCrown - ROUNDING;
		return { fret, x, target, off: wood + greatest - target, left, standard, under };
	});
	return { frets, enough: enough !== null };
}

const mostOff = (frets: readonly DressedFret[]) => frets.reduce((a, b) => (b.off > a.off ? b : a));
const totalOff = (frets: readonly DressedFret[]) => frets.reduce((sum, { off }) => sum + off, 0);

/**
 * Least metal to take for tops on one line, or on one line with the wanted relief in it (a parabola,
 * lowest half way between the first and the last fret read).
 *
 * Nothing can be added, so the curve stays at or below the lowest place of every top; of all such
 * curves that leave the least crown on every fret it is the one with the least sum taken off. Where
 * none leaves it, it is the one with the least sum, and the frets that fall under are listed.
 * Suggested is: `re-fret` where some fall under; else `leave` where no fret has more to lose than the
 * readings can tell; else `dress`. A fall-away past the body joint is not planned: leave those frets out.
 */
export function planDressing(heights: FretHeights): DressPlan {
	const { tops, leastCrown, relief, resolution } = heights;
	const { frets } = planOver(tops, heights, leastCrown);
	const most = mostOff(frets);
	const under = frets.filter((fret) => fret.under).map(({ fret }) => fret);
	const holding = frets.filter(
		({ target }, i) => tops[i]!.wood + tops[i]!.least - target < ROUNDING,
	);
	const tells = frets.some(({ off, standard }) => off > limitOf(standard, resolution) + ROUNDING);
	return {
		frets,
		holding: holding.map(({ fret }) => fret),
		most: { fret: most.fret, off: most.off },
		total: totalOff(frets),
		under,
		leastCrown,
		relief,
		suggestion: under.length > 0 ? "re-fret" : tells ? "dress" : "leave",
		notes: [...undecided(heights), ...lowFret(heights, frets)],
	};
}

const PATH = ["fret-heights", "heights"];

/** Whether a little more or less crown turns the suggestion. */
function undecided(heights: FretHeights): Problem[] {
	const { tops, leastCrown, resolution } = heights;
	const margin = Math.max(...tops.map(({ standard }) => limitOf(standard, resolution)));
	const [more, less] = [leastCrown + margin, leastCrown - margin].map((crown) =>
		planOver(tops, heights, crown),
	);
	if (more!.enough === less!.enough) return [];
	const short = more!.frets.filter(({ under }) => under).map(({ fret }) => String(fret));
	return [note("crown-left-undecided", PATH, { frets: short, least: leastCrown, margin })];
}

/** A fret without which less than this share of the metal comes off is worth a word. */
const MUCH_LESS = 0.5;

/** The one fret that costs all others much of their metal. */
function lowFret(heights: FretHeights, frets: readonly DressedFret[]): Problem[] {
	const { tops, leastCrown, resolution } = heights;
	const total = totalOff(frets);
	if (tops.length < 4 || !(total > resolution)) return [];
	const without = tops.map((top) => {
		const others = tops.filter((other) => other !== top);
		return {
			fret: top.fret,
			// A high fret left out takes its own metal with it; only a low one frees the others.
			before: total - frets.find(({ fret }) => fret === top.fret)!.off,
			after: totalOff(planOver(others, heights, leastCrown).frets),
		};
	});
	const best = without.reduce((a, b) => (b.after < a.after ? b : a));
	if (best.after >= MUCH_LESS * best.before) return [];
	return [note("one-low-fret", PATH, { fret: best.fret, total: best.before, without: best.after })];
}
