import { givenLength, type LengthRange } from "../fields/index.js";
import type { Problem } from "../problem/index.js";

/** A flag's length in millimetres, refused as a job file's length is. */
export function lengthOfFlag(flag: string, given: string, range: LengthRange): number | Problem {
	return givenLength(given, "mm", range, [flag]);
}

/** Whether a value is what is wrong with it. */
export function isProblem<T>(value: T | Problem): value is Problem {
	return typeof value === "object" && value !== null && "code" in value;
}
