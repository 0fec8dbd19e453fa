import type { Problem } from "../../src/problem/index.js";
import {
	combinedRadius,
	fitBoard,
	type RadiusEstimate,
	type RadiusReading,
	type RadiusStation,
	radiusFrom,
} from "../../src/readings/index.js";
import { dropOf, heightsAcross, readRadius, STEPS } from "./radius-readings.js";

const CHORD = { ...STEPS, kind: "chord", chord: 50, sagitta: 1.23 } as const;
const BAR = { ...STEPS, kind: "bar", chord: 50, dial: 1.23 } as const;
const LIGHT = {
	...STEPS,
	kind: "light",
	gauge: 254,
	width: 50,
	board: 52,
	where: "middle",
	gap: 0.05,
} as const;
const HEIGHTS = { ...STEPS, kind: "heights" } as const;
const YS = [-24, -12, 0, 12, 24];

/** Bad readings by what is wrong, each with the code and the place of what is found. */
export const BAD_READINGS: readonly (readonly [
	title: string,
	reading: RadiusReading,
	code: string,
	place: string,
])[] = [
	["a chord of 0", { ...CHORD, chord: 0 }, "reading-not-above-zero", "chord"],
	["a chord that is no number", { ...CHORD, chord: NaN }, "reading-not-above-zero", "chord"],
	["no step", { ...CHORD, resolution: 0 }, "reading-not-above-zero", "resolution"],
	["a step below 0", { ...BAR, chordResolution: -1 }, "reading-not-above-zero", "chord-resolution"],
	["a sagitta that is no number", { ...CHORD, sagitta: NaN }, "reading-not-a-length", "sagitta"],
	["a sagitta of 0", { ...CHORD, sagitta: 0 }, "no-camber", "sagitta"],
	["a sagitta below 0", { ...CHORD, sagitta: -1.2 }, "board-hollow", "sagitta"],
	["a dial below 0", { ...BAR, dial: -0.2 }, "board-hollow", "dial"],
	[
		"a sagitta over half the chord",
		{ ...CHORD, sagitta: 26 },
		"sagitta-beyond-half-chord",
		"sagitta",
	],
	["a chord in inches", { ...CHORD, chord: 1.97 }, "sagitta-beyond-half-chord", "sagitta"],
	["a bar wider than the board", { ...BAR, board: 48 }, "chord-beyond-board", "chord"],
	[
		"heights wider than the board",
		{ ...HEIGHTS, heights: heightsAcross(254, YS), board: 45 },
		"chord-beyond-board",
		"heights",
	],
	["balls as wide as the chord", { ...BAR, ball: 25 }, "balls-overlap", "ball"],
	["a ball of 0", { ...BAR, ball: 0 }, "reading-not-above-zero", "ball"],
	["a tip below 0", { ...BAR, tip: -1 }, "reading-not-above-zero", "tip"],
	[
		"two heights",
		{ ...HEIGHTS, heights: heightsAcross(254, [-20, 20]) },
		"heights-too-few",
		"heights",
	],
	[
		"heights in two places",
		{ ...HEIGHTS, heights: heightsAcross(254, [-20, -20, 20, 20]) },
		"heights-too-few",
		"heights",
	],
	[
		"heights on one side",
		{ ...HEIGHTS, heights: heightsAcross(254, [2, 10, 24]) },
		"heights-on-one-side",
		"heights",
	],
	[
		"depths for heights",
		{ ...HEIGHTS, heights: YS.map((y) => ({ y, height: dropOf(254, y) })) },
		"board-hollow",
		"heights",
	],
	["a gap wider than the gauge's own sagitta", { ...LIGHT, gap: 2 }, "board-hollow", "gap"],
	["a gap wider than the chord", { ...LIGHT, where: "edges", gap: 40 }, "gap-too-wide", "gap"],
	["light without a gap", { ...LIGHT, gap: 0 }, "light-without-gap", "gap"],
	["a gap without light", { ...LIGHT, where: "none" }, "gap-without-light", "gap"],
	["a board that is all rolled edge", { ...LIGHT, rolled: 26 }, "no-contact", "rolled"],
	["a gauge of 10 mm", { ...LIGHT, gauge: 10 }, "gauge-too-round", "gauge"],
	["a gauge without width", { ...LIGHT, width: 0 }, "reading-not-above-zero", "width"],
	[
		"a radius below half the board",
		{ ...CHORD, chord: 20, sagitta: 4, board: 52 },
		"reading-below-half-board",
		"",
	],
	["crowns of no height", { ...CHORD, on: "crowns" }, "crown-height-missing", "crown-height"],
];

function problemsOf(result: unknown): Problem[] {
	if (Array.isArray(result)) return result;
	return [...(result as { notes: readonly Problem[] }).notes];
}

/** Stations read with a bar of 50 mm to 0.01 mm on radii in inches. */
function stations(inches: readonly number[], resolution = 0.01): RadiusStation[] {
	return inches.map((inch, i) => {
		const dial = inch === Infinity ? 0 : dropOf(inch * 25.4, 25);
		const estimate = readRadius({ ...BAR, resolution, dial });
		return { x: i * 200, name: `fret ${i * 5}`, estimate };
	});
}

/** What readings of the radius are refused for, or are told, each code once at least. */
export function readingFaultsRadius(): Problem[] {
	const refused = BAD_READINGS.flatMap(([, reading]) =>
		problemsOf(radiusFrom(reading, ["radius", 0], "radius")),
	);
	const noted = (
		[
			{ ...CHORD, sagitta: 0.05 },
			{ ...HEIGHTS, heights: heightsAcross(254, [-24, 0, 24]) },
			{ ...HEIGHTS, heights: heightsAcross(254, YS) },
			{ ...LIGHT, where: "none", gap: 0 },
		] as const
	).flatMap((reading) => problemsOf(radiusFrom(reading)));
	const pair: RadiusEstimate[] = [readRadius(BAR), readRadius({ ...BAR, dial: 1.3 })];
	const again = stations([10, 10]).map((s) => ({ ...s, x: 0 }));
	const boards = [
		fitBoard([]),
		fitBoard(again),
		fitBoard([{ ...again[0]!, x: NaN }]),
		fitBoard(stations([10])),
		fitBoard(stations([Infinity])),
		fitBoard(stations([10, 16])),
		fitBoard(stations([16, 10, 7.25])),
		fitBoard(stations([10, 10, 10])),
		fitBoard(stations([10, 10, 10], 0.5)),
		fitBoard(stations([10, 16, 14])),
		fitBoard([10, 10, 9.2, 11].map((r, i) => ({ ...stations([r])[0]!, x: i * 99 }))),
		fitBoard([{ ...again[0]!, estimate: readRadius({ ...BAR, dial: -0.01 }) }]),
	];
	return [
		...refused,
		...noted,
		...[combinedRadius([]), combinedRadius(pair), ...boards].flatMap(problemsOf),
	];
}
