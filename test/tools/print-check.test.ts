import { describe, expect, it } from "vitest";
import { type Extents, extents } from "../../src/geometry/index.js";
import { make } from "../../src/make.js";
import { longestRules } from "../../src/tools/print-check.js";
import { JOB, making, withBlock } from "../support/job-text.js";

function printableOf(width: number, height: number, margin = 6): Extents {
	return { minX: margin, minY: margin, maxX: width - margin, maxY: height - margin };
}

async function checkOf(text: string) {
	const made = await make(text, { only: ["print-check"] });
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made;
}

const lengthsOf = (
	rules: readonly { from: { x: number; y: number }; to: { x: number; y: number } }[],
) => rules.map(({ from, to }) => [to.x - from.x, to.y - from.y].map((l) => Number(l.toFixed(9))));

describe("print-check", () => {
	it("has the longest rules that fit: 180 by 260 mm on A4, worked by hand", () => {
		// A4 less 6 mm margins is 198 x 285; 15 mm inside and whole steps of 20 leave 180 x 260.
		expect(longestRules(printableOf(210, 297))).toEqual({ across: 180, along: 260 });
		// Letter: 203.9 x 267.4.
		expect(longestRules(printableOf(215.9, 279.4))).toEqual({ across: 180, along: 240 });
		// A3: 285 x 408.
		expect(longestRules(printableOf(297, 420))).toEqual({ across: 260, along: 380 });
	});

	it("carries them besides 100 mm and 4 in both ways, and proof measures all six", async () => {
		const { prints, proven } = await checkOf(making("print-check"));
		const { pages } = prints[0]!.print;
		expect(pages).toHaveLength(1);
		expect(lengthsOf(pages[0]!.rules)).toEqual([
			[180, 0],
			[0, 260],
			[100, 0],
			[101.6, 0],
			[0, 100],
			[0, 101.6],
		]);
		expect(proven.map(({ findings }) => findings)).toEqual([[]]);
	});

	it("is never corrected: its bytes are those of a true printer, but for other pages", async () => {
		const text = making("print-check", "shop-sheet");
		const printer = "printer: {across: 0.9961, along: 1.002}";
		const bytesOf = async (job: string) => {
			const made = await make(job);
			if (!made.ok) throw new Error(JSON.stringify(made.problems));
			return made.files.filter((f) => f.format === "pdf").map((f) => Buffer.from(f.bytes));
		};
		const [check, sheet] = await bytesOf(text);
		const [again, other] = await bytesOf(`${text}${printer}\n`);
		expect(again!.equals(check!)).toBe(true);
		expect(other!.equals(sheet!)).toBe(false);
	});

	it("keeps its rules off each other and all within the margins, on every paper", async () => {
		for (const paper of ["A4", "Letter", "A3", "Legal", "Tabloid", "150 x 210 mm", "roll 610 mm"]) {
			const { prints } = await checkOf(
				withBlock(`paper: ${paper}`).replace(/make:[\s\S]*/u, "make: [print-check]\n"),
			);
			const { sheet, rules } = prints.find((p) => p.print.name.includes("print-check"))!.print
				.pages[0]!;
			for (const { path } of sheet.marks) {
				const box = extents(path);
				expect(Math.min(box.minX, box.minY)).toBeGreaterThanOrEqual(6 - 1e-9);
				expect(box.maxX).toBeLessThanOrEqual(sheet.size.maxX - 6 + 1e-9);
				expect(box.maxY).toBeLessThanOrEqual(sheet.size.maxY - 6 + 1e-9);
			}
			const upright = rules.filter(({ from, to }) => from.x === to.x).map(({ from }) => from.x);
			expect(Math.max(...upright) - Math.min(...upright)).toBeGreaterThan(60);
		}
	});

	it("needs no neck: a job that makes it alone says nothing of one but what every job does", async () => {
		const { tools, cautions } = await checkOf(
			JOB.replace(/make:[\s\S]*/u, "make: [print-check]\n"),
		);
		expect(tools[0]!.wanted.tool.neckless).toBe(true);
		expect(cautions.length).toBeGreaterThan(0);
	});
});
