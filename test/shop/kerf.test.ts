import { describe, expect, it } from "vitest";
import type { Problem } from "../../src/problem/index.js";
import { type BlockReadings, type Kerf, kerfFromBlocks } from "../../src/shop/index.js";

const BLOCKS = { blocks: 10, nominal: 100, measured: [98.42], resolution: 0.02 };
const found = (values: Partial<BlockReadings> = {}) =>
	kerfFromBlocks({ ...BLOCKS, ...values }) as Kerf;
const refused = (values: Partial<BlockReadings>) =>
	kerfFromBlocks({ ...BLOCKS, ...values }) as Problem;

describe("kerfFromBlocks", () => {
	it("divides what is missing by the number of blocks", () => {
		// By hand: (100 - 98.42)/10 = 1.58/10 = 0.158.
		expect(found().kerf).toBeCloseTo(0.158, 12);
		expect(found({ blocks: 5, nominal: 50, measured: [49] }).kerf).toBeCloseTo(0.2, 12);
	});

	it("takes a caliper's step as evenly spread: 0.29 of it, shared by the blocks", () => {
		// JCGM 100:2008 (Guide to the expression of uncertainty), F.2.2.1: u = 0.29 of the resolution.
		expect(found().standard * 10).toBeCloseTo(0.29 * 0.02, 4);
		// By hand: 0.02/3.4641016/10.
		expect(found().standard).toBeCloseTo(0.00057735, 8);
		expect(found().expanded).toBeCloseTo(0.0011547, 7);
		expect(found({ resolution: 0 }).standard).toBe(0);
	});

	it("takes the mean of several readings, with their spread and scatter", () => {
		// By hand: kerfs 0.158, 0.156, 0.160; s = 0.002, of the mean 0.002/sqrt 3 = 0.00115470;
		// with 0.00057735: sqrt(1.33333e-6 + 3.3333e-7) = 0.00129099.
		const { kerf, standard, spread } = found({ measured: [98.42, 98.44, 98.4] });
		expect(kerf).toBeCloseTo(0.158, 12);
		expect(spread).toBeCloseTo(0.004, 12);
		expect(standard).toBeCloseTo(0.00129099, 8);
	});

	it("does not lessen the caliper's step by repeating one reading", () => {
		expect(found({ measured: [98.42, 98.42, 98.42] }).standard).toBeCloseTo(found().standard, 12);
	});

	it.each([100, 100.02])("refuses %d mm, which leaves no kerf", (length) => {
		expect(refused({ measured: [length] }).code).toBe("no-kerf");
		expect(refused({ measured: [98.42, length] }).facts).toMatchObject({ measured: length });
	});

	it("refuses a kerf over half a block or over 2 mm, and takes one of just that", () => {
		expect(found({ measured: [80] }).kerf).toBe(2);
		expect(refused({ measured: [79.9] })).toMatchObject({
			code: "kerf-too-wide",
			facts: { kerf: expect.closeTo(2.01, 9), most: 2 },
		});
		const narrow = { blocks: 10, nominal: 30 };
		expect(found({ ...narrow, measured: [15] }).kerf).toBe(1.5);
		expect(refused({ ...narrow, measured: [14.9] })).toMatchObject({ facts: { most: 1.5 } });
	});

	it("widens the interval where few readings tell their own scatter", () => {
		// JCGM 100:2008, table G.2 (from memory): t(95 %) is 12.71 for 1 degree of freedom, 4.30 for 2.
		expect(found({ measured: [98.4, 97.1] }).factor).toBe(12.71);
		// Effective degrees by hand: 2·(0.00129099/0.00115470)⁴ = 3.125, so those of 3.
		expect(found({ measured: [98.42, 98.44, 98.4] })).toMatchObject({ factor: 3.18 });
		expect(found().factor).toBe(2);
		expect(found({ measured: [98.42, 98.42] }).factor).toBe(2);
		const { expanded, standard, factor } = found({ measured: [98.4, 97.1] });
		expect(expanded).toBeCloseTo(factor * standard, 12);
	});

	it.each([
		{ blocks: 0 },
		{ blocks: 2.5 },
		{ measured: [] },
		{ measured: [Number.NaN] },
		{ nominal: 0 },
		{ nominal: Number.POSITIVE_INFINITY },
		{ resolution: -0.01 },
	])("throws on %j", (values) => {
		expect(() => kerfFromBlocks({ ...BLOCKS, ...values })).toThrow(RangeError);
	});
});
