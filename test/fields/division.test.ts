import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { divisionField, lawOf } from "../../src/fields/index.js";
import { fretFraction, TWELVE } from "../../src/neck/index.js";
import { faultsOf } from "../support/faults-of.js";

const field = divisionField("mm");
const lawFor = (given: unknown, scale = 648) => lawOf(field.parse(given), scale);
const cents = Array.from({ length: 12 }, (_, i) => 100 * (i + 1));

describe("divisionField", () => {
	it("takes 5 to 120 equal steps", () => {
		expect(lawFor(12)).toEqual(TWELVE);
		expect(lawFor(5)).toEqual({ kind: "equal", steps: 5 });
		expect(lawFor(120)).toEqual({ kind: "equal", steps: 120 });
		for (const given of [4, 121, 12.5]) {
			expect(faultsOf(field, given)).toMatchObject([{ code: "division-steps" }]);
		}
	});

	it("reads twelve times 100 cents as twelve equal steps, also above the octave", () => {
		const listed = lawFor({ cents });
		for (const fret of [1, 7, 12, 13, 19, 24, 6.5]) {
			expect(fretFraction(listed, fret)).toBeCloseTo(fretFraction(TWELVE, fret), 12);
		}
	});

	it("reads the rule of 18: fret 1 at a eighteenth of the scale (V. Galilei, Dialogo, 1581)", () => {
		expect(fretFraction(lawFor("rule-of-18"), 1)).toBeCloseTo(1 / 18, 15);
	});

	it("reads ratios as numbers and fractions: the fifth at a third of the string", () => {
		for (const fifth of [1.5, "3/2", "3:2", " 3 / 2 ", "1.5"]) {
			expect(fretFraction(lawFor({ ratios: ["9/8", fifth, 2] }), 2)).toBeCloseTo(1 / 3, 12);
		}
	});

	it("puts measured positions back where they were measured", () => {
		const rising = fc
			.array(fc.double({ min: 0.5, max: 20, noNaN: true }), { minLength: 1, maxLength: 20 })
			.map((gaps) => gaps.map((_, i) => gaps.slice(0, i + 1).reduce((a, b) => a + b)));
		fc.assert(
			fc.property(rising, (positions) => {
				const law = lawFor({ positions }, 648);
				positions.forEach((x, i) => {
					expect(648 * fretFraction(law, i + 1)).toBeCloseTo(x, 9);
				});
			}),
			{ seed: 4, numRuns: 50 },
		);
	});

	it.each<[string, unknown, string, object]>([
		["no list", {}, "division-list", {}],
		["two lists", { cents: [1200], ratios: [2] }, "division-list", {}],
		["cents that repeat", { cents: [100, 100] }, "division-order", { entry: 2, given: "100" }],
		["cents of 0", { cents: [0] }, "division-order", { entry: 1 }],
		["ratios of 1", { ratios: [1] }, "division-order", { entry: 1, given: "1" }],
		["ratios that fall", { ratios: ["3/2", "4/3"] }, "division-order", { entry: 2, given: "4/3" }],
		[
			"positions that fall",
			{ positions: ["7 cm", 36] },
			"division-order",
			{ entry: 2, given: "36" },
		],
		["a ratio in words", { ratios: ["third"] }, "division-ratio", { entry: 1, given: "third" }],
		["a ratio over zero", { ratios: ["9/0"] }, "division-ratio", { entry: 1 }],
		["a negative ratio", { ratios: ["-9/8"] }, "division-ratio", { entry: 1 }],
		["a ratio beyond ten octaves", { ratios: [1024.1] }, "division-ratio", { most: 10 }],
		["cents beyond ten octaves", { cents: [12_001] }, "division-cents", { given: "12001" }],
	])("refuses %s", (_, given, code, facts) => {
		expect(faultsOf(field, given)).toMatchObject([{ code, facts }]);
	});

	it("takes ten octaves", () => {
		expect(field.safeParse({ cents: [12_000] }).success).toBe(true);
		expect(field.safeParse({ ratios: [1024] }).success).toBe(true);
	});
});
