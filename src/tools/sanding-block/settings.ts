import * as z from "zod";
import { choiceField, countField, lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

/** The block's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		form: choiceField(["curved", "flat"], {
			text: "curved works a whole cylinder at once; flat works a flat board, or a compound one line by line",
			derived: "curved on a board of one radius, else flat",
		}).optional(),
		for: choiceField(["wood", "crowns"], {
			text: "What is dressed: the board's wood, or the frets' crowns, which lie on a larger radius",
		}).default("wood"),
		skin: lengthField(
			unit,
			{ from: 0, to: 3 },
			{ text: "Thickness of the skin over the ribs; 0 stacks the ribs without gaps" },
		).prefault("0.8 mm"),
		abrasive: lengthField(
			unit,
			{ from: 0, to: 3 },
			{ text: "Thickness of the abrasive with its glue" },
		).prefault("0.3 mm"),
		ribs: countField(
			{ from: 2, to: 400 },
			{
				text: "Number of ribs: with their pitch it makes the length",
				derived:
					"half the board's length to the last fret, all of it for a flat beam; 100 mm stacked",
			},
		).optional(),
		"rib-pitch": lengthField(
			unit,
			{ above: 0, to: 100 },
			{
				text: "From one rib's middle to the next",
				derived: "25 mm; the sheet's thickness where skin is 0",
			},
		).optional(),
		"block-width": lengthField(
			unit,
			{ from: 20, to: 300 },
			{
				text: "Width of the block",
				derived:
					"the board's greatest width up to the last fret and 6 mm, in whole mm; 40 mm for a flat beam on a compound board",
			},
		).optional(),
		"block-height": lengthField(
			unit,
			{ from: 20, to: 150 },
			{
				text: "Height of the block",
				derived: "the arc's sagitta, 38 mm and a mill's cutter, in whole mm",
			},
		).optional(),
		"joint-fit": lengthField(
			unit,
			{ from: -0.3, to: 0.5 },
			{ text: "Added to the sheet's thickness for the width of the joints' slots" },
		).prefault("0.1 mm"),
		dowel: lengthOrWord(
			unit,
			["none"],
			{ from: 2, to: 12 },
			{ text: "Diameter of the two dowels through the ribs" },
		).prefault("6 mm"),
	});
}

export type Given = z.output<ReturnType<typeof settings>>;
export type BlockSettings = Settled<
	Given,
	"form" | "ribs" | "rib-pitch" | "block-width" | "block-height"
>;

/** Whether the ribs stand side by side, without rails and skin. */
export function isSolid({ skin }: Given): boolean {
	return skin === 0;
}
