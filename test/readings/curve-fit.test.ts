import { expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitCurve } from "../../src/readings/curve-fit.js";
import { bestJoin, joins } from "../../src/readings/join-search.js";
import { fixedShape, RATIO } from "../../src/readings/scale-laws.js";
import { fretsTo, RATIO_SHARE, TWELVE_SHARE, TWO_RATIOS_SHARE } from "../support/boards.js";

const told = fixedShape("told", TWELVE);

it("fits no string that has fewer slots than it needs, whatever the other has", () => {
	const bass = fretsTo(9).map((fret) => ({ fret, at: 690 * TWELVE_SHARE(fret), side: 0 }));
	const treble = [{ fret: 12, at: 325, side: 1 }];
	expect(fitCurve([...bass, ...treble], told, true)).toBeNull();
	expect(fitCurve([...bass, ...treble], told, false)!.lengths[1]).toBeCloseTo(650, 9);
	expect(fitCurve(treble, told, false)).toBeNull();
});

it("finds a ratio, a length and an offset in exact slots to the last digits", () => {
	const rows = fretsTo(20).map((fret) => ({ fret, at: 1.5 + 640 * RATIO_SHARE(fret), side: 0 }));
	const fit = fitCurve(rows, RATIO, true)!;
	expect(Math.exp(-fit.free[0]!)).toBeCloseTo(1 - 1 / 17.6, 12);
	expect(fit.lengths[0]).toBeCloseTo(640, 8);
	expect(fit.offsets[0]).toBeCloseTo(1.5, 8);
	expect(fit.df).toBe(17);
});

it("tries no join of two ratios that one string's own nut and length would hide", () => {
	const line = (frets: readonly number[], scale: number, side: number) =>
		frets.map((fret) => ({ fret, at: scale * TWO_RATIOS_SHARE(fret), side }));
	// Two treble slots tell that string's nut and length alone; met at fret 7, the first ratio would have no other slot.
	const rows = [...line([7, 10, 12, 13, 15, 18, 20, 22], 690, 0), ...line([3, 6], 650, 1)];
	expect(joins(rows)).toEqual([7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17]);
	expect(bestJoin(fitCurve(rows, RATIO, true)!)!.searched).toBe(10);
});
