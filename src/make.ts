import type { OutFile } from "./drawing/index.js";
import { type Job, loadJob, type MachineFile } from "./job/index.js";
import { manifestOf } from "./manifest.js";
import type { Problem } from "./problem/index.js";
import type { Proven } from "./proof/index.js";
import { type ReportFacts, reportHtml } from "./report/index.js";
import { cautionsFor } from "./shop/index.js";
import { buildAll, type MadeTool, onlyThese, type SkippedTool } from "./stages/build.js";
import { cutAll } from "./stages/cut.js";
import { type Drawing, drawAll } from "./stages/draw.js";
import { type Format, formatsOf, isPaperOnly, printedJob } from "./stages/formats.js";
import { layOutAll } from "./stages/lay-out.js";
import { lettersOf } from "./stages/letters.js";
import { printAll, type WrittenPrint } from "./stages/print.js";
import { proveAll } from "./stages/prove.js";
import { writeAll } from "./stages/write.js";
import type { DxfFlavour } from "./writers/index.js";

export type { MadeTool, SkippedTool } from "./stages/build.js";
export type { Drawing } from "./stages/draw.js";
export { FORMATS, type Format } from "./stages/formats.js";
export type { WrittenPrint } from "./stages/print.js";

/** How a job is made; all optional, the defaults first. */
export interface MakeOptions {
	/** Brings the bytes of a file that the job names, a font. Without it such a job is refused. */
	readonly load?: (path: string) => Promise<Uint8Array>;
	/**
	 * SVG and DXF; with a PDF besides where the job names its paper; a PDF alone for a printer or
	 * with `paper`.
	 */
	readonly formats?: readonly Format[];
	/** Everything on pages of this paper instead of the job's: "A4", "roll 610 mm". */
	readonly paper?: string;
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
	/** Whether parts are laid out on the machine's bed: where it is known. */
	readonly sheets?: boolean;
	/** Whether every file is measured again before it is handed out: yes. */
	readonly proof?: boolean;
	/** Whether a page for people, report.html, is made besides: no. */
	readonly report?: boolean;
}

/** What came of a job; `ok: false` has problems and no files. */
export type Made =
	| {
			readonly ok: true;
			readonly job: Job;
			readonly tools: readonly MadeTool[];
			/** Tools of kits that do not apply to this neck, each with its reasons. */
			readonly skipped: readonly SkippedTool[];
			/** Every part's own drawing, then the laid-out sheets. */
			readonly drawings: readonly Drawing[];
			/** What goes on paper: parts in tiles, documents. */
			readonly prints: readonly WrittenPrint[];
			/** The drawings, and the manifest last. */
			readonly files: readonly OutFile[];
			readonly cautions: readonly string[];
			/** What each drawing's file was found to be; none if they were not measured. */
			readonly proven: readonly Proven[];
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
	const { only = [], dxf = "r2000" } = options;
	const read = await loadJob(text, options);
	if (!read.ok) return read;
	const fail = (problems: readonly Problem[]): Made => ({
		ok: false,
		problems: problems.map(read.located),
	});
	const formats = formatsOf(read.job, options.formats, options.paper !== undefined);
	if ("code" in formats) return fail([formats]);
	const job = isPaperOnly(read.job, formats) ? printedJob(read.job) : read.job;
	const letters = await lettersOf(job, options.load);
	if (Array.isArray(letters)) return fail(letters);

	const built = buildAll(job, letters);
	if (!built.ok) return fail(built.problems);
	const chosen = onlyThese(built.tools, only);
	if (!chosen.ok) return fail(chosen.problems);
	const cut = cutAll(chosen.tools, job.bench.machine);
	if (!cut.ok) return fail(cut.problems);
	const laid = layOutAll(job, cut, options.sheets);
	if (!laid.ok) return fail(laid.problems);
	const { dimensions = true, report = false } = options;
	const drawings = drawAll(job, laid.tools, laid.layouts, letters, options);
	const prints = await printAll(job, laid.nominal, letters, formats, dimensions);

	const { pens } = job.bench.machine;
	const drawn = [
		...drawings.flatMap(({ sheet }) => writeAll(sheet, pens, formats.drawings, dxf)),
		...prints.flatMap(({ files }) => files),
	];
	const tools = promisedParts(laid.nominal, laid.tools);
	const skipped = [...built.skipped, ...laid.skipped];
	const facts = { job, tools, skipped, drawings, prints, dimensions };
	const cautions = allCautions(job);
	const promise = await manifestOf({ ...facts, files: drawn, cautions });
	const checked = options.proof === false ? UNPROVEN : await proveAll(drawn, promise, letters);
	if (!checked.ok) return fail(checked.problems);

	const { proven } = checked;
	const pages = report ? [reportOf({ ...facts, files: drawn, proven, cautions })] : [];
	const files = [...drawn, ...pages];
	const manifest = report ? await manifestOf({ ...facts, files, cautions }) : promise;
	const all = [...files, manifest];
	return { ok: true, job, tools, skipped, drawings, prints, files: all, cautions, proven };
}

/** The page for people. */
function reportOf(facts: ReportFacts): OutFile {
	const bytes = new TextEncoder().encode(reportHtml(facts));
	return { name: "report.html", format: "html", bytes, sheet: "", parts: [] };
}

const UNPROVEN = { ok: true as const, proven: [] };

/** The parts at nominal size with all that is promised of them once they are cut. */
function promisedParts(nominal: readonly MadeTool[], cut: readonly MadeTool[]): MadeTool[] {
	return nominal.map((tool, i) => ({
		...tool,
		parts: tool.parts.map((part, k) => {
			const { claims, notes } = cut[i]!.parts[k]!;
			return { ...part, claims, notes };
		}),
	}));
}

/** Cautions of every material that the job uses, each once, the standing one last. */
function allCautions({ bench, wanted }: Job): string[] {
	const materials = [...new Set(wanted.map((w) => w.stock.material))];
	const all = materials.map((m) => cautionsFor(bench.machine.kind, m));
	return [
		...new Set([...all.flatMap((list) => list.slice(0, -1)), ...all.flatMap((l) => l.slice(-1))]),
	];
}
