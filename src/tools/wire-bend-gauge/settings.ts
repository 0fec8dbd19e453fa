import * as z from "zod";
import {
	countField,
	describe,
	lengthField,
	lengthOrWord,
	numberField,
} from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** A bend gauge's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"over-bend": numberField(
			{ from: 1, to: 40 },
			{
				text: "How much tighter than the board the wire is bent, in percent of the radius",
				derived: "15; goes with an arched board",
			},
		).optional(),
		rise: lengthField(
			unit,
			{ from: 0.05, to: 3 },
			{
				text: "How far the wire's middle stands over its ends, over the board's greatest width",
				derived: "0.3 mm; goes with a flat board",
			},
		).optional(),
		"bend-for": z
			.array(countField({ from: 0, to: 150 }, { text: "fret" }))
			.min(1)
			.max(40)
			.optional()
			.meta({
				...describe({
					text: "Frets whose wire is bent by a gauge of its own",
					derived: "one gauge for all wire, by the tightest fret",
				}),
				kind: "list of frets",
				range: "[1, 12, 22]",
			}),
		"gauge-width": lengthField(
			unit,
			{ from: 15, to: 300 },
			{
				text: "Width of the gauge: the arc runs over all of it",
				derived: "the longest fret, in whole mm",
			},
		).optional(),
		"gauge-height": lengthField(
			unit,
			{ from: 12, to: 200 },
			{
				text: "Height of the gauge",
				derived: "the arc's sagitta with room for letters and hole, in whole mm",
			},
		).optional(),
		"gauge-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("5 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place but the height, which is each gauge's own. */
export type BendSettings = Settled<Given, "gauge-width">;
