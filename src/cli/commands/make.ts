import { join } from "node:path";
import { around, extents } from "../../geometry/index.js";
import { nearest } from "../../job/index.js";
import { FORMATS, type Format, type Made, type MakeOptions, make } from "../../make.js";
import { type Problem, placeText, problem, problemText } from "../../problem/index.js";
import { fitBlocks } from "../../report/index.js";
import { workText } from "../../stages/draw.js";
import { trimmed } from "../../units/index.js";
import type { DxfFlavour } from "../../writers/index.js";
import { type Console, EXIT, reportProblems, wrapText } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { type JobFile, readJobFile } from "../job-file.js";
import { proofJson, proofText } from "../proof-table.js";
import { type Put, putFiles } from "../put-files.js";

/** Flags of `camber make` as commander hands them over. */
export interface MakeFlags {
	readonly out?: string;
	readonly only?: string;
	readonly format?: string;
	readonly paper?: string;
	readonly dxf?: string;
	readonly dimensions?: boolean;
	readonly machine?: string;
	readonly sheets?: boolean;
	readonly proof?: boolean;
	readonly report?: boolean;
	readonly force?: boolean;
	readonly allowUnusual?: boolean;
	readonly json?: boolean;
}

type Place = (p: Problem, file: string) => string;
type MadeJob = Extract<Made, { ok: true }>;

/** `camber make JOB`: files into the output folder, whole or not at all. */
export async function makeCommand(
	path: string,
	flags: MakeFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const job = await readJobFile(path, disk, flags.machine);
	if ("code" in job) return refused(console, flags, [job], "");
	return makeAndPut(job, flags, console, disk);
}

/** Makes a job's text and puts its files; shared by `make` and `single`. */
export async function makeAndPut(
	job: JobFile,
	flags: MakeFlags,
	console: Console,
	disk: Disk,
	place: Place = placeText,
): Promise<number> {
	const options = makeOptions(flags);
	if (Array.isArray(options)) return refused(console, flags, options, "");
	const made = await make(job.text, {
		...options,
		load: job.load,
		...(job.machine ? { machine: job.machine } : {}),
	});
	if (!made.ok) return refused(console, flags, made.problems, job.file, place);
	const folder = flags.out ?? join("templates-out", made.job.fileName);
	const manifest = made.files.at(-1)!;
	const put = await putFiles(disk, folder, made.files.slice(0, -1), manifest, {
		force: flags.force ?? false,
		job: made.job.bench.job,
	});
	if (Array.isArray(put)) return refused(console, flags, put, "");
	if (flags.json) console.out(`${JSON.stringify(machineReport(made, put, folder), null, "\t")}\n`);
	else humanReport(console, made, put, folder);
	return EXIT.ok;
}

/** Reports problems, to people or machines. Returns the exit code. */
export function refused(
	console: Console,
	flags: MakeFlags,
	problems: readonly Problem[],
	file: string,
	place: Place = placeText,
	writes = true,
): number {
	if (flags.json)
		console.out(
			`${JSON.stringify({ ok: false, problems: problems.map((p) => ({ ...p, text: problemText(p) })) }, null, "\t")}\n`,
		);
	else reportProblems(console, problems, file, place, writes);
	return EXIT.refused;
}

/** Flags as options of the library, or what is wrong with them. */
function makeOptions(flags: MakeFlags): MakeOptions | Problem[] {
	const list = (text: string | undefined) =>
		text
			?.split(",")
			.map((t) => t.trim())
			.filter(Boolean);
	const formats = list(flags.format?.toLowerCase());
	const only = list(flags.only);
	const dxf = flags.dxf ?? "r2000";
	const problems = [
		...(formats ? wrongWords("--format", formats, FORMATS) : []),
		...wrongWords("--dxf", [dxf], DXF_FLAVOURS),
		...(only?.length === 0 ? [flagProblem("--only", "", ["names of tools or parts"])] : []),
		...(flags.out?.trim() === "" ? [flagProblem("--out", "", ["a folder"])] : []),
	];
	if (problems.length > 0) return problems;
	return {
		...(formats ? { formats: [...new Set(formats)] as Format[] } : {}),
		...(flags.paper === undefined ? {} : { paper: flags.paper }),
		dxf: dxf as DxfFlavour,
		dimensions: flags.dimensions ?? true,
		proof: flags.proof ?? true,
		report: flags.report ?? true,
		...(flags.sheets === undefined ? {} : { sheets: flags.sheets }),
		only: only ?? [],
		allowUnusual: flags.allowUnusual ?? false,
	};
}

const DXF_FLAVOURS: readonly string[] = ["r2000", "r12", "loose"];

/** Words of a flag that it does not take; a flag without a word is wrong too. */
function wrongWords(flag: string, given: readonly string[], allowed: readonly string[]): Problem[] {
	const words = given.length === 0 ? [""] : given;
	return words.filter((word) => !allowed.includes(word)).map((w) => flagProblem(flag, w, allowed));
}

function flagProblem(flag: string, given: string, allowed: readonly string[]): Problem {
	return problem("flag-value", [], { flag, given, allowed, guess: nearest(given, allowed) });
}

/** What was or would be made: one line a part. */
export function partLines(made: MadeJob): string[] {
	return made.tools.flatMap(({ parts, wanted }) =>
		parts.map((part) => {
			const box = around(part.marks.map((m) => extents(m.path)));
			const size = `${trimmed(box.maxX - box.minX, 1)} x ${trimmed(box.maxY - box.minY, 1)} mm`;
			const { material, thickness } = wanted.stock;
			const times = part.layers ? `, ${part.layers} layers` : "";
			return `  ${part.name}: ${part.title}, ${size}, ${material} ${trimmed(thickness, 3)} mm${times}`;
		}),
	);
}

/** The laid-out sheets: what is on each, how long it takes. */
function sheetLines(made: MadeJob): string[] {
	const sheets = made.drawings.filter(({ laid }) => laid !== null);
	return sheets.flatMap(({ sheet, work, laid }, i) => {
		const { material, thickness } = laid!.stock;
		const size = `${trimmed(100 * laid!.used, 1)} % of the bed used`;
		const head = `Sheet ${i + 1} of ${sheets.length}: ${material} ${trimmed(thickness, 3)} mm, ${count(sheet.placed.length, "part")}, ${size}`;
		return [wrapText(`  ${head}; ${workText(work)}`, "    ")];
	});
}

/** What the readings leave open, for those who do not ask `camber fit`. */
function readingLines(made: MadeJob): string[] {
	const notes = fitBlocks(made.job).flatMap((block) => block.notes);
	if (notes.length === 0) return [];
	const told = notes.slice(0, MOST_NOTES).map((note) => wrapText(`  - ${note}`, "    "));
	const more = notes.length - told.length;
	const rest = more > 0 ? [`  and ${count(more, "more note")}`] : [];
	return ["Readings (camber fit shows the figures):", ...told, ...rest];
}

/** Most notes on readings beside what was made. */
const MOST_NOTES = 6;

/** Tools of a kit that do not apply to the neck, and why. */
function skippedLines(made: MadeJob): string[] {
	return made.skipped.map(({ wanted, reasons }) => {
		const why = reasons.map(problemText).join(" ");
		return wrapText(`  not made: ${wanted.tool.id}: ${why}`, "    ");
	});
}

/** What goes on paper: how many pages each takes. */
function printLines(made: MadeJob): string[] {
	return made.prints.map(({ print, format, files }) => {
		const { name, pages, paper, made: factors } = print;
		const corrected = factors.x === 1 && factors.y === 1 ? "" : ", corrected for the printer";
		const file =
			files.length === 1 ? files[0]!.name : `${name}-page-1 to -${files.length}.${format}`;
		return `  ${file}: ${count(pages.length, "page")} of ${paper.name}${corrected}`;
	});
}

/** Parts, sheets and pages, what a kit does without, what readings leave open. */
export function printMade(console: Console, made: MadeJob): void {
	const lines = [
		...partLines(made),
		...sheetLines(made),
		...printLines(made),
		...skippedLines(made),
		...readingLines(made),
	];
	for (const line of lines) console.out(`${line}\n`);
}

function humanReport(console: Console, made: MadeJob, put: Put, folder: string): void {
	const parts = partLines(made);
	const files = made.files.length;
	console.out(
		`${made.job.bench.job}: ${count(parts.length, "part")}, ${count(files, "file")} in ${folder}\n`,
	);
	printMade(console, made);
	const nothing = made.drawings.length + made.prints.length === 0;
	const unproven = nothing ? "" : "Not measured: --no-proof.\n";
	console.out(made.proven.length > 0 ? proofText(made.proven, { all: false }) : unproven);
	if (put.written.length === 0) console.out("Every file already held these bytes.\n");
	if (put.stale.length > 0) {
		console.out(
			wrapText(`Left from an earlier run, not part of this one: ${put.stale.join(", ")}`, "  "),
		);
		console.out("\n");
	}
	if (put.left.length > 0)
		console.out(`Old copies that could not be removed: ${put.left.join(", ")}\n`);
	printCautions(console, made);
}

export function printCautions(console: Console, made: MadeJob): void {
	console.out("Cautions\n");
	for (const caution of made.cautions) console.out(`${wrapText(`  - ${caution}`, "    ")}\n`);
}

export function count(n: number, what: string): string {
	return `${n} ${what}${n === 1 ? "" : "s"}`;
}

function machineReport(made: MadeJob, put: Put, folder: string) {
	return {
		ok: true,
		job: made.job.bench.job,
		folder,
		files: made.files.map(({ name, format, parts }) => ({ name, format, parts })),
		proof: proofJson(made.proven),
		sheets: made.drawings.flatMap(({ sheet, work, laid }) =>
			laid ? [{ name: sheet.name, ...laid, work }] : [],
		),
		written: put.written,
		unchanged: put.unchanged,
		stale: put.stale,
		cautions: made.cautions,
	};
}
