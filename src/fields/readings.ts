import * as z from "zod";
import type { Unit } from "../units/index.js";
import {
	describe,
	type FieldText,
	fault,
	type LengthRange,
	lengthField,
	rangeText,
} from "./length.js";
import { parseStation, type StationMap } from "./station.js";

/** Readings of one thing: one length, or a list of repeats, mm. */
export function readingsField(unit: Unit, range: LengthRange, text: FieldText) {
	const one = lengthField(unit, range, text);
	return z
		.union([
			one.transform((value) => [value]),
			z
				.array(lengthField(unit, range, text))
				.min(1)
				.max(100),
		])
		.meta({
			...describe(text),
			kind: "length or list",
			range: `${rangeText(range)}, or a list of readings`,
		});
}

/** Readings of the slots along one line, or the file that holds them. */
export type SlotSource =
	| { readonly file: string }
	| { readonly readings: readonly { readonly fret: number; readonly at: number }[] };

/** `{1: 35.5 mm, 12: [323.5 mm, 324 mm]}`, or the name of a CSV file. */
export function slotsField(unit: Unit, text: FieldText) {
	const file = z
		.string()
		.min(1)
		.max(400)
		.transform((name): SlotSource => ({ file: name }));
	const map = z
		.record(
			z.string(),
			readingsField(unit, {}, { text: "from the nut's end to the slot's middle" }),
		)
		.transform((given, ctx): SlotSource => {
			const entries = Object.entries(given);
			if (entries.length === 0) fault(ctx, "readings-empty", {});
			const wrong = entries.find(([key]) => !/^[1-9]\d*$/u.test(key));
			if (wrong) fault(ctx, "reading-fret", { given: wrong[0] });
			return {
				readings: entries.flatMap(([key, values]) =>
					values.map((at) => ({ fret: Number(key), at })),
				),
			};
		});
	return z.union([file, map]).meta({
		...describe(text),
		kind: "map",
		range: "{1: 35.5 mm, 12: [323.5 mm, 324 mm]}, or a CSV file: readings.csv",
	});
}

/** `{nut: [43.0 mm, 43.1 mm], last-fret: 56 mm}`: readings at stations. */
export function stationReadingsField(unit: Unit, range: LengthRange, text: FieldText) {
	return z
		.record(z.string(), readingsField(unit, range, { text: "readings there" }))
		.transform((map, ctx): StationMap<readonly number[]> => {
			const entries = Object.entries(map).map(([key, value]) => {
				const station = parseStation(key, unit);
				if (!station)
					fault(ctx, "station", {
						given: key,
						allowed: "nut, last-fret, a fret number, or a length with its unit",
					});
				return { station: station ?? { kind: "nut" as const }, value };
			});
			if (entries.length === 0) fault(ctx, "station-map-empty", {});
			return entries;
		})
		.meta({ ...describe(text), kind: "map", range: "{nut: [43.0 mm, 43.1 mm], last-fret: 56 mm}" });
}
