import { describe, expect, it } from "vitest";
import { CAUTION_LAST, cautionsFor, MATERIAL_NAMES } from "../../src/shop/index.js";

const KINDS = ["laser", "mill", "printer"] as const;

describe("cautionsFor", () => {
	const all = KINDS.flatMap((kind) => MATERIAL_NAMES.map((m) => ({ kind, m })));

	it("ends with the standing caution, whatever is cut with whatever", () => {
		expect(all.map(({ kind, m }) => cautionsFor(kind, m).at(-1))).toEqual(
			all.map(() => CAUTION_LAST),
		);
		expect(CAUTION_LAST).toBe(
			"This sheet is a drawing, not a safety instruction. Follow the machine's manual, the material's safety data sheet, and the codes and licensed practice where you work; where they differ from this sheet, they govern.",
		);
	});

	it("names the machine and the material, and never calls anything safe", () => {
		for (const { kind, m } of all) {
			const [first, ...rest] = cautionsFor(kind, m);
			expect(first!.toLowerCase()).toContain(kind === "printer" ? "printed" : kind);
			// A page of paper is neither burnt nor sawn, whatever it is glued on.
			const ofMaterial = rest.some((line) => line.toLowerCase().startsWith(`${m}:`));
			expect(ofMaterial).toBe(kind !== "printer");
			expect(cautionsFor(kind, m).join(" ")).not.toMatch(/\bsafe\b/iu);
		}
	});

	it("warns a laser of hydrogen chloride, of polycarbonate and of being left alone", () => {
		const text = cautionsFor("laser", "acrylic").join(" ");
		for (const word of ["PVC", "hydrogen chloride", "polycarbonate", "stay with", "extraction"]) {
			expect(text).toContain(word);
		}
		expect(cautionsFor("mill", "acrylic").join(" ")).not.toContain("PVC");
	});

	it("warns of dust from wood and of thin metal edges", () => {
		expect(cautionsFor("mill", "plywood").join(" ")).toContain("wood dust");
		expect(cautionsFor("mill", "mdf").join(" ")).toContain("wood dust");
		expect(cautionsFor("mill", "steel").join(" ")).toContain("thin edges");
	});
});
