import type { Findings } from "./findings.js";
import { MOST_BYTES } from "./limits.js";

const NUL = 0;

/**
 * The text of a file, or null with a finding where it is too large or no text.
 *
 * What is no UTF-8 is taken as Windows-1252, as older drawing programs write it: coordinates
 * are the same in both.
 *
 * @param counted - the byte that is counted before anything is read
 * @param most - how often it may occur
 * @param of - what it counts, in words
 */
export function textOfBytes(
	bytes: Uint8Array,
	findings: Findings,
	{ counted, most, of }: { readonly counted: number; readonly most: number; readonly of: string },
): string | null {
	if (bytes.length > MOST_BYTES) {
		findings.add("drawing-too-large", "error", { limit: MOST_BYTES, of: "bytes" });
		return null;
	}
	if (bytes.includes(NUL)) {
		findings.add("unreadable", "error", { reason: "it holds bytes that are no text" });
		return null;
	}
	if (occurs(bytes, counted) > most) {
		findings.add("drawing-too-large", "error", { limit: most, of });
		return null;
	}
	try {
		return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
	} catch {
		return new TextDecoder("windows-1252").decode(bytes);
	}
}

function occurs(bytes: Uint8Array, value: number): number {
	let count = 0;
	for (let at = bytes.indexOf(value); at >= 0; at = bytes.indexOf(value, at + 1)) count++;
	return count;
}
