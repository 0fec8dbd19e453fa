import * as z from "zod";
import {
	choiceField,
	countField,
	describe,
	divisionField,
	fault,
	flagField,
	type LengthRange,
	lengthField,
	lengthOrWord,
	numberField,
	rangeText,
	stationMapField,
} from "../fields/index.js";
import type { Unit } from "../units/index.js";
import { readingsSchema } from "./readings-schema.js";

/** Scale lengths that an instrument has; others only on demand (`--allow-unusual`), mm. */
const USUAL_SCALE: LengthRange = { from: 150, to: 2000, unless: "--allow-unusual" };
const ANY_SCALE: LengthRange = { above: 0, to: 10_000 };

/** Narrowest board, mm: less is a slip of the unit, and no strip could be cut from it. */
export const LEAST_BOARD = 10;

export interface SchemaOptions {
	/** What a bare number means. */
	readonly unit: Unit;
	readonly allowUnusual: boolean;
}

/** The `neck` block. */
export function neckSchema({ unit, allowUnusual }: SchemaOptions) {
	const scaleRange = allowUnusual ? ANY_SCALE : USUAL_SCALE;
	const width: LengthRange = { from: LEAST_BOARD, to: 200 };
	const spread: LengthRange = { from: 5, to: 200 };
	return z.strictObject({
		scale: z
			.union([
				lengthField(unit, scaleRange, { text: "Scale length along the centre line" }),
				z.strictObject({
					bass: lengthField(unit, scaleRange, { text: "Along the outer bass string" }),
					treble: lengthField(unit, scaleRange, { text: "Along the outer treble string" }),
					"square-fret": numberField(
						{ from: 0, to: 150 },
						{ text: "Fret square to the centre line, fractions allowed" },
					),
				}),
			])
			.meta({
				...describe({
					text: "Scale length along the centre line; or, fanned, {bass: 27 in, treble: 25.5 in, square-fret: 7} along the outer strings",
					derived: "needed, or readings.slots",
				}),
				kind: "length or map",
				range: rangeText(scaleRange),
			})
			.optional(),
		use: choiceField(["readings", "numbers"], {
			text: "What counts where a value has both a number and readings",
			derived: "readings where there are any",
		}).optional(),
		readings: readingsSchema(unit)
			.optional()
			.meta(describe({ text: "What was read on the bench, instead of scale, radius and width" })),
		frets: countField({ from: 1, to: 150 }, { text: "Number of frets, a zero fret not counted" }),
		division: divisionField(unit).prefault(12),
		radius: z
			.union([
				lengthOrWord(unit, ["flat"], { above: 0, to: 10_000 }, { text: "One radius, or flat" }),
				stationMapField(unit, { above: 0, to: 10_000 }, { text: "A radius at each station" }),
			])
			.meta({
				...describe({
					text: "The board's radius: one length, flat, or a map of stations; between stations linear in distance",
					derived: "needed, or readings.radius",
				}),
				kind: "length or map",
				range: "flat, a length like 12 in, or {nut: 10 in, last-fret: 14 in}",
			})
			.optional(),
		width: z
			.union([
				lengthField(unit, width, { text: "Board width" }),
				stationMapField(unit, width, { text: "Board width at each station" }),
			])
			.meta({
				...describe({
					text: "Board width square to the centre line: one length, or a map of stations",
					derived: "needed, or readings.width",
				}),
				kind: "length or map",
				range: "a length like 43 mm, or {nut: 43 mm, last-fret: 56 mm}",
			})
			.optional(),
		strings: z
			.strictObject({
				count: countField({ from: 1, to: 24 }, { text: "Number of single strings" }).optional(),
				courses: countField({ from: 1, to: 12 }, { text: "Number of doubled strings" }).optional(),
				"pair-gap": lengthField(
					unit,
					{ above: 0, to: 10 },
					{
						text: "Between the two strings of a course; goes with courses",
					},
				).optional(),
				"at-nut": lengthField(unit, spread, {
					text: "Outer string centre to outer string centre at the nut, square to the centre line",
				}),
				"at-saddle": lengthField(unit, spread, {
					text: "The same at the saddle",
				}),
			})
			.superRefine((strings, ctx) => {
				const courses = strings.courses !== undefined;
				if ((strings.count !== undefined) === courses) fault(ctx, "count-or-courses", {});
				if (courses !== (strings["pair-gap"] !== undefined)) fault(ctx, "pair-gap", {});
			})
			.optional()
			.meta(describe({ text: "The strings; needed for fanned frets and string lines" })),
		handed: choiceField(["right", "left"], {
			text: "left mirrors the geometry, never the lettering",
		}).default("right"),
		"zero-fret": flagField({ text: "Whether a fret stands at the nut's place" }).default(false),
		"nut-shift": lengthField(
			unit,
			{ from: -20, to: 30 },
			{
				text: "Actual nut face from the theoretical nut, positive toward the saddle; frets stay where they are",
			},
		).prefault(0),
		"scale-uncertainty": lengthField(
			unit,
			{ from: 0, to: 10 },
			{ text: "Half the 95 % interval of the scale length; widens the straightedge's notches" },
		).prefault(0),
		binding: lengthField(
			unit,
			{ from: 0, to: 10 },
			{ text: "Thickness of the edge binding; slots end blind inside it" },
		).prefault(0),
		markers: z
			.array(
				z.union([
					countField({ from: 1, to: 150 }, { text: "Fret of a single marker" }),
					z
						.record(z.string(), z.enum(["single", "double"]).meta({ range: "single, double" }))
						.superRefine((marker, ctx) => {
							const keys = Object.keys(marker);
							const sound = keys.length > 0 && keys.every((key) => /^[1-9]\d*$/u.test(key));
							if (!sound) fault(ctx, "marker", { given: keys.join(", ") });
						}),
				]),
			)
			.default([])
			.meta({
				...describe({ text: "Frets with position markers" }),
				kind: "list",
				range: "[3, 5, 7, 9, {12: double}]",
			}),
	});
}
