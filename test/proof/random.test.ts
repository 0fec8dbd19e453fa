import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { make } from "../../src/make.js";
import { Prover, promisedOf } from "../../src/proof/index.js";
import { LETTERS } from "../support/made-parts.js";
import { anyToolJob, DRAWN_TOOLS } from "../support/random-tools.js";

/** Machines of all kinds: a beam of some width, tabs, an untrue axis, a mill, none of it. */
const anyMachine = fc.constantFrom(
	{},
	{ kerf: "0.16 mm" },
	{ kerf: "0.25 mm", tabs: { count: 2, width: "1 mm" } },
	{ kerf: "0.1 mm", stretch: { x: 1.0012, y: 0.9991 } },
	{ kind: "mill", tabs: { count: 2, width: "3 mm" } },
	{ kerf: "0.2 mm", bed: "900 x 600 mm" },
);

const anyForm = fc.constantFrom(
	{ formats: ["svg"] as const },
	{ formats: ["dxf"] as const },
	{ formats: ["dxf"] as const, dxf: "r12" as const },
	{ formats: ["dxf"] as const, dxf: "loose" as const },
);

const RUNS = 2000;
/** Of every tool so many jobs at least are made and measured, and half of those that were drawn. */
const LEAST_MADE = 50;

describe("undamaged files of random jobs", () => {
	it(`have no finding: ${RUNS} jobs, a tool and a format each`, async () => {
		const drawn = new Map(DRAWN_TOOLS.map((tool) => [tool, { jobs: 0, made: 0 }]));
		let claims = 0;
		const prover = () => new Prover(LETTERS);
		await fc.assert(
			fc.asyncProperty(
				anyToolJob({ leastGap: 3 }),
				anyMachine,
				anyForm,
				fc.boolean(),
				async ({ job, tool, entry }, machine, form, dimensions) => {
					const text = stringify({
						...job,
						machine: { ...(job.machine as object), ...machine },
						make: [entry],
					});
					const done = await make(text, { ...form, dimensions, proof: false });
					const count = drawn.get(tool)!;
					count.jobs++;
					if (!done.ok) return;
					count.made++;
					const manifest = new TextDecoder().decode(done.files.at(-1)!.bytes);
					const promised = promisedOf(manifest, "manifest.json");
					if ("code" in promised) throw new Error(String(promised.facts.reason));
					for (const file of promised.files) {
						const { bytes } = done.files.find((f) => f.name === file.name)!;
						const { findings, measured } = await prover().prove(bytes, file);
						expect(findings, file.name).toEqual([]);
						claims += measured.length;
					}
				},
			),
			{ seed: 90_210, numRuns: RUNS, endOnFailure: true },
		);
		const tooFew = [...drawn].filter(([, { jobs, made }]) => made < LEAST_MADE || made < jobs / 2);
		expect(tooFew).toEqual([]);
		const made = [...drawn.values()].reduce((sum, count) => sum + count.made, 0);
		expect(claims).toBeGreaterThan(20 * made);
	}, 400_000);
});
