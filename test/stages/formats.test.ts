import { describe, expect, it } from "vitest";
import { type MakeOptions, make } from "../../src/make.js";
import { making, withBlock } from "../support/job-text.js";

const STRIP = making("slot-strip");
const onPrinter = (text: string) => `${text}machine: {kind: printer}\n`;
const naming = (text: string, paper: string) => `${text}paper: ${paper}\n`;

/** Names of the files that hold drawings or pages. */
async function namesOf(text: string, options: MakeOptions = {}): Promise<string[]> {
	const made = await make(text, { proof: false, ...options });
	if (!made.ok) return made.problems.map(({ code }) => code);
	return made.files.slice(0, -1).map(({ name }) => name.replace("test-neck-", ""));
}

describe("a job's formats", () => {
	it("are SVG and DXF unless something is said", async () => {
		expect(await namesOf(STRIP)).toEqual(["slot-strip.svg", "slot-strip.dxf"]);
	});

	it("are a PDF besides where the job names its paper", async () => {
		expect(await namesOf(naming(STRIP, "Letter"))).toEqual([
			"slot-strip.svg",
			"slot-strip.dxf",
			"slot-strip.pdf",
		]);
	});

	it("are a PDF alone for a printer, or with a paper asked for", async () => {
		expect(await namesOf(onPrinter(STRIP))).toEqual(["slot-strip.pdf"]);
		expect(await namesOf(STRIP, { paper: "A4" })).toEqual(["slot-strip.pdf"]);
	});

	it("are SVG pages where SVG is asked for with a paper", async () => {
		const pages = [1, 2, 3].map((n) => `slot-strip-page-${n}.svg`);
		expect(await namesOf(STRIP, { paper: "A4", formats: ["svg"] })).toEqual(pages);
		expect(await namesOf(STRIP, { paper: "A4", formats: ["svg", "pdf"] })).toEqual(
			expect.arrayContaining(["slot-strip.pdf", ...pages]),
		);
	});

	it("are never DXF on paper", async () => {
		expect(await namesOf(STRIP, { paper: "A4", formats: ["dxf"] })).toEqual(["dxf-on-paper"]);
	});

	it("are PDF for pages that show no part, whatever else is written", async () => {
		const text = making("shop-sheet", "print-check");
		expect(await namesOf(text, { formats: ["dxf"] })).toEqual([
			"shop-sheet.pdf",
			"print-check.pdf",
		]);
		const pages = ["shop-sheet-page-1.svg", "print-check-page-1.svg"];
		expect(await namesOf(text, { formats: ["svg"], paper: "A4" })).toEqual(pages);
	});
});

describe("a job on paper alone", () => {
	it("asks for no kerf of its sheet, no cutter and no bed", async () => {
		const small = "machine: {kind: laser, kerf: {mdf 3 mm: 0.2 mm}, bed: 100 x 100 mm}";
		expect(await namesOf(withBlock(small))).toContain("kerf-unknown");
		const names = await namesOf(withBlock(small), { paper: "A4" });
		expect(names).toEqual([
			"notched-straightedge.pdf",
			"radius-gauge-concave.pdf",
			"slot-strip.pdf",
		]);
	});

	it("prints the cautions of paper, and the nominal part", async () => {
		const made = await make(withBlock("machine: {kind: laser, kerf: 0.4 mm}"), { paper: "A4" });
		if (!made.ok) throw new Error("refused");
		expect(made.cautions[0]).toContain("knife");
		const manifest = JSON.parse(new TextDecoder().decode(made.files.at(-1)!.bytes));
		expect(manifest.tools[0].parts[0].kerf).toBe(0);
		expect(manifest.paper).toMatchObject({ name: "A4", width: 210, height: 297 });
		expect(made.proven.flatMap(({ findings }) => findings)).toEqual([]);
	});

	it("is measured against the nominal part in one run with compensated drawings", async () => {
		const text = withBlock("machine: {kind: laser, kerf: 0.4 mm}");
		const made = await make(text, { formats: ["svg", "pdf"], only: ["radius-gauge"] });
		if (!made.ok) throw new Error("refused");
		expect(made.proven.map(({ file, findings }) => [file, findings])).toEqual([
			["test-neck-radius-gauge-concave.svg", []],
			["test-neck-radius-gauge-concave.pdf", []],
		]);
		expect(made.proven[0]!.measured).toHaveLength(made.proven[1]!.measured.length);
	});
});
