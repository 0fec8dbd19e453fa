import { compensated } from "./cutting/index.js";
import {
	type OutFile,
	type Part,
	type Sheet,
	sheetOfOne,
	type TitleFacts,
} from "./drawing/index.js";
import { fileSafe, type Job, readJob, type Wanted } from "./job/index.js";
import { type Lettering, loadLettering } from "./lettering/index.js";
import { manifestOf } from "./manifest.js";
import { type Problem, problem } from "./problem/index.js";
import { cautionsFor } from "./shop/index.js";
import type { Bench } from "./tools/index.js";
import { type DxfFlavour, writeDxf, writeSvg } from "./writers/index.js";

export type Format = "svg" | "dxf";
export const FORMATS: readonly Format[] = ["svg", "dxf"];

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
}

/** One tool as it was made. */
export interface MadeTool {
	readonly wanted: Wanted;
	/** Defaults included. */
	readonly settings: Readonly<Record<string, unknown>>;
	readonly parts: readonly Part[];
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
	const { only = [], allowUnusual = false } = options;
	const read = readJob(text, { only, allowUnusual });
	if (!read.ok) return read;
	const letters = await lettersOf(read.job, options);
	if (Array.isArray(letters)) return { ok: false, problems: letters.map(read.located) };

	const built = buildAll(read.job, letters);
	if (!built.ok) return { ok: false, problems: built.problems.map(read.located) };
	const chosen = onlyThese(built.tools, only);
	if (!chosen.ok) return { ok: false, problems: chosen.problems };
	const cut = compensateAll(chosen.tools, read.job.bench.machine.kerf);
	if (!cut.ok) return { ok: false, problems: cut.problems.map(read.located) };

	const { job } = read;
	const facts = titleFacts(job);
	const sheets = cut.tools.flatMap(({ parts, wanted }) =>
		parts.map((part) => {
			const cautions = cautionsFor(job.bench.machine.kind, wanted.stock.material);
			const name = `${job.fileName}-${part.name}`;
			return sheetOfOne(part, { ...facts, cautions }, letters, name, options.dimensions ?? true);
		}),
	);
	const files = sheets.flatMap((sheet) => writeAll(sheet, job, options));
	const cautions = allCautions(job);
	const manifest = await manifestOf(job, chosen.tools, files, cautions);
	return { ok: true, job, tools: chosen.tools, files: [...files, manifest], cautions };
}

function titleFacts({ bench }: Job): Omit<TitleFacts, "cautions"> {
	return { job: bench.job, date: bench.date, kerf: bench.machine.kerf };
}

/** Cautions of every material that the job uses, each once, the standing one last. */
function allCautions({ bench, wanted }: Job): string[] {
	const materials = [...new Set(wanted.map((w) => w.stock.material))];
	const all = materials.map((m) => cautionsFor(bench.machine.kind, m));
	return [
		...new Set([...all.flatMap((list) => list.slice(0, -1)), ...all.flatMap((l) => l.slice(-1))]),
	];
}

/** Signs that camber's own texts are made of: printable ASCII and two more. */
export const OWN_SIGNS = `${String.fromCharCode(...Array.from({ length: 95 }, (_, i) => 32 + i))}±°`;

/** The job's lettering, or why there is none. */
async function lettersOf(job: Job, { load }: MakeOptions): Promise<Lettering | Problem[]> {
	const path = ["lettering", "font"];
	const file = job.font ?? "";
	let letters: Lettering;
	try {
		if (file && !load) return [problem("font-not-loaded", path, { file })];
		const bytes = file && load ? await load(file) : null;
		letters = await loadLettering(bytes ? { bytes, name: fontName(file) } : undefined);
	} catch (error) {
		const text = error instanceof Error ? error.message : String(error);
		const reason = text.replace(/^the font "[^"]*" (?:cannot be read: )?/u, "");
		return [problem("font-unusable", path, { file, reason })];
	}
	const lacking = letters.missing(OWN_SIGNS);
	if (lacking.length > 0) {
		const missing = lacking.map((sign) => (sign === " " ? "space" : sign));
		return [problem("font-lacks-signs", path, { file, missing })];
	}
	const { job: name, date } = job.bench;
	const texts = [["job", name] as const, ["date", date ?? ""] as const];
	const problems = texts.flatMap(([key, text]) => {
		const missing = letters.missing(text);
		return missing.length > 0 ? [problem("letters-missing", [key], { text, missing })] : [];
	});
	return problems.length > 0 ? problems : letters;
}

/** How label claims name a font: its file's name, wherever the file lies. */
function fontName(path: string): string {
	return fileSafe(path.replace(/^.*[/\\]/u, "").replace(/\.[^.]*$/u, "")) || "font";
}

type BuiltJob =
	| { readonly ok: true; readonly tools: readonly MadeTool[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Every tool's parts, or every tool's problems together. */
function buildAll(job: Job, letters: Lettering): BuiltJob {
	const problems: Problem[] = [];
	const tools = job.wanted.map((wanted): MadeTool => {
		const bench: Bench = { ...job.bench, stock: wanted.stock, letters };
		const settings = {
			...wanted.settings,
			...wanted.tool.defaults(bench, wanted.settings),
		};
		const { parts, problems: found } = wanted.tool.build(bench, settings, wanted.name);
		for (const p of found) {
			problems.push({ ...p, where: { path: [...wanted.path, ...p.where.path] } });
		}
		return { wanted, settings, parts };
	});
	const names = tools.flatMap(({ parts, wanted }) => parts.map(({ name }) => ({ name, wanted })));
	for (const [i, { name, wanted }] of names.entries()) {
		if (names.findIndex((n) => n.name === name) < i) {
			const twin = names.find((n) => n.name === name)!.wanted;
			problems.push(problem(twin === wanted ? "same-part" : "same-name", wanted.path, { name }));
		}
	}
	return problems.length > 0 ? { ok: false, problems } : { ok: true, tools };
}

/** Of a tool that is meant as a whole all parts, of another those that are named. */
function onlyThese(tools: readonly MadeTool[], only: readonly string[]): BuiltJob {
	if (only.length === 0) return { ok: true, tools };
	const whole = ({ wanted }: MadeTool) =>
		only.includes(wanted.name) || only.includes(wanted.tool.id);
	const chosen = tools.map((tool) =>
		whole(tool) ? tool : { ...tool, parts: tool.parts.filter(({ name }) => only.includes(name)) },
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

/** Every part as the machine is told to cut it, or what its beam is too wide for. */
function compensateAll(tools: readonly MadeTool[], kerf: number): BuiltJob {
	const problems: Problem[] = [];
	const moved = tools.map((tool) => {
		const parts = tool.parts.map((part) => {
			const result = compensated(part, kerf);
			if (result.ok) return result.part;
			for (const p of result.problems) problems.push({ ...p, where: { path: tool.wanted.path } });
			return part;
		});
		return { ...tool, parts };
	});
	return problems.length > 0 ? { ok: false, problems } : { ok: true, tools: moved };
}

/** A drawing in every format asked for. */
function writeAll(sheet: Sheet, { bench }: Job, options: MakeOptions): OutFile[] {
	const { pens } = bench.machine;
	return (options.formats ?? FORMATS).map((format): OutFile => {
		const text =
			format === "svg" ? writeSvg(sheet, pens) : writeDxf(sheet, pens, options.dxf ?? "r2000");
		return {
			name: `${sheet.name}.${format}`,
			format,
			bytes: new TextEncoder().encode(text),
			sheet: sheet.name,
			parts: sheet.placed.map(({ part }) => part.name),
		};
	});
}
