import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Job, readJob } from "../../src/job/index.js";
import { make } from "../../src/make.js";
import { fretLine, radiusAt, widthAt } from "../../src/neck/index.js";
import { JOB } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { tempFolder } from "../support/temp-folder.js";

const equal = (n: number) => 1 - 2 ** (-n / 12);

/** Slots of a scale at frets 1 to 22, read to a step from a nut end that lies ahead by some mm. */
function slotsOf(scale: number, step: number, ahead = 0): string {
	const at = (n: number) => Math.round((scale * equal(n) - ahead) / step) * step;
	const all = Array.from({ length: 22 }, (_, i) => `${i + 1}: ${at(i + 1).toFixed(2)} mm`);
	return `{${all.join(", ")}}`;
}

/** The ordinary job with readings instead of some of its numbers. */
function read(lines: string, ...numbers: readonly RegExp[]): string {
	const bare = numbers.reduce((text, line) => text.replace(line, ""), JOB);
	return bare.replace("neck:\n", `neck:\n  readings:\n${lines.replace(/^/gmu, "    ")}\n`);
}

const SCALE = /^ {2}scale: .*\n/mu;
const RADIUS = /^ {2}radius: .*\n/mu;
const WIDTH = /^ {2}width: .*\n/mu;

function jobOf(text: string, files: Record<string, string> = {}): Job {
	const found = readJob(text, { files: new Map(Object.entries(files)) });
	if (!found.ok) throw new Error(JSON.stringify(found.problems));
	return found.job;
}

describe("a job with readings", () => {
	it("builds its neck on the fitted scale, whose interval widens the notches", async () => {
		const lines = `resolution: 0.02 mm\nslots: ${slotsOf(647.7, 0.02)}`;
		const { neck } = jobOf(read(lines, SCALE)).bench;
		expect(Math.abs(neck.scale.bass - 647.7)).toBeLessThan(0.05);
		expect(neck.scaleUncertainty).toBeGreaterThan(0.001);
		expect(fretLine(neck, 12).x).toBeCloseTo(neck.scale.bass / 2, 9);
		const coarse = jobOf(read(`slots: ${slotsOf(647.7, 0.5)}`, SCALE)).bench.neck;
		expect(coarse.scaleUncertainty).toBeGreaterThan(10 * neck.scaleUncertainty);
		const made = await make(read(`slots: ${slotsOf(647.7, 0.5)}`, SCALE));
		if (!made.ok) throw new Error(JSON.stringify(made.problems));
		const [bar] = made.tools[0]!.parts;
		const scale = /scale (\d\.\d+)/u.exec(bar!.notes.join(" "))![1]!;
		expect(Number(scale)).toBeGreaterThan(0.05);
	});

	it("takes a filed nut's end for what it is: the frets stay, the nut moves", () => {
		const { bench, fit } = jobOf(
			read(`resolution: 0.05 mm\nslots: ${slotsOf(647.7, 0.05, 0.8)}`, SCALE),
		);
		expect(Math.abs(bench.neck.scale.bass - 647.7)).toBeLessThan(0.1);
		expect(Math.abs(bench.neck.nutShift - 0.8)).toBeLessThan(0.05);
		expect(fit!.scale!.notes.map(({ severity }) => severity)).not.toContain("error");
	});

	it("takes every slot as it was read where that is asked for", () => {
		const lines = `resolution: 0.02 mm\nuse: readings\nslots: ${slotsOf(647.7, 0.02).replace("7: 215.42", "7: 215.90")}`;
		const { neck } = jobOf(read(lines, SCALE)).bench;
		expect(fretLine(neck, 7).x - neck.nutShift).toBeCloseTo(215.9, 6);
		expect(fretLine(neck, 12).x - neck.nutShift).toBeCloseTo(323.86, 2);
	});

	it("fits width and radius at their stations", () => {
		const lines = [
			"width: {nut: [42.98 mm, 43.02 mm], last-fret: 56 mm}",
			"radius: [{at: nut, chord: 40 mm, sagitta: 0.79 mm}, {at: last-fret, chord: 50 mm, sagitta: 0.88 mm}]",
		].join("\n");
		const { neck } = jobOf(read(lines, RADIUS, WIDTH)).bench;
		const last = fretLine(neck, 22).x;
		expect(widthAt(neck, 0)).toBeCloseTo(43, 6);
		expect(widthAt(neck, last)).toBeCloseTo(56, 6);
		// R = c²/8h + h/2, by hand.
		expect(radiusAt(neck, 0)).toBeCloseTo(1600 / 6.32 + 0.395, 3);
		expect(radiusAt(neck, last)).toBeCloseTo(2500 / 7.04 + 0.44, 3);
	});

	it("follows a board that fits no form as it was read, straight between the stations", () => {
		const at = (place: string, chord: number, sagitta: number) =>
			`{at: ${place}, chord: ${chord} mm, sagitta: ${sagitta} mm, resolution: 0.01 mm}`;
		const read3 = [at("nut", 40, 0.8), at("12", 46, 0.84), at("last-fret", 50, 0.77)].join(", ");
		const { neck } = jobOf(read(`radius: [${read3}]`, RADIUS)).bench;
		const ofChord = (c: number, h: number) => (c * c) / (8 * h) + h / 2;
		expect(radiusAt(neck, 0)).toBeCloseTo(ofChord(40, 0.8), 6);
		expect(radiusAt(neck, fretLine(neck, 12).x)).toBeCloseTo(ofChord(46, 0.84), 6);
		expect(radiusAt(neck, fretLine(neck, 22).x)).toBeCloseTo(ofChord(50, 0.77), 6);
	});

	it("widens the scale's uncertainty where few readings do not tell where the nut is", async () => {
		const job = jobOf(read("slots: {5: 161 mm, 12: 322.5 mm, 17: 403.5 mm}", SCALE));
		const fit = job.fit!.scale as { scale: { low: number; high: number } };
		expect(job.bench.neck.scaleUncertainty).toBeGreaterThan((fit.scale.high - fit.scale.low) / 2);
		const text = read("slots: {5: 161 mm, 12: 322.5 mm, 17: 403.5 mm}", SCALE);
		const { file } = jobFile(text.replace("  - notched-straightedge\n", ""));
		const { out } = await camber(["check", file]);
		expect(out.replace(/\s+/gu, " ")).toContain("do not tell whether the nut's end is where");
	});

	it("reads slots from a table, in whatever form a spreadsheet writes it", () => {
		const rows = (sep: string, comma: string) =>
			["fret", "reading mm"].join(sep) +
			Array.from(
				{ length: 22 },
				(_, i) => `\n${i + 1}${sep}${(647.7 * equal(i + 1)).toFixed(2).replace(".", comma)}`,
			).join("");
		const scaleOf = (table: string) =>
			jobOf(read("resolution: 0.02 mm\nslots: mine.csv", SCALE), { "mine.csv": table }).bench.neck
				.scale.bass;
		const [commas, semicolons, tabs] = [
			scaleOf(rows(",", ".")),
			scaleOf(rows(";", ",")),
			scaleOf(rows("\t", ".").replace(/\n/gu, "\r\n")),
		];
		expect(Math.abs(commas - 647.7)).toBeLessThan(0.02);
		expect([semicolons, tabs]).toEqual([commas, commas]);
		const inches = `fret,reading in\n${[1, 5, 12, 17, 22].map((n) => `${n},${(25.5 * equal(n)).toFixed(4)}`).join("\n")}`;
		expect(Math.abs(scaleOf(inches) - 647.7)).toBeLessThan(0.02);
	});

	it("keeps readings as the record where numbers count", () => {
		const text = read(`slots: ${slotsOf(700, 0.5)}`).replace("neck:\n", "neck:\n  use: numbers\n");
		const job = jobOf(text);
		expect(job.bench.neck.scale.bass).toBe(648);
		expect((job.fit!.scale as { scale: { value: number } }).scale.value).toBeGreaterThan(699);
	});

	it("misses a value that is neither told nor read", () => {
		const found = readJob(read("width: {nut: 43 mm, last-fret: 56 mm}", SCALE, WIDTH));
		expect(found.ok ? [] : found.problems.map(({ code, where }) => [code, where.path])).toEqual([
			["missing", ["neck", "scale"]],
		]);
	});
});

describe("camber fit", () => {
	const FIND = readFileSync("examples/redstart-find.yaml", "utf8");

	it("explains the readings: law, scale, nut, a slot that is out, radius, relief, tops", async () => {
		const { file } = jobFile(FIND);
		const { code, out, err } = await camber(["fit", file]);
		expect([code, err]).toEqual([0, ""]);
		for (const said of [
			"law: 12 equal steps",
			"ahead of where the scale begins",
			"fret 9 lies",
			"compound: it grows straight along the board",
			"+ bar's sag",
			"a suggestion from these figures, no order",
		]) {
			expect(out).toContain(said);
		}
		for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
		expect(out).toMatch(/^ {3}9 .*O +\+0\.8/mu);
	});

	it("writes a copy that makes the same neck by numbers, the readings and comments kept", async () => {
		const { file, folder } = jobFile(FIND);
		const copy = join(folder, "fitted.yaml");
		expect((await camber(["fit", file, "--write", copy])).code).toBe(0);
		const text = readFileSync(copy, "utf8");
		expect(text).toContain("# a steel rule's finest lines");
		expect(text).toContain("sagitta: 0.64 mm");
		const [before, after] = [jobOf(FIND).bench.neck, jobOf(text).bench.neck];
		expect(jobOf(text).neckValues.use).toBe("numbers");
		for (const n of [1, 9, 12, 21]) {
			expect(Math.abs(fretLine(after, n).x - fretLine(before, n).x)).toBeLessThan(1e-4);
		}
		expect(Math.abs(after.nutShift - before.nutShift)).toBeLessThan(1e-4);
		for (const x of [0, 200, 440]) {
			expect(Math.abs(radiusAt(after, x)! - radiusAt(before, x)!)).toBeLessThan(1e-3);
			expect(Math.abs(widthAt(after, x) - widthAt(before, x))).toBeLessThan(1e-3);
		}
		const again = await camber(["fit", file, "--write", file]);
		expect([again.code, again.err.includes("--force")]).toEqual([2, true]);
		expect(readFileSync(file, "utf8")).toBe(FIND);
	});

	it("says a law of its own by the ratios of its frets", async () => {
		const eighteen = Array.from({ length: 22 }, (_, i) => {
			const at = 650 * (1 - (1 - 1 / 17.5) ** (i + 1));
			return `${i + 1}: ${at.toFixed(2)} mm`;
		});
		const lines = `resolution: 0.02 mm\nslots: {${eighteen.join(", ")}}`;
		const { file, folder } = jobFile(read(lines, SCALE));
		const copy = join(folder, "fitted.yaml");
		expect((await camber(["fit", file, "--write", copy])).code).toBe(0);
		const text = readFileSync(copy, "utf8");
		expect(text).toContain("ratios");
		const x = fretLine(jobOf(text).bench.neck, 12).x;
		expect(Math.abs(x - 650 * (1 - (1 - 1 / 17.5) ** 12))).toBeLessThan(0.02);
	});

	it("loads a table from the job's folder, and refuses one that is not there", async () => {
		const folder = tempFolder();
		const job = join(folder, "neck.yaml");
		writeFileSync(job, read("resolution: 0.02 mm\nslots: mine.csv", SCALE));
		const lost = await camber(["fit", job]);
		expect([lost.code, lost.err.includes("mine.csv")]).toEqual([2, true]);
		const rows = [1, 5, 9, 12, 17, 22].map((n) => `${n},${(647.7 * equal(n)).toFixed(2)}`);
		writeFileSync(join(folder, "mine.csv"), `fret,reading\n${rows.join("\n")}\n`);
		expect((await camber(["fit", job])).code).toBe(0);
		expect((await camber(["frets", job])).code).toBe(0);
		const made = await camber(["make", job, "-o", join(folder, "out"), "--only", "slot-strip"]);
		expect([made.code, made.err]).toEqual([0, ""]);
	});

	it("reports to machines", async () => {
		const { file } = jobFile(FIND);
		const { out } = await camber(["fit", file, "--json"]);
		const { blocks } = JSON.parse(out);
		expect(blocks.map((b: { title: string }) => b.title)).toEqual([
			"Scale",
			"Radius",
			"Board width",
			"Straightness",
			"Fret tops",
			"Wire",
		]);
	});
});
