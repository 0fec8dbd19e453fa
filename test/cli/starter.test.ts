import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { starterJob } from "../../src/cli/starter.js";
import { readJob } from "../../src/job/index.js";
import { jobKeys } from "../../src/job/keys.js";
import { strokeLettering } from "../../src/lettering/index.js";
import { TOOLS } from "../../src/tools/index.js";
import { faultyDisk } from "../support/faulty-disk.js";
import { camber } from "../support/run-camber.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

/** A starter with the lines in force that hold a key behind their #. */
function uncommented(text: string): string {
	return text.replace(
		/^(\s*)# (?=(?:date|units|handed|zero-fret|nut-shift|scale-uncertainty|binding|shop|lettering|pens|division): ?)/gmu,
		"$1",
	);
}

describe("the starter job", () => {
	const text = starterJob("My neck", "camber.schema.json");

	it("reads without problems", () => {
		const read = readJob(text);
		expect(read.ok || read.problems).toBe(true);
	});

	it("names every key of a job, in a line of its own or in braces", () => {
		for (const { path } of jobKeys()) {
			const key = path.at(-1)!;
			expect(text, path.join(".")).toMatch(new RegExp(`(?:^|[\\s{#])${key}:`, "mu"));
		}
	});

	it("names every block that a key stands in", () => {
		for (const block of new Set(jobKeys().flatMap(({ path }) => path.slice(0, -1)))) {
			expect(text, block).toMatch(new RegExp(`(?:^|[\\s#])${block}:`, "mu"));
		}
	});

	it("makes tools that there are, and tells where all of them are listed", () => {
		const read = readJob(text);
		const made = read.ok ? read.job.wanted.map(({ tool }) => tool) : [];
		expect(made.length).toBeGreaterThan(2);
		for (const tool of made) expect(TOOLS).toContain(tool);
		expect(text).toContain("camber tools");
	});

	it("reads also with its optional lines in force", () => {
		const whole = uncommented(text)
			.replace(/^ {2}# {3}(cut|score|engrave|tab|reference):/gmu, "    $1:")
			.replace(/^lettering.*$/gmu, "");
		expect(whole).toMatch(/^ {2}zero-fret: false/mu);
		expect(whole).toMatch(/^shop: \{/mu);
		expect(whole).toMatch(/^ {4}cut: \{/mu);
		const read = readJob(whole.replace(/^( +)#( +)\{positions.*$/gmu, ""));
		expect(read.ok || read.problems).toBe(true);
	});

	it("says the defaults as they are", () => {
		const keys = jobKeys();
		const isAlone = (name: string) => keys.filter(({ path }) => path.at(-1) === name).length === 1;
		for (const { path, initial } of keys.filter(({ path: p }) => isAlone(p.at(-1)!))) {
			const line = text.split("\n").find((l) => new RegExp(`^ *# ${path.at(-1)}: `, "u").test(l));
			if (!line || initial === "" || /^needed|where/u.test(initial)) continue;
			const [value] = line.replace(/^[^:]*:/u, "").split("#");
			const shown = value!.trim().replace(/ mm$/u, "");
			const said = initial.replace(/ mm\b/u, "");
			expect(said === shown || said.startsWith(`${shown} or `), path.join(".")).toBe(true);
		}
	});
});

describe("camber new", () => {
	it("writes a starter that makes every tool, and the schema that it points to", async () => {
		const folder = tempFolder();
		const file = join(folder, "heron-baritone.yaml");
		const { code, out, err } = await camber(["new", file]);
		expect([code, err]).toEqual([0, ""]);
		expect(out).toContain(file);
		expect(out).toContain(`camber check ${file}`);
		const text = readFileSync(file, "utf8");
		expect(text).toContain("job: Heron baritone\n");
		const [, schema] = /^# yaml-language-server: \$schema=\.\/(\S+)$/mu.exec(text)!;
		expect(JSON.parse(readFileSync(join(folder, schema!), "utf8"))).toHaveProperty("$schema");
		expect((await camber(["check", file])).code).toBe(0);
	});

	it("adds .yaml to a name without an ending", async () => {
		const folder = tempFolder();
		await camber(["new", join(folder, "neck")]);
		expect(Object.keys(snapshot(folder)).sort()).toEqual(["camber.schema.json", "neck.yaml"]);
	});

	it.each([
		"true",
		"null",
		"1e5",
		"0x10",
		"007",
		"漢字",
		"-",
		"no",
		"a'b\"c",
		"x".repeat(80),
		"Ünï",
	])("writes a job that reads, whatever the file is called: %s", async (stem) => {
		const file = join(tempFolder(), `${stem}.yaml`);
		expect((await camber(["new", file])).code).toBe(0);
		const read = readJob(readFileSync(file, "utf8"));
		expect(read.ok || read.problems).toBe(true);
		const name = read.ok ? read.job.bench.job : "";
		expect(strokeLettering().missing(name)).toEqual([]);
	});

	it("writes over nothing, unless forced", async () => {
		const folder = tempFolder();
		const file = join(folder, "neck.yaml");
		writeFileSync(file, "mine");
		const refused = await camber(["new", file]);
		expect(refused.code).toBe(2);
		expect(refused.err).toContain(`${file} exists already`);
		expect(refused.err).toContain("--force");
		expect(snapshot(folder)).toEqual({ "neck.yaml": "file mine" });
		expect((await camber(["new", file, "--force"])).code).toBe(0);
		expect(readFileSync(file, "utf8")).toContain("format: 1");
	});

	it("leaves a schema of another version where it is, and says so", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "camber.schema.json"), "{}");
		const { code, out } = await camber(["new", join(folder, "neck.yaml")]);
		expect(code).toBe(0);
		expect(out).toContain("was there already and stays as it is");
		expect(readFileSync(join(folder, "camber.schema.json"), "utf8")).toBe("{}");
	});

	it.each(["", "/"])("refuses a folder for a file: neck%s", async (end) => {
		const folder = tempFolder();
		const { code, err } = await camber(["new", `${folder}${end}`]);
		expect(code).toBe(2);
		expect(err).toContain("is a folder");
		expect(existsSync(`${folder}.yaml`)).toBe(false);
		expect(snapshot(folder)).toEqual({});
	});

	it("refuses a folder that is not there", async () => {
		const folder = tempFolder();
		const { code, err } = await camber(["new", join(folder, "none", "neck.yaml")]);
		expect(code).toBe(2);
		expect(err).toContain("no such file or directory");
		expect(snapshot(folder)).toEqual({});
	});

	it.each(["writeNew", "rename"])(
		"leaves nothing behind when the disk is full at %s",
		async (at) => {
			const folder = tempFolder();
			const { disk } = faultyDisk((_, operation) => operation === at, "ENOSPC", "half");
			const { code, err } = await camber(["new", join(folder, "neck.yaml")], disk);
			expect(code).toBe(2);
			expect(err).toContain("no room on the disk");
			expect(snapshot(folder)).toEqual({});
		},
	);
});
