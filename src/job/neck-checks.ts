import { type Division, stationProblems, stationText } from "../fields/index.js";
import {
	edgePoint,
	fretFraction,
	fretLine,
	highestFret,
	type Law,
	type Neck,
	radiusAt,
	type Station,
	type Strings,
	stationX,
	widthAt,
} from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { markerProblems } from "./markers.js";
import type { ScaledValues, SoundValues } from "./neck-of.js";
import { LEAST_BOARD } from "./neck-schema.js";

/** What single values forbid to each other, before there is a neck. */
export function valueProblems(values: ScaledValues, law: Law, strings: Strings | null): Problem[] {
	const { scale } = values;
	const shorter = typeof scale === "number" ? scale : Math.min(scale.bass, scale.treble);
	const fanned = typeof scale !== "number" && scale.bass !== scale.treble;
	return [
		...lawProblems(values, law, shorter),
		...(fanned && !strings ? [problem("fanned-needs-strings", ["neck", "scale"])] : []),
		...(strings ? stringProblems(strings, shorter) : []),
		...markerProblems(values),
	];
}

/** What the geometry of a whole neck forbids. */
export function neckProblems(neck: Neck): Problem[] {
	return [...boardProblems(neck), ...fretProblems(neck), ...nutProblems(neck)];
}

/** Whether the division reaches the last fret, and measured positions fit the scale. */
function lawProblems(values: ScaledValues, law: Law, scale: number): Problem[] {
	const division: Division = values.division;
	if (division.kind === "positions") {
		if (typeof values.scale !== "number")
			return [problem("positions-fanned", ["neck", "division"])];
		const beyond = division.positions.findIndex((x) => x >= scale);
		if (beyond >= 0) {
			const facts = { fret: beyond + 1, position: division.positions[beyond]!, scale };
			return [problem("position-beyond-saddle", ["neck", "division", "positions", beyond], facts)];
		}
	}
	const highest = highestFret(law);
	const square = typeof values.scale === "number" ? 0 : values.scale["square-fret"];
	if (values.frets > highest) {
		return [problem("division-too-short", ["neck", "division"], { highest, frets: values.frets })];
	}
	if (square > highest)
		return [problem("square-fret-beyond", ["neck", "scale"], { square, highest })];
	return [];
}

/** What the strings' spread must hold at both of its ends. */
function stringProblems(strings: Strings, scale: number): Problem[] {
	const { count, pairGap: gap, atNut, atSaddle } = strings;
	const spread = Math.min(atNut, atSaddle);
	if (gap > 0 && (count > 1 ? spread <= gap : spread < gap)) {
		return [problem("pair-gap-too-wide", ["neck", "strings", "pair-gap"], { gap, spread })];
	}
	const taper = Math.abs(atSaddle - atNut) / 2;
	if (taper < scale / MOST_TAPER) return [];
	return [problem("taper-too-strong", ["neck", "strings", "at-saddle"], { taper, scale })];
}

/** An outer string leads away from the centre line by less than this part of its length. */
const MOST_TAPER = 4;

/** Stations of radius and width: on the neck, and no two at one place. */
export function profileProblems(neck: Neck, values: SoundValues): Problem[] {
	return (["radius", "width"] as const).flatMap((key) => {
		const given = values[key];
		if (typeof given === "number" || given === "flat") return [];
		const off = given.flatMap(({ station }) => stationProblems(neck, station, ["neck", key]));
		if (off.length > 0) return off;
		const places = given.map(({ station }) => stationX(neck, station)).sort((a, b) => a - b);
		const same = places.findIndex((x, i) => i > 0 && x - places[i - 1]! < 0.01);
		return same < 0 ? [] : [problem("same-station", ["neck", key], { at: places[same]! })];
	});
}

/** Places at which a board is checked: its ends and every station between. */
function checkedStations(neck: Neck): number[] {
	const last = fretLine(neck, neck.frets).x;
	const inner = [neck.width, ...(neck.radius === "flat" ? [] : [neck.radius])]
		.flatMap((p) => p.knots.map((k) => k.x))
		.filter((x) => x > 0 && x < last);
	return [0, ...inner, last].sort((a, b) => a - b);
}

function placeText(neck: Neck, x: number): string {
	const named: Station[] = [{ kind: "nut" }, { kind: "last-fret" }];
	const hit = named.find((s) => Math.abs(stationX(neck, s) - x) < 1e-6);
	return hit ? `the ${stationText(hit)}` : `${trimmed(x, 3)} mm from the nut`;
}

function boardProblems(neck: Neck): Problem[] {
	const { binding } = neck;
	const sections = checkedStations(neck).map((x) => ({
		at: placeText(neck, x),
		width: widthAt(neck, x),
		radius: radiusAt(neck, x),
	}));
	const least = Math.max(LEAST_BOARD, 2 * binding);
	const narrow = sections.filter(({ width }) => width < least);
	const steep = sections.flatMap(({ at, width, radius }) =>
		radius !== null && width >= least && radius < width / 2 ? [{ at, width, radius }] : [],
	);
	// One radius is wrong once: at the widest place.
	const cylinder = neck.radius !== "flat" && neck.radius.knots.length === 1;
	const told = cylinder ? steep.sort((a, b) => b.width - a.width).slice(0, 1) : steep;
	return [
		...narrow.map(({ at, width }) =>
			problem("board-too-narrow", ["neck", "width"], { at, width, least, binding }),
		),
		...told.map((facts) => problem("radius-below-half-board", ["neck", "radius"], facts)),
		...spreadProblems(neck),
	];
}

/** The outer strings stay on the board, from the nut to the last fret. */
function spreadProblems(neck: Neck): Problem[] {
	const { strings } = neck;
	if (!strings || (strings.count === 1 && strings.pairGap === 0)) return [];
	for (const n of [0, neck.frets]) {
		const { x } = fretLine(neck, n);
		const u = fretFraction(neck.law, n);
		const spread = strings.atNut + (strings.atSaddle - strings.atNut) * u;
		const width = widthAt(neck, x);
		// A board that is gone by here is told of as such.
		if (width <= 0 || spread <= width) continue;
		const path = ["neck", "strings", n === 0 ? "at-nut" : "at-saddle"];
		return [problem("strings-beside-board", path, { at: placeText(neck, x), spread, width })];
	}
	return [];
}

/** Least distance between two frets anywhere on the board, mm. */
const LEAST_FRET_GAP = 1;

/** The first fret that does not lie square enough to its neighbour or the board. */
function fretProblems(neck: Neck): Problem[] {
	const fanned = neck.scale.bass !== neck.scale.treble;
	const path = ["neck", fanned ? "scale" : "frets"];
	for (let n = 1; n <= neck.frets; n++) {
		for (const side of ["bass", "treble"] as const) {
			const [here, before] = [endX(neck, n, side), endX(neck, n - 1, side)];
			if (here === null || before === null) {
				return [problem("fret-off-board", path, { fret: here === null ? n : n - 1, side })];
			}
			const gap = here - before;
			if (gap >= LEAST_FRET_GAP) continue;
			const facts = { fret: n, before: n - 1, gap, least: LEAST_FRET_GAP, side };
			return [problem(fanned ? "frets-cross" : "frets-too-close", path, facts)];
		}
	}
	return [];
}

/** Where a fret ends at the board's edge; null if it runs along the board and never does. */
function endX(neck: Neck, n: number, side: "bass" | "treble"): number | null {
	try {
		return edgePoint(neck, fretLine(neck, n), side === "bass" ? -1 : 1).x;
	} catch {
		return null;
	}
}

function nutProblems(neck: Neck): Problem[] {
	const first = fretFraction(neck.law, 1) * Math.min(neck.scale.bass, neck.scale.treble);
	if (neck.nutShift < first / 2) return [];
	return [problem("nut-past-first-fret", ["neck", "nut-shift"], { shift: neck.nutShift, first })];
}
