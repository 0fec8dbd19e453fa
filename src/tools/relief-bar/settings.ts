import * as z from "zod";
import {
	choiceField,
	countField,
	describe,
	flagField,
	lengthField,
	lengthOrWord,
} from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** Feet stay narrower than this, so that they stand on one crown each, mm. */
const WIDEST_FOOT = 3.9;
/** Highest fret that a bar may be told to stand on. */
const MOST_FRETS = 150;

/** The bar's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		"body-joint": countField(
			{ from: 2, to: MOST_FRETS },
			{ text: "Fret at which the neck joins the body" },
		).optional(),
		"stand-on": z
			.array(countField({ from: 0, to: MOST_FRETS }, { text: "fret" }))
			.length(2)
			.optional()
			.meta({
				...describe({
					text: "The two frets that the bar stands on",
					derived: "fret 1 and the fret at the body joint, which body-joint tells",
				}),
				kind: "list of two frets",
				range: "[1, 14]",
			}),
		"reads-with": choiceField(["feeler", "dial"], {
			text: "feeler: a pad level with the feet, and a feeler leaf under it; dial: an indicator that hangs over the fret",
		}).default("feeler"),
		"foot-width": lengthField(
			unit,
			{ from: 1.5, to: WIDEST_FOOT },
			{ text: "Width of feet and pad along the bar" },
		).prefault("3 mm"),
		"bar-height": lengthField(
			unit,
			{ from: 20, to: 200 },
			{
				text: "Height of the bar",
				derived:
					"as high as its own sag asks, and as the dial's hole asks; 1 mm less than dial-reach where the stem is held",
			},
		).optional(),
		...dialSettings(unit),
		"zero-block": flagField({
			text: "A straight bar besides, on which the relief bar reads zero",
		}).default(true),
		"hanging-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 10 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("5 mm"),
	});
}

/** What only a dial asks for. */
function dialSettings(unit: Unit) {
	return {
		"dial-held-by": choiceField(["lug", "stem"], {
			text: "lug: bolted to the bar's face; stem: clamped in a channel between laminations",
		}).default("lug"),
		"dial-reach": lengthField(
			unit,
			{ from: 20, to: 150 },
			{
				text: "To the plunger's tip, pressed half way in: from the middle of the lug's hole, or from where the stem leaves the dial's body",
			},
		).optional(),
		"dial-hole": lengthField(
			unit,
			{ from: 2, to: 15 },
			{ text: "Diameter of the hole for the bolt through the dial's lug" },
		).prefault("6.4 mm"),
		"dial-stem": lengthField(
			unit,
			{ from: 4, to: 12 },
			{ text: "Diameter of the dial's stem; 8 mm and 3/8 in are usual" },
		).prefault("8 mm"),
		"stem-length": lengthField(
			unit,
			{ from: 8, to: 60 },
			{ text: "How far the stem stands out of the dial's body, without the plunger" },
		).prefault("12 mm"),
		"stem-play": lengthField(
			unit,
			{ from: 0, to: 0.5 },
			{ text: "How much wider along the bar the stem's channel is than the stem" },
		).prefault("0.1 mm"),
		"clamp-screw": lengthOrWord(
			unit,
			["none"],
			{ from: 2, to: 8 },
			{
				text: "Diameter of the holes in the cheeks for a screw that presses on the stem",
				derived: "4 mm, half of a stem thinner than 8 mm",
			},
		).optional(),
		dowel: lengthOrWord(
			unit,
			["none"],
			{ from: 2, to: 6 },
			{ text: "Diameter of the dowels that hold the laminations in their places" },
		).prefault("3 mm"),
	};
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type BarSettings = Settled<Given, "stand-on" | "clamp-screw">;
