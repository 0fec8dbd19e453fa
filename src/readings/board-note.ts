import { type Problem, problem } from "../problem/index.js";

/** What readings cannot decide, or a fault of theirs that stops nothing, at its place in the readings. */
export function note(
	code: string,
	path: readonly (string | number)[],
	facts: Problem["facts"] = {},
): Problem {
	return { ...problem(code, path, facts), severity: "note" };
}
