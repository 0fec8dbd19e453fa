import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isWorded, pathText, problemText } from "../../src/problem/index.js";
import { READINGS_RADIUS } from "../../src/problem/words/readings-radius.js";
import {
	combinedRadius,
	type RadiusEstimate,
	type RadiusReading,
	radiusFrom,
} from "../../src/readings/index.js";
import { contactChord } from "../../src/readings/radius-by-light.js";
import { dropOf, found, heightsAcross, readRadius, STEPS } from "../support/radius-readings.js";
import { BAD_READINGS, readingFaultsRadius } from "../support/reading-faults-radius.js";
import { normal, seeded } from "../support/seeded.js";

const SEED = 20;
const radii = fc.double({ min: 100, max: 2000, noNaN: true });
const chords = fc.double({ min: 20, max: 70, noNaN: true });

/** Share of 2000 simulated readings whose radius interval holds the true radius. */
function coverage(radius: number, read: (next: () => number) => RadiusReading): number {
	const next = seeded(SEED);
	let held = 0;
	for (let i = 0; i < 2000; i++) {
		const { low, high } = readRadius(read(next)).radius!;
		if (low <= radius && radius <= high) held++;
	}
	return held / 2000;
}

describe("radiusFrom a chord", () => {
	it("gives back the radius whose sagitta was read", () => {
		fc.assert(
			fc.property(radii, chords, (radius, chord) => {
				const sagitta = dropOf(radius, chord / 2);
				const reading = { ...STEPS, kind: "chord", chord, sagitta } as const;
				expect(readRadius(reading).radius!.value / radius).toBeCloseTo(1, 9);
			}),
			{ seed: SEED },
		);
	});

	it("has the standard error of dR² = ((R − h)/h·dh)² + (c/4h·dc)²", () => {
		const [c, h] = [50, 1.25];
		const { radius, curvature } = readRadius({ ...STEPS, kind: "chord", chord: c, sagitta: h });
		const R = (c * c) / 8 / h + h / 2;
		const byHand = Math.hypot(((R - h) / h) * 0.01, (c / 4 / h) * 0.1) / Math.sqrt(12);
		expect(radius!.standard).toBeCloseTo(byHand, 12);
		expect(curvature.standard).toBeCloseTo(byHand / R ** 2, 15);
	});

	it("has that standard error in simulated readings too", () => {
		const next = seeded(SEED);
		const uniform = (step: number) => (next() - 0.5) * step;
		const read = Array.from({ length: 20_000 }, () => {
			const [chord, sagitta] = [50 + uniform(0.5), 1.25 + uniform(0.02)];
			return readRadius({ ...STEPS, kind: "chord", chord, sagitta }).radius!.value;
		});
		const mean = read.reduce((a, b) => a + b, 0) / read.length;
		const sd = Math.sqrt(read.reduce((s, v) => s + (v - mean) ** 2, 0) / read.length);
		const reading = { kind: "chord", chord: 50, sagitta: 1.25, on: "wood" } as const;
		const { radius } = readRadius({ ...reading, resolution: 0.02, chordResolution: 0.5 });
		expect(sd / radius!.standard).toBeGreaterThan(0.98);
		expect(sd / radius!.standard).toBeLessThan(1.02);
	});

	it("holds the true radius in 95 % of readings with Gaussian errors of the steps' sd", () => {
		const sd = 1 / Math.sqrt(12);
		const share = coverage(254, (next) => ({
			...STEPS,
			kind: "chord",
			chord: 50 + normal(next) * 0.1 * sd,
			sagitta: dropOf(254, 25) + normal(next) * 0.01 * sd,
		}));
		expect(share).toBeGreaterThan(0.93);
		expect(share).toBeLessThan(0.97);
	});

	it("finds a board flat whose sagitta is 0, unless a radius is wanted", () => {
		const reading = { ...STEPS, kind: "chord", chord: 50, sagitta: 0 } as const;
		const flat = readRadius(reading);
		expect(flat.flat).toBe(true);
		expect(flat.radius).toBeNull();
		expect(flat.curvature.standard).toBeCloseTo((8 / 2500) * (0.01 / Math.sqrt(12)), 12);
		expect(radiusFrom(reading, ["radius"], "radius")).toMatchObject([{ code: "no-camber" }]);
	});

	it("leaves a flat board open where the sagitta is within its uncertainty", () => {
		const { flat, radius } = readRadius({ ...STEPS, kind: "chord", chord: 50, sagitta: 0.005 });
		expect(flat).toBe(true);
		expect(radius!.high).toBe(Number.POSITIVE_INFINITY);
		expect(radius!.low).toBeGreaterThan(20_000);
	});

	it("takes the crowns' height off a radius read on crowns", () => {
		const reading = { ...STEPS, kind: "chord", chord: 50, sagitta: 1.23 } as const;
		const wood = readRadius(reading).radius!;
		const crowns = readRadius({ ...reading, on: "crowns", crownHeight: 1.2 }).radius!;
		expect(wood.value - crowns.value).toBeCloseTo(1.2, 9);
		expect(wood.standard).toBeCloseTo(crowns.standard, 9);
		expect(wood.high - crowns.high).toBeCloseTo(1.2, 9);
	});
});

/** What a dial midway between ball feet reads: circles put against the board by their contact alone. */
function dialOver(radius: number, chord: number, ball: number, tip: number): number {
	const feetUp = Math.sqrt((radius + ball) ** 2 - (chord / 2) ** 2) - ball;
	// Lowest place of the tip's centre on the axis at which it meets no point of the board.
	let lowest = -Infinity;
	for (let i = -1000; i <= 1000; i++) {
		const y = (i / 1000) * tip * 0.999;
		const top = Math.sqrt(radius ** 2 - y ** 2);
		lowest = Math.max(lowest, top + Math.sqrt(tip ** 2 - y ** 2));
	}
	return lowest - tip - feetUp;
}

describe("radiusFrom a bar gauge", () => {
	it("with ball feet and a ball tip gives the radius that circles in contact have", () => {
		for (const [radius, ball, tip] of [
			[184.15, 3, 1.5],
			[254, 1.5, 5],
			[508, 6, 1],
		] as const) {
			const dial = dialOver(radius, 40, ball, tip);
			const reading = { ...STEPS, kind: "bar", chord: 40, dial, ball, tip } as const;
			expect(readRadius(reading).radius!.value).toBeCloseTo(radius, 6);
			const { ball: _, ...edges } = reading;
			expect(readRadius(edges).radius!.value).toBeCloseTo(radius + ball, 6);
		}
	});
});

describe("radiusFrom heights", () => {
	it("finds the radius from any tilted line", () => {
		fc.assert(
			fc.property(radii, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (radius, tilt) => {
				const heights = heightsAcross(radius, [-24, -13, -1, 11, 25], tilt);
				const { value } = readRadius({ ...STEPS, kind: "heights", heights }).radius!;
				expect(value / radius).toBeCloseTo(1, 7);
			}),
			{ seed: SEED },
		);
	});

	it("finds a flat board flat, tilted too", () => {
		for (const tilt of [0, 0.1]) {
			const heights = [-24, -10, 0, 12, 24].map((y) => ({ y, height: 3 + y * tilt }));
			const { flat, curvature } = readRadius({ ...STEPS, kind: "heights", heights });
			expect(flat).toBe(true);
			expect(Math.abs(curvature.value)).toBeLessThan(1e-9);
		}
	});

	it("from three takes the steps alone: those of bar and dial over the same chord", () => {
		const heights = heightsAcross(254, [-25, 0, 25]);
		const three = readRadius({ ...STEPS, kind: "heights", heights, chordResolution: 1e-6 });
		// h = middle − mean of the ends: √1.5 of one reading's sd.
		const [c, h] = [50, dropOf(254, 25)];
		const byHand = ((254 - h) / h) * Math.sqrt(1.5) * (0.01 / Math.sqrt(12));
		expect(three.radius!.value).toBeCloseTo(254, 6);
		expect(three.radius!.standard / byHand).toBeCloseTo(1, 2);
		expect(three.chord).toBe(c);
		expect(three.notes.map((n) => n.code)).toEqual(["heights-three"]);
	});

	it("holds the true radius in 95 % of readings that scatter, by Student's t", () => {
		const ys = [-24, -18, -12, -6, 0, 6, 12, 18, 24];
		const heights = heightsAcross(254, ys);
		const share = coverage(254, (next) => ({
			...STEPS,
			chordResolution: 1e-3,
			resolution: 1e-4,
			kind: "heights",
			heights: heights.map(({ y, height }) => ({ y, height: height + normal(next) * 0.02 })),
		}));
		expect(share).toBeGreaterThan(0.93);
		expect(share).toBeLessThan(0.97);
	});

	it("holds it in 95 % of readings that scatter little more than their steps, four and five of them", () => {
		for (const ys of [
			[-24, -8, 8, 24],
			[-24, -12, 0, 12, 24],
		]) {
			const heights = heightsAcross(254, ys);
			const share = coverage(254, (next) => ({
				...STEPS,
				chordResolution: 1e-3,
				kind: "heights",
				heights: heights.map(({ y, height }) => ({ y, height: height + normal(next) * 0.0055 })),
			}));
			expect(share).toBeGreaterThan(0.94);
		}
	});

	it("holds it in 95 % or more of readings that are rounded to their step", () => {
		const next = seeded(SEED);
		const share = coverage(254, () => ({
			...STEPS,
			chordResolution: 1e-3,
			kind: "heights",
			heights: heightsAcross(254, [-24, -12, 0, 12, 24], (next() - 0.5) * 0.02).map(
				({ y, height }) => ({ y, height: Math.round(height / 0.01) * 0.01 }),
			),
		}));
		expect(share).toBeGreaterThan(0.94);
	});

	it("never claims less than the steps allow", () => {
		const heights = heightsAcross(254, [-24, -12, 0, 12, 24]);
		const fine = readRadius({ ...STEPS, kind: "heights", heights });
		const coarse = readRadius({
			...STEPS,
			resolution: 0.05,
			chordResolution: 0.5,
			kind: "heights",
			heights,
		});
		// Parabola through the five: Σ(y² − 288)² = 290304, sd of 1/R = 2·(r/√12)/√290304.
		const exact = readRadius({ ...STEPS, chordResolution: 1e-6, kind: "heights", heights });
		const byHand = (2 * (0.01 / Math.sqrt(12))) / Math.sqrt(290304);
		expect(exact.curvature.standard / byHand).toBeCloseTo(1, 1);
		expect(fine.radius!.standard).toBeGreaterThan(exact.radius!.standard);
		expect(coarse.radius!.standard / fine.radius!.standard).toBeCloseTo(5, 6);
		expect(fine.notes.map((n) => n.code)).toEqual(["heights-by-step"]);
	});
});

describe("radiusFrom light under a gauge", () => {
	const LIGHT = { ...STEPS, kind: "light", width: 60, board: 50 } as const;

	/** Light between circles: the gauge is let down on the board until it touches. */
	function lightBetween(board: number, gauge: number, half: number) {
		const gaps = Array.from({ length: 2001 }, (_, i) => {
			const y = ((i - 1000) / 1000) * half;
			return Math.sqrt(gauge ** 2 - y ** 2) - Math.sqrt(board ** 2 - y ** 2);
		});
		const lowest = Math.min(...gaps);
		return { middle: gaps[1000]! - lowest, edges: gaps[0]! - lowest };
	}

	it("finds the radius from circles let down on each other, light in the middle and at the edges", () => {
		for (const [board, gauge] of [
			[304.8, 254],
			[254, 304.8],
			[184.15, 508],
			[508, 184.15],
		] as const) {
			const light = lightBetween(board, gauge, 24);
			const where = gauge < board ? "middle" : "edges";
			expect(light[where === "middle" ? "edges" : "middle"]).toBeCloseTo(0, 12);
			const { radius } = readRadius({ ...LIGHT, gauge, where, gap: light[where] });
			expect(radius!.value).toBeCloseTo(board, 6);
		}
	});

	it("takes the narrower of gauge and board without its rolled edges", () => {
		expect(contactChord(60, 50, 1)).toBe(48);
		expect(contactChord(40, 50, 1)).toBe(40);
		const reading = { ...LIGHT, gauge: 254, where: "middle", gap: 0.05 } as const;
		expect(readRadius(reading).chord).toBe(48);
		expect(readRadius({ ...reading, rolled: 2 }).chord).toBe(46);
	});

	it("has the standard error that small changes of gap and width give", () => {
		const reading = { ...LIGHT, width: 40, gauge: 254, where: "edges", gap: 0.3 } as const;
		const at = (width: number, gap: number) => readRadius({ ...reading, width, gap }).radius!.value;
		const byGap = (at(40, 0.301) - at(40, 0.299)) / 0.002;
		const byWidth = (at(40.01, 0.3) - at(39.99, 0.3)) / 0.02;
		const byHand = Math.hypot(byGap * 0.01, byWidth * 0.1) / Math.sqrt(12);
		expect(readRadius(reading).radius!.standard / byHand).toBeCloseTo(1, 4);
	});

	it("without light gives the gauge's radius, and an interval from the smallest gap one can see", () => {
		const { radius, curvature } = readRadius({ ...LIGHT, gauge: 254, where: "none", gap: 0 });
		expect(radius!.value).toBeCloseTo(254, 9);
		const ends = (["middle", "edges"] as const).map(
			(where) => readRadius({ ...LIGHT, gauge: 254, where, gap: 0.02 }).curvature.value,
		);
		// 1.96·0.04/√12 = 0.0226 reaches a little beyond either gap of 0.02.
		expect(curvature.low).toBeLessThan(ends[0]!);
		expect(curvature.high).toBeGreaterThan(ends[1]!);
		expect((curvature.high - curvature.low) / (ends[1]! - ends[0]!)).toBeCloseTo(1.1316, 2);
	});
});

describe("radiusFrom bad readings", () => {
	it.each(BAD_READINGS)("refuses %s", (_, reading, code, place) => {
		const problems = radiusFrom(reading, ["radius", 0], "radius");
		expect(
			Array.isArray(problems) && problems.map((p) => [p.code, pathText(p.where.path)]),
		).toEqual([[code, ["radius[1]", place].filter(Boolean).join(".")]]);
	});

	it("doubts a radius over 5 m or below 100 mm, and gives it all the same", () => {
		const flat = readRadius({ ...STEPS, kind: "chord", chord: 50, sagitta: 0.05 });
		expect(flat.radius!.value).toBeCloseTo(6250, 0);
		const tight = readRadius({ ...STEPS, kind: "chord", chord: 1.97, sagitta: 0.05 });
		expect(tight.radius!.value).toBeLessThan(10);
		for (const { notes } of [flat, tight]) {
			expect(notes.map((n) => [n.code, n.severity])).toEqual([["radius-unlikely", "note"]]);
		}
	});

	it("meets every code that is worded for the radius", () => {
		const met = new Set(readingFaultsRadius().map((p) => p.code));
		expect(Object.keys(READINGS_RADIUS).filter((code) => !met.has(code))).toEqual([]);
	});

	it("words all that it finds, with facts that are given", () => {
		for (const problem of readingFaultsRadius()) {
			expect(isWorded(problem.code)).toBe(true);
			expect(problemText(problem)).not.toMatch(/undefined|NaN\b(?!\.)|\s{2}| {2}mm| mm mm/u);
		}
	});
});

describe("combinedRadius", () => {
	const bar = (radius: number, resolution: number, off = 0) =>
		readRadius({
			...STEPS,
			resolution,
			chordResolution: 1e-6,
			kind: "bar",
			chord: 50,
			dial: dropOf(radius, 25) + off,
		});

	it("weighs curvatures by their standard errors", () => {
		const [a, b] = [bar(254, 0.01, 0.002), bar(254, 0.02, -0.003)];
		const { curvature } = found(combinedRadius([a, b]));
		const [p, q] = [a.curvature.standard ** -2, b.curvature.standard ** -2];
		expect(curvature.value).toBeCloseTo(
			(a.curvature.value * p + b.curvature.value * q) / (p + q),
			14,
		);
		expect(curvature.standard).toBeCloseTo(1 / Math.sqrt(p + q), 12);
	});

	it("holds the true radius in 95 % of readings with Gaussian errors", () => {
		const next = seeded(SEED);
		let held = 0;
		let named = 0;
		for (let i = 0; i < 2000; i++) {
			const read = [0.01, 0.02, 0.01].map((step) =>
				bar(254, step, (normal(next) * step) / Math.sqrt(12)),
			);
			const { radius, notes } = found(combinedRadius(read));
			if (radius!.low <= 254 && 254 <= radius!.high) held++;
			if (notes.length > 0) named++;
		}
		expect(held / 2000).toBeGreaterThan(0.93);
		expect(held / 2000).toBeLessThan(0.97);
		expect(named / 2000).toBeLessThan(0.02);
	});

	it("names the reading that disagrees, and widens the interval", () => {
		const read: RadiusEstimate[] = [bar(254, 0.01), bar(254, 0.01, 0.002), bar(304.8, 0.01)];
		const { notes, curvature } = found(combinedRadius(read));
		expect(notes).toMatchObject([{ code: "readings-disagree", severity: "note" }]);
		expect(notes[0]!.facts.readings).toContain("3 (bar 50 mm)");
		expect(curvature.standard).toBeGreaterThan(
			5 * found(combinedRadius(read.slice(0, 2))).curvature.standard,
		);
	});

	it("gives one reading back, and refuses none", () => {
		const only = bar(254, 0.01);
		expect(combinedRadius([only])).toBe(only);
		expect(combinedRadius([])).toMatchObject([{ code: "no-radius-readings" }]);
	});
});
