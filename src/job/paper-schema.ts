import * as z from "zod";
import {
	describe,
	type FieldText,
	fault,
	lengthField,
	type PaperSize,
	paperField,
	paperFromText,
	rangeText,
} from "../fields/index.js";
import { FACTORS, factorProblem } from "../paper/index.js";
import type { Problem } from "../problem/index.js";
import type { Unit } from "../units/index.js";
import { nearest } from "./nearest.js";

/** Strip that most printers leave empty, mm (common practice, no source). */
export const USUAL_MARGIN = 6;

/** The job's `paper` key; `usualPaper` tells what stands for it where it is left out. */
export function paperSchema(unit: Unit) {
	return paperField(unit, nearest).optional();
}

/** The paper that a flag names, or why it names none. */
export function parsePaper(text: string, unit: Unit): PaperSize | Problem {
	return paperFromText(text, unit, nearest, ["--paper"]);
}

/** The job's `printer` block. */
export function printerSchema(unit: Unit) {
	return z
		.strictObject({
			across: factorField({
				text: "Measured over nominal across the feed, as camber printer says it",
			}),
			along: factorField({ text: "The same along the feed" }),
			margin: lengthField(
				unit,
				{ from: 0, to: 50 },
				{ text: "Strip along every edge of the paper that the printer does not reach" },
			).prefault(`${USUAL_MARGIN} mm`),
			overlap: lengthField(
				unit,
				{ above: 0, to: 200 },
				{ text: "How much of the drawing two neighbouring pages both show" },
			).prefault("15 mm"),
		})
		.prefault({})
		.meta(describe({ text: "What the printer makes of a page" }));
}

/** The printer as a job describes it, lengths in mm. */
export type PrinterValues = z.output<ReturnType<typeof printerSchema>>;

/** What a printer makes of a millimetre. */
function factorField(text: FieldText) {
	return z
		.number()
		.superRefine((factor, ctx) => {
			const found = factorProblem(factor, []);
			if (found) fault(ctx, found.code, found.facts as Record<string, string | number>);
		})
		.default(1)
		.meta({ ...describe(text), kind: "number", range: rangeText(FACTORS, "") });
}
