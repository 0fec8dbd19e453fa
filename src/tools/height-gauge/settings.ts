import * as z from "zod";
import { describe, lengthField, lengthOrWord } from "../../fields/index.js";
import { trimmed, type Unit } from "../../units/index.js";

/** Heights that a gauge may have, mm: at the lowest step that is all of its jaw. */
const HEIGHTS = { from: 0.6, to: 25 } as const;

/** Steps of a gauge that is given no heights: 1 to 2.5 mm by tenths, or 3/64 to 8/64 in. */
function usualHeights(unit: Unit): string[] {
	if (unit === "in") return [3, 4, 5, 6, 7, 8].map((n) => `${n}/64 in`);
	return Array.from({ length: 16 }, (_, i) => `${trimmed(1 + i / 10, 1)} mm`);
}

/** The gauge's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		heights: z
			.array(lengthField(unit, HEIGHTS, { text: "height" }))
			.min(2)
			.max(60)
			.prefault(usualHeights(unit))
			.meta({
				...describe({
					text: "Heights of the steps over the lower edge, in any order",
				}),
				kind: "list of lengths",
				range: "[1 mm, 1.2 mm, 5/64 in], each 0.6 to 25 mm",
			}),
		"step-width": lengthField(
			unit,
			{ from: 2.5, to: 20 },
			{ text: "Width of a step along the gauge" },
		).prefault("3 mm"),
		throat: lengthField(
			unit,
			{ from: 3, to: 30 },
			{ text: "Opening over the highest step, through which the string is seen" },
		).prefault("6 mm"),
		"gauge-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{ text: "Diameter of the hole to hang it by" },
		).prefault("5 mm"),
	});
}

/** Settings as given, defaults in place. */
export type GaugeSettings = z.output<ReturnType<typeof settings>>;
