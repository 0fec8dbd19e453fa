import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	heightForSag,
	MATERIAL_NAMES,
	MATERIALS,
	NEVER_ON_A_LASER,
	sagOnEdge,
	thermalGrowth,
} from "../../src/shop/index.js";

describe("sagOnEdge", () => {
	it("is 5wL⁴/384EI of a rectangular section, whatever its thickness", () => {
		const { modulus, density } = MATERIALS.acrylic;
		const [length, height] = [0.48, 0.04];
		for (const thickness of [0.001, 0.003, 0.02]) {
			const weight = density * 9.80665 * thickness * height;
			const inertia = (thickness * height ** 3) / 12;
			const metres = (5 * weight * length ** 4) / (384 * modulus * 1e9 * inertia);
			expect(sagOnEdge(MATERIALS.acrylic, 480, 40)).toBeCloseTo(metres * 1000, 12);
		}
	});

	it("grows with the fourth power of the length and falls with the square of the height", () => {
		const one = sagOnEdge(MATERIALS.mdf, 300, 30);
		expect(sagOnEdge(MATERIALS.mdf, 600, 30) / one).toBeCloseTo(16, 9);
		expect(sagOnEdge(MATERIALS.mdf, 300, 60) / one).toBeCloseTo(1 / 4, 9);
	});
});

describe("heightForSag", () => {
	it("is the height at which the bar sags just so much", () => {
		const names = fc.constantFrom(...MATERIAL_NAMES);
		const length = fc.double({ min: 100, max: 1200, noNaN: true });
		const sag = fc.double({ min: 0.001, max: 0.1, noNaN: true });
		fc.assert(
			fc.property(names, length, sag, (name, l, s) => {
				const height = heightForSag(MATERIALS[name], l, s);
				expect(sagOnEdge(MATERIALS[name], l, height) / s).toBeCloseTo(1, 9);
			}),
			{ seed: 21, numRuns: 100 },
		);
	});

	it("of 0.02 mm is 40.2 mm on 480 mm of acrylic and 73.7 mm on 650 mm", () => {
		expect(heightForSag(MATERIALS.acrylic, 480, 0.02)).toBeCloseTo(40.2, 1);
		expect(heightForSag(MATERIALS.acrylic, 650, 0.02)).toBeCloseTo(73.7, 1);
	});
});

describe("thermalGrowth", () => {
	it("is in proportion to length and swing", () => {
		const one = thermalGrowth(MATERIALS.steel, 100, 1);
		expect(one).toBeCloseTo(0.00117, 9);
		expect(thermalGrowth(MATERIALS.steel, 650, 8)).toBeCloseTo(6.5 * 8 * one, 12);
		expect(thermalGrowth(MATERIALS.steel, 650, 0)).toBe(0);
	});
});

describe("MATERIALS", () => {
	it("hold no metal that swells with damp", () => {
		expect([MATERIALS.steel.moisture, MATERIALS.aluminium.moisture]).toEqual([0, 0]);
		const wet = MATERIAL_NAMES.filter((name) => MATERIALS[name].moisture > 0);
		expect(wet).toEqual(["acrylic", "plywood", "mdf", "card"]);
	});

	it("and what must never meet a laser have no name in common", () => {
		expect(Object.keys(NEVER_ON_A_LASER)).toContain("pvc");
		const both = Object.keys(NEVER_ON_A_LASER).filter((n) => n in MATERIALS);
		expect(both).toEqual([]);
	});
});
