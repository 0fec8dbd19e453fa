import { existsSync, mkdirSync, readdirSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nodeDisk } from "../../src/cli/disk.js";
import { run } from "../../src/cli/main.js";
import { VERSION } from "../../src/version.js";
import { type BuiltCommand, buildCommand, inShell } from "../support/built-command.js";
import { faultyDisk } from "../support/faulty-disk.js";
import { JOB, jobText, making, withBlock } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

const GAUGE = making("radius-gauge: {faces: [concave, convex]}");

describe("camber", () => {
	it.each([
		[[], "Usage: camber"],
		[["mak", "a.yaml"], "Did you mean make?"],
		[["make"], "missing required argument 'job'"],
		[["make", "a.yaml", "b.yaml"], "too many arguments"],
		[["make", "a.yaml", "--formt", "svg"], "Did you mean --format?"],
		[["make", "a.yaml", "-o"], "argument missing"],
		[["frets", "a.yaml", "--csv", "--json"], "cannot be used with"],
		[["schema", "a.yaml"], "too many arguments"],
		[["single"], "radius-gauge"],
		[["single", "radius-gage"], "Did you mean radius-gauge?"],
		[["single", "radius-gauge", "--scal", "648"], "Did you mean --scale?"],
		[["new"], "missing required argument"],
	])("refuses %j and says why", async (args, says) => {
		const { code, out, err } = await camber(args);
		expect(code).toBe(2);
		expect(out).toBe("");
		expect(err).toContain(says);
		expect(err).not.toMatch(/\n\s+at /u);
	});

	it.each([
		[["--help"], ["make", "check", "frets", "tools", "schema", "single", "new"]],
		[
			["make", "--help"],
			["--out", "--only", "--format", "--dxf", "--no-dimensions", "--force", "--json"],
		],
		[
			["single", "--help"],
			["notched-straightedge", "radius-gauge", "slot-strip"],
		],
		[
			["single", "slot-strip", "--help"],
			["--slots", "--scale", "{nut: 10 in", "--crown-width"],
		],
		[
			["help", "frets"],
			["--csv", "--json"],
		],
	])("helps with %j", async (args, says) => {
		const { code, out, err } = await camber(args);
		expect(code).toBe(0);
		expect(err).toBe("");
		for (const word of says) expect(out).toContain(word);
		expect(out).not.toMatch(/undefined|\(default: \)|""/u);
	});

	it("tells its version", async () => {
		expect(await camber(["--version"])).toEqual({ code: 0, out: `${VERSION}\n`, err: "" });
	});
});

describe("camber make", () => {
	it("writes the drawings and the manifest, and says what it made", async () => {
		const { file, out } = jobFile(GAUGE);
		const ran = await camber(["make", file, "-o", out]);
		expect(ran).toMatchObject({ code: 0, err: "" });
		expect(ran.out).toContain(`Test neck: 2 parts, 6 files in ${out}`);
		expect(ran.out).toContain("radius-gauge-concave: Radius gauge, concave, 12 in");
		expect(ran.out).toContain("Cautions");
		expect(readdirSync(out).sort()).toEqual([
			"manifest.json",
			"report.html",
			"test-neck-radius-gauge-concave.dxf",
			"test-neck-radius-gauge-concave.svg",
			"test-neck-radius-gauge-convex.dxf",
			"test-neck-radius-gauge-convex.svg",
		]);
		for (const line of ran.out.split("\n")) expect(line.length).toBeLessThanOrEqual(120);
	});

	it("leaves everything as it is the second time, and says so", async () => {
		const { file, out } = jobFile(GAUGE);
		await camber(["make", file, "-o", out]);
		const before = snapshot(out);
		const again = await camber(["make", file, "-o", out]);
		expect(again.code).toBe(0);
		expect(again.out).toContain("already held");
		expect(snapshot(out)).toEqual(before);
	});

	it("reports to machines: what it made, or its problems", async () => {
		const { file, out } = jobFile(GAUGE);
		const good = await camber(["make", file, "-o", out, "--json"]);
		expect(good.err).toBe("");
		expect(JSON.parse(good.out)).toMatchObject({
			ok: true,
			job: "Test neck",
			folder: out,
			written: expect.arrayContaining(["manifest.json"]),
			unchanged: [],
			stale: [],
		});
		const { file: wrong } = jobFile(jobText("frets: 22", "frets: 0"));
		const bad = await camber(["make", wrong, "-o", out, "--json"]);
		expect(bad).toMatchObject({ code: 2, err: "" });
		expect(JSON.parse(bad.out)).toMatchObject({
			ok: false,
			problems: [
				{
					code: "count",
					severity: "error",
					where: { path: ["neck", "frets"], line: 5, column: 10 },
					text: "0 is not allowed here. Give a whole number, 1 to 150.",
				},
			],
		});
	});

	it("names files of an earlier run that this one does not make", async () => {
		const { file, out, folder } = jobFile(making("radius-gauge", "slot-strip"));
		await camber(["make", file, "-o", out]);
		writeFileSync(join(folder, "fewer.yaml"), making("radius-gauge"));
		const { code, out: said } = await camber(["make", join(folder, "fewer.yaml"), "-o", out]);
		expect(code).toBe(0);
		expect(said).toContain("test-neck-slot-strip.svg");
		expect(existsSync(join(out, "test-neck-slot-strip.svg"))).toBe(true);
	});

	it("writes over no file that it did not write, unless forced", async () => {
		const { file, out } = jobFile(making("radius-gauge"));
		const strange = join(out, "test-neck-radius-gauge-concave.svg");
		mkdirSync(out);
		writeFileSync(strange, "mine");
		const before = snapshot(out);
		const refused = await camber(["make", file, "-o", out]);
		expect(refused.code).toBe(2);
		expect(refused.err).toContain("test-neck-radius-gauge-concave.svg");
		expect(refused.err).toContain("--force");
		expect(snapshot(out)).toEqual(before);
		expect((await camber(["make", file, "-o", out, "--force"])).code).toBe(0);
		expect(snapshot(out)["test-neck-radius-gauge-concave.svg"]).toContain("<svg");
	});

	it.each([
		[
			["--format", "png"],
			['"png"', "--format", "svg, dxf, pdf"],
		],
		[
			["--format", "svg,pfd,png"],
			['"pfd"', '"png"', "2 errors"],
		],
		[
			["--format", ","],
			["--format has no value", "svg, dxf"],
		],
		[
			["--dxf", "r14"],
			['"r14"', "--dxf", '"r12"?', "r2000, r12, loose"],
		],
		[
			["--dxf", "r14", "--format", "png"],
			['"r14"', '"png"', "2 errors"],
		],
		[
			["--only", "radius-gage"],
			["--only radius-gage", '"radius-gauge"?', "slot-strip"],
		],
		[["--only", ","], ["--only has no value"]],
		[
			["--out", ""],
			["--out has no value", "a folder"],
		],
	])("refuses %j and writes nothing", async (flags, says) => {
		const { file, folder } = jobFile(JOB);
		const before = snapshot(folder);
		const { code, err } = await camber(["make", file, "-o", join(folder, "out"), ...flags]);
		expect(code).toBe(2);
		for (const piece of says) expect(err).toContain(piece);
		expect(snapshot(folder)).toEqual(before);
	});

	it("makes a single part by the name that the report gives it", async () => {
		const { file, out } = jobFile(GAUGE);
		const one = await camber(["make", file, "-o", out, "--only", "radius-gauge-convex"]);
		expect([one.code, one.err]).toEqual([0, ""]);
		expect(readdirSync(out).sort()).toEqual([
			"manifest.json",
			"report.html",
			"test-neck-radius-gauge-convex.dxf",
			"test-neck-radius-gauge-convex.svg",
		]);
		const wrong = await camber(["make", file, "-o", out, "--only", "radius-gauge-round"]);
		expect(wrong.code).toBe(2);
		expect(wrong.err).toContain("--only radius-gauge-round");
	});

	it("means an entry by its own name where a tool is used twice", async () => {
		const bars = ["notched-straightedge", "notched-straightedge: {name: bass-edge, along: bass}"];
		const { file, out } = jobFile(making(...bars));
		const only = ["--format", "svg", "--only", "notched-straightedge"];
		await camber(["make", file, "-o", out, ...only]);
		expect(readdirSync(out).sort()).toEqual([
			"manifest.json",
			"report.html",
			"test-neck-notched-straightedge.svg",
		]);
	});

	it("refuses the folder of another job, unless forced", async () => {
		const { file, out } = jobFile(GAUGE);
		await camber(["make", file, "-o", out]);
		const before = snapshot(out);
		const other = jobFile(GAUGE.replace("job: Test neck", "job: test-neck")).file;
		const { code, err } = await camber(["make", other, "-o", out]);
		expect(code).toBe(2);
		expect(err).toContain('holds the files of the job "Test neck", this one is "test-neck"');
		expect(snapshot(out)).toEqual(before);
		expect((await camber(["make", other, "-o", out, "--force"])).code).toBe(0);
	});

	it("makes only the parts asked for", async () => {
		const { file, out } = jobFile(JOB);
		await camber([
			"make",
			file,
			"-o",
			out,
			"--only",
			"slot-strip, radius-gauge",
			"--format",
			"svg",
		]);
		expect(readdirSync(out).sort()).toEqual([
			"manifest.json",
			"report.html",
			"test-neck-radius-gauge-concave.svg",
			"test-neck-slot-strip.svg",
		]);
	});

	it("draws with the font that the job names, from the job's folder", async () => {
		const { file, out, folder } = jobFile(
			withBlock("lettering: {font: own/my.ttf}").replace(/ {2}- notched.*\n/u, ""),
		);
		const source =
			"node_modules/@expo-google-fonts/barlow-condensed/500Medium/BarlowCondensed_500Medium.ttf";
		mkdirSync(join(folder, "own"));
		writeFileSync(join(folder, "own", "my.ttf"), await nodeDisk.readFile(source));
		expect(await camber(["make", file, "-o", out])).toMatchObject({ code: 0, err: "" });
		expect(snapshot(out)["manifest.json"]).toContain('"font": "my"');
	});

	it.each(["../../etc", "/etc/passwd", "..", "a/../../b", "C:\\x", "con", ".hidden", "-rf"])(
		"stays in its folder whatever job and part are called: %s",
		async (name) => {
			const quoted = `'${name}'`;
			const { file, folder, out } = jobFile(
				making(`radius-gauge: {name: ${quoted}}`).replace("Test neck", quoted),
			);
			const { code, err } = await camber(["make", file, "-o", out]);
			expect(readdirSync(folder).sort()).toEqual(code === 0 ? ["neck.yaml", "out"] : ["neck.yaml"]);
			if (code !== 0) expect(err).toContain("file names");
			else for (const made of readdirSync(out)) expect(made).toMatch(/^[a-z0-9][a-z0-9-]*\.\w+$/u);
		},
	);
});

describe("camber with trouble on the disk", () => {
	it("does not read a file of 100 MB", async () => {
		const { file } = jobFile("");
		truncateSync(file, 100_000_000);
		const { disk, calls } = faultyDisk(() => false, "EIO");
		for (const command of ["make", "check", "frets"]) {
			const { code, err } = await camber([command, file], disk);
			expect(code).toBe(2);
			expect(err).toContain("100000000 bytes");
		}
		expect(new Set(calls.map(({ operation }) => operation))).toEqual(new Set(["stat"]));
	});

	it.each([
		["a file that is not there", "none.yaml", "there is no file"],
		["a folder", ".", "is a folder"],
		["a path through a file", "neck.yaml/neck.yaml", "there is no file"],
	])("refuses %s", async (_, name, says) => {
		const { folder } = jobFile(JOB);
		for (const command of ["make", "check", "frets"]) {
			const { code, err } = await camber([command, join(folder, name)]);
			expect(code).toBe(2);
			expect(err).toContain(says);
		}
	});

	it("refuses what is not UTF-8", async () => {
		const { file } = jobFile(Buffer.from(jobText("Test neck", "Gärtner"), "latin1"));
		const { code, err } = await camber(["make", file]);
		expect(code).toBe(2);
		expect(err).toContain("is not UTF-8 text. Save it as UTF-8.");
	});

	it("says why a file cannot be read", async () => {
		const { file } = jobFile(JOB);
		const { disk } = faultyDisk((_, operation) => operation === "readFile", "EACCES");
		const { code, err } = await camber(["make", file], disk);
		expect(code).toBe(2);
		expect(err).toContain(`${file} cannot be read: permission denied`);
	});

	it.each([
		["out", "is a file, not a folder"],
		["out/deeper/still", "lies under a file"],
	])("refuses the folder %s where a file is", async (folder, says) => {
		const { file, out } = jobFile(GAUGE);
		writeFileSync(out, "a file");
		const { code, err } = await camber(["make", file, "-o", out.replace(/out$/u, folder)]);
		expect(code).toBe(2);
		expect(err).toContain(says);
		expect(err).toContain("-o");
		expect(snapshot(join(out, ".."))).toMatchObject({ out: "file a file" });
	});

	it("leaves the folder as it was when the disk is full, at whatever write", async () => {
		const { file, folder, out } = jobFile(GAUGE);
		await camber(["make", file, "-o", out]);
		const other = jobFile(GAUGE.replace("radius: 12 in", "radius: 14 in"));
		const before = snapshot(folder);
		let writes = Number.POSITIVE_INFINITY;
		for (let failing = 1; failing <= writes; failing++) {
			let count = 0;
			const isWrite = (operation: string) => ["writeNew", "rename", "mkdir"].includes(operation);
			const { disk, calls } = faultyDisk(
				(_, operation) => isWrite(operation) && ++count === failing,
				"ENOSPC",
				failing % 2 === 0 ? "half" : "before",
			);
			const { code, err } = await camber(["make", other.file, "-o", out], disk);
			if (code === 0) {
				writes = calls.filter(({ operation }) => isWrite(operation)).length;
				expect(failing).toBe(writes + 1);
				break;
			}
			expect(code).toBe(2);
			expect(err).toMatch(/no room on the disk for .*[Mm]ake room/u);
			expect(snapshot(folder)).toEqual(before);
		}
		// Six new files, six old ones set aside, six moves.
		expect(writes).toBe(18);
	});

	it("makes no folder that it could not fill", async () => {
		const { file, folder, out } = jobFile(making("radius-gauge"));
		const { disk } = faultyDisk((_, operation) => operation === "writeNew", "ENOSPC");
		expect((await camber(["make", file, "-o", join(out, "a", "b")], disk)).code).toBe(2);
		expect(readdirSync(folder)).toEqual(["neck.yaml"]);
	});

	it("owns up to a fault of its own, with its trace only on demand", async () => {
		const said: string[] = [];
		const console = {
			out: () => {
				throw new Error("the screen is dark");
			},
			err: (text: string) => void said.push(text),
		};
		expect(await run(["tools"], console)).toBe(70);
		expect(await run(["--debug", "tools"], console)).toBe(70);
		expect(said[0]).toMatch(/^camber failed: .*the screen is dark/u);
		expect(said[0]).not.toMatch(/\n\s+at /u);
		expect(said[1]).toMatch(/the screen is dark[\s\S]*\n\s+at /u);
	});
});

describe("camber as it is installed", () => {
	let built: BuiltCommand;
	beforeAll(async () => {
		built = await buildCommand();
	});
	afterAll(() => built.remove());

	it("makes a job into its own folder below the present one", async () => {
		const { folder } = jobFile(making("radius-gauge"));
		const ran = await inShell("camber make neck.yaml", folder, built.script);
		expect(ran).toMatchObject({ code: 0, err: "" });
		expect(Object.keys(snapshot(folder))).toEqual(
			expect.arrayContaining(["templates-out/test-neck/manifest.json"]),
		);
	});

	it("exits with 2 and no trace where it refuses", async () => {
		const { folder } = jobFile(jobText("frets: 22", "frets: 0"));
		const ran = await inShell("camber make neck.yaml", folder, built.script);
		expect(ran).toMatchObject({ code: 2, out: "" });
		expect(ran.err).toBe(
			"error: neck.yaml:5:10: neck.frets: 0 is not allowed here. Give a whole number, 1 to 150.\nNo file was written.\n",
		);
	});

	it("tells its version before anything else loads", async () => {
		const ran = await inShell("camber --version", tempFolder(), built.script);
		expect(ran).toEqual({ code: 0, out: `${VERSION}\n`, err: "" });
	});

	it.runIf(process.platform !== "win32")(
		"says nothing when its reader has had enough",
		async () => {
			const ran = await inShell("camber schema | true", tempFolder(), built.script);
			expect(ran).toEqual({ code: 0, out: "", err: "" });
		},
	);
});
