import type { Part } from "../drawing/index.js";
import type { Job, Wanted } from "../job/index.js";
import type { Lettering } from "../lettering/index.js";
import type { PaperDocument } from "../paper/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { Bench } from "../tools/index.js";

/** One tool as it was made. */
export interface MadeTool {
	readonly wanted: Wanted;
	/** Defaults included. */
	readonly settings: Readonly<Record<string, unknown>>;
	readonly parts: readonly Part[];
	/** Pages that show no part. */
	readonly documents: readonly PaperDocument[];
}

/** A tool of a kit that does not apply to this neck, and why. */
export interface SkippedTool {
	readonly wanted: Wanted;
	readonly reasons: readonly Problem[];
}

/** Every tool's parts, and the tools of kits that do not apply; or every problem. */
export type BuiltTools =
	| {
			readonly ok: true;
			readonly tools: readonly MadeTool[];
			readonly skipped: readonly SkippedTool[];
	  }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Every tool's parts, or every problem. */
export type BuiltJob =
	| { readonly ok: true; readonly tools: readonly MadeTool[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Every tool's parts, or every tool's problems together. */
export function buildAll(job: Job, letters: Lettering): BuiltTools {
	const problems: Problem[] = [];
	const skipped: SkippedTool[] = [];
	const built = job.wanted.map((wanted): MadeTool => {
		const bench: Bench = { ...job.bench, stock: wanted.stock, layers: wanted.layers, letters };
		const settings = {
			...wanted.settings,
			...wanted.tool.defaults(bench, wanted.settings),
		};
		const {
			parts,
			documents = [],
			problems: found,
		} = wanted.tool.build(bench, settings, wanted.name);
		if (wanted.kit !== null && found.length > 0) skipped.push({ wanted, reasons: found });
		else {
			for (const p of found) {
				problems.push({ ...p, where: { path: [...wanted.path, ...p.where.path] } });
			}
		}
		const { purpose } = wanted.tool;
		const layered = parts.map((part) => inLayers({ ...part, purpose }, wanted.layers));
		return { wanted, settings, parts: layered, documents };
	});
	const tools = built.filter(({ wanted }) => !skipped.some((s) => s.wanted === wanted));
	const names = tools.flatMap(({ parts, documents, wanted }) =>
		[...parts, ...documents].map(({ name }) => ({ name, wanted })),
	);
	for (const [i, { name, wanted }] of names.entries()) {
		if (names.findIndex((n) => n.name === name) < i) {
			const twin = names.find((n) => n.name === name)!.wanted;
			problems.push(problem(twin === wanted ? "same-part" : "same-name", wanted.path, { name }));
		}
	}
	return problems.length > 0 ? { ok: false, problems } : { ok: true, tools, skipped };
}

/** Of a tool that is meant as a whole all parts, of another those that are named. */
export function onlyThese(tools: readonly MadeTool[], only: readonly string[]): BuiltJob {
	if (only.length === 0) return { ok: true, tools };
	const whole = ({ wanted }: MadeTool) =>
		only.includes(wanted.name) || only.includes(wanted.tool.id);
	const chosen = tools.map((tool) =>
		whole(tool)
			? tool
			: { ...tool, parts: tool.parts.filter(({ name }) => only.includes(name)), documents: [] },
	);
	const names = tools.flatMap((t) => [
		t.wanted.tool.id,
		t.wanted.name,
		...t.parts.map((p) => p.name),
	]);
	const problems = only
		.filter((given) => !names.includes(given))
		.map((given) => problem("only-unknown", [], { given, names: [...new Set(names)], guess: "" }));
	return problems.length > 0 ? { ok: false, problems } : { ok: true, tools: chosen };
}

/** A part that is glued up of several pieces says so. */
function inLayers(part: Part, layers: number): Part {
	if (layers === 1) return part;
	const each = part.layers ? "for every one " : "";
	const note = `Cut ${layers} of it ${each}and glue them up, working edges flush.`;
	return { ...part, layers: layers * (part.layers ?? 1), notes: [...part.notes, note] };
}
