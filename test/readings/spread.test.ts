import { describe, expect, it } from "vitest";
import { fitWire, spreadOf } from "../../src/readings/index.js";
import { normal, seeded } from "../support/seeded.js";

describe("spreadOf", () => {
	it("is mean, standard error and range, worked by hand", () => {
		// 2.6, 2.7, 2.9: mean 8.2/3, squares 0.046667, s² 0.023333, standard √(s²/3) 0.088192.
		const found = spreadOf([2.6, 2.7, 2.9], 0.01);
		expect(found.mean).toBeCloseTo(8.2 / 3, 12);
		expect(found.standard).toBeCloseTo(0.088192, 6);
		expect(found.spread).toBeCloseTo(0.3, 12);
		expect(found.count).toBe(3);
		// Student's t for 2 degrees of freedom in any table: 4.303.
		expect((found.high - found.mean) / found.standard).toBeCloseTo(4.303, 3);
		expect(found.mean - found.low).toBeCloseTo(found.high - found.mean, 12);
	});

	it("never trusts readings more than their step allows", () => {
		const one = spreadOf([2.7], 0.01);
		expect(one.standard).toBeCloseTo(0.01 / Math.sqrt(12), 12);
		expect((one.high - one.mean) / one.standard).toBeCloseTo(1.96, 3);
		const same = spreadOf([2.7, 2.7, 2.7, 2.7], 0.01);
		expect(same.standard).toBeCloseTo(0.01 / Math.sqrt(48), 12);
		expect(same.spread).toBe(0);
	});

	it("holds the true value about 95 times in 100", () => {
		const next = seeded(5);
		let held = 0;
		for (let i = 0; i < 2000; i++) {
			const readings = [0, 0, 0, 0, 0].map(
				() => Math.round((2.7 + 0.03 * normal(next)) / 0.01) * 0.01,
			);
			const { low, high } = spreadOf(readings, 0.01);
			if (low <= 2.7 && 2.7 <= high) held++;
		}
		expect(held / 2000).toBeGreaterThan(0.93);
		expect(held / 2000).toBeLessThan(0.975);
	});

	it("refuses no readings and no resolution", () => {
		expect(() => spreadOf([], 0.01)).toThrow(RangeError);
		expect(() => spreadOf([2.7], 0)).toThrow(RangeError);
	});
});

describe("fitWire", () => {
	const codes = (reading: Parameters<typeof fitWire>[0]) => {
		const fit = fitWire(reading);
		return (Array.isArray(fit) ? fit : fit.notes).map(({ code }) => code);
	};

	it("gives what was read and nothing else", () => {
		const fit = fitWire({ resolution: 0.01, crownWidth: [2.69, 2.71], tangDepth: [1.5] });
		if (Array.isArray(fit)) throw new Error("refused");
		expect(Object.keys(fit.sizes)).toEqual(["crownWidth", "tangDepth"]);
		expect(fit.sizes.crownWidth!.mean).toBeCloseTo(2.7, 12);
		expect(fit.notes).toEqual([]);
	});

	it("names readings that lie more than ten steps apart", () => {
		expect(codes({ resolution: 0.01, crownWidth: [2.6, 2.7] })).toEqual([]);
		expect(codes({ resolution: 0.01, crownWidth: [2.59, 2.7] })).toEqual(["wire-uneven"]);
	});

	it("refuses sizes that no wire has, each with its place", () => {
		const fit = fitWire({ resolution: 0.01, crownHeight: [1.1, 4.2], tangWidth: [0] });
		if (!Array.isArray(fit)) throw new Error("taken");
		expect(fit.map(({ where }) => where.path)).toEqual([
			["wire", "crown-height", 1],
			["wire", "tang-width", 0],
		]);
	});
});
