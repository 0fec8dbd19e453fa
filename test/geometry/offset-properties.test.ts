import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	closed,
	moved,
	offset,
	type Path,
	pathLength,
	rectangle,
	reversed,
	segments,
	selfCrossings,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { GRID_DISTANCES, notchedGrid, random, randomContour } from "../support/offset-cases.js";
import { covers, judge } from "../support/offset-oracle.js";

const seed = fc.integer({ min: 1, max: 2 ** 31 - 1 });
const contour = seed.map((s) => randomContour(random(s)));
const size = fc.double({ min: 0.05, max: 1.5, noNaN: true });
const distance = fc.oneof(
	fc.constantFrom(0.075, -0.075, 0.1, -0.1, 1.5875, -1.5875),
	fc.double({ min: -3, max: 3, noNaN: true }).filter((d) => Math.abs(d) > 0.01),
);

const areaOf = (paths: readonly Path[]) => paths.reduce((sum, p) => sum + signedArea(p), 0);
const lengthOf = (paths: readonly Path[]) => paths.reduce((sum, p) => sum + pathLength(p), 0);
const closing = (paths: readonly Path[], radius: number) =>
	offset(offset(paths, radius).paths, -radius).paths;

/** A property that holds of a fixed set of examples; a failing one is told as it is. */
function holds<T extends [unknown, ...unknown[]]>(
	property: fc.IPropertyWithHooks<T>,
	numRuns = 60,
): void {
	fc.assert(property, { seed: 7, numRuns, endOnFailure: true });
}

describe("the offset of any contour", () => {
	test("is at the distance from it everywhere", () => {
		holds(
			fc.property(contour, distance, (path, d) => {
				expect(judge([path], offset([path], d).paths, d, random(1), 0).error).toBeLessThan(1e-6);
			}),
		);
	});

	test("holds exactly the points with a signed distance below it", () => {
		holds(
			fc.property(contour, distance, (path, d) => {
				const verdict = judge([path], offset([path], d).paths, d, random(1), 100);
				expect(verdict.misplaced).toBe(0);
				expect(verdict.tested).toBeGreaterThan(150);
			}),
		);
	});

	test("by a and then by b is that by a + b, for a and b above 0", () => {
		holds(
			fc.property(contour, size, size, (path, a, b) => {
				const twice = areaOf(offset(offset([path], a).paths, b).paths);
				expect(Math.abs(twice - areaOf(offset([path], a + b).paths))).toBeLessThan(1e-7);
			}),
		);
	});

	test("does not depend on how it lies", () => {
		const turn = fc.double({ min: 0, max: 6.28, noNaN: true });
		holds(
			fc.property(contour, distance, turn, fc.boolean(), (path, d, t, mirror) => {
				const there = moved(path, { x: 13, y: -7, turn: t, mirror });
				const area = areaOf(offset([mirror ? reversed(there) : there], d).paths);
				expect(Math.abs(area - areaOf(offset([path], d).paths))).toBeLessThan(1e-7);
			}),
		);
	});

	test("runs clear of itself, with radii r ± d of its arcs or d of its corners", () => {
		holds(
			fc.property(contour, distance, (path, d) => {
				const { paths, sources } = offset([path], d);
				const given = segments(path);
				for (const [i, result] of paths.entries()) {
					expect(selfCrossings(result)).toEqual([]);
					for (const [k, s] of segments(result).entries()) {
						const { segment, corner } = sources[i]![k]!;
						const source = given[segment]!;
						expect(s.kind).toBe(corner ? "arc" : source.kind);
						if (s.kind === "line") continue;
						const radius = source.kind === "arc" ? source.radius + Math.sign(source.sweep) * d : 0;
						expect(Math.abs(s.radius - (corner ? Math.abs(d) : radius))).toBeLessThan(1e-6);
					}
				}
			}),
		);
	});

	test("as a hole in a plate is the plate's less that of the contour the other way", () => {
		const plate = rectangle(-200, -200, 200, 200);
		holds(
			fc.property(contour, size, (path, d) => {
				const pierced = areaOf(offset([plate, reversed(path)], d).paths);
				const apart = areaOf(offset([plate], d).paths) - areaOf(offset([path], -d).paths);
				expect(Math.abs(pierced - apart)).toBeLessThan(1e-7);
			}),
		);
	});
});

describe("the closing of any contour, grown and shrunk back", () => {
	test("holds the contour, and its own closing is itself", () => {
		holds(
			fc.property(contour, size, seed, (path, radius, s) => {
				const once = closing([path], radius);
				const twice = closing(once, radius);
				expect(Math.abs(areaOf(twice) - areaOf(once))).toBeLessThan(1e-7);
				expect(areaOf(once)).toBeGreaterThan(signedArea(path) - 1e-7);
				const next = random(s);
				for (let i = 0; i < 20; i++) {
					const p = { x: 120 * next() - 60, y: 120 * next() - 60 };
					if (covers([path], p)) expect(covers(once, p)).toBe(true);
				}
			}),
		);
	});
});

/** J. Steiner's formula for convex bodies (1840, from memory): area A + Ld + πd², length L + 2πd. */
test("a convex polygon grows by Steiner's formula", () => {
	holds(
		fc.property(fc.integer({ min: 3, max: 11 }), seed, size, (n, s, d) => {
			const next = random(s);
			const polygon = closed(
				...Array.from({ length: n }, (_, i) => {
					const angle = ((i + 0.1 + 0.8 * next()) / n) * 2 * Math.PI;
					return vertex(20 * Math.cos(angle), 20 * Math.sin(angle));
				}),
			);
			const { paths } = offset([polygon], d);
			expect(paths).toHaveLength(1);
			const [area, around] = [signedArea(polygon), pathLength(polygon)];
			expect(areaOf(paths)).toBeCloseTo(area + around * d + Math.PI * d * d, 8);
			expect(lengthOf(paths)).toBeCloseTo(around + 2 * Math.PI * d, 8);
		}),
	);
});

test("on a grid, where gaps and tongues just close, it is as exact", () => {
	const step = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 2, max: 9 }));
	holds(
		fc.property(
			fc.array(step, { minLength: 3, maxLength: 8 }),
			fc.constantFrom(...GRID_DISTANCES),
			(steps, d) => {
				const path = notchedGrid(steps);
				const verdict = judge([path], offset([path], d).paths, d, random(3), 100);
				expect(verdict.error).toBeLessThan(1e-6);
				expect(verdict.misplaced).toBe(0);
			},
		),
		120,
	);
});
