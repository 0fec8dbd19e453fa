import { createHash } from "node:crypto";
import { join } from "node:path";
import * as z from "zod";
import { type Problem, ProblemError, problem } from "../problem/index.js";
import { type Disk, entryAt, reasonOf } from "./disk.js";
import { isPlainName } from "./plain-name.js";

/** A file to be put into a folder. */
export interface OutFile {
	readonly name: string;
	readonly bytes: Uint8Array;
}

/** What camber last wrote into a folder. */
export interface Listing {
	/** By name in lower case; the manifest included. */
	readonly files: ReadonlyMap<string, Listed>;
	/** The job's name, if the manifest gives one. */
	readonly job: string | undefined;
}

/** A file that camber wrote, as a manifest lists it. */
export interface Listed {
	readonly name: string;
	readonly sha256: string;
}

/** How a wanted file stands to what the folder holds: nothing, the same bytes, or what gives way. */
export interface Target {
	readonly file: OutFile;
	readonly present: "nothing" | "same" | "older";
}

const Manifest = z.object({
	writer: z.literal("camber"),
	files: z.array(z.object({ name: z.string(), sha256: z.string() })),
	earlier: z.array(z.object({ name: z.string(), sha256: z.string() })).default([]),
	job: z.string().optional(),
});

/**
 * What the folder's manifest lists. Empty if there is none or it is not camber's.
 *
 * @throws ProblemError `file-unreadable`
 */
export async function readListing(disk: Disk, folder: string, name: string): Promise<Listing> {
	const bytes = await plainBytes(disk, join(folder, name));
	const manifest = Manifest.safeParse(bytes && parseJson(bytes));
	if (!bytes || !manifest.success) return { files: new Map(), job: undefined };
	const { files, earlier, job } = manifest.data;
	const listed = [...earlier, ...files].filter((file) => isPlainName(file.name));
	const all = [...listed, { name, sha256: sha256(bytes) }];
	return { files: new Map(all.map((file) => [file.name.toLowerCase(), file])), job };
}

/**
 * How every wanted file stands to what is in the folder.
 *
 * A present file gives way if it is camber's: if the listing holds its present SHA-256. A link is
 * never looked through, so it is never camber's. With `force` all but folders give way.
 *
 * @throws ProblemError with all of `foreign-file`, `target-is-folder` and `file-unreadable`
 */
export async function judgeTargets(
	disk: Disk,
	folder: string,
	files: readonly OutFile[],
	listing: Listing,
	force: boolean,
): Promise<Target[]> {
	const targets: Target[] = [];
	const problems: Problem[] = [];
	for (const file of files) {
		try {
			targets.push({ file, present: await judge(disk, folder, file, listing, force) });
		} catch (error) {
			if (!(error instanceof ProblemError)) throw error;
			problems.push(...error.problems);
		}
	}
	if (problems.length > 0) throw new ProblemError(problems);
	return targets;
}

async function judge(
	disk: Disk,
	folder: string,
	file: OutFile,
	listing: Listing,
	force: boolean,
): Promise<Target["present"]> {
	const path = join(folder, file.name);
	const entry = await reading(path, () => entryAt(disk, "lstat", path));
	if (!entry) return "nothing";
	const refuse = (code: string, facts = {}) =>
		new ProblemError([problem(code, [], { file: file.name, folder, ...facts })]);
	if (entry.isDirectory()) throw refuse("target-is-folder");
	const bytes = entry.isFile() ? await reading(path, () => disk.readFile(path)) : undefined;
	if (bytes && Buffer.compare(bytes, file.bytes) === 0) return "same";
	const listed = listing.files.get(file.name.toLowerCase());
	if (force || (listed && bytes && sha256(bytes) === listed.sha256)) return "older";
	throw refuse("foreign-file", { why: listed ? "changed since it was written" : "not listed" });
}

/**
 * The manifest with files of earlier runs carried on under `earlier`: they are still camber's,
 * and a later run may want their names again. Unchanged if there are none.
 */
export function carriedOn(manifest: OutFile, stale: readonly Listed[]): OutFile {
	if (stale.length === 0) return manifest;
	const content = parseJson(manifest.bytes) as object;
	const text = `${JSON.stringify({ ...content, earlier: stale }, null, "\t")}\n`;
	return { name: manifest.name, bytes: new TextEncoder().encode(text) };
}

/**
 * Listed files that are still camber's and are not among those wanted now.
 *
 * @throws ProblemError `file-unreadable`
 */
export async function findStale(
	disk: Disk,
	folder: string,
	files: readonly OutFile[],
	listing: Listing,
): Promise<Listed[]> {
	const wanted = new Set(files.map((file) => file.name.toLowerCase()));
	const stale: Listed[] = [];
	for (const [key, listed] of listing.files) {
		if (wanted.has(key)) continue;
		const bytes = await plainBytes(disk, join(folder, listed.name));
		if (bytes && sha256(bytes) === listed.sha256) stale.push(listed);
	}
	return stale;
}

/** Bytes of a plain file; undefined if there is none or it is a link, a folder or a device. */
function plainBytes(disk: Disk, path: string): Promise<Uint8Array | undefined> {
	return reading(path, async () => {
		const entry = await entryAt(disk, "lstat", path);
		return entry?.isFile() ? disk.readFile(path) : undefined;
	});
}

async function reading<T>(file: string, read: () => Promise<T>): Promise<T> {
	try {
		return await read();
	} catch (error) {
		throw new ProblemError([problem("file-unreadable", [], { file, reason: reasonOf(error) })]);
	}
}

function parseJson(bytes: Uint8Array): unknown {
	try {
		return JSON.parse(Buffer.from(bytes).toString("utf8"));
	} catch {
		return undefined;
	}
}

function sha256(bytes: Uint8Array): string {
	return createHash("sha256").update(bytes).digest("hex");
}
