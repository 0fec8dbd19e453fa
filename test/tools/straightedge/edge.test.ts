import { describe, expect, it } from "vitest";
import { centreLine, lineLength } from "../../../src/neck/index.js";
import { clearanceBudget, landsOf, notchesAlong } from "../../../src/tools/straightedge/edge.js";
import { jobWith, madeParts } from "../../support/made-parts.js";

const { bench, neck } = madeParts(
	jobWith({ "scale-uncertainty": 0.2 }, ["slot-strip"], {
		machine: { tolerance: 0.04 },
		shop: { "temperature-swing": "8 K" },
	}),
);

describe("clearanceBudget", () => {
	it("adds warmth, damp, cutting and the scale's interval linearly, each as it grows", () => {
		const budget = clearanceBudget(bench, { neck, stock: bench.stock }, 300, 0.5);
		expect(budget.thermal).toBeCloseTo(300 * 8 * 76e-6, 12);
		expect(budget.moisture).toBeCloseTo(300 * 0.0005, 12);
		expect(budget.cutting).toBe(0.04);
		expect(budget.scale).toBeCloseTo(0.1, 12);
		const { thermal, moisture, cutting, scale, total } = budget;
		expect(total).toBeCloseTo(thermal + moisture + cutting + scale, 12);
	});

	it("knows no damp in metal", () => {
		const stock = { material: "steel", thickness: 1 } as const;
		const { total } = clearanceBudget(bench, { neck, stock }, 500, 0);
		expect(total).toBeCloseTo(500 * 8 * 11.7e-6 + 0.04, 12);
	});

	it("takes the scale's interval of the neck it is asked for", () => {
		const sure = { ...neck, scaleUncertainty: 0 };
		expect(clearanceBudget(bench, { neck: sure, stock: bench.stock }, 300, 0.5).scale).toBe(0);
	});
});

describe("notchesAlong", () => {
	const line = centreLine(neck);
	const rules = { neck, line, stock: bench.stock, clearance: null, leastLand: 2.5, landStart: 1 };

	it("gives each notch max(0.75, budget) on either side", () => {
		const wet = { material: "plywood", thickness: 3 } as const;
		const { notches } = notchesAlong(bench, { ...rules, stock: wet });
		for (const { centre, clearance, width, footprint } of notches) {
			const share = centre / lineLength(line);
			const { total } = clearanceBudget(bench, { neck, stock: wet }, centre, share);
			expect(clearance).toBe(Math.max(0.75, total));
			expect(width).toBeCloseTo(footprint + 2 * clearance, 12);
		}
		expect(notches.at(-1)!.clearance).toBeGreaterThan(0.6);
	});

	it("shrinks both neighbours of a narrow land and nothing else", () => {
		const lands = landsOf(notchesAlong(bench, rules).notches);
		const least = lands.at(-1)!.land;
		const asked = notchesAlong(bench, { ...rules, leastLand: least + 0.01 });
		expect(asked.shrunk).toEqual([21, 22]);
		expect(asked.tooTight).toEqual([]);
		expect(notchesAlong(bench, { ...rules, leastLand: least - 0.01 }).shrunk).toEqual([]);
	});

	it("names every land that stays too narrow", () => {
		const { tooTight, notches } = notchesAlong(bench, { ...rules, leastLand: 10 });
		const narrow = landsOf(notches).filter(({ land }) => land < 10);
		expect(tooTight).toEqual(narrow);
		expect(tooTight.length).toBeGreaterThan(2);
	});

	it("reports the budget at the last fret, the largest", () => {
		const { budget, notches } = notchesAlong(bench, rules);
		const { centre } = notches.at(-1)!;
		const share = centre / lineLength(line);
		expect(budget).toEqual(clearanceBudget(bench, rules, centre, share));
	});
});
