import * as z from "zod";
import { OPERATIONS } from "../drawing/index.js";
import {
	bedField,
	choiceField,
	colourField,
	countField,
	describe,
	kerfField,
	lengthField,
	numberField,
	speedField,
} from "../fields/index.js";
import { FACTORS } from "../paper/index.js";
import { MATERIAL_NAMES } from "../shop/index.js";
import type { Unit } from "../units/index.js";

/** The `machine` block, of a job or of a machine's own file; every key may be left to the other. */
export function machineSchema(unit: Unit) {
	const pen = z.strictObject({
		colour: colourField({ text: "Colour in the files" }).optional(),
		width: lengthField(unit, { above: 0, to: 2 }, { text: "Line width in the files" }).optional(),
	});
	const pens = Object.fromEntries(OPERATIONS.map((o) => [o, pen.optional()]));
	return z.strictObject({
		kind: choiceField(["laser", "mill", "printer"], {
			text: "What cuts the parts",
			derived: "laser",
		}).optional(),
		tolerance: lengthField(
			unit,
			{ from: 0, to: 1 },
			{
				text: "How far off a cut edge may be; promised with every dimension",
				derived: "0.05 mm; 0.3 mm on paper, cut by hand",
			},
		).optional(),
		kerf: kerfField(unit, { from: 0, to: 2 }, MATERIAL_NAMES, {
			text: "Width of a laser's cut: contours move into the waste by half of it; measure it with a kerf-coupon; 0 writes nominal contours",
			derived: "0",
		}).optional(),
		cutter: lengthField(
			unit,
			{ above: 0, to: 30 },
			{
				text: "Diameter of a mill's cutter: contours stay nominal, and every inside feature is checked against it",
			},
		).optional(),
		relief: choiceField(["none", "floor"], {
			text: "floor: notches get a deeper floor where a mill's cutter would leave round corners",
			derived: "none",
		}).optional(),
		tabs: z
			.strictObject({
				count: countField({ from: 1, to: 20 }, { text: "Tabs that hold an outline in its sheet" }),
				width: lengthField(
					unit,
					{ above: 0, to: 20 },
					{ text: "Length of a tab on the finished part" },
				),
			})
			.optional()
			.meta(describe({ text: "Tabs that hold parts in the sheet, off the working edges" })),
		bed: bedField(
			unit,
			{ from: 20, to: 5000 },
			{ text: "The bed's size along its x and y axes; parts are laid out on it" },
		).optional(),
		margin: lengthField(
			unit,
			{ from: 0, to: 200 },
			{ text: "Strip along the bed's edges that stays empty", derived: "5 mm" },
		).optional(),
		spacing: lengthField(
			unit,
			{ from: 0, to: 200 },
			{
				text: "Least distance between the paths of two parts on the bed",
				derived: "2 mm or two kerfs, whichever is more; two cutters on a mill",
			},
		).optional(),
		speeds: z
			.strictObject({
				cut: speedField(unit, { text: "Cutting speed; with it, times are estimated" }),
				score: speedField(unit, { text: "Scoring speed" }),
				engrave: speedField(unit, {
					text: "Speed of engraved lines",
					derived: "the scoring speed",
				}).optional(),
				travel: speedField(unit, { text: "Speed between cuts" }),
			})
			.optional()
			.meta(describe({ text: "Speeds of the head, for the estimated time" })),
		stretch: z
			.strictObject({
				x: numberField(FACTORS, { text: "Measured over nominal along the bed's x", derived: "1" }),
				y: numberField(FACTORS, { text: "Measured over nominal along the bed's y", derived: "1" }),
			})
			.partial()
			.optional()
			.meta(
				describe({ text: "What the machine makes of a millimetre; drawings are divided by it" }),
			),
		pens: z
			.strictObject(pens)
			.optional()
			.meta({
				...describe({ text: "Colour and line width per operation" }),
				kind: "map",
				range:
					'{cut: {colour: "#0b7a75", width: 0.15 mm}, score: …, engrave: …, tab: …, reference: …}',
			}),
	});
}

/** A machine block as given, lengths in mm. */
export type MachineValues = z.output<ReturnType<typeof machineSchema>>;

/** A file that describes a machine alone. */
export function machineFileSchema(unit: Unit) {
	return z.strictObject({
		format: z.literal(1).meta({ description: "Version of the form", kind: "number", range: "1" }),
		units: choiceField(["mm", "cm", "m", "in"], {
			text: "What a number without unit means",
		}).default("mm"),
		machine: machineSchema(unit),
	});
}
