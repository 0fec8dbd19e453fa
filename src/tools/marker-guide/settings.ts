import * as z from "zod";
import { countField, describe, flagField, lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import { doubleSpreadField } from "../marker-centres.js";
import type { Settled } from "../tool.js";

/** The guide's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		drill: lengthField(
			unit,
			{ from: 1, to: 20 },
			{ text: "Diameter of the drill: a pilot, or the dots' own" },
		).prefault("3 mm"),
		"drill-play": lengthField(
			unit,
			{ from: 0, to: 0.5 },
			{ text: "How much wider a hole is than the drill" },
		).prefault("0.1 mm"),
		"markers-at": z
			.array(countField({ from: 1, to: 150 }, { text: "fret" }))
			.min(1)
			.optional()
			.meta({
				...describe({
					text: "Frets whose markers are guided, of those that neck.markers lists",
					derived: "every marker of the neck",
				}),
				kind: "list of frets",
				range: "[12, 15]",
			}),
		"double-marker-spread": doubleSpreadField(unit),
		"slot-lines": flagField({
			text: "A line scored on the middle of every slot, to be laid over it",
		}).default(true),
		"end-margin": lengthField(
			unit,
			{ from: 3, to: 100 },
			{ text: "Plate beyond the slot of the last guided marker's fret" },
		).prefault("10 mm"),
		"hanging-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{
				text: "Diameter of the hole to hang it by, beyond the last slot",
				derived: "5 mm where the end margin has room for it, else none",
			},
		).optional(),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type GuideSettings = Settled<Given, "hanging-hole">;
