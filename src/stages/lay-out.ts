import { type Layout, layOut } from "../cutting/index.js";
import type { Job } from "../job/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { MadeTool } from "./build.js";

/** Every sheet of the bed, or what fits on none. */
export type LaidJob =
	| { readonly ok: true; readonly layouts: readonly Layout[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * All parts on the machine's bed, as often as they have layers; none where no bed is known.
 *
 * @param sheets - true asks for sheets even so, false for none
 */
export function layOutAll(
	{ bench, wanted }: Job,
	tools: readonly MadeTool[],
	sheets: boolean | undefined,
): LaidJob {
	const { bed } = bench.machine;
	if (sheets === true && !bed) {
		return { ok: false, problems: [problem("sheets-without-bed", ["machine"])] };
	}
	if (!bed || sheets === false) return { ok: true, layouts: [] };
	const pieces = tools.flatMap(({ parts }) =>
		parts.flatMap((part) => Array.from({ length: part.layers ?? 1 }, () => part)),
	);
	const laid = layOut(pieces, bed);
	if (laid.ok) return laid;
	const pathOf = (p: Problem) => {
		const tool = tools.find(({ parts }) => parts.some(({ name }) => name === p.facts.part));
		return tool?.wanted.path ?? wanted[0]!.path;
	};
	const problems = laid.problems.map((p) => ({ ...p, where: { path: pathOf(p) } }));
	return { ok: false, problems };
}
