import { describe, expect, it } from "vitest";
import type { SizeClaim } from "../../src/drawing/index.js";
import { isWorded, problemText } from "../../src/problem/index.js";
import { judged } from "../../src/proof/judge.js";
import type { Remarked } from "../../src/proof/measure.js";
import { measuringFaults } from "../support/proof-measure-faults.js";

const CLAIM: SizeClaim = {
	id: "notch-7-centre",
	kind: "position",
	feature: "notch 7",
	datum: "theoretical nut",
	operation: "cut",
	axis: "x",
	at: [
		{ x: 0, y: 0 },
		{ x: 215.4, y: 0 },
	],
	nominal: 215.4,
	bench: 0.05,
	file: 0.001,
};

function measuredAs(value: number, other: Partial<Remarked> = {}): Remarked {
	const claim = other.claim ?? CLAIM;
	const deviation = value - claim.nominal;
	return { file: "bar.svg", part: "bar", claim, value, deviation, tolerance: 0.001, ...other };
}

describe("measured claims are judged", () => {
	it("by their tolerance, which itself is still allowed", () => {
		expect(judged([measuredAs(215.4), measuredAs(215.4009)])).toEqual([]);
		const exact = { ...measuredAs(215.4), deviation: -0.001 };
		expect(judged([exact])).toEqual([]);
		const [found] = judged([measuredAs(215.402)]);
		expect(found).toMatchObject({
			code: "claim-failed",
			severity: "error",
			facts: {
				file: "bar.svg",
				part: "bar",
				claim: "notch-7-centre",
				feature: "notch 7",
				kind: "position",
				nominal: 215.4,
				measured: 215.402,
				tolerance: 0.001,
			},
		});
		expect(found!.facts.deviation).toBeCloseTo(0.002, 9);
	});

	it("as missing where nothing could be measured", () => {
		for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
			expect(judged([measuredAs(value)]).map((p) => p.code)).toEqual(["feature-missing"]);
		}
	});

	it("by their remarks though the figure holds", () => {
		const found = judged([measuredAs(215.4, { remark: { kind: "off-place", by: 0.05 } })]);
		expect(found.map((p) => [p.code, p.facts.by])).toEqual([["off-place", 0.05]]);
	});

	it("in degrees where they are angles", () => {
		const claim = { ...CLAIM, id: "slot-9-slant", kind: "angle", nominal: Math.PI / 60 } as const;
		const value = claim.nominal + Math.PI / 1800;
		const [found] = judged([measuredAs(value, { claim, deviation: value - claim.nominal })]);
		expect(problemText(found!)).toContain("is 3.1° instead of 3°: off by 0.1°");
	});

	it("in millimetres to a tenth of a micrometre", () => {
		expect(problemText(judged([measuredAs(215.4016)])[0]!)).toContain(
			"the position of notch 7 (notch-7-centre) is 215.4016 mm instead of 215.4 mm: off by 0.0016 mm, where 0.001 mm is allowed",
		);
	});
});

describe("the faults of spoilt parts", () => {
	it("are of every kind, and each is worded", () => {
		const found = measuringFaults();
		expect([...new Set(found.map((p) => p.code))].sort()).toEqual([
			"claim-failed",
			"feature-missing",
			"font-not-given",
			"label-wrong",
			"not-round",
			"off-place",
		]);
		for (const one of found) {
			expect(isWorded(one.code)).toBe(true);
			expect(problemText(one)).not.toMatch(/undefined|NaN/u);
		}
	});
});
