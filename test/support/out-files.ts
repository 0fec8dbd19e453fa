import { createHash } from "node:crypto";
import type { OutFile } from "../../src/cli/owned.js";

/** Files to put, from texts by name. */
export function outFiles(texts: Readonly<Record<string, string>>): OutFile[] {
	return Object.entries(texts).map(([name, text]) => ({
		name,
		bytes: new TextEncoder().encode(text),
	}));
}

/** The manifest of such files. */
export function manifestText(texts: Readonly<Record<string, string>>): string {
	const files = Object.entries(texts).map(([name, text]) => ({
		name,
		sha256: createHash("sha256").update(text, "utf8").digest("hex"),
	}));
	return `${JSON.stringify({ writer: "camber", format: 1, files })}\n`;
}
