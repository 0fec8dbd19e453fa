import * as z from "zod";
import { parseLength, trimmed, type Unit } from "../units/index.js";

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
	/** The flag that lets other values pass. */
	readonly unless?: string;
}

/** A range in words: "1 to 30 mm", "above 0, at most 30 mm". */
export function rangeText({ above, from, to, unless }: LengthRange, unit = " mm"): string {
	const say = (value: number) => trimmed(value, 3);
	const top = to === undefined ? "" : `${say(to)}${unit}`;
	let text = top && `at most ${top}`;
	if (from !== undefined) text = top ? `${say(from)} to ${top}` : `${say(from)}${unit} or more`;
	if (above !== undefined) {
		text = top ? `above ${say(above)}, at most ${top}` : `above ${say(above)}${unit}`;
	}
	return unless === undefined ? text || "any" : `${text} (others with ${unless})`;
}

export function inRange(value: number, range: LengthRange): boolean {
	if (range.above !== undefined && !(value > range.above)) return false;
	if (range.from !== undefined && !(value >= range.from)) return false;
	return range.to === undefined || value <= range.to;
}

/** Adds a problem to a zod context: our code and facts travel in `params`. */
export function fault(
	ctx: z.RefinementCtx,
	code: string,
	facts: Record<string, string | number>,
	path: PropertyKey[] = [],
) {
	ctx.addIssue({ code: "custom", message: code, params: { code, facts }, path });
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
			const word = words.find((w) => w === String(given).trim().toLowerCase());
			return word ?? lengthOf(given, unit, range, ctx, words) ?? z.NEVER;
		})
		.meta({
			...describe(text),
			kind: "length",
			range: `${words.join(" or ")}, or ${rangeText(range)}`,
		});
}

/** Reads and checks a length; on a fault the context gets it and null comes back. */
function lengthOf(
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
			given: String(given).trim(),
			mm: value,
			allowed: rangeText(range),
			slip: slipOf(given, range),
		});
		return null;
	}
	return value;
}

/**
 * The length with the unit that was likely meant: one in which it would have been allowed. Of
 * several the one nearest the middle of the range, by ratio; "" if there is none.
 *
 * @example slipOf("64.8 mm", { from: 150, to: 2000 }) // "64.8 cm"
 */
export function slipOf(given: string | number, range: LengthRange): string {
	const number = String(given)
		.trim()
		.replace(/\s*(?:[a-z]+|["″”]|'')$/iu, "");
	const middle = Math.sqrt((range.from || 1) * (range.to ?? 1));
	const far = (value: number) => (range.from ? Math.abs(Math.log(value / middle)) : 0);
	const fitting = (["in", "mm", "cm"] as const).flatMap((unit) => {
		const value = parseLength(number, unit);
		return typeof value === "number" && value > 0 && inRange(value, range) ? [{ unit, value }] : [];
	});
	const best = fitting.sort((a, b) => far(a.value) - far(b.value))[0];
	return best ? `${number} ${best.unit}` : "";
}

/** Metadata in the form that zod carries into JSON Schema. */
export function describe({ text, derived }: FieldText) {
	return derived === undefined
		? { description: text }
		: { description: `${text} (default: ${derived})`, derived };
}
