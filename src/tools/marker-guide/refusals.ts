import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { contains, distance, distanceTo, type Point, segments } from "../../geometry/index.js";
import { fretLine, type Neck, pointOnFret, slantOf } from "../../neck/index.js";
import { type Problem, problem } from "../../problem/index.js";
import type { Bench } from "../tool.js";
import type { Guide, Hole } from "./lay.js";
import type { GuideSettings } from "./settings.js";

/** Plate that must remain beside a hole, mm. */
const LEAST_RIM = OFF_WORKING_EDGE;
/** Wood that must remain between a drilled hole and the crown beside it, mm (common practice, no source). */
const OFF_CROWN = 0.5;
/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

/** Why there is nothing to guide: no markers, or none at a fret that is named. */
export function markerProblems({ markers }: Neck, s: GuideSettings): Problem[] {
	if (markers.length === 0) return [problem("guide-needs-markers", [])];
	const frets = markers.map(({ fret }) => fret).sort((a, b) => a - b);
	const missing = s["markers-at"]?.find((fret) => !frets.includes(fret));
	if (missing === undefined) return [];
	return [
		problem("no-marker-at-fret", ["markers-at"], { fret: missing, markers: frets.join(", ") }),
	];
}

/** Holes that the plate or the frets have no room for: each kind once, the worst one named. */
export function holeProblems(bench: Bench, s: GuideSettings, guide: Guide): Problem[] {
	return [...crownProblems(bench, s, guide), ...edgeProblems(guide), ...nearProblems(guide)];
}

/** The entry with the least room of those with too little, and how many more there are. */
function worst<T extends { readonly room: number }>(all: readonly T[], least: number) {
	const tight = all.filter(({ room }) => room < least - ROUNDING);
	const [first] = tight;
	if (!first) return null;
	const one = tight.reduce((a, b) => (b.room < a.room - ROUNDING ? b : a), first);
	return { one, more: tight.length - 1 };
}

/** From a point to the nearer flank of the crowns on both sides, mm: what a drill's radius may take. */
function besideCrowns({ neck, wire }: Bench, fret: number, at: Point): number {
	const beside = [fret - 1, fret]
		.filter((n) => n > 0 || neck.zeroFret)
		.map((n) => {
			const line = fretLine(neck, n);
			const away = Math.abs(pointOnFret(line, at.y).x - at.x) * Math.cos(slantOf(line));
			return away - wire.crownWidth / 2;
		});
	return Math.min(...beside);
}

function crownProblems(bench: Bench, { drill }: GuideSettings, { holes }: Guide): Problem[] {
	const all = holes.map((hole) => ({
		hole,
		room: besideCrowns(bench, hole.fret, hole.at) - drill / 2,
	}));
	const found = worst(all, OFF_CROWN);
	if (!found) return [];
	const { hole, room } = found.one;
	const most = 2 * (room + drill / 2 - OFF_CROWN);
	const facts = { feature: hole.feature, drill, most, beside: OFF_CROWN, more: found.more };
	return [problem("drill-meets-crown", ["drill"], facts)];
}

/** Plate between a hole and its outline, mm; below 0 where it is cut into. */
function rimOf({ outline, diameter }: Guide, { at }: Hole): number {
	const away = Math.min(...segments(outline).map((s) => distanceTo(s, at)));
	return (contains(outline, at) ? away : -away) - diameter / 2;
}

function edgeProblems(guide: Guide): Problem[] {
	const [nutEnd] = guide.edges.flatMap(segments);
	const found = worst(
		guide.holes.map((hole) => ({ hole, room: rimOf(guide, hole) })),
		LEAST_RIM,
	);
	if (!found) return [];
	const { hole, room } = found.one;
	const atNut = Math.abs(distanceTo(nutEnd!, hole.at) - guide.diameter / 2 - room) < ROUNDING;
	const edge = atNut ? "nut end" : "side";
	const facts = { feature: hole.feature, edge, room, least: LEAST_RIM, more: found.more };
	return [problem("guide-hole-at-edge", ["drill"], facts)];
}

function nearProblems({ holes, diameter }: Guide): Problem[] {
	const pairs = holes.flatMap((one, i) =>
		holes
			.slice(i + 1)
			.map((other) => ({ one, other, room: distance(one.at, other.at) - diameter })),
	);
	const found = worst(pairs, LEAST_RIM);
	if (!found) return [];
	const { one, other, room } = found.one;
	const facts = {
		feature: one.feature,
		other: other.feature,
		room,
		least: LEAST_RIM,
		more: found.more,
	};
	return [problem("guide-holes-too-near", ["drill"], facts)];
}
