/** What the budget, the sag and the cautions need to know of a material. */
export interface Material {
	/** Young's modulus, GPa. */
	readonly modulus: number;
	/** Density, kg/m³. */
	readonly density: number;
	/** Linear thermal expansion, 1/K: the upper trade value, since it widens a clearance. */
	readonly expansion: number;
	/** Growth from dry to damp, a share of the length (common practice, no source). */
	readonly moisture: number;
}

/**
 * Usual trade values; plywood's and card's from memory of handbooks, moisture strains common practice,
 * no source. Where a range is given the value here is the one that makes the result larger, but for
 * acrylic's modulus (2.8 to 3.2), where it is the usual one.
 */
export const MATERIALS = {
	acrylic: { modulus: 3.0, density: 1190, expansion: 76e-6, moisture: 0.0005 },
	plywood: { modulus: 9, density: 680, expansion: 6.1e-6, moisture: 0.001 },
	mdf: { modulus: 3.5, density: 750, expansion: 12e-6, moisture: 0.001 },
	steel: { modulus: 200, density: 7850, expansion: 11.7e-6, moisture: 0 },
	aluminium: { modulus: 68.9, density: 2700, expansion: 23.6e-6, moisture: 0 },
	card: { modulus: 2.5, density: 750, expansion: 10e-6, moisture: 0.004 },
} as const satisfies Readonly<Record<string, Material>>;

export type MaterialName = keyof typeof MATERIALS;

export const MATERIAL_NAMES = Object.keys(MATERIALS) as MaterialName[];

/** Materials that a laser must never meet, with the reason. */
export const NEVER_ON_A_LASER: Readonly<Record<string, string>> = {
	pvc: "heated, as by a laser, it gives off hydrogen chloride",
	vinyl: "it is PVC: heated, as by a laser, it gives off hydrogen chloride",
	polycarbonate: "it chars, burns and fumes under a laser",
};

const GRAVITY = 9.80665;

/**
 * Sag of a bar on edge under its own weight, ends supported, at the middle, mm.
 *
 * 5wL⁴/384EI of a rectangular section: the thickness cancels, 0.15625·ρgL⁴/(E·H²).
 *
 * @param length - mm between the supports
 * @param height - mm
 * @example sagOnEdge(MATERIALS.acrylic, 480, 40) // 0.0202
 */
export function sagOnEdge(material: Material, length: number, height: number): number {
	const l = length / 1000;
	const h = height / 1000;
	const weight = material.density * GRAVITY;
	return ((0.15625 * weight * l ** 4) / (material.modulus * 1e9 * h ** 2)) * 1000;
}

/** Height at which a bar on edge sags by no more than `sag` over `length`, mm. */
export function heightForSag(material: Material, length: number, sag: number): number {
	return Math.sqrt(sagOnEdge(material, length, 1) / sag);
}

/** Growth of a length through a swing of temperature, mm. `thermalGrowth(MATERIALS.steel, 480, 10)` is 0.0562. */
export function thermalGrowth(material: Material, length: number, kelvin: number): number {
	return material.expansion * kelvin * length;
}
