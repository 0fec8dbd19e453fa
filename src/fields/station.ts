import * as z from "zod";
import { highestFret, type Neck, type Station, stationX } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { parseLength, trimmed, type Unit } from "../units/index.js";
import { describe, type FieldText, fault, type LengthRange, lengthField } from "./length.js";

/** A station, or null if the text names none. A bare number is a fret; a length has its unit. */
export function parseStation(given: string | number, unit: Unit): Station | null {
	if (given === "nut" || given === "last-fret" || given === "saddle") return { kind: given };
	const text = String(given).trim();
	if (/^\d+(\.\d+)?$/u.test(text)) return { kind: "fret", fret: Number(text) };
	if (/[\d½¼¾⅛⅜⅝⅞]$/u.test(text)) return null;
	const mm = parseLength(text, unit);
	return typeof mm === "number" ? { kind: "distance", mm } : null;
}

/** How a station is written in names and labels: "nut", "last fret", "fret 7", "120 mm". */
export function stationText(station: Station): string {
	if (station.kind === "fret") return `fret ${trimmed(station.fret, 3)}`;
	if (station.kind === "distance") return `${trimmed(station.mm, 3)} mm`;
	return station.kind === "last-fret" ? "last fret" : station.kind;
}

/**
 * Why a station is not on the neck: a fret that the division does not have, or a place before the
 * nut (theoretical or actual, whichever comes first) or beyond the saddle. Empty if it is.
 */
export function stationProblems(
	neck: Neck,
	station: Station,
	path: Problem["where"]["path"],
): Problem[] {
	if (station.kind === "fret" && station.fret > highestFret(neck.law)) {
		return [problem("no-such-fret", path, { fret: station.fret, highest: highestFret(neck.law) })];
	}
	const x = stationX(neck, station);
	const from = Math.min(0, neck.nutShift);
	const saddle = stationX(neck, { kind: "saddle" });
	if (x >= from && x <= saddle) return [];
	return [problem("station-off-neck", path, { station: stationText(station), from, saddle })];
}

const STATION_WORDS =
	"nut, last-fret, saddle, a fret number (fractions allowed), or a length with its unit from the nut";

/** A station field. */
export function stationField(unit: Unit, text: FieldText) {
	return z
		.union([z.string(), z.number()])
		.transform((given, ctx): Station => {
			const station = parseStation(given, unit);
			if (station) return station;
			fault(ctx, "station", { given: String(given), allowed: STATION_WORDS });
			return z.NEVER;
		})
		.meta({ ...describe(text), kind: "station", range: STATION_WORDS });
}

/** A value at each of some stations. */
export type StationMap<V> = readonly { readonly station: Station; readonly value: V }[];

/** `{nut: 43 mm, last-fret: 56 mm}`: one length a station. */
export function stationMapField(unit: Unit, range: LengthRange, text: FieldText) {
	return z
		.record(z.string(), lengthField(unit, range, { text: "length there" }))
		.transform((map, ctx): StationMap<number> => {
			const entries = Object.entries(map).map(([key, value]) => {
				const station = parseStation(key, unit);
				if (!station) fault(ctx, "station", { given: key, allowed: STATION_WORDS });
				return { station: station ?? { kind: "nut" as const }, value };
			});
			if (entries.length === 0) fault(ctx, "station-map-empty", {});
			return entries;
		})
		.meta({ ...describe(text), kind: "map" });
}
