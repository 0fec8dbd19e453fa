import type { OutFile } from "./drawing/index.js";
import { type Job, type MachineFile, readJob } from "./job/index.js";
import { manifestOf } from "./manifest.js";
import type { Problem } from "./problem/index.js";
import { cautionsFor } from "./shop/index.js";
import { buildAll, type MadeTool, onlyThese } from "./stages/build.js";
import { cutAll } from "./stages/cut.js";
import { drawAll } from "./stages/draw.js";
import { lettersOf } from "./stages/letters.js";
import { FORMATS, type Format, writeAll } from "./stages/write.js";
import type { DxfFlavour } from "./writers/index.js";

export type { MadeTool } from "./stages/build.js";
export { FORMATS, type Format } from "./stages/write.js";

/** How a job is made; all optional, the defaults first. */
export interface MakeOptions {
	/** Brings the bytes of a file that the job names, a font. Without it such a job is refused. */
	readonly load?: (path: string) => Promise<Uint8Array>;
	/** SVG and DXF. */
	readonly formats?: readonly Format[];
	/** "r2000", "r12" or "loose". */
	readonly dxf?: DxfFlavour;
	/** Whether the reference layer is drawn: yes. */
	readonly dimensions?: boolean;
	/** Only these tools or part names. */
	readonly only?: readonly string[];
	/** Whether scale lengths outside 150 to 2000 mm pass: no. */
	readonly allowUnusual?: boolean;
	/** A machine's own file: the job's values win over it. */
	readonly machine?: MachineFile;
}

/** What came of a job; `ok: false` has problems and no files. */
export type Made =
	| {
			readonly ok: true;
			readonly job: Job;
			readonly tools: readonly MadeTool[];
			/** The drawings, and the manifest last. */
			readonly files: readonly OutFile[];
			readonly cautions: readonly string[];
	  }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * A job file's text into files: the whole sequence. Nothing is written anywhere; bytes come back.
 *
 * Problems of shape stop it first, then all problems of geometry together. The same text and
 * options give the same bytes.
 *
 * @example const made = await make(text); if (made.ok) made.files[0].name // "heron-baritone-….svg"
 */
export async function make(text: string, options: MakeOptions = {}): Promise<Made> {
	const { only = [], formats = FORMATS, dxf = "r2000" } = options;
	const read = readJob(text, options);
	if (!read.ok) return read;
	const { job } = read;
	const fail = (problems: readonly Problem[]): Made => ({
		ok: false,
		problems: problems.map(read.located),
	});
	const letters = await lettersOf(job, options.load);
	if (Array.isArray(letters)) return fail(letters);

	const built = buildAll(job, letters);
	if (!built.ok) return fail(built.problems);
	const chosen = onlyThese(built.tools, only);
	if (!chosen.ok) return fail(chosen.problems);
	const cut = cutAll(chosen.tools, job.bench.machine);
	if (!cut.ok) return fail(cut.problems);
	const drawn = drawAll(job, cut.tools, letters, options);

	const files = drawn.flatMap((sheet) => writeAll(sheet, job.bench.machine.pens, formats, dxf));
	const cautions = allCautions(job);
	const manifest = await manifestOf(job, chosen.tools, files, cautions);
	return { ok: true, job, tools: chosen.tools, files: [...files, manifest], cautions };
}

/** Cautions of every material that the job uses, each once, the standing one last. */
function allCautions({ bench, wanted }: Job): string[] {
	const materials = [...new Set(wanted.map((w) => w.stock.material))];
	const all = materials.map((m) => cautionsFor(bench.machine.kind, m));
	return [
		...new Set([...all.flatMap((list) => list.slice(0, -1)), ...all.flatMap((l) => l.slice(-1))]),
	];
}
