import * as z from "zod";
import type { Law } from "../neck/index.js";
import type { Unit } from "../units/index.js";
import { describe, fault, lengthField } from "./length.js";

/** A division as a job gives it; measured positions still need the scale. */
export type Division = Law | { readonly kind: "positions"; readonly positions: readonly number[] };

/** Steps to the octave that a division may have. */
const MOST_STEPS = 120;

/** `12`, `19`, `rule-of-18`, `{cents: […]}`, `{ratios: […]}` or `{positions: […]}`. */
export function divisionField(unit: Unit) {
	const steps = z.number().transform((value, ctx): Division => {
		if (!Number.isInteger(value) || value < 5 || value > MOST_STEPS) {
			fault(ctx, "division-steps", { given: value, most: MOST_STEPS });
		}
		return { kind: "equal", steps: value };
	});
	const rule = z.literal("rule-of-18").transform((): Division => ({ kind: "rule-of-18" }));
	const lists = z
		.strictObject({
			cents: z.array(z.number()).min(1).max(200).optional(),
			ratios: z
				.array(z.union([z.number(), z.string()]))
				.min(1)
				.max(200)
				.optional(),
			positions: z
				.array(lengthField(unit, { above: 0 }, { text: "from the nut" }))
				.min(1)
				.max(150)
				.optional(),
		})
		.transform((lists, ctx): Division => listed(lists, ctx));
	return z.union([steps, rule, lists]).meta({
		...describe({
			text: "How the frets divide the string: equal steps to the octave, rule-of-18, or a list of cents, ratios or measured positions from fret 1 up; a list that ends on the octave (1200, 2) repeats",
		}),
		kind: "division",
		range:
			"5 to 120 steps to the octave, rule-of-18, {cents: [100, 200, …]}, {ratios: [16/15, 9/8, …]}, {positions: [36.35 mm, …]}",
	});
}

interface Lists {
	readonly cents?: readonly number[] | undefined;
	readonly ratios?: readonly (number | string)[] | undefined;
	readonly positions?: readonly number[] | undefined;
}

/** Highest fret that a list may reach, in octaves over the open string. */
const MOST_OCTAVES = 10;

function listed(lists: Lists, ctx: z.RefinementCtx): Division {
	const given = Object.values(lists).filter((list) => list !== undefined);
	if (given.length !== 1) fault(ctx, "division-list", {});
	if (lists.positions) {
		const { positions } = lists;
		requireRising(positions, 0, positions, ctx);
		return { kind: "positions", positions: [...positions] };
	}
	const ratios = lists.cents
		? lists.cents.map((cents) => 2 ** (cents / 1200))
		: (lists.ratios ?? []).map(ratioOf);
	const wrong = ratios.findIndex((ratio) => !(ratio <= 2 ** MOST_OCTAVES));
	if (wrong >= 0) {
		const facts = { entry: wrong + 1, given: String(given[0]![wrong]), most: MOST_OCTAVES };
		fault(ctx, lists.cents ? "division-cents" : "division-ratio", facts);
	} else requireRising(ratios, 1, given[0]!, ctx);
	return { kind: "listed", ratios };
}

/** Every entry must lie above the one before it, the first above `start`. */
function requireRising(
	values: readonly number[],
	start: number,
	given: readonly (number | string)[],
	ctx: z.RefinementCtx,
): void {
	values.forEach((value, i) => {
		if (value > (values[i - 1] ?? start)) return;
		fault(ctx, "division-order", { entry: i + 1, given: String(given[i]) });
	});
}

/** A ratio as a number (1.5) or a fraction ("3/2"); NaN if it is neither. */
function ratioOf(given: number | string): number {
	if (typeof given === "number") return given;
	const match = /^\s*(\d+(?:\.\d+)?)\s*(?:[/:]\s*(\d+(?:\.\d+)?))?\s*$/u.exec(given);
	return match ? Number(match[1]) / Number(match[2] ?? 1) : Number.NaN;
}

/** The law of a division on a scale of this length. */
export function lawOf(division: Division, scale: number): Law {
	if (division.kind !== "positions") return division;
	return { kind: "listed", ratios: division.positions.map((x) => scale / (scale - x)) };
}
