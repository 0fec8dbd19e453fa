import { type Problem, problem } from "../problem/index.js";
import { codeOf, type Disk, reasonOf } from "./disk.js";

/**
 * Writes one file that was not there; with `force` whatever is there gives way.
 *
 * A file that already holds the text is left alone. The text goes to a temporary name first,
 * so that a full disk leaves the old file as it was.
 *
 * @returns what stopped it: `file-exists`, `disk-full` or `write-failed`; else undefined
 */
export async function newFile(
	disk: Disk,
	path: string,
	text: string,
	force: boolean,
): Promise<Problem | undefined> {
	const bytes = new TextEncoder().encode(text);
	const present = await disk.readFile(path).catch(() => undefined);
	if (present && Buffer.compare(present, bytes) === 0) return undefined;
	const taken =
		present !== undefined ||
		(await disk.lstat(path).then(
			() => true,
			() => false,
		));
	if (taken && !force) return problem("file-exists", [], { file: path });
	const temporary = `${path}.${process.pid}.tmp`;
	try {
		await disk.writeNew(temporary, bytes);
		await disk.rename(temporary, path);
		return undefined;
	} catch (error) {
		await disk.rm(temporary).catch(() => undefined);
		const code = codeOf(error) === "ENOSPC" ? "disk-full" : "write-failed";
		return problem(code, [], { file: path, reason: reasonOf(error) });
	}
}
