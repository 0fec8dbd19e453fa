import type { Mark, Part } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { gaugeClaims } from "./crown-gauge/claims.js";
import { type Notch, notchesOf, profileOf, workingPaths } from "./crown-gauge/notch.js";
import { gaugeNotes } from "./crown-gauge/notes.js";
import { type Room, tightestRoom } from "./crown-gauge/room.js";
import {
	type GaugeSettings,
	type Given,
	LEAST_FOOT,
	settings,
	USUAL_FOOT,
} from "./crown-gauge/settings.js";
import { type Lettered, plateLabels, plateOf } from "./edged-plate/labels.js";
import { MOST_EDGES, placed, plateOutline, type Relief, reliefOf } from "./edged-plate/plate.js";
import { hangingHole } from "./hanging-hole.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;
/** Between a foot and the next crown or the nut, mm. */
const BESIDE_FOOT = 0.5;
/** From one notch to the next lower one by default, and the lowest such, mm. */
const STEP = 0.1;
const LOWEST = 0.5;
/** How far a notch may be higher than the wire, mm: a wire may stand a little proud. */
const OVER_WIRE = 0.2;
/** Heights that differ by less are one to the eye, mm (common practice, no source). */
const LEAST_APART = 0.02;
/** Legs of the body's corners: room for a tab of 5 mm, mm. */
const CHAMFER = 6;
/** Plate that a hand holds well, mm. */
const LEAST_PLATE = 36;

/** The wire's own height and up to three lower ones. */
function usualHeights({ wire }: Bench): number[] {
	const heights = Array.from({ length: MOST_EDGES }, (_, i) => wire.crownHeight - i * STEP);
	return heights.filter((height, i) => i === 0 || height >= LOWEST - ROUNDING);
}

/** Widest foot that stands clear of everything, mm. */
function widestFoot(room: Room | null): number {
	return room === null ? Number.POSITIVE_INFINITY : room.wood - BESIDE_FOOT;
}

/** The usual foot, or what the tightest frets leave it, in tenths of a millimetre. */
function usualFoot(bench: Bench): number {
	const most = Math.floor(widestFoot(tightestRoom(bench)) * 10 + ROUNDING) / 10;
	return Math.min(USUAL_FOOT, most);
}

function defaults(bench: Bench, given: Given): Partial<Given> {
	return {
		"crown-heights": given["crown-heights"] ?? usualHeights(bench),
		"foot-width": given["foot-width"] ?? usualFoot(bench),
	};
}

function heightProblems({ wire }: Bench, heights: readonly number[]): Problem[] {
	const most = wire.crownHeight + OVER_WIRE;
	const high = heights.flatMap((height, i) => {
		const facts = { height, wire: wire.crownHeight, most };
		return height <= most + ROUNDING
			? []
			: [problem("notch-above-wire", ["crown-heights", i], facts)];
	});
	if (high.length > 0) return high;
	const rising = heights.toSorted((a, b) => a - b);
	const alike = rising.findIndex((h, i) => i > 0 && h - rising[i - 1]! < LEAST_APART - ROUNDING);
	if (alike < 0) return [];
	const facts = { one: rising[alike - 1]!, other: rising[alike]!, least: LEAST_APART };
	return [problem("notches-alike", ["crown-heights"], facts)];
}

function footProblems(bench: Bench, foot: number): Problem[] {
	const room = tightestRoom(bench);
	const most = widestFoot(room);
	if (room === null) return [];
	const { fret, beside, wood } = room;
	if (most < LEAST_FOOT - ROUNDING) {
		const least = LEAST_FOOT + BESIDE_FOOT;
		return [problem("no-room-for-feet", [], { fret, beside: beside ?? "nut", wood, least })];
	}
	if (foot <= most + ROUNDING) return [];
	const between =
		beside === null
			? `between the nut and fret ${fret}`
			: `between frets ${Math.min(fret, beside)} and ${Math.max(fret, beside)}`;
	return [outOfRange("foot-width", foot, `at most ${trimmed(most, 3)} mm ${between}`)];
}

/** What is engraved: a notch's height beside its tongue; tool, wire and job. */
function letteredOf({ job, wire }: Bench, hole: number): Lettered<Notch> {
	return {
		edgeText: ({ number, section: { height } }) => ({
			id: `notch-${number}`,
			text: `${trimmed(height, 3)} mm`,
		}),
		lines: [
			{ id: "title", text: "CROWN GAUGE" },
			{
				id: "wire",
				text: `wire ${trimmed(wire.crownWidth, 3)} x ${trimmed(wire.crownHeight, 3)} mm`,
			},
			{ id: "job", text: job },
		],
		hole,
		apart: true,
		least: LEAST_PLATE,
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as GaugeSettings;
	const problems = [
		...heightProblems(bench, s["crown-heights"]),
		...footProblems(bench, s["foot-width"]),
	];
	if (problems.length > 0) return { parts: [], problems };
	const notches = notchesOf(bench.wire.crownWidth, s["crown-heights"], s["foot-width"]);
	return { parts: [gauge(bench, s, notches, name)], problems: [] };
}

/**
 * The feet stand on the wood, so that crowns and nut reach up beside a tongue by a crown more than
 * beside an edge that lies on crowns. Tabs find no place on sides that all carry a tongue: the
 * corners are cut off for them.
 */
function gaugeRelief(bench: Bench): Relief {
	const { height, shoulder, round } = reliefOf(bench);
	return {
		height: height + bench.wire.crownHeight,
		shoulder: shoulder + CHAMFER,
		round,
		chamfer: CHAMFER,
	};
}

function gauge(bench: Bench, s: GaugeSettings, notches: readonly Notch[], name: string): Part {
	const diameter = s["hanging-hole"] === "none" ? 0 : s["hanging-hole"];
	const lettered = letteredOf(bench, diameter);
	const plate = plateOf(bench, placed(notches), gaugeRelief(bench), lettered);
	const { labels, hole } = plateLabels(bench, plate, lettered);
	const hanging = hangingHole(bench, hole, diameter);
	const path = plateOutline(plate, profileOf);
	const outline: Mark = { operation: "cut", path, feature: "outline" };
	const count = notches.length;
	return {
		name,
		tool: "crown-gauge",
		title: `Crown gauge, ${count === 1 ? "one notch" : `${count} notches`}`,
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...hanging.marks, outline],
		workingEdge: "every notch, and both feet beside it",
		working: workingPaths(plate),
		claims: [...gaugeClaims(bench, plate), ...hanging.claims, ...labels.map((l) => l.claim)],
		notes: gaugeNotes(bench, notches),
	};
}

export const crownGauge = tool({
	id: "crown-gauge",
	title: "Crown gauge",
	purpose:
		"Shows whether a dressed fret has its round crown again, and how high it still stands. Stand a tongue's feet on the wood on both sides of the fret, its notch over the crown, and look for light.",
	settings,
	defaults,
	build,
});
