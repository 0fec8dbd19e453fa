import type { Neck } from "../../src/neck/index.js";
import type { Problem } from "../../src/problem/index.js";
import {
	type FretHeights,
	type FretHeightsReading,
	fitFretHeights,
	fitRelief,
	fitWidth,
	fitWire,
	planDressing,
	type Relief,
	type Straightedge,
	type StraightnessReading,
	type WidthReading,
	type WireReading,
} from "../../src/readings/index.js";
import { neckWith } from "./made-parts.js";

const STRINGS = { count: 6, "at-nut": 35, "at-saddle": 52.5 };
const fret = (n: number) => ({ kind: "fret", fret: n }) as const;
const distance = (mm: number) => ({ kind: "distance", mm }) as const;
const nut = { kind: "nut" } as const;

/** A plain reading of gaps, and one of heights, for others to spoil. */
export const GAPS: StraightnessReading = {
	along: "centre",
	on: "wood",
	gaps: [3, 7, 12, 17].map((n, i) => ({ at: fret(n), gap: [0.1, 0.15, 0.13, 0.07][i]! })),
	resolution: 0.01,
	bar: null,
};
export const HEIGHTS: FretHeightsReading = {
	frets: [1, 5, 9, 13, 17].map((n) => ({ fret: n, heights: [1.1, 1.11] })),
	resolution: 0.01,
};

function problemsOf<T extends { readonly notes: readonly Problem[] }>(
	fit: T | Problem[],
): readonly Problem[] {
	return Array.isArray(fit) ? fit : fit.notes;
}

const gapsOf = (...gaps: number[]) =>
	GAPS.gaps.slice(0, gaps.length).map(({ at }, i) => ({ at, gap: gaps[i]! }));

const BAR: Straightedge = { material: "acrylic", thickness: 6, height: 40, length: 500 };

const STRAIGHTNESS: Partial<StraightnessReading>[] = [
	{ resolution: 0 },
	{ along: 7 },
	{ gaps: [...gapsOf(0.1, 0.1), { at: fret(30), gap: 0.1 }] },
	{ contacts: [fret(12), fret(3)] },
	{ contacts: [distance(-5), fret(12)] },
	{ bar: { ...BAR, height: 0 } },
	{ bar: { ...BAR, length: 400 } },
	{ bar: { ...BAR, overhang: 60 } },
	{ bar: { ...BAR, length: 1300, overhang: 10 } },
	{ gaps: gapsOf(0.1, -0.02, 0.1) },
	{ gaps: gapsOf(0.1, 12, 0.1) },
	{ contacts: [nut, fret(15)] },
	{ gaps: [...gapsOf(0, 0.1), { at: nut, gap: 0.1 }] },
	{ gaps: gapsOf(0.1) },
	{ gaps: gapsOf(0, 0, 0, 0) },
	{ gaps: gapsOf(0.1, 0.1, 0.1, 0.1) },
	{ gaps: gapsOf(0.1, 0.5, 0.13, 0.07) },
];

const FRETS: Partial<FretHeightsReading>[] = [
	{ resolution: 1 },
	{ relief: -0.1 },
	{ leastCrown: 0 },
	{ frets: [{ fret: 0, heights: [1] }] },
	{ frets: [{ fret: 23, heights: [1] }] },
	{ frets: [{ fret: 3, heights: [] }] },
	{ frets: [{ fret: 3, heights: [1, 1], across: [0] }] },
	{ frets: [{ fret: 3, heights: [0, 4.2] }] },
	{ frets: HEIGHTS.frets.slice(0, 2) },
	{ frets: [...HEIGHTS.frets, { fret: 20, heights: [1.1, 0.95] }] },
	{ frets: HEIGHTS.frets.map(({ fret: n }) => ({ fret: n, heights: [1.1] })) },
];

const WIRES: WireReading[] = [
	{ resolution: 0 },
	{ resolution: 0.01, crownWidth: [] },
	{ resolution: 0.01, crownHeight: [0] },
	{ resolution: 0.01, crownWidth: [2.7, 2.55] },
];

const at = (...widths: number[]) =>
	widths.map((width, i) => ({ at: distance(i * 100), values: [width] }));

const WIDTHS: Partial<WidthReading>[] = [
	{ resolution: 0 },
	{ places: [] },
	{ places: [{ at: fret(40), values: [43] }] },
	{ places: [{ at: nut, values: [9, 201] }] },
	{
		places: [
			{ at: nut, values: [43] },
			{ at: distance(10), values: [44] },
		],
	},
	{ places: at(43) },
	{ places: at(43, 46, 51, 52, 55) },
	{ places: at(43, 46.5, 49) },
	{ places: at(43, 45, 46, 45, 43) },
];

/** Where heights do not fit the straightness, and what the plan notes. */
function planFaults(neck: Neck): Problem[] {
	const short = fitRelief({ ...GAPS, contacts: [nut, fret(20)] }, neck) as Relief;
	const crowns = fitRelief({ ...GAPS, on: "crowns" }, neck) as Relief;
	const beyond = { ...HEIGHTS, frets: [...HEIGHTS.frets, { fret: 22, heights: [1.1] }] };
	const low = HEIGHTS.frets.map((read) => (read.fret === 9 ? { fret: 9, heights: [0.805] } : read));
	const plan = planDressing(fitFretHeights({ ...HEIGHTS, frets: low }, neck, null) as FretHeights);
	return [
		...problemsOf(fitFretHeights(beyond, neck, short)),
		...problemsOf(fitFretHeights(HEIGHTS, neck, crowns)),
		...plan.notes,
	];
}

/** What camber says of faulty readings of the board, refusals and notes. */
export function readingFaultsBoard(): Problem[] {
	const neck = neckWith({ strings: STRINGS });
	return [
		...STRAIGHTNESS.flatMap((spoilt) => problemsOf(fitRelief({ ...GAPS, ...spoilt }, neck))),
		...problemsOf(fitRelief({ ...GAPS, along: "bass" }, { ...neck, strings: null })),
		...FRETS.flatMap((spoilt) => problemsOf(fitFretHeights({ ...HEIGHTS, ...spoilt }, neck, null))),
		...planFaults(neck),
		...WIRES.flatMap((reading) => problemsOf(fitWire(reading))),
		...WIDTHS.flatMap((spoilt) =>
			problemsOf(fitWidth({ places: at(43, 45), resolution: 0.1, ...spoilt }, neck)),
		),
	];
}
