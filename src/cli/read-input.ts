import { isUtf8 } from "node:buffer";
import { type Problem, problem } from "../problem/index.js";
import { type Disk, isMissing, reasonOf } from "./disk.js";

/**
 * Bytes of a file that the command line or a job names.
 *
 * Its size is looked up first: a file over the limit is never read.
 *
 * @param limits - `maxBytes`: the largest size that is read, in bytes; `binary`: it need not be text
 * @returns the bytes, valid UTF-8 unless binary; or a problem `file-missing`, `file-is-folder`, `file-too-large`,
 *   `file-unreadable` or `file-not-utf8`
 * @example await readInput(nodeDisk, "neck.yaml", { maxBytes: 1_000_000 })
 */
export async function readInput(
	disk: Disk,
	path: string,
	limits: { readonly maxBytes: number; readonly binary?: boolean },
): Promise<Uint8Array | Problem> {
	const tooLarge = (size: number) =>
		problem("file-too-large", [], { file: path, size, limit: limits.maxBytes });
	try {
		const entry = await disk.stat(path);
		if (entry.isDirectory()) return problem("file-is-folder", [], { file: path });
		// A pipe or a device has no size and may never end.
		if (!entry.isFile()) return unreadable(path, "not a plain file");
		if (entry.size > limits.maxBytes) return tooLarge(entry.size);
		const bytes = await disk.readFile(path);
		// It may have grown since.
		if (bytes.length > limits.maxBytes) return tooLarge(bytes.length);
		return limits.binary || isUtf8(bytes) ? bytes : problem("file-not-utf8", [], { file: path });
	} catch (error) {
		return isMissing(error)
			? problem("file-missing", [], { file: path })
			: unreadable(path, reasonOf(error));
	}
}

function unreadable(file: string, reason: string): Problem {
	return problem("file-unreadable", [], { file, reason });
}
