import { type StationMap, stationText } from "../fields/index.js";
import { type Law, type Neck, stationX, valueAt } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import {
	type BoardRadius,
	type BoardWidth,
	combinedRadius,
	type FannedFit,
	fitBoard,
	fitFanned,
	fitScale,
	fitWidth,
	type RadiusStation,
	radiusFrom,
	type ScaleFit,
} from "../readings/index.js";
import { bareNeckOf, profileOf, type ScaledValues, type SoundValues } from "./neck-of.js";
import { radiusReadingOf } from "./radius-reading-of.js";
import type { ReadingsValues } from "./readings-schema.js";
import type { NeckValues } from "./schema.js";
import type { ReadSlots } from "./slots-of.js";

/** What readings make of a neck's scale and board; null where there are none of a thing. */
export interface NeckFit {
	readonly scale: ScaleFit | FannedFit | null;
	readonly radius: (BoardRadius & { readonly stations: readonly RadiusStation[] }) | null;
	readonly width: BoardWidth | null;
}

/** The values that a neck is built from, and what was read of them. */
export interface FittedValues {
	readonly values: SoundValues;
	readonly fit: NeckFit;
}

/** Step of the caliper that widths are read with, mm. */
const CALIPER = 0.02;
const PATH = ["neck", "readings"] as const;

/**
 * A neck's values with its readings fitted: scale and law first, since stations stand on frets,
 * then width, then the radius across it. Where numbers count, the readings are fitted beside them.
 *
 * @param slots - the readings of the slots, wherever they stood
 * @param crownHeight - for a radius read on the crowns, mm
 */
export function fitNeck(
	given: NeckValues & { readonly readings: ReadingsValues },
	slots: ReadSlots,
	crownHeight: number,
): FittedValues | Problem[] {
	const { readings } = given;
	const isRecord = given.use === "numbers";
	const scale = scaleFit(given, slots);
	if (Array.isArray(scale)) return scale;
	const read = scale && !isRecord ? scaleValues(scale, given, readings) : {};
	if (Array.isArray(read)) return read;
	const scaled = { ...given, ...read } as ScaledValues;
	const bare = bareNeckOf(scaled);
	if (Array.isArray(bare)) return bare;

	const width = readings.width ? widthFit(readings.width, bare) : null;
	if (Array.isArray(width)) return width;
	const board = widthOf(width, given, bare);
	const radius = readings.radius ? radiusFit(readings, bare, board, crownHeight) : null;
	if (Array.isArray(radius)) return radius;
	const fit = { scale, radius, width };
	if (isRecord) return { values: scaled as SoundValues, fit };
	const fitted = { ...widthValues(width, bare), ...radiusValues(radius, bare) };
	return { values: { ...scaled, ...fitted } as SoundValues, fit };
}

/** Scale and law from the slots' readings, along one line or along both outer strings. */
function scaleFit(given: NeckValues, slots: ReadSlots): ScaleFit | FannedFit | null | Problem[] {
	const { centre, bass, treble } = slots;
	if (centre.length + bass.length + treble.length === 0) return null;
	const { division, frets, strings } = given;
	const readings = given.readings!;
	if (division.kind === "positions") {
		return [problem("readings-and-positions", ["neck", "division"])];
	}
	const isFanned = bass.length + treble.length > 0;
	if (isFanned && (centre.length > 0 || bass.length === 0 || treble.length === 0)) {
		return [problem("slots-of-one-line", [...PATH])];
	}
	const nut = readings["nut-end"] === "intact" ? "true" : readings["nut-end"];
	const options = { law: division, resolution: readings.resolution, nut, frets } as const;
	const spread = strings && { atNut: strings["at-nut"], atSaddle: strings["at-saddle"] };
	const found = isFanned
		? fitFanned(
				{ bass, treble },
				{ ...options, from: readings.from, ...(spread ? { spread } : {}) },
			)
		: fitScale(centre, options);
	return Array.isArray(found) ? found.map(within) : found;
}

/** The fitted scale as a job's values: its law, or every slot as it was read. */
function scaleValues(
	fit: ScaleFit | FannedFit,
	given: NeckValues,
	readings: ReadingsValues,
): Partial<NeckValues> | Problem[] {
	return "squareFret" in fit
		? fannedValues(fit, given, readings)
		: singleValues(fit, given, readings);
}

/** Both scales and the square fret; told by number where the readings do not say which it is. */
function fannedValues(
	fit: FannedFit,
	given: NeckValues,
	{ use }: ReadingsValues,
): Partial<NeckValues> | Problem[] {
	if (use === "readings") return [problem("readings-fanned", [...PATH, "use"])];
	const told = typeof given.scale === "object" ? given.scale["square-fret"] : null;
	const square = fit.squareFret?.value ?? told;
	if (square === null) return [problem("square-fret-unread", [...PATH, "from"])];
	const { bass, treble } = fit.scale;
	const half = Math.max(bass.high - bass.low, treble.high - treble.low) / 2;
	return {
		scale: { bass: bass.value, treble: treble.value, "square-fret": square },
		division: fit.law,
		"scale-uncertainty": half,
	};
}

function singleValues(
	fit: ScaleFit,
	{ frets }: NeckValues,
	{ use }: ReadingsValues,
): Partial<NeckValues> | Problem[] {
	const { scale, offset } = fit;
	const law = use === "law" ? fit.law : lawAsRead(fit, frets);
	if (Array.isArray(law)) return law;
	return {
		scale: scale.value,
		division: law,
		"scale-uncertainty": uncertaintyOf(fit),
		...(offset ? { "nut-shift": -offset.value } : {}),
	};
}

/**
 * Half the scale's interval; where the readings do not decide whether the nut's end is the scale's
 * beginning, as far as the scale with a free nut may lie off.
 */
function uncertaintyOf({ scale, notes, alternatives }: ScaleFit): number {
	const half = (scale.high - scale.low) / 2;
	const { free } = alternatives;
	if (!free || !notes.some(({ code }) => code === "nut-undecided")) return half;
	const ends = [free.scale.low, free.scale.high].map((end) => Math.abs(end - scale.value));
	return Math.max(half, ...ends);
}

/** Every slot where it was read, or the frets that were not. */
function lawAsRead(fit: ScaleFit, frets: number): Law | Problem[] {
	const theoretical = fit.offset?.value ?? 0;
	const numbers = Array.from({ length: frets }, (_, i) => i + 1);
	const missing = numbers.filter((n) => !fit.rows.some(({ fret }) => fret === n));
	if (missing.length > 0) {
		return [problem("readings-not-all", [...PATH, "use"], { missing: missing.map(String) })];
	}
	const ratios = numbers.map((n) => {
		const { at } = fit.rows.find(({ fret }) => fret === n)!;
		return fit.scale.value / (fit.scale.value - (at - theoretical));
	});
	return { kind: "listed", ratios };
}

function widthFit(
	places: NonNullable<ReadingsValues["width"]>,
	bare: Neck,
): BoardWidth | Problem[] {
	const read = places.map(({ station, value }) => ({ at: station, values: value }));
	const found = fitWidth({ places: read, resolution: CALIPER }, bare);
	return Array.isArray(found) ? found.map(within) : found;
}

/** The board's width at any place, from readings or numbers; null where neither tells. */
function widthOf(fit: BoardWidth | null, given: NeckValues, bare: Neck) {
	if (fit) return (x: number) => fit.at(x).value;
	if (given.width === undefined) return null;
	const profile = profileOf(bare, given.width);
	return (x: number) => valueAt(profile, x);
}

function radiusFit(
	readings: ReadingsValues,
	bare: Neck,
	board: ((x: number) => number) | null,
	crownHeight: number,
): NonNullable<NeckFit["radius"]> | Problem[] {
	const problems: Problem[] = [];
	const byPlace = new Map<number, RadiusStation["estimate"][]>();
	const names = new Map<number, string>();
	for (const [i, reading] of readings.radius!.entries()) {
		const x = stationX(bare, reading.at);
		const width = board ? board(x) : null;
		const found = radiusFrom(radiusReadingOf(reading, width, crownHeight), ["radius", i]);
		if (Array.isArray(found)) problems.push(...found.map((p) => within(named(p, reading))));
		else {
			byPlace.set(x, [...(byPlace.get(x) ?? []), found]);
			names.set(x, stationText(reading.at));
		}
	}
	if (problems.length > 0) return problems;
	const stations: RadiusStation[] = [];
	for (const [x, list] of [...byPlace].sort(([a], [b]) => a - b)) {
		const estimate = combinedRadius(list);
		if (Array.isArray(estimate)) return estimate.map(within);
		stations.push({ x, name: names.get(x)!, estimate });
	}
	const found = fitBoard(stations);
	return Array.isArray(found) ? found.map(within) : { ...found, stations };
}

/** What a reading calls differently from what it is fitted as. */
const NAMES = { bar: { chord: "feet" }, light: { width: "gauge-width", where: "light" } } as const;

/** A problem of a radius reading at the key that the job has for it. */
function named(
	found: Problem,
	reading: { readonly feet?: unknown; readonly gauge?: unknown },
): Problem {
	const names: Readonly<Record<string, string>> =
		reading.feet !== undefined ? NAMES.bar : reading.gauge !== undefined ? NAMES.light : {};
	const path = found.where.path.map((key) => names[key] ?? key);
	return { ...found, where: { ...found.where, path } };
}

function widthValues(fit: BoardWidth | null, bare: Neck): Partial<NeckValues> {
	if (!fit) return {};
	if (!fit.slope) return { width: fit.atNut.value };
	return { width: atEnds(bare, (x) => fit.at(x).value) };
}

/**
 * Whether no form fits: the stations lie farther from it than their readings allow. A board that
 * was sanded unevenly is like that: it is taken as it was read, straight between the stations.
 */
export function isUneven({ notes, stations }: NonNullable<NeckFit["radius"]>): boolean {
	const isRound = stations.every(({ estimate }) => estimate.radius !== null);
	return stations.length > 2 && isRound && notes.some(({ code }) => code === "stations-scatter");
}

function radiusValues(fit: NeckFit["radius"], bare: Neck): Partial<NeckValues> {
	if (!fit) return {};
	if (isUneven(fit)) {
		const radius = fit.stations.map(({ x, estimate }) => ({
			station: { kind: "distance" as const, mm: x },
			value: estimate.radius!.value,
		}));
		return { radius };
	}
	if (fit.form === "flat") return { radius: "flat" };
	const at = (x: number) => fit.radiusAt(x)?.value ?? Number.POSITIVE_INFINITY;
	return { radius: fit.form === "cylinder" ? at(0) : atEnds(bare, at) };
}

/** A value at the nut and at the last fret, between which it runs straight. */
function atEnds(bare: Neck, at: (x: number) => number): StationMap<number> {
	return (["nut", "last-fret"] as const).map((kind) => ({
		station: { kind },
		value: at(stationX(bare, { kind })),
	}));
}

/** A problem of the readings at its place in the job. */
export function within(found: Problem): Problem {
	return { ...found, where: { ...found.where, path: [...PATH, ...found.where.path] } };
}
