import { basename, dirname, join } from "node:path";
import { type Problem, ProblemError, problem } from "../problem/index.js";
import { type Disk, entryAt, mayBeThere, reasonOf } from "./disk.js";
import { Journal } from "./journal.js";
import {
	carriedOn,
	findStale,
	judgeTargets,
	type OutFile,
	readListing,
	type Target,
} from "./owned.js";
import { requirePlainNames } from "./plain-name.js";

/** What a run did to the folder, by file name. */
export interface Put {
	readonly written: readonly string[];
	/** Already held the bytes wanted. */
	readonly unchanged: readonly string[];
	/** Written by an earlier run and not wanted by this one; still there. */
	readonly stale: readonly string[];
	/** Old copies that the disk would not let go of after the new files were in place. */
	readonly left: readonly string[];
}

/**
 * Puts files and their manifest into a folder: all of them, or the folder stays as it was.
 *
 * A file that camber did not write, or that was changed since, is refused; `force` replaces it. A
 * link is replaced itself, its target is not touched. The folder is made if it is missing. Nobody
 * else is expected to change the folder meanwhile.
 *
 * @param manifest - put in place last; JSON with `writer: "camber"` and `files: [{name, sha256}]`.
 *   Files of earlier runs that stay behind are carried on in it as `earlier`
 * @param options - `job`: whose files these are; the folder of another job is refused, unless forced
 * @returns what was done; or every problem found before anything was written (`folder-is-file`,
 *   `folder-under-file`, `folder-unusable`, `target-is-folder`, `foreign-file`, `folder-of-other-job`, `file-unreadable`);
 *   or what stopped the writing (`folder-unusable`, `disk-full`, `write-failed`) and, if the disk
 *   barred the way back, `not-restored` and `left-behind`
 * @throws RangeError if a name is not plain or is used twice
 * @example await putFiles(nodeDisk, "templates-out/neck", files, manifest, { force: false })
 */
export async function putFiles(
	disk: Disk,
	folder: string,
	files: readonly OutFile[],
	manifest: OutFile,
	options: { readonly force: boolean; readonly job?: string },
): Promise<Put | Problem[]> {
	const wanted = [...files, manifest];
	requirePlainNames(wanted.map((file) => file.name));
	try {
		const place = await findPlace(disk, withoutSlash(folder));
		const listing = await readListing(disk, place.folder, manifest.name);
		const other = options.force ? undefined : listing.job;
		if (other !== undefined && options.job !== undefined && other !== options.job) {
			throw refusal("folder-of-other-job", { folder, other, job: options.job });
		}
		const stale = await findStale(disk, place.folder, wanted, listing);
		const all = [...files, carriedOn(manifest, stale)];
		const targets = await judgeTargets(disk, place.folder, all, listing, options.force);
		const changed = targets.filter((target) => target.present !== "same");
		const left = await replaceFiles(disk, place, changed);
		const unchanged = targets.filter((target) => target.present === "same");
		return {
			written: changed.map(nameOf),
			unchanged: unchanged.map(nameOf),
			stale: stale.map(({ name }) => name),
			left,
		};
	} catch (error) {
		if (error instanceof ProblemError) return [...error.problems];
		throw error;
	}
}

/** A folder, the levels of its path that do not exist yet (outermost first), the names it holds. */
interface Place {
	readonly folder: string;
	readonly missing: readonly string[];
	readonly names: readonly string[];
}

/** @throws ProblemError `folder-is-file`, `folder-under-file` or `folder-unusable` */
async function findPlace(disk: Disk, folder: string): Promise<Place> {
	try {
		const missing: string[] = [];
		let path = folder;
		let entry = await entryAt(disk, "stat", path);
		while (!entry && path !== dirname(path)) {
			missing.unshift(path);
			path = dirname(path);
			entry = await entryAt(disk, "stat", path);
		}
		if (!entry) throw refusal("folder-unusable", { folder, reason: `there is no ${path}` });
		if (!entry.isDirectory()) {
			throw path === folder
				? refusal("folder-is-file", { folder })
				: refusal("folder-under-file", { folder, file: path });
		}
		return { folder, missing, names: missing.length > 0 ? [] : await disk.readdir(folder) };
	} catch (error) {
		if (error instanceof ProblemError) throw error;
		throw refusal("folder-unusable", { folder, reason: reasonOf(error) });
	}
}

function refusal(code: string, facts: Problem["facts"]): ProblemError {
	return new ProblemError([problem(code, [], facts)]);
}

/** Writes every temporary, then moves them into place in order. Returns old copies left over. */
async function replaceFiles(disk: Disk, place: Place, targets: readonly Target[]) {
	const journal = new Journal(disk);
	const fresh = freshNames(place.names);
	const moves = targets.map(({ file, present }) => ({
		bytes: file.bytes,
		target: join(place.folder, file.name),
		temporary: join(place.folder, fresh()),
		aside: present === "older" ? fresh() : undefined,
	}));
	const asides = moves.flatMap(({ aside }) => aside ?? []);
	try {
		for (const path of place.missing) await journal.makeFolder(path);
		for (const { temporary, bytes, target } of moves) {
			await journal.writeTemporary(temporary, bytes, target);
		}
		for (const { temporary, target, aside } of moves) {
			if (aside) await journal.setAside(target, join(place.folder, aside));
			await journal.putInPlace(temporary, target, aside === undefined);
		}
	} catch (error) {
		const barred = await journal.undo();
		if (error instanceof ProblemError) throw new ProblemError([...error.problems, ...barred]);
		throw error;
	}
	return removeAll(disk, place.folder, asides);
}

/** Removes files; returns the names of those that would not go. */
async function removeAll(disk: Disk, folder: string, names: readonly string[]) {
	const left: string[] = [];
	for (const name of names) {
		const path = join(folder, name);
		try {
			await disk.rm(path);
		} catch {
			if (await mayBeThere(disk, path)) left.push(name);
		}
	}
	return left;
}

/** Names for temporary files that are none of those taken. */
function freshNames(taken: readonly string[]): () => string {
	let count = 0;
	return () => {
		let name: string;
		do {
			count += 1;
			name = `.camber-${process.pid}-${count}.tmp`;
		} while (taken.includes(name));
		return name;
	};
}

/** A path in its shortest form: no separator at the end, "." if empty. */
function withoutSlash(path: string): string {
	return join(dirname(path), basename(path));
}

function nameOf(target: Target): string {
	return target.file.name;
}
