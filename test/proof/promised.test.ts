import { beforeAll, describe, expect, it } from "vitest";
import { make } from "../../src/make.js";
import { promisedOf } from "../../src/proof/index.js";
import { making } from "../support/job-text.js";

const TEXT = making("radius-gauge", "kerf-coupon").replace(
	"make:",
	"machine: {kerf: 0.16 mm, bed: 300 x 200 mm, stretch: {x: 1.001}}\nmake:",
);

let text: string;
beforeAll(async () => {
	const made = await make(TEXT, { proof: false });
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	text = new TextDecoder().decode(made.files.at(-1)!.bytes);
});

/** What a manifest promises after a change of its text. */
function promised(from = "", to = "") {
	return promisedOf(text.replace(from, to), "manifest.json");
}

describe("promisedOf", () => {
	it("reads what a manifest promises of its files and parts", () => {
		const read = promised();
		if ("code" in read) throw new Error(JSON.stringify(read));
		expect(read.job).toBe("Test neck");
		expect(read.parts.map(({ name, kerf, nominal }) => [name, kerf, nominal])).toEqual([
			["radius-gauge-concave", 0.16, false],
			["kerf-coupon", 0, true],
		]);
		const sheet = read.files.find(({ name }) => name === "test-neck-sheet-1.svg")!;
		expect(sheet).toMatchObject({
			format: "svg",
			stretch: { x: 1.001, y: 1 },
			bed: { size: { x: 300, y: 200 }, margin: 5, spacing: 2 },
			dimensions: true,
		});
		expect(sheet.placed.map(({ part }) => part.name).sort()).toEqual([
			"kerf-coupon",
			"radius-gauge-concave",
		]);
		expect(read.files[0]).toMatchObject({ bed: null });
		expect(read.digests.get(sheet.name)).toMatch(/^[0-9a-f]{64}$/u);
		const [gauge] = read.parts;
		expect(gauge!.claims.find((c) => c.id === "radius")?.nominal).toBeCloseTo(304.8, 9);
		expect(gauge!.outline).toHaveLength(2);
		expect(gauge!.marks.cut).toBe(2);
	});

	it.each([
		["no JSON", () => "{", "no JSON"],
		["another file", () => "{}", "writer"],
		["an earlier form", (t: string) => t.replace('"format": 1', '"format": 0'), "format"],
		[
			"a claim without a figure",
			(t: string) => t.replace(/"nominal": [\d.]+/u, '"nominal": "x"'),
			"claims",
		],
		["a tolerance of nothing", (t: string) => t.replace(/"file": 0\.001/u, '"file": 0'), "claims"],
		[
			"a part that it does not describe",
			(t: string) => t.replace('"part": "kerf-coupon"', '"part": "another"'),
			'"another"',
		],
	])("refuses %s and says where", (_, change, says) => {
		const read = promisedOf(change(text), "manifest.json");
		expect(read).toMatchObject({ code: "manifest-unreadable" });
		expect("facts" in read && String(read.facts.reason)).toContain(says);
	});
});
