import { crossingOf, fretLine, type Neck } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import {
	type FretHeightsReading,
	fretProblems,
	path,
	settingProblems,
	woodProblems,
} from "./fret-height-checks.js";
import { leastSquares } from "./least-squares.js";
import { estimate } from "./statistics.js";
import type { Relief } from "./straightness.js";

export type { FretHeightsReading, FretReading } from "./fret-height-checks.js";

/** One fret's top. */
export interface FretTop {
	readonly fret: number;
	/** On the centre line, or along the line of the straightness readings where there are some. */
	readonly x: number;
	/** Elevation of the wood over the chord of the straightness readings: −relief, 0 without. */
	readonly wood: number;
	/** Crown heights: mean, least and greatest. */
	readonly crown: number;
	readonly least: number;
	readonly greatest: number;
	/** Greatest less least: what play has worn, or uneven seating. */
	readonly dip: number;
	/** Where across the least was read; null where it was not told. */
	readonly dipAt: number | null;
	/** wood + crown. */
	readonly elevation: number;
	readonly standard: number;
	/** Elevation less the fitted line (with the wanted relief in it). */
	readonly residual: number;
	/** Level within what the readings can tell, or beyond it low or high. */
	readonly call: "level" | "low" | "high";
}

/** All tops against one fitted line. */
export interface FretHeights {
	/** In order of the frets. */
	readonly tops: readonly FretTop[];
	/** Rise of the fitted line per mm toward the saddle. */
	readonly slope: Estimate;
	/** Scatter of the tops about it. */
	readonly scatter: number;
	readonly relief: number;
	readonly leastCrown: number;
	readonly resolution: number;
	readonly notes: readonly Problem[];
}

/** Crown that should be left to play on and to dress once more (common practice, no source). */
export const LEAST_CROWN = 0.8;
/** How far a wanted relief of 1 lies below the chord of the first and last place: a parabola. */
export function dipOfRelief(x: number, first: number, last: number): number {
	const share = (x - first) / (last - first);
	return 4 * share * (1 - share);
}

type Seated = Omit<FretTop, "residual" | "call">;

function topAt(
	fret: number,
	reading: FretHeightsReading,
	neck: Neck,
	relief: Relief | null,
): Seated {
	const own = reading.frets.filter((read) => read.fret === fret);
	const read = own.flatMap(({ heights, across }) =>
		heights.map((height, k) => ({ height, at: across?.[k] ?? null })),
	);
	const heights = read.map(({ height }) => height);
	const crown = heights.reduce((sum, height) => sum + height, 0) / heights.length;
	const [least, greatest] = [Math.min(...heights), Math.max(...heights)];
	const x = relief ? crossingOf(neck, relief.line, fret).along : fretLine(neck, fret).x;
	const bent = relief?.at(x);
	return {
		fret,
		x,
		wood: bent ? 0 - bent.value : 0,
		crown,
		least,
		greatest,
		dip: greatest - least,
		dipAt: read.find(({ height }) => height === least)!.at,
		elevation: crown - (bent?.value ?? 0),
		standard: Math.hypot(reading.resolution / Math.sqrt(12 * heights.length), bent?.standard ?? 0),
	};
}

/** A top is called low or high where it leaves the line by more than this, mm. */
export function limitOf(standard: number, resolution: number): number {
	return Math.max(resolution, 2 * standard);
}

/**
 * Tops of the frets (wood + crown) against one line fitted by least squares, the wanted relief in it.
 *
 * A top within the resolution or two standard errors of the line, whichever is more, is level: the
 * readings cannot tell more. One line over all frets read: a fall-away or a rising tongue shows as
 * what it is, frets out of line.
 *
 * @param wood - from readings on the wood, that reach over every fret read; null takes the wood as
 *   straight, and says so
 * @returns the tops, or what is wrong with the readings, paths from `fret-heights`
 */
export function fitFretHeights(
	reading: FretHeightsReading,
	neck: Neck,
	wood: Relief | null,
): FretHeights | Problem[] {
	const wrong = [
		...settingProblems(reading),
		...reading.frets.flatMap((fret) => fretProblems(fret, neck)),
	];
	if (wrong.length > 0) return wrong;
	const frets = [...new Set(reading.frets.map(({ fret }) => fret))].sort((a, b) => a - b);
	if (frets.length < 3) return [problem("too-few-frets", path("heights"), { count: frets.length })];
	const off = woodProblems(reading, neck, wood);
	if (off.length > 0) return off;

	const { resolution, relief = 0, leastCrown = LEAST_CROWN } = reading;
	const seated = frets.map((fret) => topAt(fret, reading, neck, wood));
	const [first, last] = [seated[0]!.x, seated.at(-1)!.x];
	const middle = seated.reduce((sum, { x }) => sum + x, 0) / seated.length;
	const fit = leastSquares(
		seated.map(({ x }) => [1, x - middle]),
		seated.map(({ x, elevation }) => elevation + relief * dipOfRelief(x, first, last)),
	);
	const floor = resolution ** 2 / 12;
	const variance = Math.max(fit.rss / fit.df, floor);
	const spread = seated.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
	const tops = seated.map((top, i) => {
		const residual = fit.residuals[i]!;
		const within = Math.abs(residual) <= limitOf(top.standard, resolution) + 1e-9;
		const call: FretTop["call"] = within ? "level" : residual < 0 ? "low" : "high";
		return { ...top, residual, call };
	});
	const df = variance > floor ? fit.df : Number.POSITIVE_INFINITY;
	return {
		tops,
		slope: estimate(fit.coefficients[1]!, Math.sqrt(variance / spread), df),
		scatter: Math.sqrt(variance),
		relief,
		leastCrown,
		resolution,
		notes: notesOf(reading, tops, wood),
	};
}

/** What these heights leave open. */
function notesOf(
	{ resolution }: FretHeightsReading,
	tops: readonly FretTop[],
	wood: Relief | null,
): Problem[] {
	const found: Problem[] = [];
	if (!wood) found.push(note("wood-taken-straight", path()));
	const worn = tops.filter(({ dip }) => dip > resolution + 1e-9);
	if (worn.length > 0) {
		const deepest = worn.reduce((a, b) => (b.dip > a.dip ? b : a));
		const facts = {
			frets: worn.map(({ fret }) => String(fret)),
			deepest: deepest.fret,
			dip: deepest.dip,
			resolution,
		};
		found.push(note("crowns-dipped", path("heights"), facts));
	}
	const kinds = new Set(tops.flatMap(({ least, greatest }) => [least, greatest])).size;
	if (kinds === 1)
		found.push(note("crowns-all-equal", path("heights"), { height: tops[0]!.crown }));
	return found;
}
