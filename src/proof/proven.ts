import type { Problem } from "../problem/index.js";
import type { Measured } from "./types.js";

/** What a file was found to be. */
export interface Proven {
	readonly file: string;
	/** Every claim of every part on it, as often as the part lies there. */
	readonly measured: readonly Measured[];
	/** What is wrong with it, worst first; empty if all is well. */
	readonly findings: readonly Problem[];
}

/** What was measured and found, under the file's name. */
export function proven(
	file: string,
	of: readonly Measured[],
	findings: readonly Problem[],
): Proven {
	const measured = of.map((m) => ({ ...m, file }));
	const rank = { error: 0, warning: 1, note: 2 };
	const placed = findings.map((f) => ({ ...f, where: { ...f.where, file } }));
	const sorted = placed.sort((a, b) => rank[a.severity] - rank[b.severity]);
	return { file, measured, findings: sorted };
}
