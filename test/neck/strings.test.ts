import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/index.js";
import {
	centreLine,
	crossingOf,
	fretLine,
	lineLength,
	pointOnFret,
	stringLines,
} from "../../src/neck/index.js";
import { neckOf, neckWith } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";

describe("stringLines", () => {
	const six = neckWith({ strings: { count: 6, "at-nut": 36, "at-saddle": 52 } });

	it("run from bass to treble, equally spaced between the outer ones", () => {
		const lines = stringLines(six);
		expect(lines.map((l) => l.nut.y)).toEqual([-18, -10.8, -3.6, 3.6, 10.8, 18].map(near));
		expect(lines.map((l) => l.saddle.y)).toEqual([-26, -15.6, -5.2, 5.2, 15.6, 26].map(near));
		expect(lines.every((l) => l.nut.x === 0 && l.saddle.x === 647.7)).toBe(true);
	});

	it("stand in pairs about equally spaced courses", () => {
		const four = neckWith({
			strings: { courses: 4, "pair-gap": 2, "at-nut": 24, "at-saddle": 41 },
		});
		const atNut = stringLines(four).map((l) => l.nut.y);
		expect(atNut).toEqual(
			[-12, -10, -4.6666667, -2.6666667, 2.6666667, 4.6666667, 10, 12].map((y) =>
				expect.closeTo(y, 6),
			),
		);
	});

	it("lie on the other side of a left-handed neck", () => {
		const left = neckWith({ strings: { count: 6, "at-nut": 36, "at-saddle": 52 }, handed: "left" });
		expect(stringLines(left)[0]!.nut.y).toBeCloseTo(18, 12);
	});

	it("of a single string run along the centre", () => {
		const one = neckWith({ strings: { count: 1, "at-nut": 10, "at-saddle": 10 } });
		expect(stringLines(one)).toHaveLength(1);
		expect(stringLines(one)[0]!.nut.y).toBe(0);
	});

	it("are refused on a neck without strings", () => {
		expect(() => stringLines(neckWith({}))).toThrow(RangeError);
	});
});

function near(value: number) {
	return expect.closeTo(value, 9);
}

describe("crossingOf", () => {
	const fraction = fc.double({ min: -0.2, max: 1.2, noNaN: true });

	it("has the fret's own place on the centre line, without slant", () => {
		const neck = neckWith({});
		for (const n of [0, 1, 12, 22]) {
			const { along, slant, at } = crossingOf(neck, centreLine(neck), n);
			expect(along).toBeCloseTo(647.7 * (1 - 2 ** (-n / 12)), 10);
			expect(slant).toBe(0);
			expect(at.y).toBe(0);
		}
	});

	it("is where the fret's line and the string meet, on any neck", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, strings: true }), ({ job, drawn }) => {
				const neck = neckOf(job);
				const off = stringLines(neck).flatMap((line) =>
					[0, 1, drawn.frets].flatMap((n) => {
						const { at, along } = crossingOf(neck, line, n);
						const on = pointOnFret(fretLine(neck, n), at.y);
						const way = Math.hypot(at.x - line.nut.x, at.y - line.nut.y);
						return [Math.abs(on.x - at.x), Math.abs(Math.abs(along) - way)];
					}),
				);
				expect(Math.max(...off)).toBeLessThan(1e-9);
			}),
			RUNS,
		);
	});

	it("gives positions ℓ·u(n) on every line at a constant fraction between the outer strings", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), fraction, ({ job, drawn }, t) => {
				const neck = neckOf(job);
				const { bass, treble } = neck.guides;
				const between = (a: Point, b: Point) => ({
					x: a.x + (b.x - a.x) * t,
					y: a.y + (b.y - a.y) * t,
				});
				const line = {
					nut: between(bass.nut, treble.nut),
					saddle: between(bass.saddle, treble.saddle),
				};
				const size = lineLength(line);
				const off = Array.from({ length: drawn.frets }, (_, i) => {
					const { along } = crossingOf(neck, line, i + 1);
					return Math.abs(along - size * drawn.share(i + 1));
				});
				expect(Math.max(...off)).toBeLessThan(1e-9);
			}),
			RUNS,
		);
	});
});
