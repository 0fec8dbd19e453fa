import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	factorProblem,
	type PrinterCorrection,
	type PrinterReadings,
	printerCorrection,
} from "../../src/paper/index.js";
import { type Problem, problemText } from "../../src/problem/index.js";

const READ: PrinterReadings = {
	nominal: { x: 254, y: 254 },
	measured: { x: 253, y: 254.5 },
	resolution: 0.5,
	longest: 500,
};
const found = (values: Partial<PrinterReadings> = {}) =>
	printerCorrection({ ...READ, ...values }) as PrinterCorrection;
const refused = (values: Partial<PrinterReadings>) =>
	printerCorrection({ ...READ, ...values }) as Problem[];

describe("printerCorrection", () => {
	it("divides what was measured by what was nominal, to six decimals", () => {
		// By hand: 253/254 = 0.99606299..., 254.5/254 = 1.00196850...
		expect(found().across.factor).toBe(0.996063);
		expect(found().along.factor).toBe(1.001969);
	});

	it("leaves half a step of the reading, as far as the longest part is longer than the rule", () => {
		// By hand: 500 * (0.25 + 0.0000005 * 254)/253 = 0.494322; the six decimals are 0.00025 of it.
		expect(found().across.left).toBeCloseTo(0.494322, 5);
		expect(found().along.left).toBeCloseTo(500 * (0.250127 / 254.5), 5);
		// A rule of the part's own length leaves half a step.
		const own = { nominal: { x: 500, y: 500 }, measured: { x: 501, y: 499 } };
		expect(found(own).across.left).toBeCloseTo(0.25, 3);
	});

	it("loses no more than 0.3 µm over 500 mm by the six decimals", () => {
		expect(found({ resolution: 0 }).across.left).toBeLessThan(0.0003);
		expect(found({ resolution: 0 }).across.left).toBeGreaterThan(0.0002);
	});

	it("gives 1 where the reading does not tell the printer from it", () => {
		const { across, along } = found({ measured: { x: 254.2, y: 254 } });
		expect(across).toMatchObject({ factor: 1, told: false });
		expect(along).toMatchObject({ factor: 1, told: false });
		// By hand: 500 * (0.2 + 0.25)/254 and 500 * 0.25/254.
		expect(across.left).toBeCloseTo(0.885827, 6);
		expect(along.left).toBeCloseTo(0.492126, 6);
		expect(found({ measured: { x: 254.25, y: 253.75 } })).toMatchObject({
			across: { told: false },
			along: { told: false },
		});
		expect(found({ measured: { x: 254.26, y: 253.74 } })).toMatchObject({
			across: { told: true },
			along: { told: true },
		});
	});

	it("bounds what a printed part is off by, for every printer and every reading", () => {
		const off = fc.double({ min: -0.009, max: 0.009, noNaN: true });
		const share = fc.oneof(
			fc.constantFrom(-0.5, 0.5),
			fc.double({ min: -0.5, max: 0.5, noNaN: true }),
		);
		const size = fc.double({ min: 150, max: 1000, noNaN: true });
		const resolution = fc.constantFrom(0, 0.01, 0.1, 0.5);
		fc.assert(
			fc.property(
				off,
				share,
				size,
				size,
				resolution,
				(off, share, nominal, longest, resolution) => {
					const printer = 1 + off;
					const measured = nominal * printer + share * resolution;
					const both = { x: measured, y: measured };
					const readings = { nominal: { x: nominal, y: nominal }, measured: both };
					const { across } = found({ ...readings, resolution, longest });
					const printed = (longest / across.factor) * printer;
					expect(Math.abs(printed - longest)).toBeLessThanOrEqual(across.left * (1 + 1e-6) + 1e-9);
				},
			),
			{ seed: 254, numRuns: 500 },
		);
	});

	it("is reached by the worst reading: the bound is no wider than it must be", () => {
		const printer = 0.995;
		const measured = 254 * printer + 0.25;
		const { factor, left } = found({ measured: { x: measured, y: measured } }).across;
		expect(500 - (500 / factor) * printer).toBeGreaterThan(0.998 * left);
	});

	it("tells a rule of 4 in from one of 100 mm", () => {
		const [across, ...more] = refused({
			nominal: { x: 100, y: 101.6 },
			measured: { x: 101.6, y: 101.5 },
		});
		expect(more).toEqual([]);
		expect(across!.where.path).toEqual(["--across"]);
		expect(problemText(across!)).toBe(
			"101.6 mm read of a rule of 100 mm makes 1.016, which is more than 1.2 % off 1, further than a printer is. It is what comes of a rule in inches taken for one in millimetres, 4 in for 100 mm or 10 in for 250 mm. Give the length of the rule that was read.",
		);
	});

	it("says both directions at once", () => {
		const both = refused({ measured: { x: 250, y: 100 } });
		expect(both.map(({ code, where }) => [code, ...where.path])).toEqual([
			["printer-misread", "--across"],
			["printer-misread", "--along"],
		]);
	});

	it.each([
		{ nominal: { x: 0, y: 254 } },
		{ measured: { x: 254, y: Number.NaN } },
		{ resolution: -0.1 },
		{ resolution: Number.POSITIVE_INFINITY },
		{ longest: Number.POSITIVE_INFINITY },
	])("throws on %j", (values) => {
		expect(() => found(values)).toThrow(RangeError);
	});
});

describe("factorProblem", () => {
	it("takes factors up to 1.2 % off 1", () => {
		for (const factor of [0.988, 1, 1.012]) expect(factorProblem(factor, [])).toBeNull();
		for (const factor of [0.98799, 1.01201, 0, -1, Number.NaN]) {
			expect(factorProblem(factor, []), String(factor)).not.toBeNull();
		}
	});

	it.each([
		[0.4, "Write the factor, not a percentage: 1.004, not 0.4."],
		[99.7, "Write the factor, not a percentage: 0.997, not 99.7."],
		[1.016, "a rule in inches taken for one in millimetres"],
		[1 / 1.016, "a rule in millimetres taken for one in inches"],
		[1 / 25.4, "an inch divided by a millimetre"],
		[1.05, "Read the rule again"],
	])("says what %d most likely is", (factor, says) => {
		expect(problemText(factorProblem(factor, [])!)).toContain(says);
	});
});
