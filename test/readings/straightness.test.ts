import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { crossingOf, fretLine, humpUnder, type Neck, stringLines } from "../../src/neck/index.js";
import {
	alongOf,
	camberOver,
	fitRelief,
	type Relief,
	readLine,
	type Straightedge,
	type StraightnessReading,
	sagAt,
} from "../../src/readings/index.js";
import { heightOn, reliefCurve } from "../../src/readings/straightness-curve.js";
import { naturalSpline } from "../../src/readings/straightness-spline.js";
import { MATERIALS, type MaterialName, sagOnEdge } from "../../src/shop/index.js";
import { neckWith } from "../support/made-parts.js";
import { GAPS } from "../support/reading-faults-board.js";
import { seeded } from "../support/seeded.js";

const STRINGS = { count: 6, "at-nut": 35, "at-saddle": 52.5 };
const bar = (values: Partial<Straightedge> = {}) => ({
	material: "acrylic" as MaterialName,
	thickness: 6,
	height: 40,
	length: 480,
	...values,
});
const fret = (n: number) => ({ kind: "fret", fret: n }) as const;
const relief = (reading: StraightnessReading, neck: Neck): Relief => {
	const fit = fitRelief(reading, neck);
	if (Array.isArray(fit)) throw new Error(JSON.stringify(fit));
	return fit;
};
const codes = (reading: StraightnessReading, neck: Neck) => {
	const fit = fitRelief(reading, neck);
	return (Array.isArray(fit) ? fit : fit.notes).map(({ code }) => code);
};

/** Sag by adding up the bending moment twice in small steps, with no formula for the deflection. */
function sagByMoments(
	edge: ReturnType<typeof bar>,
	span: number,
	before: number,
	at: number,
): number {
	const { density, modulus } = MATERIALS[edge.material];
	const l = span / 1000;
	const c = before / 1000;
	const weight = density * 9.80665 * (edge.thickness / 1000) * (edge.height / 1000);
	const stiff = (modulus * 1e9 * (edge.thickness / 1000) * (edge.height / 1000) ** 3) / 12;
	const total = edge.length / 1000;
	const first = (weight * total * (l - (total / 2 - c))) / l;
	const moment = (x: number) => first * x - (weight * (x + c) ** 2) / 2;
	const steps = 18_400;
	const h = l / steps;
	const height = [0];
	let slope = 0;
	for (let i = 0; i < steps; i++) {
		height.push(height[i]! + (slope + (moment((i + 0.25) * h) / stiff) * (h / 2)) * h);
		slope += (moment((i + 0.5) * h) / stiff) * h;
	}
	const share = at / span;
	// The curve starts level; the contacts' line is then tilted to meet it.
	return (share * height[steps]! - height[Math.round(share * steps)]!) * 1000;
}

describe("sagAt", () => {
	// Formula handbook, 5wL⁴/384EI of a bar 480 × 40 mm on its ends, with usual trade moduli.
	it.each([
		["steel", 0.002, 5e-6],
		["aluminium", 0.00199, 5e-6],
		["acrylic", 0.0202, 5e-5],
		["plywood", 0.0038, 5e-5],
		["mdf", 0.0109, 5e-5],
	] as const)("is the handbook's in the middle of %s", (material, sag, rounding) => {
		const found = sagAt(bar({ material }), 480, 240);
		expect(Math.abs(found - sag)).toBeLessThan(rounding);
		expect(found).toBeCloseTo(sagOnEdge(MATERIALS[material], 480, 40), 12);
	});

	it("is 57/80 of it at a quarter of the length", () => {
		// x(L³ − 2Lx² + x³)/24 against 5L⁴/384: 19/2048 to 5/384 is 57/80.
		const quarter = sagAt(bar(), 480, 120) / sagAt(bar(), 480, 240);
		expect(quarter).toBeCloseTo(57 / 80, 12);
		expect(sagAt(bar(), 480, 0)).toBe(0);
		expect(sagAt(bar(), 480, 480)).toBeCloseTo(0, 15);
	});

	it("loses 24c²/5L² in the middle to equal overhangs c, as formula handbooks have it", () => {
		const plain = sagAt(bar({ length: 400 }), 400, 200);
		const over = sagAt(bar({ length: 500 }), 400, 200);
		expect(over / plain).toBeCloseTo(1 - (24 * 50 ** 2) / (5 * 400 ** 2), 12);
	});

	it("lifts the middle on contacts near enough", () => {
		expect(sagAt(bar({ length: 480 }), 200, 100)).toBeLessThan(0);
	});

	it("agrees with the bending moment added up, whatever the overhangs", () => {
		const edge = bar({ length: 620, overhang: 120 });
		for (const at of [60, 200, 350, 440]) {
			const wanted = sagByMoments(edge, 460, 120, at);
			expect(Math.abs(sagAt(edge, 460, at) - wanted)).toBeLessThan(1e-6);
			expect(Math.abs(wanted)).toBeGreaterThan(1e-3);
		}
	});

	it("does not depend on the thickness", () => {
		expect(sagAt(bar({ thickness: 3 }), 460, 230)).toBe(sagAt(bar(), 460, 230));
	});

	it("refuses a place beyond the contacts", () => {
		expect(() => sagAt(bar(), 400, 401)).toThrow(RangeError);
	});
});

describe("camberOver", () => {
	// Computed from the circular section: 7.25 in, 10 in, and 10 to 16 in by distance, outer string, nut to fret 22.
	it.each([
		[184.15, 0.02741],
		[254, 0.01969],
		[{ nut: 254, "last-fret": 406.4 }, 0.00427],
	])("has the board's hump as its top: radius %o", (radius, hump) => {
		const neck = neckWith({ radius, strings: STRINGS });
		const line = stringLines(neck)[0]!;
		const to = alongOf(neck, line, { kind: "last-fret" });
		const xs = Array.from({ length: 500 }, (_, i) => (to * i) / 500);
		const top = Math.max(...xs.map((x) => camberOver(neck, line, 0, to, x)));
		expect(Math.abs(top - hump)).toBeLessThan(6e-6);
		expect(top).toBeCloseTo(humpUnder(neck, line, 0, to), 12);
	});

	it("is 0 on a flat board and under the centre line", () => {
		const flat = neckWith({ radius: "flat", strings: STRINGS });
		expect(camberOver(flat, stringLines(flat)[0]!, 0, 400, 200)).toBe(0);
		const round = neckWith({ radius: 184.15, strings: STRINGS });
		expect(camberOver(round, readLine(round, "centre")!, 0, 400, 200)).toBe(0);
	});
});

describe("readLine", () => {
	it("counts strings from the outer treble string", () => {
		const neck = neckWith({ strings: STRINGS });
		expect(readLine(neck, 1)).toEqual(readLine(neck, "treble"));
		expect(readLine(neck, 6)).toEqual(readLine(neck, "bass"));
		expect(readLine(neck, 7)).toBeNull();
		expect(readLine(neck, 1.5)).toBeNull();
	});
});

describe("naturalSpline", () => {
	it("is the worked example through (1, 2), (2, 3), (3, 5)", () => {
		// Burden and Faires, Numerical Analysis, section on cubic splines (from memory):
		// 2 + 3/4(x − 1) + 1/4(x − 1)³, then 3 + 3/2(x − 2) + 3/4(x − 2)² − 1/4(x − 2)³.
		const spline = naturalSpline([1, 2, 3], [2, 3, 5]);
		expect(spline.at(1.5)).toBeCloseTo(2 + 0.375 + 0.03125, 12);
		expect(spline.at(2.5)).toBeCloseTo(3 + 0.75 + 0.1875 - 0.03125, 12);
		expect(spline.slope(1)).toBeCloseTo(0.75, 12);
		expect(spline.slope(2)).toBeCloseTo(1.5, 12);
		expect(spline.bend(2)).toBeCloseTo(1.5, 12);
		expect(spline.bend(3)).toBeCloseTo(0, 12);
	});

	it("has slope and bend that are its own, at uneven knots", () => {
		const spline = naturalSpline([0, 1, 4, 5, 9], [1, 3, -1, 0, 2]);
		for (const x of [0.4, 2.2, 4.5, 7]) {
			const h = 1e-4;
			const slope = (spline.at(x + h) - spline.at(x - h)) / (2 * h);
			expect(spline.slope(x)).toBeCloseTo(slope, 6);
			const bend = (spline.slope(x + h) - spline.slope(x - h)) / (2 * h);
			expect(spline.bend(x)).toBeCloseTo(bend, 6);
		}
		expect(spline.slope(4 - 1e-9)).toBeCloseTo(spline.slope(4 + 1e-9), 6);
	});
});

describe("fitRelief", () => {
	const RADIUS = 184.15;
	const round = neckWith({ radius: RADIUS, strings: STRINGS });
	const plain = neckWith({ strings: STRINGS });

	/** The gap under a sagging bar on a bent cylinder, worked out beside the project's own formulas. */
	function gapOf(planted: number, edge: ReturnType<typeof bar>, x: number, to: number): number {
		const drop = (at: number) => {
			const y = 17.5 + (8.75 * at) / Math.hypot(647.7, 8.75);
			return RADIUS - Math.sqrt(RADIUS ** 2 - y ** 2);
		};
		const hump = drop(0) + ((drop(to) - drop(0)) * x) / to - drop(x);
		const share = x / to;
		const before = (edge.length - to) / 2;
		return planted * 4 * share * (1 - share) - sagByMoments(edge, to, before, x) - hump;
	}

	it("gives back 0.15 mm planted under an outer string of a 7.25 in cylinder, read with a sagging bar", () => {
		const edge = bar({ height: 30, length: 480 });
		const line = stringLines(round)[0]!;
		const to = crossingOf(round, line, 22).along;
		const frets = [2, 4, 6, 8, 10, 13, 16, 19];
		const gaps = frets.map((n) => ({
			at: fret(n),
			gap: gapOf(0.15, edge, crossingOf(round, line, n).along, to),
		}));
		const reading = { along: "bass", on: "wood", gaps, resolution: 0.01, bar: edge } as const;
		const found = relief(reading, round);
		expect(Math.abs(found.largest.value - 0.15)).toBeLessThan(1e-4);
		expect(Math.abs(found.place!.value - to / 2)).toBeLessThan(1);
		expect(found.fret).toBe(8);
		expect(found.curve).toBe("arch");
		const eighth = found.points[3]!;
		expect(eighth.reading + eighth.sag + eighth.hump).toBe(eighth.relief);
		// Uncorrected the same gaps would have told over 0.05 mm less.
		expect(eighth.sag).toBeGreaterThan(0.03);
		expect(eighth.hump).toBeGreaterThan(0.026);
		const taken = relief({ ...reading, along: "centre", bar: null }, round);
		expect(taken.largest.value).toBeLessThan(0.1);
	});

	it("gives back any arch with a lean, and its place, from exact gaps", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.05, max: 0.6, noNaN: true }),
				fc.double({ min: -0.8, max: 0.8, noNaN: true }),
				(height, lean) => {
					const to = fretLine(plain, 22).x;
					const curve = (x: number) => {
						const s = x / to;
						return height * s * (1 - s) * (1 + lean * (2 * s - 1));
					};
					const gaps = [2, 5, 9, 14, 18].map((n) => ({
						at: fret(n),
						gap: curve(fretLine(plain, n).x),
					}));
					const found = relief({ ...GAPS, gaps }, plain);
					const xs = Array.from({ length: 2000 }, (_, i) => (to * (i + 0.5)) / 2000);
					const top = xs.reduce((a, b) => (curve(b) > curve(a) ? b : a));
					expect(Math.abs(found.largest.value - curve(top))).toBeLessThan(1e-6);
					expect(Math.abs(found.place!.value - top)).toBeLessThan(to / 2000);
				},
			),
			{ seed: 31, numRuns: 40 },
		);
	});

	it("gives an interval that holds the true relief about 95 times in 100 at coarse steps", () => {
		const next = seeded(11);
		const to = fretLine(plain, 22).x;
		const step = 0.05;
		let [held, wide] = [0, 0];
		for (let i = 0; i < 400; i++) {
			const [height, lean] = [0.12 + 0.3 * next(), next() - 0.5];
			const curve = (x: number) =>
				4 * height * (x / to) * (1 - x / to) * (1 + lean * ((2 * x) / to - 1));
			const gaps = [2, 4, 6, 8, 11, 14, 18].map((n) => ({
				at: fret(n),
				gap: Math.round(curve(fretLine(plain, n).x) / step) * step,
			}));
			const { largest, at, place } = relief({ ...GAPS, gaps, resolution: step }, plain);
			const xs = Array.from({ length: 300 }, (_, k) => (to * k) / 300);
			const truth = Math.max(...xs.map(curve));
			if (largest.low <= truth && truth <= largest.high) held++;
			wide = Math.max(wide, largest.high - largest.low);
			expect(at(place!.value).value).toBeCloseTo(largest.value, 12);
		}
		expect(held / 400).toBeGreaterThan(0.92);
		expect(held / 400).toBeLessThan(1);
		expect(wide).toBeLessThan(2 * step);
	});

	it("follows a board with a shape of its own through every reading, and says so", () => {
		const gaps = [3, 6, 9, 13, 18].map((n, i) => ({
			at: fret(n),
			gap: [0.1, 0.2, 0.05, 0.2, 0.1][i]!,
		}));
		const found = relief({ ...GAPS, gaps }, plain);
		expect(found.curve).toBe("points");
		expect(found.notes.map(({ code }) => code)).toEqual(["relief-not-one-arch"]);
		for (const { x, relief: wanted } of found.points) {
			expect(found.at(x).value).toBeCloseTo(wanted, 12);
			expect(found.at(x).standard).toBeCloseTo(0.01 / Math.sqrt(12), 12);
		}
		expect(found.at(0).value).toBeCloseTo(0, 12);
		expect(() => found.at(-1)).toThrow(RangeError);
	});

	it("keeps the step of the readings in the standard error, and a tenth of the sag", () => {
		const rigid = relief(GAPS, plain).points[2]!;
		expect(rigid.standard).toBeCloseTo(0.01 / Math.sqrt(12), 12);
		expect([rigid.sag, rigid.hump]).toEqual([0, 0]);
		const sagging = relief({ ...GAPS, bar: bar({ length: 520 }) }, plain).points[2]!;
		expect(sagging.standard).toBeCloseTo(
			Math.hypot(0.01 / Math.sqrt(12), (sagging.sag * 0.1) / Math.sqrt(3)),
			12,
		);
	});

	it("takes an arch without lean through two places where one fits", () => {
		const even = reliefCurve(
			[
				{ x: 25, relief: 0.075 },
				{ x: 50, relief: 0.1 },
			],
			0,
			100,
			0.01,
		);
		expect(even.shapes).toHaveLength(1);
		expect(heightOn(even, 75).value).toBeCloseTo(0.075, 12);
	});

	it("begins at the nut's actual face on the wood, at the first fret on crowns", () => {
		const moved = neckWith({ "nut-shift": 0.5, strings: STRINGS });
		expect(relief(GAPS, moved).contacts.from).toBe(0.5);
		const crowns = relief({ ...GAPS, on: "crowns" }, plain);
		expect(crowns.contacts.from).toBeCloseTo(fretLine(plain, 1).x, 9);
	});

	it("does not tell a straight board from one bent backwards where every gap is 0", () => {
		const gaps = GAPS.gaps.map(({ at }) => ({ at, gap: 0 }));
		expect(codes({ ...GAPS, gaps }, plain)).toEqual(["gaps-all-zero"]);
		const flat = relief({ ...GAPS, gaps }, plain);
		expect(flat.largest.value).toBe(0);
		expect(flat.place).toBeNull();
	});

	it("refuses what shows a board bent backwards", () => {
		const [one, two] = GAPS.gaps;
		expect(codes({ ...GAPS, gaps: [one!, { ...two!, gap: -0.05 }] }, plain)).toEqual([
			"gap-negative",
		]);
		const atNut = { at: { kind: "nut" } as const, gap: 0.1 };
		expect(codes({ ...GAPS, gaps: [...GAPS.gaps, atNut] }, plain)).toEqual(["gap-at-contact"]);
		const inside = { ...GAPS, contacts: [fret(5), { kind: "last-fret" } as const] as const };
		expect(codes(inside, plain)).toEqual(["gap-beyond-contacts"]);
	});

	it("refuses a straightedge shorter than its contacts are apart, and takes one as long", () => {
		const long = fretLine(plain, 22).x;
		expect(codes({ ...GAPS, bar: bar({ length: long - 0.1 }) }, plain)).toEqual(["bar-too-short"]);
		expect(codes({ ...GAPS, bar: bar({ length: long }) }, plain)).toEqual([]);
	});
});
