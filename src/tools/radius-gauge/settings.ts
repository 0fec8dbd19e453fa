import * as z from "zod";
import {
	choiceField,
	describe,
	lengthField,
	lengthOrWord,
	stationField,
} from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** Least height that has room for a hole and two lines of letters over the arc, mm. */
export const LETTER_ROOM = 26;
const FACES = ["concave", "convex"] as const;
/** The side on which the arc does its work. */
export type Face = (typeof FACES)[number];

/** The gauge's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		at: z
			.array(stationField(unit, { text: "station" }))
			.min(1)
			.max(60)
			.optional()
			.meta({
				...describe({
					text: "Stations whose radius is wanted, a gauge each",
					derived: "one gauge on a cylinder; nut, middle fret and last fret on a compound board",
				}),
				kind: "list of stations",
				range: "[nut, 7, last-fret, 120 mm]",
			}),
		radii: z
			.array(lengthField(unit, { above: 0, to: 10_000 }, { text: "radius" }))
			.min(1)
			.max(60)
			.optional()
			.meta({
				...describe({ text: "Radii of your own instead of the neck's, a gauge each" }),
				kind: "list of lengths",
				range: "[7.25 in, 9.5 in, 12 in]",
			}),
		faces: z
			.array(choiceField(FACES, { text: "face" }))
			.min(1)
			.max(2)
			.default(["concave"])
			.meta({
				...describe({
					text: "concave lies on the board; convex checks blocks and cauls",
				}),
				kind: "list",
				range: "[concave, convex]",
			}),
		"gauge-width": lengthField(
			unit,
			{ from: 10, to: 300 },
			{
				text: "Width of the gauge: the arc runs over all of it",
				derived: "the board's greatest width up to the last fret, in whole mm",
			},
		).optional(),
		"gauge-height": lengthField(
			unit,
			{ from: 12, to: 200 },
			{
				text: "Height of the gauge",
				derived: `the arc's sagitta and ${LETTER_ROOM} mm for its letters, in whole mm`,
			},
		).optional(),
		"gauge-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{
				text: "Diameter of the hole to hang it by",
			},
		).prefault("5 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type GaugeSettings = Settled<Given, "gauge-width">;
