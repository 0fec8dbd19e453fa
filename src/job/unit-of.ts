import type { Unit } from "../units/index.js";

/** What a bare number means in a file, before the file is known to be sound. */
export function unitOf(value: unknown): Unit {
	const units = (value as { units?: unknown } | null)?.units;
	return units === "cm" || units === "m" || units === "in" ? units : "mm";
}
