import { basename, dirname, join } from "node:path";
import { STAY } from "../../geometry/index.js";
import { type Lettering, loadLettering } from "../../lettering/index.js";
import { make } from "../../make.js";
import { sha256 } from "../../manifest.js";
import { type Problem, placeText, problem } from "../../problem/index.js";
import {
	type Promised,
	type PromisedFile,
	type PromisedPrint,
	type Proven,
	Prover,
	promisedOf,
} from "../../proof/index.js";
import { fontName } from "../../stages/letters.js";
import { type Console, EXIT } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { readJobFile } from "../job-file.js";
import { proofJson, proofText } from "../proof-table.js";
import { readInput } from "../read-input.js";
import { refused } from "./make.js";

/** Flags of `camber proof`. */
export interface ProofFlags {
	readonly manifest?: string;
	readonly job?: string;
	readonly tool?: string;
	readonly machine?: string;
	readonly font?: string;
	readonly all?: boolean;
	readonly json?: boolean;
}

/** Largest files that are read, bytes. */
const MOST = { manifest: 50_000_000, drawing: 64_000_000, font: 50_000_000 } as const;
const MANIFEST = "manifest.json";

/** A file to be measured. */
interface Source {
	readonly path: string;
	/** SHA-256 as it was written; undefined where no manifest knows the file. */
	readonly digest: string | undefined;
}

/** A drawing to be measured and what is promised of it. */
interface DrawingTask extends Source {
	readonly promised: PromisedFile;
	/** Whether its part lies where it was put since, and has to be found. */
	readonly sought: boolean;
}

/** Something on paper to be measured, all of its files together. */
interface PrintTask {
	readonly print: PromisedPrint;
	readonly sources: readonly Source[];
}

type Task = DrawingTask | PrintTask;

/** `camber proof PATH…`: measures files against their manifest, or against a job's part. */
export async function proofCommand(
	paths: readonly string[],
	flags: ProofFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const idle = flags.job === undefined ? [flags.tool, flags.machine] : [flags.manifest];
	if (idle.some((given) => given !== undefined)) {
		return refused(console, flags, [problem("proof-flags", [])], "", placeText, false);
	}
	const find = flags.job === undefined ? tasksOf : await tasksOfJob(flags, disk);
	if (typeof find !== "function") return refused(console, flags, find, "", placeText, false);
	const found = (await Promise.all(paths.map((path) => find(path, flags, disk)))).flat();
	const tasks = found.filter((task, i) => !found.slice(0, i).some((t) => isSamePrint(t, task)));
	const letters = await lettersOf(flags.font, disk);
	const problems = [...tasks, letters].filter(isProblem);
	if (problems.length > 0 || isProblem(letters))
		return refused(console, flags, problems, "", placeText, false);
	const prover = new Prover(letters);
	const proven: Proven[] = [];
	for (const task of tasks) {
		if (isProblem(task)) continue;
		if ("print" in task) proven.push(...(await proofOfPrint(task, prover, disk)));
		else proven.push(await proofOf(task, prover, disk));
	}
	if (flags.json) console.out(`${JSON.stringify(proofJson(proven), null, "\t")}\n`);
	else console.out(proofText(proven, { all: flags.all ?? false }));
	const failed = proven.some(({ findings }) => findings.some((f) => f.severity === "error"));
	return failed ? EXIT.refused : EXIT.ok;
}

/** Whether two tasks are one: several pages of a print stand for all of it. */
function isSamePrint(a: Task | Problem, b: Task | Problem): boolean {
	if (isProblem(a) || isProblem(b) || !("print" in a) || !("print" in b)) return false;
	return a.sources[0]!.path === b.sources[0]!.path;
}

async function proofOf(task: DrawingTask, prover: Prover, disk: Disk): Promise<Proven> {
	const { promised, sought } = task;
	const bytes = await bytesOf(task, disk);
	if ("findings" in bytes) return bytes;
	if (sought) return prover.proveSought(bytes, promised);
	return withChange(await prover.prove(bytes, promised), bytes, task);
}

/** All files of a print, or those that are missing: pages are measured together. */
async function proofOfPrint(
	{ print, sources }: PrintTask,
	prover: Prover,
	disk: Disk,
): Promise<Proven[]> {
	const read = await Promise.all(sources.map((source) => bytesOf(source, disk)));
	const lost = read.filter((bytes) => "findings" in bytes);
	if (lost.length > 0) return lost;
	const all = read as Uint8Array[];
	const files = print.files.map(({ name }, i) => ({ name, bytes: all[i]! }));
	const proven = await prover.provePrint(files, print);
	return Promise.all(proven.map((p, i) => withChange(p, all[i]!, sources[i]!)));
}

async function bytesOf({ path }: Source, disk: Disk): Promise<Uint8Array | Proven> {
	const binary = /\.pdf$/iu.test(path);
	const bytes = await readInput(disk, path, { maxBytes: MOST.drawing, binary });
	if (!("code" in bytes)) return bytes;
	const lost = bytes.code === "file-missing";
	const finding = lost ? problem("drawing-missing", [], { file: path }) : bytes;
	return { file: path, measured: [], findings: [finding] };
}

/** What was found, with a word where a file is no longer what was written. */
async function withChange(proven: Proven, bytes: Uint8Array, { digest }: Source): Promise<Proven> {
	const isOwn = digest === undefined || (await sha256(bytes)) === digest;
	const changed = isOwn ? [] : [fileChanged(proven.file)];
	return { ...proven, findings: [...proven.findings, ...changed] };
}

/** A part that the job does not make, told by the flag that named it. */
function asTool(p: Problem, given: string): Problem {
	if (p.code !== "only-unknown") return p;
	const { names = [], guess = "" } = p.facts;
	return problem("flag-value", [], { flag: "--tool", given, allowed: names, guess });
}

function fileChanged(file: string): Problem {
	return { ...problem("file-changed", [], { file }), severity: "note" };
}

/** How files are measured against a part of a job, whatever their names, wherever it lies. */
async function tasksOfJob(flags: ProofFlags, disk: Disk) {
	const file = await readJobFile(flags.job!, disk, flags.machine);
	if ("code" in file) return [file];
	const { tool = "" } = flags;
	const made = await make(file.text, {
		load: file.load,
		...(file.machine ? { machine: file.machine } : {}),
		only: tool === "" ? [] : [tool],
		sheets: false,
		proof: false,
	});
	if (!made.ok) return made.problems.map((p) => asTool(p, tool));
	const promised = promisedOf(new TextDecoder().decode(made.files.at(-1)!.bytes), MANIFEST);
	if ("code" in promised) return [promised];
	const [part, ...more] = promised.parts;
	if (!part || more.length > 0) {
		return [problem("one-part-wanted", ["--tool"], { names: promised.parts.map((p) => p.name) })];
	}
	return async (path: string): Promise<(Task | Problem)[]> => {
		if (/\.pdf$/iu.test(path)) return [problem("pdf-with-job", ["--job"], { file: path })];
		const task: DrawingTask = {
			path,
			promised: {
				name: path,
				format: /\.svg$/iu.test(path) ? "svg" : "dxf",
				placed: [{ part, move: STAY }],
				stretch: made.job.bench.machine.stretch,
				bed: null,
				dimensions: true,
			},
			digest: undefined,
			sought: true,
		};
		return [task];
	};
}

/** What a path of the command line stands for: a folder, a manifest or a drawing. */
async function tasksOf(path: string, flags: ProofFlags, disk: Disk): Promise<(Task | Problem)[]> {
	const entry = await disk.stat(path).catch(() => null);
	if (!entry && flags.manifest === undefined) {
		return [problem("drawing-missing", [], { file: path })];
	}
	const isFolder = entry?.isDirectory() ?? false;
	const whole = isFolder || basename(path) === MANIFEST;
	const folder = isFolder ? path : dirname(path);
	const manifest = flags.manifest ?? (isFolder || !whole ? join(folder, MANIFEST) : path);
	const promised = await promisedIn(manifest, disk);
	if (isProblem(promised)) return [promised];
	const named = whole ? "" : await promisedName(path, promised, disk);
	const isMeant = ({ name }: { readonly name: string }) => whole || name === named;
	const chosen = promised.files.filter(isMeant);
	const prints = promised.prints.filter(({ files }) => files.some(isMeant));
	if (chosen.length + prints.length === 0) {
		const known = [...promised.files, ...promised.prints.flatMap((p) => p.files)];
		const names = known.map(({ name }) => name);
		return [problem("file-not-promised", [], { file: path, manifest, known: names })];
	}
	const source = ({ name }: { readonly name: string }): Source => ({
		path: !whole && name === named ? path : join(folder, name),
		digest: promised.digests.get(name),
	});
	return [
		...chosen.map((file) => ({ ...source(file), promised: file, sought: false })),
		...prints.map((print) => ({ print, sources: print.files.map(source) })),
	];
}

/** The name under which a manifest knows a file: its own, or, renamed, that of the same bytes. */
async function promisedName(path: string, { digests }: Promised, disk: Disk): Promise<string> {
	const own = basename(path);
	if (digests.has(own)) return own;
	const bytes = await readInput(disk, path, { maxBytes: MOST.drawing, binary: true });
	if ("code" in bytes) return own;
	const digest = await sha256(bytes);
	return [...digests].find(([, known]) => known === digest)?.[0] ?? own;
}

async function promisedIn(path: string, disk: Disk): Promise<Promised | Problem> {
	const bytes = await readInput(disk, path, { maxBytes: MOST.manifest });
	if (!("code" in bytes)) return promisedOf(new TextDecoder().decode(bytes), path);
	return bytes.code === "file-missing" ? problem("manifest-missing", [], { file: path }) : bytes;
}

async function lettersOf(font: string | undefined, disk: Disk): Promise<Lettering | Problem> {
	if (font === undefined) return loadLettering(undefined);
	const bytes = await readInput(disk, font, { maxBytes: MOST.font, binary: true });
	if ("code" in bytes) return bytes;
	try {
		return await loadLettering({ bytes, name: fontName(font) });
	} catch (error) {
		const reason = error instanceof Error ? error.message : String(error);
		return problem("font-unusable", ["--font"], { file: font, reason });
	}
}

function isProblem(value: object): value is Problem {
	return "code" in value;
}
