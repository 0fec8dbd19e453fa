import * as z from "zod";
import { choiceField, flagField, lengthField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import { doubleSpreadField } from "../marker-centres.js";
import type { Settled } from "../tool.js";

/** The strip's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		slots: choiceField(["scored", "tang", "line"], {
			text: "scored: a line scored on every slot's middle; tang: a slot cut as wide as the tang; line: one cut on every slot's middle, as wide as the beam",
		}).default("scored"),
		"edge-margin": lengthField(
			unit,
			{ from: 0, to: 100 },
			{
				text: "Strip beyond the board's edges, either side",
				derived: "0 with scored lines, so that the strip is the board; 5 mm with cut slots",
			},
		).optional(),
		"end-margin": lengthField(
			unit,
			{ from: 3, to: 100 },
			{ text: "Strip before the nut and beyond the last fret" },
		).prefault("10 mm"),
		"string-lines": flagField({
			text: "Dashes on every string's line at the slots, where the job gives the strings",
		}).default(true),
		distances: flagField({ text: "The distance from the nut at every slot" }).default(true),
		"double-marker-spread": doubleSpreadField(unit),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type StripSettings = Settled<Given, "edge-margin">;
