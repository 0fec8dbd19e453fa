import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import {
	circle,
	closed,
	extents,
	offset,
	type Path,
	rectangle,
	reversed,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { type Cutter, holesAmong, loadCutter } from "../../src/proof/cut.js";
import { leftAfterCut } from "../support/cut-with-beam.js";

let cutter: Cutter;
beforeAll(async () => {
	cutter = await loadCutter();
});

const area = (paths: readonly Path[]) => paths.map((p) => Math.abs(signedArea(p)));

describe("what a beam leaves", () => {
	it("of a rectangle is half the beam less on every side, its corners sharp", () => {
		const [left, ...none] = cutter([rectangle(0, 0, 40, 20)], 0.2);
		expect(none).toEqual([]);
		expect(left!.points.length).toBe(4);
		const { minX, minY, maxX, maxY } = extents(left!);
		[minX, minY, maxX, maxY].forEach((v, i) => {
			expect(v).toBeCloseTo([0.1, 0.1, 39.9, 19.9][i]!, 6);
		});
	});

	it("of a plate with a hole is smaller outside and wider inside, whichever way both run", () => {
		const outline = circle({ x: 0, y: 0 }, 20);
		const hole = circle({ x: 3, y: 0 }, 5);
		for (const [a, b] of [
			[outline, reversed(hole)],
			[reversed(outline), hole],
			[outline, hole],
		] as const) {
			const [one, two] = area(cutter([a, b], 0.16));
			// A chord 0.2 µm beside its arc lacks at most so much all around.
			expect(one).toBeCloseTo(Math.PI * 19.92 ** 2, 1);
			expect(two).toBeCloseTo(Math.PI * 5.08 ** 2, 1);
		}
	});

	it("keeps a fillet of half the beam in an inside corner", () => {
		// An angle of 20 × 20 with legs 8 wide: one inside corner at (8, 8).
		const legs = [0, 0, 20, 0, 20, 8, 8, 8, 8, 20, 0, 20];
		const corners = legs.flatMap((x, i) => (i % 2 === 0 ? [vertex(x, legs[i + 1]!)] : []));
		const angle = closed(...corners);
		const [path] = offset([angle], 0.1).paths;
		const [left] = cutter([path!], 0.2);
		// Beyond the corner stands the corner of a square of side r, less a quarter disc.
		const fillet = 0.1 ** 2 * (1 - Math.PI / 4);
		expect(signedArea(left!)).toBeCloseTo(signedArea(angle) + fillet, 4);
	});

	it("is nothing of a path that is narrower than the beam", () => {
		expect(cutter([rectangle(0, 0, 40, 0.1)], 0.2)).toEqual([]);
	});

	it("is what the general difference of outline and sweep leaves", () => {
		const size = fc.double({ min: 2, max: 60, noNaN: true });
		const bulge = fc.double({ min: 0, max: 0.4, noNaN: true });
		fc.assert(
			fc.property(size, size, bulge, (w, h, bend) => {
				const outline = closed(vertex(0, 0, bend), vertex(w, 0), vertex(w, h), vertex(0, h));
				const hole = circle({ x: w / 2, y: h / 2 }, Math.min(w, h) / 4);
				const own = cutter([outline, reversed(hole)], 0.16);
				const polygons = leftAfterCut([outline, hole], 0.16);
				const other = polygons.map((points): Path => {
					return closed(...points.map(({ x, y }) => vertex(x, y)));
				});
				// The rim between hole and sweep's inner side is waste: what lies outside the hole counts.
				const biggest = (paths: readonly Path[]) => Math.max(...area(paths));
				expect(biggest(own)).toBeCloseTo(biggest(other), 2);
			}),
			{ seed: 11, numRuns: 30 },
		);
	});
});

describe("holes", () => {
	it("are what lies within an odd number of contours", () => {
		const nest = [30, 20, 10].map((r) => circle({ x: 0, y: 0 }, r));
		expect(holesAmong([...nest, circle({ x: 100, y: 0 }, 5)])).toEqual([false, true, false, false]);
	});
});
