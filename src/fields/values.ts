import * as z from "zod";
import { describe, type FieldText, fault, inRange, type LengthRange, rangeText } from "./length.js";

/** A whole number within a range. */
export function countField(range: LengthRange, text: FieldText) {
	return z
		.number()
		.superRefine((value, ctx) => {
			if (Number.isInteger(value) && inRange(value, range)) return;
			fault(ctx, "count", { given: value, allowed: `a whole number, ${rangeText(range, "")}` });
		})
		.meta({
			...describe(text),
			kind: "count",
			range: `whole number, ${rangeText(range, "")}`,
			multipleOf: 1,
			...boundsOf(range),
		});
}

/** The range as JSON Schema's keywords. */
function boundsOf({ above, from, to }: LengthRange) {
	return {
		...(above === undefined ? {} : { exclusiveMinimum: above }),
		...(from === undefined ? {} : { minimum: from }),
		...(to === undefined ? {} : { maximum: to }),
	};
}

/** A number without unit, fractions allowed. */
export function numberField(range: LengthRange, text: FieldText) {
	return z
		.number()
		.superRefine((value, ctx) => {
			if (inRange(value, range)) return;
			fault(ctx, "number-range", { given: value, allowed: rangeText(range, "") });
		})
		.meta({
			...describe(text),
			kind: "number",
			range: rangeText(range, ""),
			...boundsOf(range),
		});
}

/** One of some words. */
export function choiceField<const W extends readonly string[]>(words: W, text: FieldText) {
	return z.enum(words).meta({ ...describe(text), kind: "choice", range: words.join(", ") });
}

/** Yes or no. */
export function flagField(text: FieldText) {
	return z.boolean().meta({ ...describe(text), kind: "yes/no", range: "true or false" });
}

/** A free text for labels, names and dates. */
export function textField(range: { readonly most: number }, text: FieldText) {
	return z
		.union([z.string(), z.number()])
		.transform((given, ctx) => {
			const value = String(given).trim();
			if (value === "" || value.length > range.most) {
				fault(ctx, "text-length", { given: value, size: value.length, most: range.most });
			}
			if (/\p{Cc}/u.test(value)) fault(ctx, "text-control", { given: value });
			return value;
		})
		.meta({ ...describe(text), kind: "text", range: `1 to ${range.most} characters` });
}

/** A swing of temperature in kelvin: `10 K` or a bare number. */
export function kelvinField(range: LengthRange, text: FieldText) {
	return z
		.union([z.string(), z.number()])
		.transform((given, ctx) => {
			const match = /^\s*(\d+(?:\.\d+)?)\s*K?\s*$/u.exec(String(given));
			const value = match ? Number(match[1]) : Number.NaN;
			if (!inRange(value, range)) {
				fault(ctx, "kelvin", { given: String(given), allowed: rangeText(range, " K") });
			}
			return value;
		})
		.meta({ ...describe(text), kind: "temperature difference", range: rangeText(range, " K") });
}

/** A colour as #rrggbb. */
export function colourField(text: FieldText) {
	return z
		.string()
		.superRefine((value, ctx) => {
			if (!/^#[0-9a-f]{6}$/iu.test(value)) fault(ctx, "colour", { given: value });
		})
		.meta({ ...describe(text), kind: "colour", range: '"#rrggbb", in quotes' });
}
