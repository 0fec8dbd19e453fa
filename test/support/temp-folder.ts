import { mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";

/** A new folder that goes when the test ends. */
export function tempFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), "camber-test-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}

/** Everything below a folder: files with their bytes (as latin-1 text), links, folders. */
export function snapshot(folder: string, prefix = ""): Record<string, string> {
	const found: Record<string, string> = {};
	for (const entry of readdirSync(folder, { withFileTypes: true })) {
		const path = join(folder, entry.name);
		const name = prefix + entry.name;
		if (entry.isDirectory()) {
			Object.assign(found, { [name]: "folder" }, snapshot(path, `${name}/`));
		} else if (entry.isSymbolicLink()) {
			found[name] = `link to ${readlinkSync(path)}`;
		} else {
			found[name] = `file ${readFileSync(path, "latin1")}`;
		}
	}
	return found;
}
