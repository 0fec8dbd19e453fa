import { type Problem, problem } from "../problem/index.js";
import { parseLength, type Unit } from "../units/index.js";
import { inRange, type LengthRange, rangeText, slipOf } from "./length.js";

/**
 * A length in millimetres from its text, or why it is none: what a length field does, for texts
 * that stand in no schema.
 *
 * @param path - where the text stands: a flag, or keys of the job
 * @example givenLength("24 in", "mm", { above: 0 }, ["--width"]) // 609.6
 */
export function givenLength(
	given: string,
	unit: Unit,
	range: LengthRange,
	path: Problem["where"]["path"],
): number | Problem {
	const value = parseLength(given, unit);
	if (typeof value !== "number") {
		const facts = { given: value.given, words: "" };
		return problem(value.fault, path, { ...facts, ...(value.unit ? { unit: value.unit } : {}) });
	}
	if (inRange(value, range)) return value;
	const facts = { given: given.trim(), mm: value, allowed: rangeText(range) };
	return problem("length-range", path, { ...facts, slip: slipOf(given, range) });
}
