import { describe, expect, it, test } from "vitest";
import { centsOfError, fretFraction, type Law, TWELVE } from "../../src/neck/index.js";

const RULE: Law = { kind: "rule-of-18" };
const INCH = 25.4;

/** Cents by which fret n sounds above the open string. */
function cents(law: Law, n: number): number {
	return -1200 * Math.log2(1 - fretFraction(law, n));
}

function listed(...ratios: number[]): Law {
	return { kind: "listed", ratios };
}

/** OEIS A010774, decimal expansion of 2^(1/12). */
test("OEIS A010774: one fret raises the pitch by 1.059463094359295264…", () => {
	expect(1 / (1 - fretFraction(TWELVE, 1))).toBeCloseTo(1.0594630943592953, 15);
});

/** Computed from 1 − 2^(−1/12). */
test("the first of twelve frets takes 0.056125687318307 of the string, one in 17.817153745106", () => {
	expect(fretFraction(TWELVE, 1)).toBeCloseTo(0.056125687318307, 14);
	expect(1 / fretFraction(TWELVE, 1)).toBeCloseTo(17.817153745106, 12);
});

/** Computed: the rounded constant of the workshop, chained from fret to fret. */
test("the rounded constant 17.817 is 100.000888 cents a step and puts fret 12 of 650 mm 0.0020 mm far", () => {
	const left = 1 - 1 / 17.817;
	expect(-1200 * Math.log2(left)).toBeCloseTo(100.000888, 6);
	expect(650 * (1 - left ** 12) - 650 * fretFraction(TWELVE, 12)).toBeCloseTo(0.002, 4);
});

/**
 * V. Galilei, Dialogo della musica antica et della moderna (1581), the ratio 18 : 17, as worked in
 * J. Kepler, Harmonices mundi (1619) III ch. VIII, ed. Frisch vol. V.
 */
describe("Galilei's 18 : 17 in Kepler's Harmonices mundi", () => {
	it("leaves of a string of 100000 what is printed there, to one", () => {
		const left = (n: number) => 100_000 * (1 - fretFraction(RULE, n));
		const printed = new Map([
			[1, 94_444],
			[2, 89_198],
			[3, 84_242],
			[11, 53_326],
			[12, 50_363],
		]);
		for (const [n, length] of printed) expect(Math.abs(left(n) - length)).toBeLessThan(1);
	});

	it("is exactly 94444.44 89197.53 84242.11 … 50363.63", () => {
		const exact = [
			94444.44, 89197.53, 84242.11, 79562.0, 75141.88, 70967.34, 67024.71, 63301.11, 59784.38,
			56463.03, 53326.19, 50363.63,
		];
		const left = exact.map((_, i) => 100_000 * (1 - fretFraction(RULE, i + 1)));
		expect(left).toEqual(exact.map((length) => expect.closeTo(length, 2)));
	});

	it("is 98.954592230 cents a step, twelve steps 1187.455107, fret 12 at 0.496363734 of the string", () => {
		expect(cents(RULE, 1)).toBeCloseTo(98.95459223, 8);
		expect(cents(RULE, 12)).toBeCloseTo(1187.455107, 6);
		expect(fretFraction(RULE, 12)).toBeCloseTo(0.496363734, 9);
	});
});

/** C. W. MacCord, "Spacing the frets on a banjo neck", Scientific American Supplement 794 (21 Mar 1891). */
test("MacCord's banjo of 26 in has frets at 1.4444, 2.8086, 4.0971 … 12.9055 in", () => {
	const inches = (n: number) => 26 * fretFraction(RULE, n);
	expect([1, 2, 3, 12].map(inches)).toEqual(
		[1.4444, 2.8086, 4.0971, 12.9055].map((x) => expect.closeTo(x, 4)),
	);
});

/** Computed: least squares of exact rule-of-18 positions, 650 mm, n = 0..20. */
describe("twelve equal steps fitted to an exact rule-of-18 board of 650 mm", () => {
	const numbers = Array.from({ length: 21 }, (_, n) => n);
	const u = numbers.map((n) => fretFraction(TWELVE, n));
	const x = numbers.map((n) => 650 * fretFraction(RULE, n));
	const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
	const most = (values: number[]) => Math.max(...values.map(Math.abs));

	it("with a free offset: offset −0.4322 mm, scale 646.4563, residuals to 0.4322, s 0.2205", () => {
		const [meanU, meanX] = [sum(u) / 21, sum(x) / 21];
		const scale =
			sum(u.map((v, i) => (v - meanU) * (x[i]! - meanX))) / sum(u.map((v) => (v - meanU) ** 2));
		const offset = meanX - scale * meanU;
		const residuals = u.map((v, i) => x[i]! - offset - scale * v);
		expect(offset).toBeCloseTo(-0.4322, 4);
		expect(scale).toBeCloseTo(646.4563, 4);
		expect(most(residuals)).toBeCloseTo(0.4322, 4);
		expect(Math.sqrt(sum(residuals.map((r) => r * r)) / 19)).toBeCloseTo(0.2205, 4);
	});

	it("through the nut: scale 645.6071, residuals to 0.5216", () => {
		const scale = sum(u.map((v, i) => v * x[i]!)) / sum(u.map((v) => v * v));
		expect(scale).toBeCloseTo(645.6071, 4);
		expect(most(u.map((v, i) => x[i]! - scale * v))).toBeCloseTo(0.5216, 4);
	});
});

/** M. Mersenne, Harmonie universelle (1636), the semitone (2/(3 − √2))^(1/4); from a secondary source. */
test("Mersenne's semitone 1.059732672 is 100.440452 cents", () => {
	const ratio = (2 / (3 - Math.SQRT2)) ** (1 / 4);
	expect(ratio).toBeCloseTo(1.059732672, 9);
	expect(cents(listed(ratio), 1)).toBeCloseTo(100.440452, 6);
});

/** Strähle 1743, as in J. M. Barbour: (24 + 10m)/(24 − 7m), m = n/12; from a secondary source. */
test("Strähle's construction gives Barbour's cents to a thousandth", () => {
	const ratios = Array.from({ length: 12 }, (_, i) => {
		const m = (i + 1) / 12;
		return (24 + 10 * m) / (24 - 7 * m);
	});
	const printed = [
		101.691, 202.505, 302.624, 402.221, 501.463, 600.515, 699.539, 798.697, 898.153, 998.074,
		1098.63, 1200,
	];
	// The eleventh is 1098.6305: its last digit is cut off, not rounded.
	const off = printed.map((c, i) => Math.abs(cents(listed(...ratios), i + 1) - c));
	expect(Math.max(...off)).toBeLessThan(0.001);
});

/** Cutnell & Johnson, Physics: a guitar string of 0.628 m; the answers are computed. */
test("Cutnell & Johnson: on 0.628 m frets 3 and 4 are 0.02964 m apart, 8 and 9 0.02220 m", () => {
	const gap = (n: number) => 0.628 * (fretFraction(TWELVE, n) - fretFraction(TWELVE, n - 1));
	expect(gap(4)).toBeCloseTo(0.02964, 5);
	expect(gap(9)).toBeCloseTo(0.0222, 5);
});

/** Giancoli, Physics, ch. 12: a guitar string of 65 cm; the answers are computed. */
test("Giancoli: on 65 cm the first six frets are at 3.65 7.09 10.34 13.41 16.31 19.04 cm", () => {
	expect([1, 2, 3, 4, 5, 6].map((n) => 65 * fretFraction(TWELVE, n))).toEqual(
		[3.65, 7.09, 10.34, 13.41, 16.31, 19.04].map((x) => expect.closeTo(x, 2)),
	);
});

/** Theory of equal temperaments; the positions are computed. */
describe.each([
	[19, 63.157895, 11, 694.736842, 0.035824, 27.914246],
	[31, 38.709677, 18, 696.774194, 0.022111, 45.22541],
])("%i equal steps", (steps, step, fifth, fifthCents, first, reciprocal) => {
	const law: Law = { kind: "equal", steps };

	it(`are ${step} cents each, the fifth ${fifthCents}`, () => {
		expect(cents(law, 1)).toBeCloseTo(step, 6);
		expect(cents(law, fifth)).toBeCloseTo(fifthCents, 6);
		expect(cents(law, steps)).toBeCloseTo(1200, 9);
	});

	it(`begin at ${first} of the string, one in ${reciprocal}`, () => {
		expect(fretFraction(law, 1)).toBeCloseTo(first, 6);
		expect(1 / fretFraction(law, 1)).toBeCloseTo(reciprocal, 6);
	});
});

/** Theory of tuning: the fifth of quarter-comma meantone. */
test("a quarter-comma meantone fifth, 5^(1/4), is 696.578428 cents", () => {
	expect(cents(listed(5 ** (1 / 4)), 1)).toBeCloseTo(696.578428, 6);
});

/** Theory of tuning: just intervals on a string, x/L = 1 − 1/r. */
test.each([
	[6 / 5, 0.166667],
	[5 / 4, 0.2],
	[4 / 3, 0.25],
	[3 / 2, 0.333333],
	[5 / 3, 0.4],
	[2, 0.5],
])("a just interval of %d is stopped at %d of the string", (ratio, share) => {
	expect(fretFraction(listed(ratio), 1)).toBeCloseTo(share, 6);
});

/** Computed: (1200/ln 2)·δ/(L·2^(−n/12)). */
test.each([
	[1, 0.283],
	[12, 0.535],
	[22, 0.953],
])("0.1 mm at fret %i of 647.7 mm is %d cents", (n, off) => {
	expect(centsOfError(0.1, 647.7 * (1 - fretFraction(TWELVE, n)))).toBeCloseTo(off, 3);
});

/** Computed: normal equations of x = δ + L·u(n), n = 1..22. */
test("a scale read from 22 slots is 1.0721 times as uncertain as a reading, through the nut 0.4333", () => {
	const u = Array.from({ length: 22 }, (_, i) => fretFraction(TWELVE, i + 1));
	const mean = u.reduce((a, b) => a + b) / 22;
	const about = (centre: number) => u.reduce((sum, v) => sum + (v - centre) ** 2, 0);
	expect(1 / Math.sqrt(about(mean))).toBeCloseTo(1.0721, 4);
	expect(1 / Math.sqrt(about(0))).toBeCloseTo(0.4333, 4);
});

/** Computed from L·(1 − 2^(−n/12)) to four decimals. */
describe.each([
	[
		25.5 * INCH,
		{
			1: 36.3526,
			2: 70.6649,
			3: 103.0514,
			5: 162.4733,
			7: 215.4121,
			12: 323.85,
			15: 375.3757,
			19: 431.5561,
			22: 465.9453,
			24: 485.775,
		},
	],
	[650, { 1: 36.4817, 5: 163.0502, 7: 216.177, 12: 325, 19: 433.0885, 22: 467.5999 }],
	[34 * INCH, { 1: 48.4701, 12: 431.8, 24: 647.7 }],
])("positions on a scale of %d mm", (scale, positions) => {
	it("are the computed ones", () => {
		const found = Object.keys(positions).map((n) => scale * fretFraction(TWELVE, Number(n)));
		expect(found).toEqual(Object.values(positions).map((x) => expect.closeTo(x, 4)));
	});
});
