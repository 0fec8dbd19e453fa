import { describe, expect, it } from "vitest";
import { centsOfError, TWELVE } from "../../src/neck/index.js";
import { fitScale } from "../../src/readings/index.js";
import { leastSquares } from "../../src/readings/least-squares.js";
import {
	EIGHTEEN_SHARE,
	fretsTo,
	GAUSS,
	percent,
	readBoard,
	sound,
	TWELVE_SHARE,
} from "../support/boards.js";
import { seeded } from "../support/seeded.js";

const TOLD = { law: TWELVE, resolution: 0.1, nut: "true" } as const;
const BOARDS = 2000;

describe("fitScale", () => {
	it("finds scale and nut of exact readings, and the residual of each slot", () => {
		const at = (fret: number) => 0.7 + 650 * TWELVE_SHARE(fret);
		const readings = fretsTo(22).map((fret) => ({ fret, at: at(fret) }));
		const fit = sound(fitScale(readings, { ...TOLD, nut: "filed" }));
		expect(fit.kind).toBe("told");
		expect(fit.scale.value).toBeCloseTo(650, 9);
		expect(fit.offset!.value).toBeCloseTo(0.7, 9);
		expect(fit.s).toBeCloseTo(0.1 / Math.sqrt(12), 12);
		expect(fit.isResolutionBound).toBe(true);
		for (const row of fit.rows) expect(Math.abs(row.residual)).toBeLessThan(1e-9);
	});

	it("takes two frets for a line by hand: 216.6667 mm between frets 12 and 24 are a scale of 866.6667", () => {
		const readings = [
			{ fret: 12, at: 434 },
			{ fret: 24, at: 434 + 650 / 3 },
		];
		// u(12) = 1/2, u(24) = 3/4: L = 4·650/3, and the theoretical nut at 434 − L/2.
		const fit = sound(fitScale(readings, { ...TOLD, nut: "filed" }));
		expect(fit.scale.value).toBeCloseTo((4 * 650) / 3, 9);
		expect(fit.offset!.value).toBeCloseTo(434 - (2 * 650) / 3, 9);
		expect(fit.df).toBe(0);
	});

	it("averages repeats of a slot", () => {
		const readings = [324.9, 325.1, 325.3].map((at) => ({ fret: 12, at }));
		const fit = sound(fitScale(readings, TOLD));
		expect(fit.scale.value).toBeCloseTo(2 * 325.1, 9);
		expect(fit.notes.map((n) => n.code)).toEqual(["scale-from-one-slot"]);
	});

	it("names usual scales near the fit and moves onto none", () => {
		const readings = fretsTo(22).map((fret) => ({ fret, at: 647.2 * TWELVE_SHARE(fret) }));
		const fit = sound(fitScale(readings, TOLD));
		expect(fit.scale.value).toBeCloseTo(647.2, 9);
		expect(fit.usual.map((u) => u.name)).toEqual(["long guitar"]);
		expect(fit.usual[0]!.off).toBeCloseTo(0.5, 9);
	});
});

// Worked from the model by hand-written sums with another program.
describe("outside values", () => {
	it.each([
		["filed", 1.0721],
		["true", 0.4333],
	] as const)("the scale's standard error with the nut %s is %d of a reading's", (nut, share) => {
		const readings = fretsTo(22).map((fret) => ({ fret, at: 650 * TWELVE_SHARE(fret) }));
		const fit = sound(fitScale(readings, { ...TOLD, nut }));
		expect(fit.scale.standard / (0.1 / Math.sqrt(12))).toBeCloseTo(share, 4);
	});

	it("twelve equal steps fitted to a board by the rule of 18", () => {
		const frets = [0, ...fretsTo(20)];
		const values = frets.map((n) => 650 * EIGHTEEN_SHARE(n));
		const largest = (residuals: readonly number[]) => Math.max(...residuals.map(Math.abs));
		const free = leastSquares(
			frets.map((n) => [1, TWELVE_SHARE(n)]),
			values,
		);
		expect(free.coefficients[0]).toBeCloseTo(-0.4322, 4);
		expect(free.coefficients[1]).toBeCloseTo(646.4563, 4);
		expect(largest(free.residuals)).toBeCloseTo(0.4322, 4);
		expect(Math.sqrt(free.rss / free.df)).toBeCloseTo(0.2205, 4);
		const through = leastSquares(
			frets.map((n) => [TWELVE_SHARE(n)]),
			values,
		);
		expect(through.coefficients[0]).toBeCloseTo(645.6071, 4);
		expect(largest(through.residuals)).toBeCloseTo(0.5216, 4);
	});

	it.each([
		[1, 0.283],
		[12, 0.535],
		[22, 0.953],
	])("0.1 mm at fret %d of 647.7 mm is %d cents", (fret, cents) => {
		const error = 0.1;
		expect(centsOfError(error, 647.7 * (1 - TWELVE_SHARE(fret)))).toBeCloseTo(cents, 3);
		const readings = fretsTo(22).map((n) => ({
			fret: n,
			at: 647.7 * TWELVE_SHARE(n) + (n === fret ? error : 0),
		}));
		const row = sound(fitScale(readings, TOLD)).rows[fret - 1]!;
		// The slot draws the fit a little after it: cents go with what is left.
		expect(row.cents / row.residual).toBeCloseTo(cents / error, 1);
	});
});

describe("the 95 % interval", () => {
	it.each(["true", "filed"] as const)(
		"holds the scale on 93 to 97 of 100 boards with the nut %s",
		(nut) => {
			const next = seeded(1);
			const share = percent(BOARDS, () => {
				const readings = readBoard(next, TWELVE_SHARE, GAUSS);
				const { low, high } = sound(fitScale(readings, { ...TOLD, resolution: 0.02, nut })).scale;
				return low <= 650 && 650 <= high;
			});
			console.log(`scale within its 95 % interval, nut ${nut}: ${share} % of ${BOARDS}`);
			expect(share).toBeGreaterThanOrEqual(93);
			expect(share).toBeLessThanOrEqual(97);
		},
	);
});
