import { type Problem, problemText } from "../problem/index.js";
import type { Estimate, FittedSlot } from "../readings/index.js";
import { fixed, trimmed } from "../units/index.js";

/** Slots against the law, along one line. */
export interface ReadLineSlots {
	readonly line: string;
	readonly slots: readonly FittedSlot[];
}

/** What was made of one kind of reading, for a page or a console. */
export interface FitBlock {
	readonly title: string;
	readonly facts: readonly (readonly [name: string, value: string])[];
	/** The first row holds the heads. */
	readonly rows: readonly (readonly string[])[];
	readonly notes: readonly string[];
	readonly residuals: readonly ReadLineSlots[];
}

/** A block without what it has none of. */
export type BlockPart = Partial<FitBlock> & { readonly title: string };

/** "647.700 ± 0.120 mm (95 % 647.580 to 647.820)". */
export function estimateText({ value, low, high }: Estimate, digits = 3): string {
	const half = Math.max(high - value, value - low);
	if (!Number.isFinite(half)) return `${fixed(value, digits)} mm, at least ${fixed(low, digits)}`;
	return `${fixed(value, digits)} ± ${fixed(half, digits)} mm (95 %: ${fixed(low, digits)} to ${fixed(high, digits)})`;
}

export function texts(notes: readonly Problem[]): string[] {
	return notes.map(problemText);
}

export function signed(value: number, digits = 3): string {
	const text = fixed(value, digits);
	return value > 0 ? `+${text}` : text;
}

export function chanceText(chance: number): string {
	return chance < 1e-4 ? "under 0.0001" : trimmed(chance, 4);
}
