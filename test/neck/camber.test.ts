import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	camberUnder,
	centreLine,
	dropAt,
	fretLine,
	humpUnder,
	type StringLine,
	slantedRadius,
	stringLines,
} from "../../src/neck/index.js";
import { neckOf, neckWith } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";

const strings = { count: 6, "at-nut": 35, "at-saddle": 52.5 };

describe("slantedRadius", () => {
	it("is flatter than the square section by 1/cos² of the slant", () => {
		expect(slantedRadius(254, 0)).toBe(254);
		expect(slantedRadius(254, Math.PI / 4)).toBeCloseTo(508, 9);
	});

	it("is the radius of the ellipse that a slanted plane cuts from a cylinder, at its crown", () => {
		// Semi-axes a = R/cos φ along the cut and b = R: curvature at the flat end is b/a².
		const [radius, slant] = [254, 0.3];
		const a = radius / Math.cos(slant);
		expect(slantedRadius(radius, slant)).toBeCloseTo((a * a) / radius, 9);
	});
});

describe("dropAt", () => {
	it("is R − √(R² − y²)", () => {
		expect(dropAt(254, 28)).toBeCloseTo(254 - Math.sqrt(254 ** 2 - 28 ** 2), 10);
		expect(dropAt(254, -28)).toBe(dropAt(254, 28));
		expect(dropAt(254, 254)).toBe(254);
		expect(dropAt(254, 0)).toBe(0);
	});

	it("keeps its digits on the flattest board", () => {
		expect(dropAt(1e7, 20)).toBeCloseTo(2e-5, 15);
	});

	it("refuses a place beyond the circle", () => {
		expect(() => dropAt(20, 20.1)).toThrow(RangeError);
	});
});

describe("humpUnder", () => {
	const far = (neck: ReturnType<typeof neckWith>) => fretLine(neck, 22).x;

	it("is 0 on a flat board and under the centre line", () => {
		const flat = neckWith({ radius: "flat", strings });
		expect(humpUnder(flat, stringLines(flat)[0]!, 0, far(flat))).toBe(0);
		const round = neckWith({ radius: 184.15, strings });
		expect(humpUnder(round, centreLine(round), 0, far(round))).toBe(0);
	});

	it("is about (kR)²·D²/8R³ under a string of a cylinder", () => {
		const neck = neckWith({ radius: 184.15, strings });
		const k = 8.75 / 647.7;
		const wanted = (k * 184.15) ** 2 * far(neck) ** 2 * (1 / (8 * 184.15 ** 3));
		const found = humpUnder(neck, stringLines(neck)[0]!, 0, far(neck));
		expect(found / wanted).toBeCloseTo(1, 1);
	});

	it("is never a hollow where the radius grows evenly", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, strings: true }), ({ job }) => {
				const neck = neckOf(job);
				const outer = stringLines(neck)[0]!;
				const { hump, hollow } = camberUnder(neck, outer, 0, fretLine(neck, neck.frets).x);
				expect(hump).toBeGreaterThanOrEqual(0);
				expect(hollow).toBeLessThan(1e-9);
			}),
			RUNS,
		);
	});
});

describe("camberUnder", () => {
	const line: StringLine = { nut: { x: 0, y: 26 }, saddle: { x: 647.7, y: 26 } };

	it("finds the hollow where the radius begins to grow faster at a station", () => {
		const neck = neckWith({ radius: { nut: 254, "12": 267, "last-fret": 355 } });
		const [from, to] = [0, fretLine(neck, 22).x];
		const height = (x: number, r: number) => -dropAt(r, 26) - chord(x);
		const chord = (x: number) =>
			-dropAt(254, 26) + ((dropAt(254, 26) - dropAt(355, 26)) * (x - from)) / (to - from);
		const { hump, hollow } = camberUnder(neck, line, from, to);
		expect(hollow).toBeGreaterThan(0.19);
		expect(Math.abs(hollow + height(323.85, 267))).toBeLessThan(1e-3);
		expect(hump).toBe(0);
	});

	it("finds a hump where it grows slower there", () => {
		const neck = neckWith({ radius: { nut: 254, "12": 330, "last-fret": 340 } });
		const to = fretLine(neck, 22).x;
		const { hump, hollow } = camberUnder(neck, line, 0, to);
		// Over the chord at fret 12, where the radius bends.
		const ends = [dropAt(254, 26), dropAt(340, 26)] as const;
		const chord = ends[0] + ((ends[1] - ends[0]) * 323.85) / to;
		expect(Math.abs(hump - (chord - dropAt(330, 26)))).toBeLessThan(1e-3);
		expect(hump).toBeGreaterThan(0.07);
		expect(hollow).toBe(0);
	});
});
