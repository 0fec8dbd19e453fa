import * as z from "zod";
import { lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";

/** The rocker's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"end-clearance": lengthField(
			unit,
			{ from: 0, to: 3 },
			{ text: "Air between an edge's ends and the next crowns or the nut, at least" },
		).prefault("0.5 mm"),
		"hanging-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("5 mm"),
	});
}

/** The rocker's settings, defaults in place. */
export type RockerSettings = z.output<ReturnType<typeof settings>>;
