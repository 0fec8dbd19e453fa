import { FILE_TOLERANCE, type SizeClaim } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import type { Bench } from "./tool.js";

/** A length of the settings that the geometry does not allow; `allowed` says what it does. */
export function outOfRange(setting: string, mm: number, allowed: string): Problem {
	const facts = { given: `${trimmed(mm, 3)} mm`, mm, allowed, slip: "" };
	return problem("length-range", [setting], facts);
}

/** A claim on what is cut: promised to within the machine's tolerance. */
export function cutSize(
	bench: Bench,
	claim: Omit<SizeClaim, "operation" | "bench" | "file">,
): SizeClaim {
	return {
		operation: "cut",
		bench: bench.machine.tolerance,
		file: FILE_TOLERANCE,
		...claim,
	};
}

/** A claim on what is scored: a line, no edge. */
export function scoredSize(
	bench: Bench,
	claim: Omit<SizeClaim, "operation" | "bench" | "file">,
): SizeClaim {
	return { ...cutSize(bench, claim), operation: "score" };
}
