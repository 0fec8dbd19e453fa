import { describe, expect, it } from "vitest";
import { promisedOf } from "../../src/proof/index.js";
import { EXAMPLES, FEW, madeExample } from "../support/examples.js";

describe.each(EXAMPLES)("every written file of %s", (name) => {
	it("keeps every claim, measured from its bytes, in SVG, R2000 and PDF", async () => {
		const made = await madeExample(name, { proof: true });
		expect(made.proven.map(({ file }) => file)).toEqual(made.files.slice(0, -1).map((f) => f.name));
		for (const { file, findings } of made.proven) expect(findings, file).toEqual([]);
		const parts = made.tools.flatMap((t) => t.parts);
		const claims = (part: string) => parts.find((p) => p.name === part)!.claims.length;
		const promised = promisedOf(
			new TextDecoder().decode(made.files.at(-1)!.bytes),
			"manifest.json",
		);
		if ("code" in promised) throw new Error("no manifest");
		const printed = promised.prints.flatMap(({ files }) => files[0]!.pages[0]!.tile ?? []);
		const shown = [...promised.files.flatMap((f) => f.placed), ...printed];
		const due = shown.map(({ part }) => claims(part.name));
		const measured = made.proven.flatMap((p) => p.measured);
		expect(measured).toHaveLength(due.reduce((a, b) => a + b, 0));
		for (const { claim, deviation, tolerance } of measured) {
			expect(Math.abs(deviation), claim.id).toBeLessThanOrEqual(tolerance);
		}
	});
});

describe.each(["r12", "loose"] as const)("a %s file", (dxf) => {
	it.each(["kestrel-eight", "plover-bass"])("of %s keeps every claim too", async (name) => {
		const made = await madeExample(name, { formats: ["dxf"], dxf, proof: true, only: FEW });
		for (const { file, measured, findings } of made.proven) {
			expect(findings, file).toEqual([]);
			expect(measured.length, file).toBeGreaterThan(5);
		}
	});
});
