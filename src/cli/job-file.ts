import { dirname, resolve } from "node:path";
import type { Problem } from "../problem/index.js";
import { type Disk, reasonOf } from "./disk.js";
import { readInput } from "./read-input.js";

/** A job file is never larger than this, bytes; a longer one is not read. */
const MOST_JOB = 1_000_000;
/** Largest font file, bytes. */
const MOST_FONT = 50_000_000;

/** A job's text with the means to load what it names. */
export interface JobFile {
	readonly file: string;
	readonly text: string;
	readonly load: (path: string) => Promise<Uint8Array>;
}

/** Reads a job file; fonts are looked for from its folder. */
export async function readJobFile(path: string, disk: Disk): Promise<JobFile | Problem> {
	const bytes = await readInput(disk, path, { maxBytes: MOST_JOB });
	if ("code" in bytes) return bytes;
	const text = new TextDecoder().decode(bytes);
	return { file: path, text, load: loader(dirname(resolve(path)), disk) };
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
