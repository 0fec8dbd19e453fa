import { dirname, resolve } from "node:path";
import type { MachineFile } from "../job/index.js";
import type { Problem } from "../problem/index.js";
import { type Disk, reasonOf } from "./disk.js";
import { readInput } from "./read-input.js";

/** A job file is never larger than this, bytes; a longer one is not read. */
const MOST_JOB = 1_000_000;
/** Largest font file, bytes. */
const MOST_FONT = 50_000_000;

/** A job's text with the means to load what it names, and the machine it is made on. */
export interface JobFile {
	readonly file: string;
	readonly text: string;
	readonly load: (path: string) => Promise<Uint8Array>;
	readonly machine?: MachineFile;
}

/**
 * Reads a job file and, if there is one, its machine's; fonts are looked for from the job's folder.
 *
 * @param machine - path of the machine's own file
 */
export async function readJobFile(
	path: string,
	disk: Disk,
	machine?: string,
): Promise<JobFile | Problem> {
	const text = await readText(path, disk);
	if (typeof text !== "string") return text;
	const of = await readMachineFile(disk, machine);
	if (of && "code" in of) return of;
	const job = { file: path, text, load: loader(dirname(resolve(path)), disk) };
	return of ? { ...job, machine: of } : job;
}

/** Reads a machine's own file; null where none is named. */
export async function readMachineFile(
	disk: Disk,
	path: string | undefined,
): Promise<MachineFile | Problem | null> {
	if (path === undefined) return null;
	const text = await readText(path, disk);
	if (typeof text === "string") return { name: path, text };
	return text.code === "file-missing" ? { ...text, code: "machine-file-missing" } : text;
}

async function readText(path: string, disk: Disk): Promise<string | Problem> {
	const bytes = await readInput(disk, path, { maxBytes: MOST_JOB });
	return "code" in bytes ? bytes : new TextDecoder().decode(bytes);
}

/** Loads files that a job names, relative to a folder. The loader rejects with a plain reason. */
export function loader(folder: string, disk: Disk) {
	return async (path: string): Promise<Uint8Array> => {
		const file = resolve(folder, path);
		try {
			const entry = await disk.stat(file);
			if (!entry.isFile())
				throw new Error(entry.isDirectory() ? "it is a folder" : "it is no file");
			if (entry.size > MOST_FONT) throw new Error(`it is larger than ${MOST_FONT} bytes`);
			return await disk.readFile(file);
		} catch (error) {
			throw new Error(reasonOf(error));
		}
	};
}
