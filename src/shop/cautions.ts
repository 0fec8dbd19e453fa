import type { MaterialName } from "./materials.js";

export type MachineKind = "laser" | "mill" | "printer";

/** Printed last on every sheet and after every run. */
export const CAUTION_LAST =
	"This sheet is a drawing, not a safety instruction. Follow the machine's manual, the material's safety data sheet, and the codes and licensed practice where you work; where they differ from this sheet, they govern.";

const BY_KIND: Readonly<Record<MachineKind, readonly string[]>> = {
	laser: [
		"Laser: never cut PVC, vinyl or an unknown plastic: they give off hydrogen chloride. Do not cut polycarbonate.",
		"Laser: stay with the machine while it runs, extraction on, extinguisher at hand; wear the eye protection its class asks for.",
	],
	mill: [
		"Mill: clamp the work, wear eye and ear protection, keep hands, sleeves and hair away from the cutter.",
	],
	printer: ["Printed sheets: take care with knife and straightedge when cutting paper or card."],
};

const BY_MATERIAL: Readonly<Record<MaterialName, readonly string[]>> = {
	acrylic: ["Acrylic: it burns with little smoke; watch the cut and do not leave it."],
	plywood: ["Plywood: glue fumes and wood dust; use extraction and a dust mask."],
	mdf: ["MDF: glue fumes and fine wood dust; use extraction and a dust mask."],
	steel: ["Steel: thin edges cut; break them and wear gloves when you handle it."],
	aluminium: ["Aluminium: thin edges cut; break them and wear gloves when you handle it."],
	card: ["Card: it scorches and catches fire easily under a laser; use low power and watch it."],
};

/**
 * The cautions that go with a machine and its material, the standing one last; a printer burns and
 * saws nothing, whatever its pages are glued on.
 */
export function cautionsFor(kind: MachineKind, material: MaterialName): string[] {
	const ofMaterial = kind === "printer" ? [] : BY_MATERIAL[material];
	return [...BY_KIND[kind], ...ofMaterial, CAUTION_LAST];
}
