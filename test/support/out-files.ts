import { createHash } from "node:crypto";
import type { OutFile } from "../../src/cli/owned.js";

/** Files to put, from texts by name. */
export function outFiles(texts: Readonly<Record<string, string>>): OutFile[] {
	return Object.entries(texts).map(([name, text]) => ({
		name,
		bytes: new TextEncoder().encode(text),
	}));
}

type Texts = Readonly<Record<string, string>>;

function listed(texts: Texts) {
	return Object.entries(texts).map(([name, text]) => ({
		name,
		sha256: createHash("sha256").update(text, "utf8").digest("hex"),
	}));
}

/** The manifest of such files, with files of earlier runs carried on if there are any. */
export function manifestText(texts: Texts, earlier: Texts = {}): string {
	const content = { writer: "camber", format: 1, files: listed(texts) };
	if (Object.keys(earlier).length === 0) return `${JSON.stringify(content)}\n`;
	return `${JSON.stringify({ ...content, earlier: listed(earlier) }, null, "\t")}\n`;
}
