import {
	lstat,
	mkdir,
	readdir,
	readFile,
	rename,
	rmdir,
	stat,
	unlink,
	writeFile,
} from "node:fs/promises";
import { getSystemErrorMap } from "node:util";

/** What lies at a path. */
export interface Entry {
	readonly size: number;
	isFile(): boolean;
	isDirectory(): boolean;
}

/** The few disk operations that camber uses. Each rejects with an error that carries a `code`. */
export interface Disk {
	/** Follows links. */
	stat(path: string): Promise<Entry>;
	/** Sees a link as itself. */
	lstat(path: string): Promise<Entry>;
	readdir(path: string): Promise<string[]>;
	readFile(path: string): Promise<Uint8Array>;
	/** Writes a file that was not there and flushes it to the disk; EEXIST if the name is taken. */
	writeNew(path: string, bytes: Uint8Array): Promise<void>;
	/** One level; EEXIST if the name is taken. */
	mkdir(path: string): Promise<void>;
	/** Replaces what is at `to`. */
	rename(from: string, to: string): Promise<void>;
	/** Removes a file or a link itself, never a folder. */
	rm(path: string): Promise<void>;
	/** Removes an empty folder. */
	rmdir(path: string): Promise<void>;
}

/** The disk of this computer. */
export const nodeDisk: Disk = {
	stat: (path) => stat(path),
	lstat: (path) => lstat(path),
	readdir: (path) => readdir(path),
	readFile: async (path) => new Uint8Array(await readFile(path)),
	writeNew: (path, bytes) => writeFile(path, bytes, { flag: "wx", flush: true }),
	mkdir: async (path) => {
		await mkdir(path);
	},
	rename: (from, to) => rename(from, to),
	rm: (path) => unlink(path),
	rmdir: (path) => rmdir(path),
};

/** The system's name of an error ("ENOENT"), empty if it has none. */
export function codeOf(error: unknown): string {
	return error instanceof Error && "code" in error ? String(error.code) : "";
}

/** The system's own words for an error ("no space left on device"). */
export function reasonOf(error: unknown): string {
	const code = codeOf(error);
	for (const [name, words] of getSystemErrorMap().values()) if (name === code) return words;
	return error instanceof Error ? error.message : String(error);
}

/** What lies at a path; undefined if nothing does. */
export async function entryAt(
	disk: Disk,
	look: "stat" | "lstat",
	path: string,
): Promise<Entry | undefined> {
	try {
		return await disk[look](path);
	} catch (error) {
		if (isMissing(error)) return undefined;
		throw error;
	}
}

/** Whether anything lies at a path; taken to be so where the disk will not tell. */
export async function mayBeThere(disk: Disk, path: string): Promise<boolean> {
	try {
		return (await entryAt(disk, "lstat", path)) !== undefined;
	} catch {
		return true;
	}
}

/** Whether an error says that there is nothing at the path, or that the path leads through a file. */
export function isMissing(error: unknown): boolean {
	return ["ENOENT", "ENOTDIR"].includes(codeOf(error));
}
