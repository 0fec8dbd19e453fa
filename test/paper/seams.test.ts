import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Stretch, seams } from "../../src/paper/seams.js";

function stretch(given: Partial<Stretch>): Stretch {
	return { from: 0, to: 480, window: 250, overlap: 15, avoid: [], ...given };
}

/** What each page shows, from half an overlap before its first seam to half of one past its last. */
function shownOf({ from, to, overlap }: Stretch, cuts: readonly number[]): [number, number][] {
	const half = overlap / 2;
	return [from, ...cuts].map((start, i) => [
		i === 0 ? from : start - half,
		cuts[i] === undefined ? to : cuts[i]! + half,
	]);
}

describe("seams", () => {
	it("are none where one page holds the drawing", () => {
		expect(seams(stretch({ to: 250 }))).toEqual([]);
	});

	it("are one for 480 mm on pages of 250 mm that share 15, at the middle", () => {
		expect(seams(stretch({}))).toEqual([240]);
	});

	it("take three pages from 485 mm on, which is all that two hold: 2 x 250 - 15", () => {
		expect(seams(stretch({ to: 485 }))).toHaveLength(1);
		expect(seams(stretch({ to: 485.1 }))).toHaveLength(2);
	});

	it("shift by as little as takes them off a line in their way", () => {
		const avoid = [{ from: 239, to: 241.2, weight: 1000 }];
		expect(seams(stretch({ to: 470, avoid: [] }))).toEqual([235]);
		expect(seams(stretch({ avoid }))).toEqual([239]);
	});

	it("rather run through a label than through a line", () => {
		const avoid = [
			{ from: 230, to: 242, weight: 1000 },
			{ from: 242, to: 250, weight: 1 },
		];
		expect(seams(stretch({ to: 470, avoid }))[0]).toBe(230);
		const both = [{ from: 222, to: 242, weight: 1000 }, avoid[1]!];
		expect(seams(stretch({ to: 470, avoid: both }))[0]).toBe(242);
	});

	it("take one page more where the fewest leave no room to shift", () => {
		const avoid = [{ from: 236, to: 249, weight: 1000 }];
		const cuts = seams(stretch({ to: 485, avoid }));
		expect(cuts).toHaveLength(2);
		expect(cuts.some((at) => at > 236 && at < 249)).toBe(false);
	});

	it("are taken evenly where nothing can be avoided", () => {
		expect(seams(stretch({ avoid: [{ from: 0, to: 480, weight: 1000 }] }))).toEqual([240]);
	});

	it("need an overlap less than the page", () => {
		expect(() => seams(stretch({ overlap: 250 }))).toThrow(RangeError);
	});

	it("leave every page within its window and shun what can be shunned, whatever the lines", () => {
		const line = fc.record({
			from: fc.double({ min: 0, max: 900, noNaN: true }),
			width: fc.double({ min: 0.5, max: 3, noNaN: true }),
		});
		const given = fc.record({
			to: fc.double({ min: 100, max: 1000, noNaN: true }),
			window: fc.double({ min: 120, max: 300, noNaN: true }),
			overlap: fc.double({ min: 8, max: 40, noNaN: true }),
			lines: fc.array(line, { maxLength: 24 }),
		});
		const missed = { count: 0 };
		fc.assert(
			fc.property(given, ({ to, window, overlap, lines }) => {
				const avoid = lines.map((l) => ({ from: l.from, to: l.from + l.width, weight: 1000 }));
				const asked = { from: 0, to, window, overlap, avoid };
				const cuts = seams(asked);
				for (const [a, b] of shownOf(asked, cuts)) expect(b - a).toBeLessThanOrEqual(window + 1e-6);
				if (cuts.some((at) => avoid.some((l) => at > l.from && at < l.to))) missed.count++;
			}),
			{ numRuns: 300, seed: 5 },
		);
		expect(missed.count).toBe(0);
	});
});
