import { fixed, inches } from "../../units/index.js";

/** Two lengths nearer than this print as one. */
const SAME = 5e-4;

/** A length in mm and inch. `mmAndInch(25.4)` is `"25.400 (1.0000 in)"`. */
export function mmAndInch(mm: number): string {
	return `${fixed(mm, 3)} (${inches(mm)} in)`;
}

/** From the least to the greatest of some lengths, or the one that all are. */
export function span(values: readonly number[]): string {
	const [least, most] = [Math.min(...values), Math.max(...values)];
	return most - least < SAME ? fixed(least, 3) : `${fixed(least, 3)} to ${fixed(most, 3)}`;
}
