import * as z from "zod";
import { countField, lengthField, lengthOrWord, stationField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** A string-arch gauge's settings as a job gives them. */
export function settings(unit: Unit) {
	const length = (from: number, to: number, text: string, derived?: string) =>
		lengthField(unit, { from, to }, { text, ...(derived === undefined ? {} : { derived }) });
	const action = (side: string) =>
		length(0.3, 10, `Wanted height of the ${side} string's underside over the crown`);
	return z.strictObject({
		"arch-at": stationField(unit, {
			text: "Station under whose strings it is held",
			derived: "saddle",
		}).optional(),
		"action-bass": action("lowest").prefault("2 mm"),
		"action-treble": action("highest").prefault("1.6 mm"),
		"action-fret": countField(
			{ from: 1, to: 150 },
			{
				text: "Fret at which the action is measured",
				derived: "12, or the last where there are fewer",
			},
		).optional(),
		"nut-clearance": length(
			0,
			2,
			"Height of the strings' undersides at the nut over the level of the crowns",
			"0.1 mm; 0 on a zero fret",
		).optional(),
		"head-margin": length(1, 20, "Head beyond the outer strings").prefault("3 mm"),
		"head-height": length(6, 40, "Height of the head, in the middle of its arc").prefault("12 mm"),
		"handle-length": length(
			20,
			250,
			"Length of the handle beside the head",
			"what its letters and its hole need, in whole mm",
		).optional(),
		"gauge-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("4 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place but the handle's length. */
export type ArchSettings = Settled<Given, "arch-at" | "action-fret" | "nut-clearance">;
