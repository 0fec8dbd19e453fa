import {
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nodeDisk } from "../../src/cli/disk.js";
import { loader } from "../../src/cli/job-file.js";
import { newFile } from "../../src/cli/new-file.js";
import { putFiles } from "../../src/cli/put-files.js";
import { readInput } from "../../src/cli/read-input.js";
import { cutterProblems } from "../../src/cutting/cutter.js";
import { compensated } from "../../src/cutting/index.js";
import type { Mark, Part } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	type Path,
	rectangle,
	reversed,
	vertex,
} from "../../src/geometry/index.js";
import { make } from "../../src/make.js";
import { printerCorrection } from "../../src/paper/index.js";
import {
	isWorded,
	type Problem,
	pathText,
	placeText,
	problem,
	problemText,
	wordedCodes,
} from "../../src/problem/index.js";
import { kerfFromBlocks } from "../../src/shop/index.js";
import { cubicFont } from "../lettering/cubic-font.js";
import { BAD_JOBS } from "../support/bad-jobs/index.js";
import { faultyDisk } from "../support/faulty-disk.js";
import { JOB, withBlock } from "../support/job-text.js";
import { outFiles } from "../support/out-files.js";
import { problemsOfPaper } from "../support/paper-faults.js";
import { problemsOfDrawings } from "../support/proof-faults.js";
import { problemsOfFiles } from "../support/proof-faults-of-files.js";
import { problemsOfInspection } from "../support/proof-inspect-faults.js";
import { measuringFaults } from "../support/proof-measure-faults.js";
import { readingFaultsBoard } from "../support/reading-faults-board.js";
import { readingFaultsRadius } from "../support/reading-faults-radius.js";
import { readingFaultsScale } from "../support/reading-faults-scale.js";
import { camber } from "../support/run-camber.js";

function sources(folder = "src"): string[] {
	return readdirSync(folder).flatMap((name) => {
		const path = join(folder, name);
		if (statSync(path).isDirectory()) return sources(path);
		return path.includes("problem/words/") ? [] : [readFileSync(path, "utf8")];
	});
}

let shelf: string;
beforeAll(() => {
	shelf = mkdtempSync(join(tmpdir(), "camber-test-"));
	writeFileSync(join(shelf, "neck.yaml"), JOB);
});
afterAll(() => rmSync(shelf, { recursive: true }));

/** What a job's problems are; none if it is made. */
async function problemsOf(text: string): Promise<readonly Problem[]> {
	const made = await make(text, { load: loader(shelf, nodeDisk), proof: false });
	return made.ok ? [] : made.problems;
}

/** Problems of the library's options: what the command never does. */
async function problemsOfOptions(): Promise<Problem[]> {
	const font = withBlock("lettering: {font: my.ttf}");
	const made = await Promise.all([
		make(font),
		make(font, { load: async () => new Uint8Array(cubicFont()) }),
		make("#".repeat(1_000_001)),
		make(JOB, { only: ["slot-stripe"] }),
		make(JOB, { sheets: true }),
	]);
	return made.flatMap((m) => (m.ok ? [] : m.problems));
}

async function problemsOfInput(): Promise<Problem[]> {
	const folder = mkdtempSync(join(shelf, "files-"));
	const path = (name: string, bytes: string | Uint8Array) => {
		writeFileSync(join(folder, name), bytes);
		return join(folder, name);
	};
	const { disk } = faultyDisk((_, operation) => operation === "readFile", "EACCES");
	const read = await Promise.all([
		readInput(nodeDisk, join(folder, "none"), { maxBytes: 9 }),
		readInput(nodeDisk, folder, { maxBytes: 9 }),
		readInput(nodeDisk, path("long", "ten letters"), { maxBytes: 9 }),
		readInput(nodeDisk, path("latin", Uint8Array.of(0xe4)), { maxBytes: 9 }),
		readInput(disk, path("short", "a"), { maxBytes: 9 }),
	]);
	const taken = await newFile(nodeDisk, path("taken", "a"), "b", false);
	return [...read.filter((p): p is Problem => "code" in p), ...(taken ? [taken] : [])];
}

async function problemsOfOutput(): Promise<Problem[]> {
	const files = outFiles({ "a.svg": "new a", "b.svg": "new b" });
	const manifest = { name: "manifest.json", bytes: new TextEncoder().encode("{}\n") };
	const put = async (folder: string, disk = nodeDisk, force = false) => {
		const result = await putFiles(disk, folder, files, manifest, { force });
		return Array.isArray(result) ? result : [];
	};
	const folder = mkdtempSync(join(shelf, "files-"));
	writeFileSync(join(folder, "file"), "");
	mkdirSync(join(folder, "own", "a.svg"), { recursive: true });
	writeFileSync(join(folder, "own", "b.svg"), "old b");
	const fresh = (name: string) => join(folder, name);
	const failing = (code: string, ...operations: string[]) =>
		faultyDisk((count, operation) => count > 3 && operations.includes(operation), code).disk;
	mkdirSync(fresh("old"));
	for (const name of ["a.svg", "b.svg"]) writeFileSync(join(fresh("old"), name), "old");
	let renames = 0;
	const stuck = faultyDisk(
		(_, operation) => (operation === "rename" && ++renames > 1) || operation === "rm",
		"EBUSY",
	).disk;
	return [
		...(await put(fresh("file"))),
		...(await put(join(fresh("file"), "under"))),
		...(await put(fresh("barred"), faultyDisk(() => true, "EACCES").disk)),
		...(await put(fresh("own"))),
		...(await put(fresh("full"), failing("ENOSPC", "writeNew"))),
		...(await put(fresh("broken"), failing("EIO", "writeNew"))),
		...(await put(fresh("old"), stuck, true)),
	];
}

async function problemsOfFlags(): Promise<Problem[]> {
	const file = join(shelf, "neck.yaml");
	const wrong = await camber(["make", file, "--json", "--format", "png"]);
	const paged = await camber(["make", file, "--json", "--paper", "A4", "--format", "dxf"]);
	const sought = await camber(["proof", "a.pdf", "--json", "--job", file, "--tool", "slot-strip"]);
	const empty = await camber(["make", file, "--json", "--format", ","]);
	const folder = join(shelf, "shared");
	const other = join(shelf, "other.yaml");
	writeFileSync(other, readFileSync(file, "utf8").replace(/^job: .*$/mu, "job: Other neck"));
	await camber(["make", file, "--json", "-o", folder]);
	const shared = await camber(["make", other, "--json", "-o", folder]);
	const numbers = await camber(["fit", file, "--json"]);
	return [wrong, empty, shared, paged, sought, numbers].flatMap(
		({ out }) => JSON.parse(out).problems as Problem[],
	);
}

function problemsOfReadings(): Problem[] {
	const readings = { blocks: 10, nominal: 100, resolution: 0.02 };
	const kerfs = [100, 20].flatMap((length) => {
		const found = kerfFromBlocks({ ...readings, measured: [length] });
		return "code" in found ? [found] : [];
	});
	const rules = { nominal: { x: 180, y: 260 }, measured: { x: 260, y: 180 } };
	const swapped = printerCorrection({ ...rules, resolution: 0.5, longest: 500 });
	return [...kerfs, ...(Array.isArray(swapped) ? swapped : [])];
}

/** What a beam of 2 mm and a cutter of 2 mm are too wide for. */
function problemsOfCutting(): Problem[] {
	// A pocket behind a throat that narrows to 1 mm between slanted sides: the beam's path closes it.
	const pocket = [12, 0, 19.5, 4, 12, 8, 12, 14, 28, 14, 28, 8, 20.5, 4, 28, 0];
	const around = [0, 0, ...pocket, 40, 0, 40, 20, 0, 20];
	const bottle = closed(
		...around.flatMap((x, i) => (i % 2 === 0 ? [vertex(x, around[i + 1]!)] : [])),
	);
	const plates: Record<string, Path>[] = [
		{ slot: reversed(rectangle(5, 5, 6, 9)), outline: rectangle(0, 0, 40, 20) },
		{ hole: reversed(circle({ x: 30, y: 10 }, 0.8)), outline: rectangle(0, 0, 40, 20) },
		{ outline: bottle },
	];
	return plates.flatMap((cuts) => {
		const marks = Object.entries(cuts).map(
			([feature, path]): Mark => ({ operation: "cut", path, feature }),
		);
		const result = compensated(plate(marks), 2);
		return [...(result.ok ? [] : result.problems), ...cutterProblems(plate(marks), 2)];
	});
}

function plate(marks: readonly Mark[]): Part {
	const stock = { material: "acrylic", thickness: 3 };
	const words = { name: "plate", tool: "test", title: "Plate", workingEdge: "none", working: [] };
	return { ...words, stock, marks, claims: [], notes: [] };
}

/** Accepts only facts that a problem has. */
function strict(p: Problem): Problem {
	const facts = new Proxy(p.facts, {
		get(target, key) {
			if (!Object.hasOwn(target, key)) throw new Error(`${p.code} has no fact ${String(key)}`);
			return target[key as string];
		},
	});
	return { ...p, facts };
}

/** Problems of every bad job, by its title. */
const byJob = new Map<string, readonly Problem[]>();

beforeAll(async () => {
	for (const { title, text } of BAD_JOBS) {
		const thrown = (error: unknown) => [problem("thrown", [], { reason: String(error) })];
		byJob.set(title, await problemsOf(text).catch(thrown));
	}
});

describe("problemText", () => {
	const found: Problem[] = [];

	beforeAll(async () => {
		found.push(...[...byJob.values()].flat().filter((p) => isWorded(p.code)));
		for (const collect of [problemsOfOptions, problemsOfInput, problemsOfOutput, problemsOfFlags]) {
			found.push(...(await collect()));
		}
		found.push(...problemsOfCutting());
		found.push(...problemsOfReadings());
		found.push(...problemsOfDrawings());
		found.push(...problemsOfInspection());
		found.push(...measuringFaults());
		found.push(...(await problemsOfPaper()));
		found.push(...readingFaultsScale(), ...readingFaultsRadius(), ...readingFaultsBoard());
		found.push(...(await problemsOfFiles(mkdtempSync(join(shelf, "proof-")))));
		found.push(problem("flag-yaml", [], { flag: "--radius", given: "{nut: 10 in" }));
	});

	it("has words for every code that is raised, and no others", () => {
		const texts = sources();
		const raised = texts.flatMap((text) =>
			[
				...text.matchAll(/\b(?:problem|refusal|refuse)\(\s*([^,{[]+)/gu),
				...text.matchAll(/\bfault\(\s*ctx,\s*([^,]+)/gu),
			].flatMap(([, argument]) => [...argument!.matchAll(/"([a-z0-9-]+)"/gu)].map((m) => m[1]!)),
		);
		expect(raised.length).toBeGreaterThan(80);
		expect(raised.filter((code) => !isWorded(code))).toEqual([]);
		const all = texts.join("\n");
		expect(wordedCodes().filter((code) => !all.includes(`"${code}"`))).toEqual([]);
	});

	it("has met every code in a real fault", () => {
		const met = new Set(found.map((p) => p.code));
		expect(wordedCodes().filter((code) => !met.has(code))).toEqual([]);
	});

	it("uses none but the facts that a problem has", () => {
		for (const p of found) expect(() => problemText(strict(p)), p.code).not.toThrow();
	});

	it("says what is wrong and how to mend it, in two sentences or a few, without a gap", () => {
		for (const p of found) {
			const text = problemText(p);
			expect(text).not.toMatch(/undefined|\bnull\b|NaN mm|\[object|(?:^|\s)""|: \.|\(\)|\?\?/u);
			expect(text, text).toMatch(/^[^\n]+[^.\s]\.? [^\n]+[.?:"]$/u);
			expect(text.length, text).toBeLessThan(420);
		}
	});

	it("speaks no parser's jargon", () => {
		for (const p of found) {
			expect(problemText(p)).not.toMatch(
				/\b(?:zod|YAML|flow|mapping|sequence|scalar|implicit|expected|received|invalid|ENO\w+|EACCES|EISDIR|boolean)\b/u,
			);
		}
	});

	it("shows characters that are not seen by their codes and cuts long texts", () => {
		const long = problemText(problem("not-a-length", [], { given: "x".repeat(1000), words: "" }));
		expect(long).toContain(`${"x".repeat(159)}…"`);
		expect(long).not.toContain("x".repeat(160));
		const given = "\u001b[31mred\u202e\u0000";
		expect(problemText(problem("not-a-length", [], { given, words: "" }))).toContain(
			'"[U+001B][31mred[U+202E][U+0000]"',
		);
	});

	it("says numbers of any size", () => {
		const said = (given: number) => problemText(problem("count", [], { given, allowed: "" }));
		expect(said(1e300)).toContain("1e+300");
		expect(said(-1e15)).toContain("-1000000000000000");
		expect(said(0.0005)).toContain("0.001");
	});

	it("throws for a code without words", () => {
		expect(isWorded("no-such-code")).toBe(false);
		expect(() => problemText(problem("no-such-code", []))).toThrow(RangeError);
	});

	it.each([
		["toString", false],
		["constructor", false],
		["count", true],
	])("takes %s for a code: %s", (code, worded) => expect(isWorded(code)).toBe(worded));
});

describe("a bad job's problems", () => {
	it.each(BAD_JOBS)("are these and no others: $title", ({ title, codes }) => {
		const problems = byJob.get(title)!;
		expect(problems.map((p) => p.code)).toEqual(codes);
		expect(problems.every((p) => p.severity === "error")).toBe(true);
	});
});

describe("placeText", () => {
	it("names file, line, column and key, as far as they are known", () => {
		const p = problem("count", ["neck", "frets"]);
		const located = { ...p, where: { ...p.where, line: 5, column: 10 } };
		expect(placeText(located, "neck.yaml")).toBe("neck.yaml:5:10: neck.frets");
		expect(placeText(p, "neck.yaml")).toBe("neck.yaml: neck.frets");
		expect(placeText(problem("empty-job", []), "")).toBe("");
	});

	it("counts list entries from 1", () => {
		expect(pathText(["make", 1, "radius-gauge", "at", 0])).toBe("make[2].radius-gauge.at[1]");
	});
});
