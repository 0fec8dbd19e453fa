import * as z from "zod";
import { describe, lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import { MOST_EDGES } from "../edged-plate/plate.js";
import type { Settled } from "../tool.js";

/** Heights that a notch may have, mm; a wire bounds them further. */
const HEIGHTS = { from: 0.3, to: 4.2 } as const;
/** Narrowest foot that stands safely, and widest that is made by default, mm. */
export const LEAST_FOOT = 1.5;
export const USUAL_FOOT = 4;

/** The gauge's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"crown-heights": z
			.array(lengthField(unit, HEIGHTS, { text: "height" }))
			.min(1)
			.max(MOST_EDGES)
			.optional()
			.meta({
				...describe({
					text: "Heights of the crowns that the notches are for, in any order",
					derived: "the wire's own and up to three lower by 0.1 mm each, none under 0.5 mm",
				}),
				kind: "list of lengths",
				range: "[1.3 mm, 1.1 mm, 0.9 mm], one to four, each 0.3 to 4.2 mm",
			}),
		"foot-width": lengthField(
			unit,
			{ from: LEAST_FOOT, to: 20 },
			{
				text: "Width of the feet on either side of a notch",
				derived: `as wide as the nearest two frets allow, in tenths of a mm, at most ${USUAL_FOOT} mm`,
			},
		).optional(),
		"hanging-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("5 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type GaugeSettings = Settled<Given, "crown-heights" | "foot-width">;
