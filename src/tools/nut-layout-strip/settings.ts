import * as z from "zod";
import { choiceField, describe, lengthField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import type { Settled } from "../tool.js";

const ENDS = ["nut", "saddle"] as const;
/** The end of the strings that a strip is for. */
export type End = (typeof ENDS)[number];

/** The strip's settings as a job gives them. */
export function settings(unit: Unit) {
	const margin = (side: string) =>
		lengthField(
			unit,
			{ above: 0, to: 30 },
			{
				text: `From the board's ${side} edge to the middle of the outer ${side} string, along the nut`,
				derived: "what the board leaves beside the strings' spread at the nut",
			},
		).optional();
	return z.strictObject({
		ends: z
			.array(choiceField(ENDS, { text: "end" }))
			.min(1)
			.max(2)
			.default(["nut", "saddle"])
			.meta({
				...describe({ text: "Where the strings are laid out, a strip each" }),
				kind: "list",
				range: "[nut, saddle]",
			}),
		"string-spacing": choiceField(["centres", "gaps"], {
			text: "What is alike from string to string: centres, middle to middle; gaps, the air between them, which needs string-gauges",
			derived: "gaps where string-gauges are given, else centres",
		}).optional(),
		"string-gauges": z
			.array(lengthField(unit, { above: 0, to: 5 }, { text: "diameter" }))
			.min(1)
			.max(48)
			.optional()
			.meta({
				...describe({
					text: "Diameters of all strings, from string 1 (treble) on, both of every course",
				}),
				kind: "list of lengths",
				range: "[0.010 in, 0.013 in, 0.017 in, 0.026 in, 0.036 in, 0.046 in]",
			}),
		"bass-margin": margin("bass"),
		"treble-margin": margin("treble"),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type LayoutSettings = Settled<Given, "string-spacing">;
