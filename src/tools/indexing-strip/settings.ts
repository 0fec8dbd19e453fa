import * as z from "zod";
import { lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import { secondEdgeField } from "../second-edge.js";
import type { Settled } from "../tool.js";

/** The strip's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		pin: lengthField(
			unit,
			{ from: 1, to: 12 },
			{ text: "Diameter of the pin that the notches sit on" },
		).prefault("3 mm"),
		"pin-play": lengthField(
			unit,
			{ from: 0, to: 1 },
			{ text: "How much wider a notch is than the pin" },
		).prefault("0.1 mm"),
		"pin-to-blade": lengthField(
			unit,
			{ from: -500, to: 500 },
			{
				text: "From the blade's middle to the pin's, along the board: above 0 where the pin stands on the saddle's side, below 0 on the nut's",
			},
		).prefault("0 mm"),
		"notch-depth": lengthField(
			unit,
			{ from: 1, to: 30 },
			{ text: "Depth of the notches", derived: "the pin's diameter and 2 mm" },
		).optional(),
		"strip-height": lengthField(
			unit,
			{ from: 12, to: 120 },
			{
				text: "Height of the strip",
				derived: "25 mm, or what notches, letters and hole need, in whole mm",
			},
		).optional(),
		"end-margin": lengthField(
			unit,
			{ from: 10, to: 200 },
			{
				text: "Strip beyond the outermost notches and the nut's line",
				derived: "12 mm, or the hole's diameter and 8 mm",
			},
		).optional(),
		"second-edge": secondEdgeField(unit),
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
export type IndexingSettings = Settled<Given, "notch-depth" | "strip-height" | "end-margin">;
