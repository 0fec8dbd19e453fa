import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { benchNote } from "../../examples/library.js";
import { jobKeys, type Key, toolKeys } from "../../src/job/keys.js";
import { TOOLS } from "../../src/tools/index.js";
import { KITS } from "../../src/tools/kits.js";

const RENEW = process.env.GOLDEN === "write";

/** What stands between two markers of the README. */
function section(name: string): { text: string; replace: (by: string) => void } {
	const readme = readFileSync("README.md", "utf8");
	const found = new RegExp(
		`(<!-- ${name}: begin[^>]*-->\n)([\\s\\S]*?)(<!-- ${name}: end -->)`,
		"u",
	).exec(readme);
	if (!found) throw new Error(`README has no section ${name}`);
	const [whole, begin, text, end] = found as unknown as [string, string, string, string];
	return {
		text,
		replace: (by) =>
			writeFileSync(
				"README.md",
				readme.replace(whole, () => `${begin}${by}${end}`),
			),
	};
}

function row({ path, text, range, initial, required, neededIn }: Key): string {
	const cell = (value: string) => value.replace(/\|/gu, "\\|").replace(/</gu, "&lt;");
	const other = neededIn === "" ? "" : `needed with ${neededIn}`;
	const fallback = required ? "needed" : initial === "" ? other : cell(initial);
	return `| \`${path.join(".")}\` | ${cell(text)} | ${cell(range)} | ${fallback} |`;
}

function keyTables(): string {
	const head = "| key | what it is | allowed | default |\n|---|---|---|---|";
	const tables = [
		`### Every key\n\n${head}\n${jobKeys().map(row).join("\n")}\n| \`make\` | The tools to make, each by name or with settings | ${TOOLS.map((t) => `\`${t.id}\``).join(", ")} | needed |\n`,
		...TOOLS.map((t) => `### Settings of ${t.id}\n\n${head}\n${toolKeys(t).map(row).join("\n")}\n`),
	];
	return `\n${tables.join("\n")}\n`;
}

describe("README", () => {
	it("explains every key of the job file and every setting as the schema has them", () => {
		const keys = section("keys");
		if (RENEW) keys.replace(keyTables());
		expect(section("keys").text).toBe(keyTables());
	});

	it("says of every tool what it is for, and of every tool in the kit what it does there", () => {
		const words = readFileSync("README.md", "utf8").replace(/\s+/gu, " ");
		for (const { id, title, purpose } of TOOLS) {
			expect(words).toContain(`**${title}** (\`${id}\`). ${purpose}`);
		}
		for (const { id, why } of KITS[0]!.tools) expect(words).toContain(`| \`${id}\` | ${why} |`);
	});

	it("shows the library as examples/library.ts has it, and that runs", async () => {
		const code = `\n\`\`\`ts\n${readFileSync("examples/library.ts", "utf8")}\`\`\`\n\n`;
		const library = section("library");
		if (RENEW) library.replace(code);
		expect(section("library").text).toBe(code);
		const { names, fret12 } = await benchNote();
		expect(names).toEqual([
			"bench-note-notched-straightedge.svg",
			"bench-note-radius-gauge-concave.svg",
			"manifest.json",
		]);
		expect(fret12).toBeCloseTo((25.5 * 25.4) / 2, 9);
	});

	it("names only flags and commands that exist", async () => {
		const readme = readFileSync("README.md", "utf8");
		const { run } = await import("../../src/cli/main.js");
		let help = "";
		const console = {
			out: (text: string) => {
				help += text;
			},
			err: () => undefined,
		};
		for (const args of [
			[],
			["make"],
			["frets"],
			["kerf"],
			["printer"],
			["fit"],
			["proof"],
			["tools"],
			["check"],
			["new"],
			["schema"],
		]) {
			await run([...args, "--help"], console);
		}
		await run(["single", "notched-straightedge", "--help"], console);
		const own = readme.replace(/npm (ci|run|install)[^\n`]*/gu, "");
		const flags = new Set([...own.matchAll(/(?<![\w-])--[a-z][a-z0-9-]+/gu)].map((m) => m[0]));
		expect(flags.size).toBeGreaterThan(10);
		for (const flag of flags) expect(help, `README names ${flag}`).toContain(flag);
		for (const [, command] of own.matchAll(/`camber ([a-z]+)/gu)) {
			expect(help, `README names camber ${command}`).toMatch(new RegExp(`^ +${command} `, "mu"));
		}
	});
});
