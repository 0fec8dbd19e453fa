import { readFileSync } from "node:fs";
import { Resvg } from "@resvg/resvg-js";
import { XMLValidator } from "fast-xml-parser";
import { beforeAll, describe, expect, it } from "vitest";
import { type Made, make } from "../../src/make.js";
import { problemText } from "../../src/problem/index.js";
import { fitBlocks, rangeOf, reportHtml } from "../../src/report/index.js";
import { residualPlot } from "../../src/report/residual-plot.js";

const FIND = readFileSync("examples/redstart-find.yaml", "utf8");

let made: Extract<Made, { ok: true }>;
let html: string;
beforeAll(async () => {
	const found = await make(FIND, { only: ["slot-strip"], paper: "A4" });
	if (!found.ok) throw new Error(JSON.stringify(found.problems));
	made = found;
	html = reportHtml(made);
});

describe("the report of a job with readings", () => {
	it("is well-formed and has a section for every kind of reading", () => {
		const page = html.replace("<!DOCTYPE html>\n", "");
		expect(XMLValidator.validate(page, { allowBooleanAttributes: true })).toBe(true);
		const titles = [...html.matchAll(/<h2>Readings: (.*?)<\/h2>/gu)].map((m) => m[1]);
		expect(titles).toEqual(["scale", "radius", "board width", "straightness", "fret tops", "wire"]);
	});

	it("shows every slot against the law, and its plot with a dot each and a ring on what is out", () => {
		const block = fitBlocks(made.job).find(({ title }) => title === "Scale")!;
		expect(block.rows).toHaveLength(22);
		expect(block.rows[9]!.at(-1)).toBe("out");
		const [line] = block.residuals;
		const plot = residualPlot(line!);
		expect(plot.marks.filter(({ operation }) => operation === "cut")).toHaveLength(21);
		expect(plot.marks.filter(({ operation }) => operation === "tab")).toHaveLength(1);
		const [svg] = /<svg[^>]*>[\s\S]*?<\/svg>/u.exec(html.slice(html.indexOf("Readings: scale")))!;
		const drawn = new Resvg(svg).render();
		expect(drawn.width / drawn.height).toBeGreaterThan(2);
	});

	it("prints the budget that the scale's interval widens, line by line", async () => {
		const whole = await make(FIND, { only: ["notched-straightedge"], formats: ["svg"] });
		if (!whole.ok) throw new Error("refused");
		const { scaleUncertainty } = whole.job.bench.neck;
		expect(scaleUncertainty).toBeGreaterThan(0.3);
		// At the last fret, of which the share of the scale is 1 - 2^(-21/12).
		const share = scaleUncertainty * (1 - 2 ** (-21 / 12));
		expect(reportHtml(whole)).toContain(`scale ${share.toFixed(3)} `);
	});

	it("tells what goes on paper", () => {
		const paper = /<h2>Paper<\/h2>([\s\S]*?)<\/section>/u.exec(html)![1]!;
		expect(paper).toContain("redstart-find-slot-strip");
		expect(paper).toContain("A4");
	});

	it("says in the notes what the readings' own findings say", () => {
		for (const { notes } of fitBlocks(made.job)) {
			for (const note of notes) expect(note).toMatch(/[.)]$/u);
		}
		const { scale } = made.job.fit!;
		const blocks = fitBlocks(made.job).flatMap(({ notes }) => notes);
		for (const note of scale!.notes) expect(blocks).toContain(problemText(note));
	});
});

describe("a plot's range", () => {
	it("is the least of 1, 2, 5, 10 … that holds all residuals, 0.1 mm at least", () => {
		expect(rangeOf([0.01, -0.02])).toBe(0.1);
		expect(rangeOf([0.11])).toBe(0.2);
		expect(rangeOf([-0.21])).toBe(0.5);
		expect(rangeOf([0.83])).toBe(1);
		expect(rangeOf([1.2])).toBe(2);
		expect(rangeOf([])).toBe(0.1);
	});
});
