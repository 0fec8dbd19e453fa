import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solve } from "yalps";
import { fretLine, type Neck } from "../../src/neck/index.js";
import {
	type FretHeights,
	type FretHeightsReading,
	fitFretHeights,
	fitRelief,
	highestLineBetween,
	highestLineUnder,
	planDressing,
	type Relief,
	type Spot,
	type StraightLine,
} from "../../src/readings/index.js";
import { neckWith } from "../support/made-parts.js";

const neck = neckWith({});
const xOf = (n: number) => fretLine(neck, n).x;
const every = Array.from({ length: 22 }, (_, i) => i + 1);

function heights(
	reading: FretHeightsReading,
	wood: Relief | null = null,
	on: Neck = neck,
): FretHeights {
	const fit = fitFretHeights(reading, on, wood);
	if (Array.isArray(fit)) throw new Error(JSON.stringify(fit));
	return fit;
}

const crowns = (height: (n: number) => number, other: Partial<FretHeightsReading> = {}) => ({
	frets: every.map((n) => ({ fret: n, heights: [height(n)] })),
	resolution: 0.01,
	...other,
});

const lineAt = ({ x, height, slope }: StraightLine, at: number) => height + slope * (at - x);
const offOf = (line: StraightLine, spots: readonly Spot[]) =>
	spots.reduce((sum, { x, height }) => sum + height - lineAt(line, x), 0);

/** Spots at whole places, heights in hundredths, two at least apart. */
const spots = fc
	.uniqueArray(fc.integer({ min: 0, max: 500 }), { minLength: 3, maxLength: 24 })
	.chain((xs) =>
		fc
			.array(fc.integer({ min: 0, max: 60 }), { minLength: xs.length, maxLength: xs.length })
			.map((hs) => xs.map((x, i) => ({ x, height: 1 + hs[i]! / 100 }))),
	);
const RUNS = { seed: 20, numRuns: 150 };

describe("highestLineUnder", () => {
	it("lies along the lower edge of three tops, worked by hand", () => {
		// Tops 1, 1.2, 1.1 at 0, 1, 3: the line from 1 to 1.1 is 1.0333 at 1, so 0.1667 comes off there.
		const line = highestLineUnder([
			{ x: 0, height: 1 },
			{ x: 1, height: 1.2 },
			{ x: 3, height: 1.1 },
		]);
		expect(line.slope).toBeCloseTo(0.1 / 3, 12);
		expect(lineAt(line, 0)).toBeCloseTo(1, 12);
		expect(1.2 - lineAt(line, 1)).toBeCloseTo(1 / 6, 12);
	});

	it("chooses the edge under the mean place, worked by hand", () => {
		// Tops 1, 0.9, 1.1 at 0, 1, 4: mean place 5/3, so the edge from 0.9 to 1.1, slope 1/15.
		const three = [
			{ x: 0, height: 1 },
			{ x: 1, height: 0.9 },
			{ x: 4, height: 1.1 },
		];
		const line = highestLineUnder(three);
		expect(line.slope).toBeCloseTo(1 / 15, 12);
		expect(offOf(line, three)).toBeCloseTo(1 - (0.9 - 1 / 15), 12);
	});

	it("turns between both edges where the mean place is a corner: the sum is the same for all", () => {
		const three = [
			{ x: 0, height: 1 },
			{ x: 1, height: 0.9 },
			{ x: 2, height: 1.1 },
		];
		const line = highestLineUnder(three);
		expect(line.slope).toBeCloseTo(0.05, 12);
		expect(offOf(line, three)).toBeCloseTo(0.3, 12);
		for (const slope of [-0.1, 0, 0.2]) {
			expect(offOf({ x: 1, height: 0.9, slope }, three)).toBeCloseTo(0.3, 12);
		}
	});

	it("stays under every spot and takes no more than the best line through any two", () => {
		fc.assert(
			fc.property(spots, (all) => {
				const line = highestLineUnder(all);
				for (const { x, height } of all) {
					expect(lineAt(line, x)).toBeLessThanOrEqual(height + 1e-9);
				}
				const lines = all.flatMap((a) =>
					all
						.filter((b) => b.x > a.x)
						.map((b) => ({ ...a, slope: (b.height - a.height) / (b.x - a.x) }))
						.filter((l) => all.every(({ x, height }) => lineAt(l, x) <= height + 1e-9)),
				);
				const least = Math.min(...lines.map((l) => offOf(l, all)));
				expect(Math.abs(offOf(line, all) - least)).toBeLessThan(1e-9);
			}),
			RUNS,
		);
	});

	it("takes what a general solver of linear programmes takes", () => {
		fc.assert(
			fc.property(spots, (all) => {
				const sumX = all.reduce((sum, { x }) => sum + x, 0);
				const bounds = all.map(({ height }, i) => [`top${i}`, { max: height }] as const);
				// Its variables are 0 or more: a slope is the difference of two.
				const column = (one: (x: number) => number, sum: number) =>
					Object.fromEntries([["sum", sum], ...all.map(({ x }, i) => [`top${i}`, one(x)])]);
				const found = solve({
					direction: "maximize",
					objective: "sum",
					constraints: Object.fromEntries(bounds),
					variables: {
						up: column(() => 1, all.length),
						down: column(() => -1, -all.length),
						rise: column((x) => x, sumX),
						fall: column((x) => -x, -sumX),
					},
				});
				expect(found.status).toBe("optimal");
				const total = all.reduce((sum, { height }) => sum + height, 0) - found.result;
				expect(Math.abs(offOf(highestLineUnder(all), all) - total)).toBeLessThan(1e-6);
			}),
			RUNS,
		);
	});

	it("does not depend on the order of the spots, nor on a tilt of all", () => {
		fc.assert(
			fc.property(spots, fc.double({ min: -0.01, max: 0.01, noNaN: true }), (all, tilt) => {
				const total = offOf(highestLineUnder(all), all);
				expect(offOf(highestLineUnder([...all].reverse()), all)).toBeCloseTo(total, 9);
				const tilted = all.map(({ x, height }) => ({ x, height: height + tilt * x }));
				expect(offOf(highestLineUnder(tilted), tilted)).toBeCloseTo(total, 9);
			}),
			RUNS,
		);
	});
});

describe("highestLineBetween", () => {
	it("turns less far than the free line where that would leave too little, worked by hand", () => {
		// Free: the edge 0.9 to 1.1 from 1 to 4, 0.8333 at 0. At least 0.87 there: slope 0.03 through 0.9.
		const least = { least: 0.87 };
		const line = highestLineBetween([
			{ x: 0, height: 1, ...least },
			{ x: 1, height: 0.9, ...least },
			{ x: 4, height: 1.1, ...least },
		])!;
		expect(line.slope).toBeCloseTo(0.03, 12);
		expect(lineAt(line, 0)).toBeCloseTo(0.87, 12);
		expect(lineAt(line, 1)).toBeCloseTo(0.9, 12);
	});

	it("takes what a general solver of linear programmes takes, and nothing where that finds none", () => {
		let [possible, impossible] = [0, 0];
		fc.assert(
			fc.property(spots, fc.integer({ min: 0, max: 60 }), (all, under) => {
				const between = all.map((spot, i) => ({
					...spot,
					least: spot.height - (under + (i % 3) * 5) / 100 - 0.003,
				}));
				const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
				const sumX = sum(all.map(({ x }) => x));
				const column = (one: (x: number) => number, total: number) =>
					Object.fromEntries([["sum", total], ...all.map(({ x }, i) => [`top${i}`, one(x)])]);
				const found = solve({
					direction: "maximize",
					objective: "sum",
					constraints: Object.fromEntries(
						between.map(({ height, least }, i) => [`top${i}`, { max: height, min: least }]),
					),
					variables: {
						up: column(() => 1, all.length),
						down: column(() => -1, -all.length),
						rise: column((x) => x, sumX),
						fall: column((x) => -x, -sumX),
					},
				});
				const line = highestLineBetween(between);
				if (!line) {
					impossible++;
					expect(found.status).toBe("infeasible");
					return;
				}
				possible++;
				expect(found.status).toBe("optimal");
				for (const { x, height, least } of between) {
					expect(lineAt(line, x)).toBeLessThan(height + 1e-9);
					expect(lineAt(line, x)).toBeGreaterThan(least - 1e-9);
				}
				const total = sum(all.map(({ height }) => height)) - found.result;
				expect(Math.abs(offOf(line, all) - total)).toBeLessThan(1e-6);
			}),
			RUNS,
		);
		expect(Math.min(possible, impossible)).toBeGreaterThan(15);
	});
});

describe("fitFretHeights", () => {
	it("fits three tops as worked by hand", () => {
		// Residuals of three tops about their least squares line: one pattern, here from the
		// normal equations with x from the neck.
		const xs = [3, 7, 12].map(xOf);
		const ys = [1, 1.2, 1.1];
		const [mx, my] = [(xs[0]! + xs[1]! + xs[2]!) / 3, 1.1];
		const sxx = xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
		const slope = xs.reduce((sum, x, i) => sum + (x - mx) * (ys[i]! - my), 0) / sxx;
		const found = heights({
			frets: [3, 7, 12].map((n, i) => ({ fret: n, heights: [ys[i]!] })),
			resolution: 0.01,
		});
		expect(found.slope.value).toBeCloseTo(slope, 12);
		found.tops.forEach(({ residual }, i) => {
			expect(residual).toBeCloseTo(ys[i]! - my - slope * (xs[i]! - mx), 12);
		});
		expect(found.tops.map(({ call }) => call)).toEqual(["low", "high", "low"]);
	});

	it("names the one high and the one low top", () => {
		const found = heights(crowns((n) => (n === 8 ? 1.2 : n === 15 ? 0.98 : 1.1)));
		const called = found.tops.filter(({ call }) => call !== "level");
		expect(called.map(({ fret, call }) => [fret, call])).toEqual([
			[8, "high"],
			[15, "low"],
		]);
	});

	it("calls nothing low or high below the resolution", () => {
		const read = (resolution: number) =>
			heights(crowns((n) => (n % 2 ? 1.1 : 1.14), { resolution })).tops.map(({ call }) => call);
		expect(new Set(read(0.05))).toEqual(new Set(["level"]));
		expect(new Set(read(0.01))).toEqual(new Set(["low", "high"]));
	});

	it("adds the wood: crowns all alike on a bent board are not level tops", () => {
		const to = xOf(22);
		const gaps = [2, 5, 9, 13, 18].map((n) => ({
			at: { kind: "fret", fret: n } as const,
			gap: 0.8 * (xOf(n) / to) * (1 - xOf(n) / to),
		}));
		const wood = fitRelief(
			{ along: "centre", on: "wood", gaps, resolution: 0.01, bar: null },
			neck,
		) as Relief;
		const found = heights(
			crowns(() => 1.1),
			wood,
		);
		const middle = found.tops[7]!;
		expect(middle.wood).toBeCloseTo(-0.8 * (xOf(8) / to) * (1 - xOf(8) / to), 9);
		expect(middle.elevation).toBeCloseTo(1.1 + middle.wood, 12);
		expect(middle.call).toBe("low");
		expect(found.tops.at(-1)!.call).toBe("high");
		// The relief in the board, wanted in the tops too, leaves them all but level.
		const [first, last] = [xOf(1), xOf(22)];
		const wanted = 0.2 * ((last - first) / to) ** 2;
		const level = heights(
			crowns(() => 1.1, { relief: wanted }),
			wood,
		);
		expect(new Set(level.tops.map(({ call }) => call))).toEqual(new Set(["level"]));
		expect(Math.max(...level.tops.map(({ residual }) => Math.abs(residual)))).toBeLessThan(1e-9);
	});

	it("takes a fret read twice as one, with what it differs by across and where", () => {
		const found = heights({
			frets: [
				{ fret: 2, heights: [1.1, 1.02, 1.09], across: [-18, 2, 18] },
				{ fret: 9, heights: [1.1] },
				{ fret: 2, heights: [1.11] },
				{ fret: 12, heights: [1.1, 1.1] },
			],
			resolution: 0.01,
		});
		const [second] = found.tops;
		expect(found.tops.map(({ fret }) => fret)).toEqual([2, 9, 12]);
		expect(second!.crown).toBeCloseTo(1.08, 12);
		expect(second!.dip).toBeCloseTo(0.09, 12);
		expect(second!.dipAt).toBe(2);
		expect(second!.standard).toBeCloseTo(0.01 / Math.sqrt(48), 12);
		expect(found.notes.map(({ code }) => code)).toEqual(["wood-taken-straight", "crowns-dipped"]);
	});
});

describe("planDressing", () => {
	it("leaves tops alone that the readings do not tell from level", () => {
		const plan = planDressing(heights(crowns(() => 1.1)));
		expect(plan.suggestion).toBe("leave");
		expect(plan.total).toBeCloseTo(0, 9);
		expect(plan.holding).toEqual(every);
	});

	it("takes only the one high top down", () => {
		const plan = planDressing(heights(crowns((n) => (n === 8 ? 1.2 : 1.1))));
		expect(plan.suggestion).toBe("dress");
		expect(plan.most.fret).toBe(8);
		expect(plan.most.off).toBeCloseTo(0.1, 9);
		expect(plan.total).toBeCloseTo(0.1, 9);
		expect(plan.frets.every(({ left }) => Math.abs(left - 1.1) < 1e-9)).toBe(true);
		expect(plan.notes).toEqual([]);
	});

	it("names the one low top that holds all others down", () => {
		const plan = planDressing(heights(crowns((n) => (n === 9 ? 0.95 : 1.1))));
		expect(plan.holding).toContain(9);
		expect(plan.notes.map(({ code, facts }) => [code, facts.fret])).toEqual([["one-low-fret", 9]]);
		expect(plan.total).toBeGreaterThan(1);
	});

	it("suggests new frets where less than the least crown would be left, with their number", () => {
		const low = heights(crowns((n) => (n === 9 ? 0.75 : 1.1), { leastCrown: 0.8 }));
		const plan = planDressing(low);
		expect(plan.suggestion).toBe("re-fret");
		expect(plan.under).toContain(9);
		expect(plan.under).toEqual(plan.frets.filter(({ left }) => left < 0.8).map((f) => f.fret));
		// A level plan leaves 0.75 everywhere, although the one of least sum would leave less at fret 1.
		const other = planDressing({ ...low, leastCrown: 0.7 });
		expect(other.suggestion).toBe("dress");
		expect(other.under).toEqual([]);
		expect(Math.min(...other.frets.map(({ left }) => left))).toBeCloseTo(0.7, 9);
	});

	it("keeps to the lowest place of a worn crown", () => {
		const read = crowns(() => 1.1);
		const worn = {
			...read,
			frets: read.frets.map((f) => (f.fret === 5 ? { fret: 5, heights: [1.1, 1.0, 1.1] } : f)),
		};
		const plan = planDressing(heights(worn));
		const fifth = plan.frets[4]!;
		expect(fifth.left).toBeCloseTo(1.0, 9);
		expect(fifth.off).toBeCloseTo(0.1, 9);
	});

	it("leaves tops with just the wanted relief, and takes the ends of straight ones down to it", () => {
		const [first, last] = [xOf(1), xOf(22)];
		const dip = (n: number) => {
			const share = (xOf(n) - first) / (last - first);
			return 0.2 * 4 * share * (1 - share);
		};
		const bent = planDressing(heights(crowns((n) => 1.2 - dip(n), { relief: 0.2 })));
		expect(bent.total).toBeCloseTo(0, 9);
		const straight = planDressing(heights(crowns(() => 1.2, { relief: 0.2 })));
		// Straight tops stand over any such curve most in the middle: both ends hold it.
		expect(straight.holding).toEqual([1, 22]);
		const middle = straight.frets.reduce((a, b) => (b.off > a.off ? b : a));
		expect(middle.off).toBeCloseTo(dip(middle.fret), 9);
		expect(straight.suggestion).toBe("dress");
	});

	it("ends with tops that need nothing more", () => {
		fc.assert(
			fc.property(
				fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 22, maxLength: 22 }),
				fc.integer({ min: 0, max: 30 }),
				(high, relief) => {
					const wanted = { relief: relief / 100 };
					const plan = planDressing(heights(crowns((n) => 1 + high[n - 1]! / 100, wanted)));
					expect(Math.min(...plan.frets.map(({ off }) => off))).toBeGreaterThan(-1e-9);
					const again = planDressing(heights(crowns((n) => plan.frets[n - 1]!.left, wanted)));
					expect(again.total).toBeCloseTo(0, 8);
					expect(again.suggestion === "dress").toBe(false);
				},
			),
			{ seed: 21, numRuns: 60 },
		);
	});

	it("says where the readings do not decide whether enough crown is left", () => {
		const plan = planDressing(heights(crowns((n) => (n === 9 ? 0.805 : 1.1))));
		expect(plan.notes.map(({ code }) => code)).toContain("crown-left-undecided");
	});
});
