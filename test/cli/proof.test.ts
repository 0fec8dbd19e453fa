import { copyFileSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { JOB } from "../support/job-text.js";
import { camber } from "../support/run-camber.js";
import { tempFolder } from "../support/temp-folder.js";

const FONT =
	"node_modules/@expo-google-fonts/barlow-condensed/400Regular/BarlowCondensed_400Regular.ttf";

/** A job made into a folder; the folder and the job's file. */
async function made(flags: readonly string[], text = JOB) {
	const folder = tempFolder();
	const job = join(folder, "neck.yaml");
	writeFileSync(job, text);
	const out = join(folder, "out");
	const { code, err } = await camber(["make", job, "-o", out, ...flags]);
	expect([code, err]).toEqual([0, ""]);
	return { folder, job, out };
}

async function proofOf(...args: readonly string[]) {
	const { code, out } = await camber(["proof", ...args, "--json"]);
	return { code, proof: JSON.parse(out) };
}

describe("camber proof", () => {
	it("measures the pages of a folder, PDF and SVG alike", async () => {
		const { out } = await made(["--paper", "A4", "--format", "pdf,svg", "--only", "slot-strip"]);
		const { code, proof } = await proofOf(out);
		expect(code).toBe(0);
		const files = proof.proven.map((f: { file: string }) => f.file);
		expect(files).toContain("test-neck-slot-strip.pdf");
		expect(files).toContain("test-neck-slot-strip-page-2.svg");
	});

	it("measures all pages of a print where one is named, and once where all are", async () => {
		const { out } = await made(["--paper", "A4", "--format", "svg", "--only", "slot-strip"]);
		const page = (n: number) => join(out, `test-neck-slot-strip-page-${n}.svg`);
		const one = await proofOf(page(2));
		const two = await proofOf(page(1), page(2));
		expect([one.code, two.code]).toEqual([0, 0]);
		expect(two.proof).toEqual(one.proof);
		rmSync(page(1));
		const lost = await proofOf(page(2));
		expect(lost.code).toBe(2);
		expect(JSON.stringify(lost.proof)).toContain("drawing-missing");
	});

	it("finds a PDF that was cut off or put in another's place", async () => {
		const { out } = await made(["--paper", "A4", "--only", "slot-strip,notched-straightedge"]);
		const [strip, bar] = ["slot-strip", "notched-straightedge"].map((t) =>
			join(out, `test-neck-${t}.pdf`),
		);
		const bytes = readFileSync(strip!);
		writeFileSync(strip!, bytes.subarray(0, bytes.length / 2));
		expect((await proofOf(strip!)).code).toBe(2);
		copyFileSync(bar!, strip!);
		const { code, proof } = await proofOf(strip!);
		expect(code).toBe(2);
		expect(JSON.stringify(proof)).toContain("file-changed");
	});

	it("knows a renamed file by its bytes", async () => {
		const { out } = await made(["--paper", "A4", "--only", "slot-strip"]);
		const renamed = join(out, "mine.pdf");
		copyFileSync(join(out, "test-neck-slot-strip.pdf"), renamed);
		const { code, proof } = await proofOf(renamed);
		expect(code).toBe(0);
		expect(proof.proven[0].measured.length).toBeGreaterThan(50);
		writeFileSync(renamed, "%PDF-1.7 of another");
		expect((await camber(["proof", renamed])).code).toBe(2);
	});

	it("reads the font of the labels, which is no text", async () => {
		const { folder, job, out } = await made(["--only", "radius-gauge", "--format", "dxf"]);
		const font = join(folder, "own.ttf");
		copyFileSync(FONT, font);
		writeFileSync(job, `${JOB}lettering: {font: own.ttf}\n`);
		await camber(["make", job, "-o", out, "--only", "radius-gauge", "--format", "dxf"]);
		const without = await proofOf(out);
		const { code, proof } = await proofOf(out, "--font", font);
		expect([without.code, code]).toEqual([0, 0]);
		expect(JSON.stringify(without.proof)).toContain("font-not-given");
		expect(JSON.stringify(proof)).not.toContain("font-not-given");
	});
});
