import * as z from "zod";
import { countField, lengthField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** The coupon's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		blocks: countField(
			{ from: 5, to: 20 },
			{ text: "Number of blocks that are pushed together and measured" },
		).default(10),
		pitch: lengthField(
			unit,
			{ from: 3, to: 30 },
			{ text: "From one cut between blocks to the next" },
		).prefault("10 mm"),
		fits: countField(
			{ from: 0, to: 15 },
			{
				text: "Number of slots in which a scrap of the sheet is tried; 0 for none",
				derived: "9 with a laser, else 0",
			},
		).optional(),
		step: lengthField(
			unit,
			{ from: 0.005, to: 0.5 },
			{ text: "From one slot's width to the next" },
		).prefault("0.02 mm"),
		"fit-middle": lengthField(
			unit,
			{ from: -1, to: 1 },
			{
				text: "Width of the middle slot less the sheet's thickness: about the kerf, negative, since the cut itself widens a slot",
			},
		).prefault("-0.16 mm"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type CouponSettings = Settled<Given, "fits">;
