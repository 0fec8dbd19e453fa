import { describe, expect, it, test } from "vitest";
import { MATERIALS, sagOnEdge, thermalGrowth } from "../../src/shop/index.js";
import { jobWith, madeParts } from "../support/made-parts.js";

/** Handbook values of E in GPa, ρ in kg/m³, α in 1e-6/K; plywood's from memory. */
describe.each([
	["steel", [200, 200], 7850, [11.7, 11.7]],
	["aluminium", [68.9, 68.9], 2700, [23.6, 23.6]],
	["acrylic", [2.8, 3.2], 1190, [70, 76]],
	["plywood", [9, 9], 680, [4.5, 6.1]],
	["mdf", [3.5, 4], 750, [12, 12]],
] as const)("the handbook values of %s", (name, modulus, density, expansion) => {
	it("hold for what the project reckons with, the greatest growth among them", () => {
		const own = MATERIALS[name];
		expect(own.modulus).toBeGreaterThanOrEqual(modulus[0]);
		expect(own.modulus).toBeLessThanOrEqual(modulus[1]);
		expect(own.density).toBe(density);
		expect(own.expansion).toBeCloseTo(expansion[1] * 1e-6, 12);
	});
});

/** Formula handbook: a bar on edge, ends supported, 5wL⁴/384EI; 480 × 40 mm, in µm. */
test.each([
	["steel", 2.0, 2],
	["aluminium", 1.99, 2],
	["acrylic", 20.2, 1],
	["plywood", 3.8, 1],
	["mdf", 10.9, 1],
] as const)("a bar of %s 480 mm long and 40 mm high sags %d µm on edge", (name, sag, digits) => {
	expect(sagOnEdge(MATERIALS[name], 480, 40) * 1000).toBeCloseTo(sag, digits);
});

/** Computed from the handbook values of α: growth of 480 mm in 10 K. */
test.each([
	["steel", 0.0562, 0.0562],
	["aluminium", 0.1133, 0.1133],
	["acrylic", 0.336, 0.365],
] as const)("480 mm of %s grow by %d to %d mm in 10 K", (name, least, most) => {
	const grown = thermalGrowth(MATERIALS[name], 480, 10);
	expect(grown).toBeGreaterThan(least - 5e-5);
	expect(grown).toBeLessThan(most + 5e-5);
});

/**
 * Formula handbook: a bar with both ends overhanging its two supports. Airy points 0.57735 and
 * Bessel points 0.5594 of the length apart serve other ends than the least bend.
 */
describe("the supports that a straightedge is told to rest on", () => {
	/** Greatest sag of a bar of length 1 with w = EI = 1, supports `apart`. */
	const bend = (apart: number) => {
		const a = (1 - apart) / 2;
		const b = apart;
		const middle = (b * b * (5 * b * b - 24 * a * a)) / 384;
		const end = (a * (3 * a ** 3 + 6 * a * a * b - b ** 3)) / 24;
		return Math.max(Math.abs(middle), Math.abs(end));
	};

	it("bend it less than the Airy and the Bessel points, within a hundredth of the least", () => {
		const [part] = madeParts(jobWith({}, ["notched-straightedge"])).parts;
		const length = part!.claims.find((c) => c.id === "length")!.nominal;
		const note = part!.notes.find((n) => n.includes("two supports"))!;
		const apart = Number(/two supports (\d+) mm apart/u.exec(note)![1]) / length;
		const least = Math.min(...Array.from({ length: 1000 }, (_, i) => bend(0.4 + i * 0.0003)));
		expect(bend(apart)).toBeLessThan(bend(0.5594));
		expect(bend(0.5594)).toBeLessThan(bend(0.57735));
		expect(bend(apart) / least).toBeLessThan(1.05);
	});
});
