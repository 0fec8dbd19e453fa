import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { make } from "../../src/make.js";
import { Prover, promisedOf } from "../../src/proof/index.js";
import { LETTERS } from "../support/made-parts.js";
import { randomJob } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";

/** Machines of all kinds: a beam of some width, tabs, an untrue axis, a mill, none of it. */
const anyMachine = fc.constantFrom(
	{},
	{ kerf: "0.16 mm" },
	{ kerf: "0.25 mm", tabs: { count: 2, width: "1 mm" } },
	{ kerf: "0.1 mm", stretch: { x: 1.0012, y: 0.9991 } },
	{ kind: "mill", tabs: { count: 2, width: "3 mm" } },
	{ kerf: "0.2 mm", bed: "900 x 600 mm" },
);

const anyTool = fc.oneof(anyStraightedge, anyGauge, anyStrip, fc.constant("kerf-coupon"));
const anyForm = fc.constantFrom(
	{ formats: ["svg"] as const },
	{ formats: ["dxf"] as const },
	{ formats: ["dxf"] as const, dxf: "r12" as const },
	{ formats: ["dxf"] as const, dxf: "loose" as const },
);

const RUNS = 2000;

describe("undamaged files of random jobs", () => {
	it(`have no finding: ${RUNS} jobs, a tool and a format each`, async () => {
		const refused = new Map<string, number>();
		let claims = 0;
		let made = 0;
		const prover = () => new Prover(LETTERS);
		await fc.assert(
			fc.asyncProperty(
				randomJob({ leastGap: 3 }),
				anyTool,
				anyMachine,
				anyForm,
				fc.boolean(),
				async ({ job }, tool, machine, form, dimensions) => {
					const text = stringify({
						...job,
						machine: { ...(job.machine as object), ...machine },
						make: [tool],
					});
					const done = await make(text, { ...form, dimensions, proof: false });
					if (!done.ok) {
						for (const { code } of done.problems) refused.set(code, (refused.get(code) ?? 0) + 1);
						return;
					}
					made++;
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
		expect(made).toBeGreaterThan(RUNS / 3);
		expect(claims).toBeGreaterThan(20 * made);
	}, 400_000);
});
