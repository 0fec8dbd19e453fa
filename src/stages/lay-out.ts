import { type Layout, layOut } from "../cutting/index.js";
import type { Job } from "../job/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { MadeTool, SkippedTool } from "./build.js";
import type { CutTools } from "./cut.js";

type Cut = Extract<CutTools, { ok: true }>;

/** Every sheet of the bed with the tools on them, or what fits on none. */
export type LaidJob =
	| (Cut & { readonly layouts: readonly Layout[] })
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * All parts on the machine's bed, as often as they have layers; none where no bed is known. A kit
 * does without a tool with a part that the bed does not hold.
 *
 * @param sheets - true asks for sheets even so, false for none
 */
export function layOutAll(
	{ bench }: Pick<Job, "bench">,
	cut: Cut,
	sheets: boolean | undefined,
): LaidJob {
	const { bed } = bench.machine;
	if (sheets === true && !bed) {
		return { ok: false, problems: [problem("sheets-without-bed", ["machine"])] };
	}
	if (!bed || sheets === false) return { ...cut, layouts: [] };
	const laid = layOut(piecesOf(cut.tools), bed);
	if (laid.ok) return { ...cut, layouts: laid.layouts };
	const tooLarge = cut.tools.flatMap(({ wanted, parts }): SkippedTool[] => {
		const own = laid.problems.filter((p) => parts.some(({ name }) => name === p.facts.part));
		const reasons = own.map((p) => ({ ...p, where: { path: wanted.path } }));
		return reasons.length > 0 ? [{ wanted, reasons }] : [];
	});
	const refused = tooLarge.filter(({ wanted }) => wanted.kit === null);
	if (refused.length > 0) {
		return { ok: false, problems: refused.flatMap(({ reasons }) => reasons) };
	}
	const isHeld = ({ wanted }: MadeTool) => !tooLarge.some((s) => s.wanted === wanted);
	const held: Cut = {
		ok: true,
		tools: cut.tools.filter(isHeld),
		nominal: cut.nominal.filter(isHeld),
		skipped: [...cut.skipped, ...tooLarge],
	};
	return layOutAll({ bench }, held, sheets);
}

/** Every part as often as it lies on the bed. */
function piecesOf(tools: readonly MadeTool[]) {
	return tools.flatMap(({ parts }) =>
		parts.flatMap((part) => Array.from({ length: part.layers ?? 1 }, () => part)),
	);
}
