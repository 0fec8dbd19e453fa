import { edgePoint, fretLine, type Neck, type Strings, saddleLine } from "../../neck/index.js";
import type { End, LayoutSettings } from "./settings.js";

/**
 * Distances of all strings' middles from the outer bass string's, bass to treble, mm.
 *
 * Between the outer middles lie a fixed part of every step and an equal rest: the fixed part of
 * a step within a course is the pair gap, of any other half of either string's diameter. With
 * diameters of 0 the middles are equally spaced, else the gaps are.
 *
 * @param diameters - of all strings, bass to treble
 * @example stringCentres({ count: 3, pairGap: 0 }, 20, [0.4, 0.2, 0.2]) // [0, 10.05, 20]
 */
export function stringCentres(
	{ count, pairGap }: Pick<Strings, "count" | "pairGap">,
	spread: number,
	diameters: readonly number[],
): number[] {
	const steps = diameters.slice(1).map((diameter, i) => {
		const isPair = pairGap > 0 && i % 2 === 0;
		return { isPair, fixed: isPair ? pairGap : (diameter + diameters[i]!) / 2 };
	});
	const rest = freeGap({ count, pairGap }, spread, diameters);
	let at = 0;
	return [0, ...steps.map(({ isPair, fixed }) => (at += fixed + (isPair ? 0 : rest)))];
}

/** The air between neighbouring strings or courses that is left to share, mm; below 0 if they overlap. */
export function freeGap(
	{ count, pairGap }: Pick<Strings, "count" | "pairGap">,
	spread: number,
	diameters: readonly number[],
): number {
	if (count === 1) return 0;
	const between = diameters.slice(1).map((d, i) => ({ half: (d + diameters[i]!) / 2, i }));
	const own = pairGap > 0 ? between.filter(({ i }) => i % 2 === 1) : between;
	const taken = own.reduce((sum, { half }) => sum + half, pairGap > 0 ? count * pairGap : 0);
	return (spread - taken) / (count - 1);
}

/** How many strings there are, both of every course counted. */
export function stringCount({ count, pairGap }: Strings): number {
	return pairGap > 0 ? 2 * count : count;
}

/** The strings at one end, mm along its line from the centre line: bass below 0, treble above. */
export interface Layout {
	readonly end: End;
	/** Bass to treble. */
	readonly strings: readonly { readonly n: number; readonly at: number }[];
	/** The board's edges; at the saddle, where there is no board, the ends of the strip. */
	readonly from: number;
	readonly to: number;
	/** Air between neighbouring strings or courses; between their middles where those are alike. */
	readonly gap: number;
}

/** Strip beyond the outer strings at the saddle, mm. */
const BEYOND = 6;

/** The strings' places at the nut or the saddle, along it. */
export function layoutAt(neck: Neck, strings: Strings, s: LayoutSettings, end: End): Layout {
	const line = end === "nut" ? fretLine(neck, 0) : saddleLine(neck);
	const stretch = Math.hypot(1, line.lean);
	const edges = boardEdges(neck);
	const given = outerSpan(strings, s, edges, end, stretch);
	const count = stringCount(strings);
	const diameters = (s["string-gauges"] ?? []).toReversed();
	const sizes = s["string-spacing"] === "gaps" ? diameters : new Array<number>(count).fill(0);
	const spread = (given.to - given.from) / stretch;
	const all = stringCentres(strings, spread, sizes).map((x) => x * stretch);
	// One course has no spread: its middle is the given ones' middle.
	const start = strings.count === 1 ? (given.from + given.to - all.at(-1)!) / 2 : given.from;
	return {
		end,
		strings: all.map((x, i) => ({ n: count - i, at: start + x })),
		from: end === "nut" ? -edges.bass : start - BEYOND,
		to: end === "nut" ? edges.treble : start + all.at(-1)! + BEYOND,
		gap: freeGap(strings, spread, sizes) * stretch,
	};
}

/** From the centre line to the board's edges along the nut's actual face, mm. */
function boardEdges(neck: Neck) {
	const nut = fretLine(neck, 0);
	const face = { ...nut, x: nut.x + neck.nutShift };
	const far = (side: 1 | -1) => Math.abs(edgePoint(neck, face, side).y) * Math.hypot(1, nut.lean);
	return { bass: far(-1), treble: far(1) };
}

/** The outer strings' middles: the neck's spread, or what the margins at the nut leave. */
function outerSpan(
	strings: Strings,
	s: LayoutSettings,
	edges: { readonly bass: number; readonly treble: number },
	end: End,
	stretch: number,
) {
	const spread = (end === "nut" ? strings.atNut : strings.atSaddle) * stretch;
	const { "bass-margin": bass, "treble-margin": treble } = s;
	if (end === "saddle" || (bass === undefined && treble === undefined)) {
		return { from: -spread / 2, to: spread / 2 };
	}
	const from = bass === undefined ? edges.treble - treble! - spread : bass - edges.bass;
	return { from, to: treble === undefined ? from + spread : edges.treble - treble };
}
