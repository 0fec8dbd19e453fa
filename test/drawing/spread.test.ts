import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spread } from "../../src/drawing/spread.js";

const RUNS = { seed: 41, numRuns: 200 };
const rising = fc
	.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 1, maxLength: 30 })
	.map((steps) => steps.map((_, i) => steps.slice(0, i + 1).reduce((a, b) => a + b, -50)));
const gap = fc.double({ min: 0.1, max: 12, noNaN: true });

const cost = (wanted: readonly number[], found: readonly number[]) =>
	found.reduce((sum, x, i) => sum + (x - wanted[i]!) ** 2, 0);

describe("spread", () => {
	it("moves two that are too near apart by the same way", () => {
		expect(spread([0, 1, 10], 4)).toEqual([-1.5, 2.5, 10]);
	});

	it("leaves alone what is far enough apart", () => {
		expect(spread([3, 8, 20], 5)).toEqual([3, 8, 20]);
		expect(spread([7], 5)).toEqual([7]);
		expect(spread([], 5)).toEqual([]);
	});

	it("pushes on into neighbours", () => {
		expect(spread([0, 0, 0, 5], 4)).toEqual([-4.75, -0.75, 3.25, 7.25]);
	});

	it("keeps the distance between all neighbours", () => {
		fc.assert(
			fc.property(rising, gap, (wanted, least) => {
				const found = spread(wanted, least);
				const gaps = found.slice(1).map((x, i) => x - found[i]!);
				expect(Math.min(least, ...gaps)).toBeGreaterThan(least - 1e-9);
			}),
			RUNS,
		);
	});

	it("is as near to the wanted places as any that keeps the distance", () => {
		const nudge = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), {
			minLength: 30,
			maxLength: 30,
		});
		fc.assert(
			fc.property(rising, gap, nudge, (wanted, least, by) => {
				const found = spread(wanted, least);
				// Another allowed set: the found one nudged, then drawn apart from the left.
				const other: number[] = [];
				found.forEach((x, i) => {
					other.push(Math.max(x + by[i]!, (other[i - 1] ?? -1e9) + least));
				});
				expect(cost(wanted, found)).toBeLessThanOrEqual(cost(wanted, other) + 1e-9);
			}),
			RUNS,
		);
	});
});
