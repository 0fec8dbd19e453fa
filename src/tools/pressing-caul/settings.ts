import * as z from "zod";
import { choiceField, lengthField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

const MOUNTS = ["slot", "holes", "none"] as const;

/** A caul's settings as a job gives them. */
export function settings(unit: Unit) {
	const length = (from: number, to: number, text: string, derived?: string) =>
		lengthField(unit, { from, to }, { text, ...(derived === undefined ? {} : { derived }) });
	return z.strictObject({
		"most-gap": length(
			0.01,
			0.5,
			"Most that may stay open over the middle of a fret while its ends are pressed: sets the number of cauls",
		).prefault("0.05 mm"),
		"side-margin": length(0, 30, "Caul beyond either end of the frets").prefault("2 mm"),
		"caul-height": length(
			15,
			120,
			"Height of the caul",
			"the arc's sagitta with room for letters and mount, in whole mm",
		).optional(),
		mount: choiceField(MOUNTS, {
			text: "How the press holds it: a slot in its back, or two holes",
		}).default("slot"),
		"mount-size": length(
			1.5,
			40,
			"Width of the mounting slot, or diameter of either hole",
			"6.5 mm for a slot, 4 mm for holes",
		).optional(),
		"slot-depth": length(4, 60, "Depth of the mounting slot").prefault("8 mm"),
		"hole-spacing": length(5, 100, "From centre to centre of the mounting holes").prefault("20 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place but the height, which is each caul's own. */
export type CaulSettings = Settled<Given, "mount-size">;
