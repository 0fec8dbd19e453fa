import { describe, expect, it } from "vitest";
import { readJob } from "../../src/job/index.js";
import { make } from "../../src/make.js";
import { problemText } from "../../src/problem/index.js";
import { TOOLS } from "../../src/tools/index.js";
import { KITS } from "../../src/tools/kits.js";
import { JOB, making } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";

const RE_FRET = KITS.find(({ id }) => id === "re-fret-kit")!;

function wantedIn(text: string) {
	const read = readJob(text);
	if (!read.ok) throw new Error(read.problems.map(problemText).join("\n"));
	return read.job.wanted.map(({ tool, kit, name }) => ({ id: tool.id, kit, name }));
}

describe("a kit", () => {
	it("stands for its tools, of which all exist", () => {
		for (const kit of KITS) {
			for (const { id, why } of kit.tools) {
				expect(TOOLS.map((tool) => tool.id)).toContain(id);
				expect(why).not.toBe("");
			}
		}
		const ids = wantedIn(making("re-fret-kit")).map(({ id }) => id);
		expect(ids).toEqual(RE_FRET.tools.map(({ id }) => id));
		expect(wantedIn(making("everything"))).toHaveLength(TOOLS.length);
	});

	it("leaves out what it is told to, and what the job asks for by itself", () => {
		const without = wantedIn(making("re-fret-kit: {without: [fret-rocker, shop-sheet]}"));
		expect(without.map(({ id }) => id)).not.toContain("fret-rocker");
		expect(without).toHaveLength(RE_FRET.tools.length - 2);
		const own = wantedIn(making("re-fret-kit", "slot-strip: {name: paper-strip}"));
		expect(own.filter(({ id }) => id === "slot-strip")).toEqual([
			{ id: "slot-strip", kit: null, name: "paper-strip" },
		]);
		const both = wantedIn(making("re-fret-kit", "everything"));
		expect(both).toHaveLength(TOOLS.length);
	});

	it("takes settings for its tools", async () => {
		const text = making("re-fret-kit: {notched-straightedge: {height: 55 mm}}");
		const made = await make(text, { only: ["notched-straightedge"], formats: ["svg"] });
		if (!made.ok) throw new Error(made.problems.map(problemText).join("\n"));
		expect(made.tools[0]!.settings.height).toBe(55);
	});

	it("says settings and names that it does not know, at their places", () => {
		const problemsOf = (entry: string) => {
			const read = readJob(making(entry));
			return read.ok ? [] : read.problems.map(({ code, where }) => [code, where.path.at(-1)]);
		};
		expect(problemsOf("re-fret-kit: {without: [slot-stripe]}")).toEqual([["not-one-of", 0]]);
		expect(problemsOf("re-fret-kit: {slot-strip: {slot: tang}}")).toEqual([
			["unknown-key", "slot"],
		]);
		expect(problemsOf("re-fret-kits")).toEqual([["unknown-tool", 0]]);
	});

	it("does without a tool whose parts the bed does not hold, which alone is refused", async () => {
		const fast = { formats: ["svg"], proof: false } as const;
		// The bars are about 490 mm long; the diagonal of 200 x 150 less its margins is 236.
		const small = (...entries: string[]) =>
			making(...entries).replace("make:", "machine: {kerf: 0.16 mm, bed: 200 x 150 mm}\nmake:");
		const made = await make(small("re-fret-kit"), fast);
		if (!made.ok) throw new Error(made.problems.map(problemText).join("\n"));
		const tooLarge = made.skipped.filter(({ reasons }) =>
			reasons.some(({ code }) => code === "part-larger-than-bed"),
		);
		const ids = tooLarge.map(({ wanted }) => wanted.tool.id);
		expect(ids).toEqual(["notched-straightedge", "sanding-block", "slot-strip"]);
		const there = made.tools.map(({ wanted }) => wanted.tool.id);
		expect(there).toContain("radius-gauge");
		expect(there).not.toContain("slot-strip");
		expect(made.drawings.some(({ sheet }) => sheet.name.includes("slot-strip"))).toBe(false);
		const manifest = new TextDecoder().decode(made.files.at(-1)!.bytes);
		expect(manifest).not.toContain("slot-strip.svg");
		const own = await make(small("re-fret-kit", "slot-strip"), fast);
		expect(own.ok ? [] : own.problems.map(({ code }) => code)).toEqual(["part-larger-than-bed"]);
		const without = await make(small("re-fret-kit"), { ...fast, sheets: false });
		if (!without.ok) throw new Error(without.problems.map(problemText).join("\n"));
		expect(without.tools.map(({ wanted }) => wanted.tool.id)).toContain("slot-strip");
	});

	it("lists what does not apply to the neck, with the reason, and makes the rest", async () => {
		const flat = JOB.replace("radius: 12 in", "radius: flat").replace(
			/make:[\s\S]*/u,
			"make: [re-fret-kit]\n",
		);
		const made = await make(flat, { formats: ["svg"] });
		if (!made.ok) throw new Error(made.problems.map(problemText).join("\n"));
		expect(made.skipped.map(({ wanted }) => wanted.tool.id)).toContain("radius-gauge");
		expect(made.tools.map(({ wanted }) => wanted.tool.id)).toContain("slot-strip");
		const alone = await make(flat.replace("re-fret-kit", "radius-gauge"));
		expect(alone.ok).toBe(false);
		const manifest = JSON.parse(new TextDecoder().decode(made.files.at(-1)!.bytes));
		expect(manifest.notMade.map(({ tool }: { tool: string }) => tool)).toEqual(
			made.skipped.map(({ wanted }) => wanted.tool.id),
		);
		expect(manifest.notMade[0].reasons[0]).toContain("flat");
		const told = await make(flat, { formats: ["svg"], proof: false, report: true });
		const report = told.ok ? told.files.find(({ name }) => name === "report.html") : null;
		expect(new TextDecoder().decode(report!.bytes)).toMatch(/Not made[\s\S]*radius-gauge: /u);
		const named = await make(flat, { only: ["radius-gauge"] });
		expect(named.ok ? [] : named.problems.map((p) => p.code)).toEqual(["flat-board"]);
		const { file } = jobFile(flat);
		const { code, out } = await camber(["check", file]);
		expect(code).toBe(0);
		expect(out).toMatch(/not made: radius-gauge: .*flat/u);
	});
});
