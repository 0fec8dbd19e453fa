import type { Fact, Problem } from "../problem/index.js";

/** One thing that a written file does wrong. Facts `x` and `y` are places in the file's own coordinates. */
export function found(
	code: string,
	severity: Problem["severity"],
	facts: Readonly<Record<string, Fact>>,
): Problem {
	return { code, severity, where: { path: [] }, facts };
}
