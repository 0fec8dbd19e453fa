import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import { stepText } from "../../src/tools/height-gauge/labels.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { crossingsAtPlace } from "../support/measure-path.js";
import { faultsOfPart, findingsOf, foundInDamaged, fullyMade } from "../support/part-checks.js";
import { shifted, without, withPaths } from "../support/proof-measure-faults.js";
import { reading } from "../support/random-neck.js";

const made = (settings: object = {}, other: object = {}) =>
	madeParts(jobWith({}, [{ "height-gauge": settings }], other));

function gauge(settings: object = {}, other: object = {}): Part {
	const { parts, problems } = made(settings, other);
	expect(problems).toEqual([]);
	return parts[0]!;
}

const textsOf = (part: Part) => part.claims.flatMap((c) => (c.kind === "label" ? [c.text] : []));
const stepsOf = (part: Part) =>
	part.claims.filter((c): c is SizeClaim => c.kind !== "label" && c.id.startsWith("step-"));

/** Height of the jaw in the middle of every step, from the outline alone. */
function treads(part: Part, count: number, width: number): number[] {
	return Array.from({ length: count }, (_, i) => {
		const heights = crossingsAtPlace([outlineOf(part)], (i + 0.5) * width).sort((a, b) => a - b);
		return heights[1]! - heights[0]!;
	});
}

describe("a height gauge", () => {
	it("rises by tenths from 1 to 2.5 mm, a step every 3 mm", () => {
		const part = gauge();
		treads(part, 16, 3).forEach((height, i) => {
			expect(height).toBeCloseTo(1 + i / 10, 9);
		});
		expect(textsOf(part).slice(0, 16)).toEqual(
			"1.0 1.1 1.2 1.3 1.4 1.5 1.6 1.7 1.8 1.9 2.0 2.1 2.2 2.3 2.4 2.5".split(" "),
		);
		expect(textsOf(part)).toContain("HEIGHT GAUGE, mm");
	});

	it("rises by 64ths of an inch where the job is in inches", () => {
		// By hand: 1/64 in is 25.4/64 = 0.396875 mm.
		const inches = making("height-gauge").replace("format: 1", "format: 1\nunits: in");
		const part = madeParts(inches).parts[0]!;
		treads(part, 6, 3).forEach((height, i) => {
			expect(height).toBeCloseTo(0.396875 * (3 + i), 9);
		});
		expect(textsOf(part).slice(0, 6)).toEqual(["3/64", "1/16", "5/64", "3/32", "7/64", "1/8"]);
		expect(textsOf(part)).toContain("HEIGHT GAUGE, in");
	});

	it("puts any heights in order, mm and inch side by side", () => {
		const part = gauge({ heights: ["2 mm", "1/16 in", "1.25 mm"], "step-width": 5 });
		expect(treads(part, 3, 5).map((h) => Number(h.toFixed(6)))).toEqual([1.25, 1.5875, 2]);
		expect(textsOf(part).slice(0, 3)).toEqual(["1.25", "1/16", "2.0"]);
		expect(textsOf(part)).toContain("HEIGHT GAUGE, mm, in");
	});

	it("promises every step's height over the lower edge", () => {
		const steps = stepsOf(gauge({ heights: [1.5, 2, 3] }));
		expect(steps.map(({ nominal, datum, operation }) => [nominal, datum, operation])).toEqual([
			[1.5, "lower edge", "cut"],
			[2, "lower edge", "cut"],
			[3, "lower edge", "cut"],
		]);
	});

	it("is sound with any settings, and measures what it claims", () => {
		const heights = fc.uniqueArray(reading(0.6, 25), { minLength: 2, maxLength: 24 });
		const hole = fc.oneof(fc.constant("none"), fc.constant("5 mm"), reading(1, 15, 1));
		fc.assert(
			fc.property(
				heights,
				reading(2.5, 20, 1),
				reading(3, 30, 1),
				hole,
				(list, width, high, hole) => {
					const sorted = list.toSorted((a, b) => a - b);
					fc.pre(sorted.slice(1).every((h, i) => h - sorted[i]! > 0.03));
					const part = gauge({
						heights: list,
						"step-width": width,
						throat: high,
						"gauge-hole": hole,
					});
					expect(faultsOfPart(part)).toEqual([]);
					expect(stepsOf(part).map(({ nominal }) => nominal)).toEqual(sorted);
				},
			),
			{ seed: 1_847, numRuns: 60 },
		);
	});

	it("writes decimals of a millimetre or fractions of an inch", () => {
		expect([2, 1.2, 1.125, 1.984375, 25.4].map(stepText)).toEqual([
			"2.0",
			"1.2",
			"1.125",
			"5/64",
			"1",
		]);
	});
});

describe("a height gauge is refused", () => {
	const codes = (settings: object, other: object = {}) =>
		made(settings, other).problems.map(({ code }) => code);

	it("with steps that cannot be told apart", () => {
		expect(codes({ heights: [1, 1.01] })).toEqual(["steps-alike"]);
		expect(codes({ heights: [1, 2, 1] })).toEqual(["steps-alike"]);
		expect(codes({ heights: [1, 1.03] })).toEqual([]);
	});

	it("with steps that a round cutter cannot mill", () => {
		const mill = { machine: { kind: "mill", cutter: 2 } };
		expect(codes({}, mill)).toEqual(["steps-below-cutter"]);
		expect(codes({ heights: [1, 2.5, 4], "step-width": 2.8 }, mill)).toEqual(["length-range"]);
		expect(codes({ heights: [1, 2.5, 4], "step-width": 3 }, mill)).toEqual([]);
	});
});

describe("the written gauge", () => {
	const MM = making("height-gauge").replace("make:", "machine: {kerf: 0.16 mm}\nmake:");
	const INCH = making("height-gauge: {heights: [1/16 in, 5/64 in, 3/32 in], gauge-hole: none}");
	const MILLED = making("height-gauge: {heights: [1, 2.5, 4], step-width: 4}").replace(
		"make:",
		"machine: {kind: mill, cutter: 2 mm}\nmake:",
	);

	it.each([
		["with a kerf", MM],
		["in inches", INCH],
		["milled", MILLED],
	])("%s is measured again without a finding", async (_, text) => {
		const drawn = await fullyMade(text, { formats: ["svg", "dxf", "pdf"] });
		expect(drawn.files).toHaveLength(4);
		expect(findingsOf(drawn)).toEqual([]);
	});

	it("betrays a step too high, a moved hole, a missing one and a missing number", async () => {
		const made = await fullyMade(MM, { formats: ["svg"] });
		const found = (change: (part: Part) => Part) => foundInDamaged(made, "height-gauge", change);
		expect(await found((p) => p)).toEqual([]);
		const higher = (p: Part) =>
			withPaths(p, "outline", ({ points, closed }) => [
				{
					closed,
					points: points.map((v) =>
						v.x > 11 && v.x < 16 && v.y > 1 && v.y < 2 ? { ...v, y: v.y + 0.02 } : v,
					),
				},
			]);
		expect(await found(higher)).toContain("claim-failed");
		expect(await found((p) => shifted(p, "hanging hole", 0.05, 0))).toContain("off-place");
		expect(await found((p) => without(p, "hanging hole"))).toContain("feature-missing");
		expect(await found((p) => without(p, "label step-4"))).toContain("label-wrong");
	});
});
