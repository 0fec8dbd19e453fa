import * as z from "zod";
import { lengthField, numberField } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";

/** The shop sheet's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		overhang: lengthField(
			unit,
			{ from: 0, to: 20 },
			{ text: "Wire left over at each end of a fret, to be nipped and filed" },
		).prefault("3 mm"),
		waste: numberField(
			{ from: 0, to: 100 },
			{ text: "Wire ordered beyond the sum of all frets, percent" },
		).default(10),
	});
}

/** Settings with every default in place. */
export type ShopSheetSettings = z.output<ReturnType<typeof settings>>;
