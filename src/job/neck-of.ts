import { type Division, lawOf, type StationMap, stationText } from "../fields/index.js";
import {
	constant,
	edgePoint,
	fannedGuides,
	fretFraction,
	fretLine,
	highestFret,
	type Law,
	type Marker,
	type Neck,
	type Profile,
	radiusAt,
	type Station,
	type Strings,
	singleScaleGuides,
	stationX,
	widthAt,
} from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import type { JobValues } from "./schema.js";

type NeckValues = JobValues["neck"];

/**
 * The neck of a job's values, or all that its geometry forbids.
 *
 * The shape is sound by now; what is checked here needs several values at once.
 */
export function neckOf(values: NeckValues): Neck | Problem[] {
	const scale = scaleOf(values);
	const shorter = Math.min(scale.bass, scale.treble);
	const strings = stringsOf(values);
	const law = lawOf(values.division, shorter);
	const early = [
		...lawProblems(values, law, shorter),
		...(scale.bass !== scale.treble && !strings ? [problem("fanned-needs-strings", ["neck"])] : []),
	];
	if (early.length > 0) return early;

	const trebleSide = values.handed === "left" ? -1 : 1;
	const guides =
		scale.bass !== scale.treble && strings
			? fannedGuides(scale, law, strings, trebleSide)
			: singleScaleGuides(scale.bass, strings, trebleSide);
	const bare: Neck = {
		frets: values.frets,
		law,
		guides,
		scale,
		trebleSide,
		zeroFret: values["zero-fret"],
		nutShift: values["nut-shift"],
		scaleUncertainty: values["scale-uncertainty"],
		radius: "flat",
		width: constant(1),
		binding: values.binding,
		strings,
		markers: markersOf(values),
	};
	const stations = stationProblems(bare, values);
	if (stations.length > 0) return stations;
	const neck: Neck = {
		...bare,
		radius: values.radius === "flat" ? "flat" : profileOf(bare, values.radius),
		width: profileOf(bare, values.width),
	};
	const found = [...boardProblems(neck), ...fretProblems(neck), ...nutProblems(neck)];
	return found.length > 0 ? found : neck;
}

function scaleOf({ scale }: NeckValues): Neck["scale"] {
	if (typeof scale === "number") return { bass: scale, treble: scale, squareFret: 0 };
	return { bass: scale.bass, treble: scale.treble, squareFret: scale["square-fret"] };
}

function stringsOf({ strings }: NeckValues): Strings | null {
	if (!strings) return null;
	return {
		count: strings.count ?? strings.courses ?? 1,
		pairGap: strings["pair-gap"] ?? 0,
		atNut: strings["at-nut"],
		atSaddle: strings["at-saddle"],
	};
}

function markersOf({ markers }: NeckValues): Marker[] {
	return markers.flatMap((entry) =>
		typeof entry === "number"
			? [{ fret: entry, double: false }]
			: Object.entries(entry).map(([fret, kind]) => ({
					fret: Number(fret),
					double: kind === "double",
				})),
	);
}

/** Whether the division reaches the last fret, and measured positions fit the scale. */
function lawProblems(values: NeckValues, law: Law, scale: number): Problem[] {
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

function stationProblems(neck: Neck, values: NeckValues): Problem[] {
	return (["radius", "width"] as const).flatMap((key) => {
		const given = values[key];
		if (typeof given === "number" || given === "flat") return [];
		const beyond = given.flatMap(({ station }) => {
			if (station.kind !== "fret" || station.fret <= highestFret(neck.law)) return [];
			return [problem("no-such-fret", ["neck", key], { fret: station.fret })];
		});
		if (beyond.length > 0) return beyond;
		const places = given.map(({ station }) => stationX(neck, station)).sort((a, b) => a - b);
		const same = places.findIndex((x, i) => i > 0 && x - places[i - 1]! < 0.01);
		return same < 0 ? [] : [problem("same-station", ["neck", key], { at: places[same]! })];
	});
}

function profileOf(neck: Neck, given: number | StationMap<number>): Profile {
	if (typeof given === "number") return constant(given);
	const knots = given.map(({ station, value }) => ({ x: stationX(neck, station), value }));
	return { knots: knots.sort((a, b) => a.x - b.x) };
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
	return hit ? stationText(hit) : `${trimmed(x, 3)} mm from the nut`;
}

function boardProblems(neck: Neck): Problem[] {
	const found: Problem[] = [];
	for (const x of checkedStations(neck)) {
		const width = widthAt(neck, x);
		const at = placeText(neck, x);
		if (!(width > 2 * neck.binding)) {
			found.push(
				problem("board-too-narrow", ["neck", "width"], { at, width, binding: neck.binding }),
			);
			continue;
		}
		const radius = radiusAt(neck, x);
		if (radius !== null && radius < width / 2) {
			found.push(problem("radius-below-half-board", ["neck", "radius"], { at, radius, width }));
		}
	}
	const { strings } = neck;
	if (strings && strings.atNut > widthAt(neck, 0)) {
		const facts = { spread: strings.atNut, width: widthAt(neck, 0) };
		found.push(problem("strings-beside-board", ["neck", "strings", "at-nut"], facts));
	}
	if (strings && strings.count > 1 && strings.atNut <= strings.pairGap) {
		found.push(
			problem("pair-gap-too-wide", ["neck", "strings", "pair-gap"], { gap: strings.pairGap }),
		);
	}
	return found;
}

/** Least distance between two frets anywhere on the board, mm. */
const LEAST_FRET_GAP = 1;

function fretProblems(neck: Neck): Problem[] {
	for (let n = 1; n <= neck.frets; n++) {
		for (const side of [-1, 1] as const) {
			const gap = endX(neck, n, side) - endX(neck, n - 1, side);
			if (gap >= LEAST_FRET_GAP) continue;
			const facts = {
				fret: n,
				before: n - 1,
				gap,
				least: LEAST_FRET_GAP,
				side: side < 0 ? "bass" : "treble",
			};
			const fanned = neck.scale.bass !== neck.scale.treble;
			return [
				problem(
					fanned ? "frets-cross" : "frets-too-close",
					["neck", fanned ? "scale" : "frets"],
					facts,
				),
			];
		}
	}
	return [];
}

function endX(neck: Neck, n: number, side: 1 | -1): number {
	return edgePoint(neck, fretLine(neck, n), side).x;
}

function nutProblems(neck: Neck): Problem[] {
	const first = fretFraction(neck.law, 1) * Math.min(neck.scale.bass, neck.scale.treble);
	if (neck.nutShift < first / 2) return [];
	return [problem("nut-past-first-fret", ["neck", "nut-shift"], { shift: neck.nutShift, first })];
}
