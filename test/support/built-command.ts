import { execFile } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";

/** The command as it is installed, bundled from the present sources into a folder of its own. */
export interface BuiltCommand {
	readonly script: string;
	remove(): void;
}

export async function buildCommand(): Promise<BuiltCommand> {
	const folder = mkdtempSync(join(tmpdir(), "camber-built-"));
	await build({
		entryPoints: ["src/cli.ts", "src/version.ts"],
		outdir: join(folder, "dist"),
		bundle: true,
		format: "esm",
		target: "node20",
		platform: "node",
		splitting: true,
		logLevel: "warning",
		banner: {
			js: "import { createRequire as __camberRequire } from 'node:module'; const require = __camberRequire(import.meta.url);",
		},
	});
	cpSync("bin", join(folder, "bin"), { recursive: true });
	writeFileSync(join(folder, "package.json"), '{"type": "module"}');
	return {
		script: join(folder, "bin", "camber.js"),
		remove: () => rmSync(folder, { recursive: true, force: true }),
	};
}

/** Runs a shell line in a folder, `camber` standing for the command. Never throws. */
export function inShell(line: string, cwd: string, script: string) {
	const command = line.replaceAll("camber", `"${process.execPath}" "${script}"`);
	return new Promise<{ code: number; out: string; err: string }>((done) => {
		execFile("/bin/sh", ["-c", command], { cwd }, (error, out, err) => {
			done({ code: error ? Number(error.code) : 0, out, err });
		});
	});
}
