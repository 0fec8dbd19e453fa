import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centsOfError, fretFraction, highestFret, type Law, TWELVE } from "../../src/neck/index.js";

const RULE: Law = { kind: "rule-of-18" };
const just: Law = { kind: "listed", ratios: [9 / 8, 5 / 4, 3 / 2, 2] };
const open: Law = { kind: "listed", ratios: [1.1, 1.2, 1.3] };

describe("fretFraction of equal steps", () => {
	it("halves the string at every octave", () => {
		for (const steps of [5, 12, 19, 24, 31]) {
			const law: Law = { kind: "equal", steps };
			expect([0, 1, 2, 3].map((octave) => fretFraction(law, octave * steps))).toEqual([
				0, 0.5, 0.75, 0.875,
			]);
		}
	});

	it("takes fractions of a fret", () => {
		expect(fretFraction(TWELVE, 7.5)).toBeCloseTo(1 - 2 ** -0.625, 15);
	});

	it("never chains: fret n is the same whatever was asked before", () => {
		const alone = fretFraction(TWELVE, 24);
		for (let n = 0; n < 24; n++) fretFraction(TWELVE, n);
		expect(fretFraction(TWELVE, 24)).toBe(alone);
	});
});

describe("fretFraction of the rule of 18", () => {
	it("takes an eighteenth of what remains", () => {
		expect(fretFraction(RULE, 1)).toBeCloseTo(1 / 18, 15);
		for (let n = 0; n < 30; n++) {
			const left = 1 - fretFraction(RULE, n);
			expect(fretFraction(RULE, n + 1)).toBeCloseTo(1 - left + left / 18, 14);
		}
	});
});

describe("fretFraction of a list", () => {
	it("is 1 − 1/ratio at every listed fret", () => {
		expect([1, 2, 3, 4].map((n) => fretFraction(just, n))).toEqual(
			[9 / 8, 5 / 4, 3 / 2, 2].map((r) => 1 - 1 / r),
		);
	});

	it("repeats an octave above where it ends on the octave", () => {
		expect(fretFraction(just, 6)).toBeCloseTo(1 - 1 / 2.5, 15);
		expect(fretFraction(just, 8)).toBeCloseTo(0.75, 15);
		expect(highestFret(just)).toBe(Number.POSITIVE_INFINITY);
	});

	it("goes in even cents between listed frets", () => {
		expect(fretFraction(just, 0.5)).toBeCloseTo(1 - Math.sqrt(8 / 9), 15);
		expect(fretFraction(just, 4.5)).toBeCloseTo(1 - 1 / (2 * Math.sqrt(9 / 8)), 15);
	});

	it("ends where a list without the octave ends", () => {
		expect(highestFret(open)).toBe(3);
		expect(fretFraction(open, 3)).toBeCloseTo(1 - 1 / 1.3, 15);
		expect(() => fretFraction(open, 3.5)).toThrow(RangeError);
		expect(() => fretFraction(open, 4)).toThrow("no fret 4");
	});

	it("repeats an octave given in cents, whose ratio is 2 only to rounding", () => {
		const ratios = [400, 700, 1200].map((cents) => 2 ** (cents / 1200));
		expect(highestFret({ kind: "listed", ratios })).toBe(Number.POSITIVE_INFINITY);
		expect(highestFret({ kind: "listed", ratios: [1.25, 1.5, 2 + 1e-6] })).toBe(3);
	});
});

describe("fretFraction refuses", () => {
	it.each([-1, -1e-9, Number.NaN])("fret %d", (n) => {
		expect(() => fretFraction(TWELVE, n)).toThrow(RangeError);
		expect(() => fretFraction(RULE, n)).toThrow(RangeError);
	});
});

describe("centsOfError", () => {
	it("is what the exact ratio gives, for small errors", () => {
		const length = fc.double({ min: 100, max: 900, noNaN: true });
		const error = fc.double({ min: -0.1, max: 0.1, noNaN: true });
		fc.assert(
			fc.property(length, error, (sounding, e) => {
				const exact = 1200 * Math.log2(sounding / (sounding - e));
				expect(Math.abs(centsOfError(e, sounding) - exact)).toBeLessThan(1e-3);
			}),
			{ seed: 11, numRuns: 200 },
		);
	});
});
