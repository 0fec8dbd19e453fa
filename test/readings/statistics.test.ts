import { describe, expect, it } from "vitest";
import { estimate, fTail, tQuantile, tTails } from "../../src/readings/statistics.js";

// Critical values: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2 and 1.3.6.7.3, from memory.
describe("tQuantile", () => {
	it.each([
		[0.975, 1, 12.706],
		[0.975, 10, 2.228],
		[0.995, 30, 2.75],
		[0.975, Number.POSITIVE_INFINITY, 1.96],
	])("of %f at %f degrees of freedom is %f as tabled", (p, df, tabled) => {
		expect(Math.abs(tQuantile(p, df) - tabled)).toBeLessThan(5e-4);
	});

	it("follows the closed forms of 1 and 2 degrees of freedom", () => {
		for (const p of [0.6, 0.9, 0.975, 0.999]) {
			expect(tQuantile(p, 1) / Math.tan(Math.PI * (p - 0.5))).toBeCloseTo(1, 7);
			const two = (2 * p - 1) * Math.sqrt(2 / (1 - (2 * p - 1) ** 2));
			expect(tQuantile(p, 2) / two).toBeCloseTo(1, 7);
		}
	});

	it("refuses what has no quantile", () => {
		expect(() => tQuantile(1, 5)).toThrow(RangeError);
		expect(() => tQuantile(0.5, 0)).toThrow(RangeError);
	});
});

describe("fTail", () => {
	it("is 5 % and 1 % at the tabled values of F", () => {
		expect(fTail(4.965, 1, 10)).toBeCloseTo(0.05, 4);
		expect(fTail(8.096, 1, 20)).toBeCloseTo(0.01, 4);
		expect(fTail(4.938, 3, 20)).toBeCloseTo(0.01, 4);
	});

	it("keeps the digits of a small chance, by the closed form (1 + f/m)^−m for 2 and 2m", () => {
		for (const f of [1, 100, 1e4]) expect(fTail(f, 2, 20) / (1 + f / 10) ** -10).toBeCloseTo(1, 9);
		expect(fTail(0, 1, 5)).toBe(1);
		expect(fTail(Number.POSITIVE_INFINITY, 1, 5)).toBe(0);
		expect(() => fTail(-1, 1, 5)).toThrow(RangeError);
	});
});

describe("estimate", () => {
	it("reaches 1.96 standard errors where the error is known, and t elsewhere", () => {
		expect(estimate(650, 0.1, Number.POSITIVE_INFINITY).high).toBeCloseTo(650.1959964, 7);
		const { low, high } = estimate(0, 1, 10);
		expect([low, high]).toEqual([-high, high]);
		expect(tTails(high, 10)).toBeCloseTo(0.05, 7);
		expect(() => estimate(1, -1, 5)).toThrow(RangeError);
	});
});
