import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { make } from "../../src/make.js";
import { deviations, leftAfterCut } from "../support/cut-with-beam.js";
import { readSvg } from "../support/read-svg.js";

const KERF = 0.16;
/** What a cut part may be off by, mm. */
const SLACK = 0.002;

/** An example as it stands, and the same for a beam of this width. */
function example(name: string, kerf: string): string {
	const text = readFileSync(`examples/${name}.yaml`, "utf8").replace(/, kerf: 0 ?\}/u, "}");
	const machine = text.replace(/machine: \{kind: laser/u, `machine: {kind: laser, kerf: ${kerf}`);
	return machine.includes("kerf:") ? machine : `${machine}machine: {kerf: ${kerf}}\n`;
}

/** The closed cut paths of every SVG that a job makes, as read back from the file. */
async function cutPaths(text: string) {
	const made = await make(text, { formats: ["svg"], dimensions: false });
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made.files
		.filter((f) => f.format === "svg")
		.map(({ name, bytes }) => {
			const { groups } = readSvg(new TextDecoder().decode(bytes));
			const cut = groups.find((g) => g.attributes.id === "cut");
			return { name, paths: (cut?.paths ?? []).map((p) => p.path) };
		});
}

describe.each(["heron-baritone", "kestrel-eight", "siskin-nineteen", "wren-mandolin"])(
	"a beam of 0.16 mm swept along the written paths of %s",
	(name) => {
		it("leaves the nominal parts to within 2 µm, fillets in inside corners apart", async () => {
			const nominal = await cutPaths(example(name, "0"));
			const compensated = await cutPaths(example(name, `${KERF} mm`));
			expect(compensated.map((f) => f.name)).toEqual(nominal.map((f) => f.name));
			for (const [i, { name: file, paths }] of compensated.entries()) {
				const wanted = nominal[i]!.paths;
				expect(paths.length, file).toBe(wanted.length);
				const found = deviations(leftAfterCut(paths, KERF), wanted, KERF, SLACK);
				expect(found, file).toEqual({ over: 0, missing: 0 });
			}
		});
	},
);

describe("a beam too wide for a part", () => {
	it("is refused by the slot's name, and nothing is made", async () => {
		const made = await make(example("wren-mandolin", "0.6 mm"));
		expect(made.ok).toBe(false);
		const problems = made.ok ? [] : made.problems;
		expect(problems.map((p) => p.code)).toEqual(Array(20).fill("narrower-than-kerf"));
		expect(problems[0]!.facts).toMatchObject({ feature: "slot 1", kerf: 0.6 });
		expect(problems[0]!.facts.size).toBeCloseTo(0.508, 9);
	});

	it("and a kerf coupon stays nominal whatever the kerf", async () => {
		const job = (kerf: string) =>
			example("siskin-nineteen", kerf).replace(
				/make:[\s\S]*?\n(?=machine)/u,
				"make: [kerf-coupon]\n",
			);
		expect(await cutPaths(job("0.3 mm"))).toEqual(await cutPaths(job("0")));
	});
});
