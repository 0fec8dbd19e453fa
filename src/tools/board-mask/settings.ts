import * as z from "zod";
import { countField, lengthField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";

/** The mask's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"crown-clearance": lengthField(
			unit,
			{ from: 0, to: 3 },
			{ text: "How much wider a window is than the crown" },
		).prefault("0.4 mm"),
		rail: lengthField(
			unit,
			{ from: 8, to: 60 },
			{ text: "Mask beyond the board's edges, either side" },
		).prefault("8 mm"),
		"end-margin": lengthField(
			unit,
			{ from: 3, to: 100 },
			{ text: "Mask beyond the last window" },
		).prefault("10 mm"),
		pieces: countField(
			{ from: 1, to: 20 },
			{ text: "Pieces that the mask is cut in, laid end to end on the board" },
		).default(1),
	});
}

/** The mask's settings, defaults in place. */
export type MaskSettings = z.output<ReturnType<typeof settings>>;
