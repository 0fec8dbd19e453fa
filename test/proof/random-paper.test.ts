import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { make } from "../../src/make.js";
import { Prover, promisedOf } from "../../src/proof/index.js";
import { LETTERS } from "../support/made-parts.js";
import { anyToolJob, DRAWN_TOOLS } from "../support/random-tools.js";

const anyPaper = fc.constantFrom(
	"A4",
	"Letter",
	"A3",
	"170 x 230 mm",
	"roll 610 mm",
	"420 x 297 mm",
);
const factor = fc.double({ min: 0.989, max: 1.011, noNaN: true });
const anyPrinter = fc.oneof(
	fc.constant({}),
	fc.record({
		across: factor,
		along: factor,
		margin: fc.constantFrom("0 mm", "4 mm", "10 mm"),
		overlap: fc.constantFrom("6 mm", "15 mm", "30 mm"),
	}),
);

const RUNS = 80;

describe("undamaged pages of random jobs", () => {
	it(`have no finding: ${RUNS} jobs, a tool, a paper and a printer each`, async () => {
		const made = new Map(DRAWN_TOOLS.map((tool) => [tool, 0]));
		let [claims, pages] = [0, 0];
		await fc.assert(
			fc.asyncProperty(
				anyToolJob({ leastGap: 3 }),
				anyPaper,
				anyPrinter,
				fc.constantFrom("pdf" as const, "svg" as const),
				async ({ job, tool, entry }, paper, printer, format) => {
					const text = stringify({ ...job, printer, make: [entry] });
					const done = await make(text, { paper, formats: [format], proof: false });
					if (!done.ok) return;
					made.set(tool, made.get(tool)! + 1);
					const manifest = new TextDecoder().decode(done.files.at(-1)!.bytes);
					const promised = promisedOf(manifest, "manifest.json");
					if ("code" in promised) throw new Error(String(promised.facts.reason));
					for (const print of promised.prints) {
						const files = print.files.map(({ name }) => ({
							name,
							bytes: done.files.find((f) => f.name === name)!.bytes,
						}));
						for (const proven of await new Prover(LETTERS).provePrint(files, print)) {
							expect(proven.findings, proven.file).toEqual([]);
							claims += proven.measured.length;
						}
						pages += print.files.flatMap((f) => f.pages).length;
					}
				},
			),
			{ seed: 4_711, numRuns: RUNS, endOnFailure: true },
		);
		expect([...made].filter(([, count]) => count === 0)).toEqual([]);
		const all = [...made.values()].reduce((sum, count) => sum + count, 0);
		expect(all).toBeGreaterThan(RUNS / 2);
		expect(pages).toBeGreaterThan(all);
		expect(claims).toBeGreaterThan(20 * all);
	}, 200_000);
});
