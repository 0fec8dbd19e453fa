import { describe, expect, it } from "vitest";
import {
	constant,
	isExtrapolated,
	type Profile,
	stretches,
	valueAt,
} from "../../src/neck/index.js";

const kinked: Profile = {
	knots: [
		{ x: 0, value: 43 },
		{ x: 300, value: 52 },
		{ x: 450, value: 55 },
	],
};

describe("valueAt", () => {
	it("is the same everywhere for a constant", () => {
		expect([-50, 0, 700].map((x) => valueAt(constant(304.8), x))).toEqual([304.8, 304.8, 304.8]);
	});

	it("meets every knot and is straight between", () => {
		expect([0, 150, 300, 375, 450].map((x) => valueAt(kinked, x))).toEqual([
			43, 47.5, 52, 53.5, 55,
		]);
	});

	it("goes on beyond the outer knots as their stretches do", () => {
		expect(valueAt(kinked, -10)).toBeCloseTo(42.7, 12);
		expect(valueAt(kinked, 500)).toBeCloseTo(56, 12);
	});
});

describe("isExtrapolated", () => {
	it("is true beyond two or more knots only", () => {
		expect([-1, 0, 450, 451].map((x) => isExtrapolated(kinked, x))).toEqual([
			true,
			false,
			false,
			true,
		]);
		expect(isExtrapolated(constant(1), 1e6)).toBe(false);
	});
});

describe("stretches", () => {
	it("cover the whole line without a gap", () => {
		const all = stretches(kinked);
		expect(all.map((s) => s.slope)).toEqual([0.03, 0.02]);
		expect(all[0]!.from).toBe(Number.NEGATIVE_INFINITY);
		expect(all[1]!.to).toBe(Number.POSITIVE_INFINITY);
		expect(all[0]!.to).toBe(all[1]!.from);
	});
});
