import * as z from "zod";
import { lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** The rails' settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"rail-height": lengthField(
			unit,
			{ from: 2, to: 150 },
			{ text: "From the finished board up to the sled's underside, on the centre line" },
		).prefault("20 mm"),
		"foot-height": lengthField(
			unit,
			{ from: 5, to: 300 },
			{ text: "From the bench up to the finished board, on the centre line" },
		).prefault("50 mm"),
		"before-nut": lengthField(
			unit,
			{ from: 0, to: 300 },
			{ text: "From the board's nut end back to the middle of the first rail" },
		).prefault("30 mm"),
		"board-end": lengthField(
			unit,
			{ above: 0, to: 2000 },
			{
				text: "From the theoretical nut to the far end of the board",
				derived: "the last fret and 10 mm, in whole mm",
			},
		).optional(),
		"past-end": lengthField(
			unit,
			{ from: 0, to: 300 },
			{ text: "From the board's far end on to the middle of the second rail" },
		).prefault("30 mm"),
		"rail-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang a rail by" },
		).prefault("5 mm"),
	});
}

export type Given = z.output<ReturnType<typeof settings>>;
export type RailSettings = Settled<Given, "board-end">;
