import { z } from "zod";
import { fixed, parseLength, trimmed, type Unit } from "../units/index.js";

/** What a field tells about itself: one text for help, listing, schema and starter. */
export interface FieldText {
	/** What it is, in a line. */
	readonly text: string;
	/** How the default follows from the neck, where it is not a fixed value. */
	readonly derived?: string;
}

/** Allowed range of a length, mm. */
export interface LengthRange {
	/** Greater than this. */
	readonly above?: number;
	/** This or more. */
	readonly from?: number;
	/** This or less. */
	readonly to?: number;
}

/** A range in words: "above 0 mm, at most 30 mm". */
export function rangeText(range: LengthRange, unit = " mm"): string {
	const parts = [];
	if (range.above !== undefined) parts.push(`above ${trimmed(range.above, 3)}${unit}`);
	if (range.from !== undefined) parts.push(`${trimmed(range.from, 3)}${unit} or more`);
	if (range.to !== undefined) parts.push(`at most ${trimmed(range.to, 3)}${unit}`);
	return parts.join(", ") || "any";
}

export function inRange(value: number, range: LengthRange): boolean {
	if (range.above !== undefined && !(value > range.above)) return false;
	if (range.from !== undefined && !(value >= range.from)) return false;
	return range.to === undefined || value <= range.to;
}

/** Adds a problem to a zod context: our code and facts travel in `params`. */
export function fault(ctx: z.RefinementCtx, code: string, facts: Record<string, string | number>) {
	ctx.addIssue({ code: "custom", message: code, params: { code, facts } });
}

/** A text or number as YAML gives it. */
const scalar = z.union([z.string(), z.number()]);

/** A length field: text or number in, millimetres out. */
export function lengthField(unit: Unit, range: LengthRange, text: FieldText) {
	return scalar
		.transform((given, ctx) => lengthOf(given, unit, range, ctx) ?? z.NEVER)
		.meta({ ...describe(text), kind: "length", range: rangeText(range) });
}

/** A length or one of some words: `flat`, `none`. */
export function lengthOrWord<W extends string>(
	unit: Unit,
	words: readonly W[],
	range: LengthRange,
	text: FieldText,
) {
	return scalar
		.transform((given, ctx): number | W => {
			const word = words.find((w) => w === given);
			return word ?? lengthOf(given, unit, range, ctx, words) ?? z.NEVER;
		})
		.meta({
			...describe(text),
			kind: "length",
			range: `${words.join(" or ")}, or a length ${rangeText(range)}`,
		});
}

/** Reads and checks a length; on a fault the context gets it and null comes back. */
export function lengthOf(
	given: string | number,
	unit: Unit,
	range: LengthRange,
	ctx: z.RefinementCtx,
	words: readonly string[] = [],
): number | null {
	const value = parseLength(given, unit);
	if (typeof value !== "number") {
		fault(ctx, value.fault, {
			given: value.given,
			...(value.unit === undefined ? {} : { unit: value.unit }),
			words: words.join(", "),
		});
		return null;
	}
	if (!inRange(value, range)) {
		fault(ctx, "length-range", {
			given: String(given),
			mm: `${fixed(value, 3)} mm`,
			allowed: rangeText(range),
			slip: slipOf(given, range),
		});
		return null;
	}
	return value;
}

/** The unit in which a bare number would have been allowed, for the hint. */
function slipOf(given: string | number, range: LengthRange): string {
	if (!/^\s*[\d.]+(\s+\d+\/\d+)?\s*$/u.test(String(given))) return "";
	for (const unit of ["in", "mm", "cm"] as const) {
		const value = parseLength(given, unit);
		if (typeof value === "number" && inRange(value, range)) return `${given} ${unit}`;
	}
	return "";
}

/** Metadata in the form that zod carries into JSON Schema. */
export function describe({ text, derived }: FieldText) {
	return derived === undefined
		? { description: text }
		: { description: `${text} (default: ${derived})`, derived };
}
