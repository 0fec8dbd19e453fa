import { wholeNumber } from "./number-reader.js";

/** A group as it stands in the file. */
export interface RawTag {
	readonly code: number;
	readonly value: string;
}

/** A 0 group with all that follows up to the next one. */
export interface DxfRecord {
	readonly type: string;
	readonly tags: readonly RawTag[];
	/** Of its 0 group, from 1. */
	readonly line: number;
}

/** The first value of a group code in a record. */
export function textAt(tags: readonly RawTag[], code: number): string | undefined {
	for (const tag of tags) if (tag.code === code) return tag.value;
	return undefined;
}

/** The first value of a group code as a number, NaN where there is none. */
export function numberAt(tags: readonly RawTag[], code: number): number {
	return wholeNumber(textAt(tags, code) ?? "");
}

/** Where the groups of a file stop making sense: its line from 1. */
export interface BrokenAt {
	readonly line: number;
}

/**
 * The records of a DXF text one by one, up to EOF; last, if there is no EOF or a group code is
 * no number, where that is.
 */
export function* dxfRecords(text: string): Generator<DxfRecord | BrokenAt> {
	let at = 0;
	let line = 1;
	let type: string | null = null;
	let tags: RawTag[] = [];
	let from = 1;
	while (at < text.length) {
		const codeEnd = text.indexOf("\n", at);
		const codeText = text.slice(at, codeEnd);
		if (codeEnd < 0 || !/^\s*-?\d{1,5}\s*$/u.test(codeText)) break;
		const newline = text.indexOf("\n", codeEnd + 1);
		const end = newline < 0 ? text.length : newline;
		const raw = text.slice(codeEnd + 1, end);
		const value = raw.endsWith("\r") ? raw.slice(0, -1) : raw;
		const code = Number(codeText);
		if (code === 0) {
			if (type !== null) yield { type, tags, line: from };
			if (value.trim() === "EOF") return;
			type = value.trim();
			tags = [];
			from = line;
		} else tags.push({ code, value });
		at = end + 1;
		line += 2;
	}
	if (type !== null) yield { type, tags, line: from };
	yield { line };
}
