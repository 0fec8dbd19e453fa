import { compensated, cutterProblems, kerfIn, type Machine, withTabs } from "../cutting/index.js";
import type { Part } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import type { MadeTool, SkippedTool } from "./build.js";

/** Every tool as the machine is told to cut it, the same at nominal size, and what of kits it cannot cut. */
export type CutTools =
	| {
			readonly ok: true;
			readonly tools: readonly MadeTool[];
			readonly nominal: readonly MadeTool[];
			readonly skipped: readonly SkippedTool[];
	  }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Every part as the machine is told to cut it, or what it cannot cut; a kit does without such a tool. */
export function cutAll(nominal: readonly MadeTool[], machine: Machine): CutTools {
	const cut = nominal.map((tool) => {
		const problems: Problem[] = [];
		const parts = tool.parts.map((part) => {
			const tabs = tool.wanted.tabs ? machine.tabs : null;
			const result = cutPart(part, { ...machine, tabs });
			if ("marks" in result) return result;
			for (const p of result) problems.push({ ...p, where: { path: tool.wanted.path } });
			return part;
		});
		return { nominal: tool, tool: { ...tool, parts }, problems: together(problems) };
	});
	const inKit = ({ tool }: (typeof cut)[number]) => tool.wanted.kit !== null;
	const refused = cut.filter((c) => c.problems.length > 0 && !inKit(c));
	const problems = together(refused.flatMap((c) => c.problems));
	if (problems.length > 0) return { ok: false, problems };
	const made = cut.filter((c) => c.problems.length === 0);
	return {
		ok: true,
		tools: made.map(({ tool }) => tool),
		nominal: made.map((c) => c.nominal),
		skipped: cut
			.filter((c) => c.problems.length > 0)
			.map(({ tool, problems: reasons }) => ({ wanted: tool.wanted, reasons })),
	};
}

/** Problems that differ in nothing but the feature, as one that names them all. */
function together(problems: readonly Problem[]): Problem[] {
	const groups = new Map<string, Problem[]>();
	for (const p of problems) {
		const { feature: _, ...rest } = p.facts;
		const key = JSON.stringify([p.code, p.where.path, rest]);
		groups.set(key, [...(groups.get(key) ?? []), p]);
	}
	return [...groups.values()].map(([first, ...more]) => {
		const features = [first!, ...more].flatMap((p) => p.facts.feature ?? []);
		const all = [...new Set(features.map(String))];
		return all.length > 1 ? { ...first!, facts: { ...first!.facts, feature: all } } : first!;
	});
}

/** Checked against the cutter, moved for the kerf, held by tabs. */
function cutPart(part: Part, machine: Machine): Part | readonly Problem[] {
	if (part.nominal) return part;
	const { cutter, tabs } = machine;
	const tooNarrow = cutter === null ? [] : cutterProblems(part, cutter);
	if (tooNarrow.length > 0) return tooNarrow;
	const kerf = kerfIn(machine, part.stock);
	if (kerf === null) return [kerfUnknown(part, machine)];
	const moved = compensated(part, kerf);
	if (!moved.ok) return moved.problems;
	if (!tabs) return moved.part;
	const held = withTabs(moved.part, tabs, { ...machine, kerf });
	return "code" in held ? [held] : held;
}

function kerfUnknown({ stock }: Part, { kerf }: Machine): Problem {
	const name = ({ material, thickness }: Part["stock"]) =>
		`${material} ${trimmed(thickness, 3)} mm`;
	const known = typeof kerf === "number" ? [] : kerf.map(name);
	return problem("kerf-unknown", [], { stock: name(stock), known });
}
