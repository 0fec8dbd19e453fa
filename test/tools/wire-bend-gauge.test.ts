import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LabelClaim, Part, SizeClaim } from "../../src/drawing/index.js";
import { overBent } from "../../src/tools/wire-bend-gauge/wanted.js";
import {
	arcFlattened,
	checkParts,
	foundAfter,
	foundInJob,
	pointsMoved,
} from "../support/camber-tools.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { without } from "../support/proof-measure-faults.js";
import { reading } from "../support/random-neck.js";

function made(neck: object, settings: object = {}) {
	return madeParts(jobWith(neck, [{ "wire-bend-gauge": settings }]));
}
const gauges = (neck: object, settings: object = {}) => {
	const { parts, problems } = made(neck, settings);
	expect(problems).toEqual([]);
	return parts;
};
const codes = (neck: object, settings: object = {}) =>
	made(neck, settings).problems.map((p) => p.code);
const size = (part: Part, id: string) =>
	(part.claims.find((c) => c.id === id) as SizeClaim | undefined)?.nominal;
const radii = (neck: object, settings: object = {}) =>
	gauges(neck, settings).map((p) => size(p, "radius")!);
const COMPOUND = { radius: { nut: "10 in", "last-fret": "16 in" } };

describe("a wire-bend gauge", () => {
	it("is 15 % tighter than the board, read over the crown", () => {
		// Between 10 and 25 % is common practice, no source. 0.85 × 304.8 + 1.3.
		expect(radii({})).toEqual([expect.closeTo(260.38, 9)]);
		expect(overBent(304.8, 15, 1.3)).toBeCloseTo(260.38, 9);
		expect(radii({}, { "over-bend": 25 })).toEqual([expect.closeTo(0.75 * 304.8 + 1.3, 9)]);
	});

	it("goes by a rise of 0.3 mm over the longest fret where the board is flat", () => {
		// r = (c² + 4h²)/8h (Machinery's Handbook, circular segments), c = 56.
		const [gauge] = gauges({ radius: "flat" });
		expect(size(gauge!, "sagitta")).toBeCloseTo(0.3, 9);
		expect(size(gauge!, "radius")).toBeCloseTo((56 * 56 + 4 * 0.09) / 2.4, 9);
		const steep = gauges({ radius: "flat" }, { rise: "0.5 mm", "gauge-width": "28 mm" })[0]!;
		expect(size(steep, "radius")).toBeCloseTo((56 * 56 + 4 * 0.25) / 4, 9);
	});

	it("goes by the tightest fret of a compound board, or by each that is named", () => {
		// Fret 1 lies at 647.7·(1 − 2^(−1/12)), fret 22 at the board's last station.
		const [one, last] = [1, 22].map((n) => 647.7 * (1 - 2 ** (-n / 12)));
		const first = 254 + (152.4 * one!) / last!;
		expect(radii(COMPOUND)).toEqual([expect.closeTo(0.85 * first + 1.3, 6)]);
		const set = gauges(COMPOUND, { "bend-for": [1, 22, 1] });
		expect(set.map((p) => p.name)).toEqual(["wire-bend-gauge-fret-1", "wire-bend-gauge-fret-22"]);
		expect(set.map((p) => size(p, "radius"))).toEqual([
			expect.closeTo(0.85 * first + 1.3, 6),
			expect.closeTo(0.85 * 406.4 + 1.3, 6),
		]);
	});

	it("is flatter along a slanted fret: the board's radius over cos²φ (Euler's theorem)", () => {
		const fanned = {
			scale: { bass: 690, treble: 650, "square-fret": 0 },
			strings: { count: 6, "at-nut": 36, "at-saddle": 36 },
			width: 43,
		};
		// Outer strings 36 apart; at fret 12 one leads by 20 mm: tan φ = 20/36.
		const [square, slanted] = radii(fanned, { "bend-for": [12], "over-bend": 20 }).concat(
			radii({ width: 43 }, { "over-bend": 20 }),
		) as [number, number];
		expect((square - 1.3) / (slanted - 1.3)).toBeCloseTo(1 + (20 / 36) ** 2, 6);
	});

	it("says what it is for", () => {
		const texts = (neck: object, settings: object = {}) =>
			gauges(neck, settings)[0]!
				.claims.filter((c): c is LabelClaim => c.kind === "label")
				.map((c) => c.text);
		expect(texts({})).toEqual([
			"Plain neck",
			"wire bend, 15 % tighter",
			"all frets",
			"10.251 in   R 260.38 mm",
		]);
		expect(texts({ radius: "flat" })[1]).toBe("wire bend, rise 0.3 mm");
	});

	it("refuses what says nothing on this board, and what does not fit", () => {
		expect(codes({}, { rise: "0.4 mm" })).toEqual(["bend-not-of-this-board"]);
		expect(codes({ radius: "flat" }, { "over-bend": 15 })).toEqual(["bend-not-of-this-board"]);
		expect(codes({ radius: "flat" }, { "bend-for": [1] })).toEqual(["bend-not-of-this-board"]);
		expect(codes({}, { "bend-for": [0] })).toEqual(["bend-for-no-fret"]);
		expect(codes({ "zero-fret": true }, { "bend-for": [0] })).toEqual([]);
		expect(codes({}, { "gauge-height": "20 mm" })).toEqual(["gauge-too-low"]);
		expect(codes({}, { "gauge-width": "15 mm", "gauge-hole": "12 mm" })).toEqual(["length-range"]);
		expect(codes({ radius: 60 }, { "gauge-width": "120 mm" })).toEqual(["chord-wider-than-circle"]);
	});
});

describe("every wire-bend gauge of any neck", () => {
	it("has sound contours, letters apart, and measures what it claims", () => {
		const settings = fc.record({
			"gauge-width": reading(30, 80, 1).map((x) => `${x} mm`),
			"gauge-hole": fc.oneof(
				fc.constant("none"),
				reading(1, 15, 1).map((x) => `${x} mm`),
			),
		});
		checkParts("wire-bend-gauge", settings);
	});
});

describe("the files of a wire-bend gauge", () => {
	it("measure what they promise, whatever their format", async () => {
		const kerf = "machine: {kerf: 0.16 mm}\nmake:";
		expect(await foundInJob(making("wire-bend-gauge").replace("make:", kerf))).toEqual([]);
		const flat = making("wire-bend-gauge").replace("radius: 12 in", "radius: flat");
		expect(await foundInJob(flat)).toEqual([]);
	});

	it("are found out when they are damaged", async () => {
		const text = making("wire-bend-gauge");
		expect(await foundAfter(text, (p) => p)).toEqual([]);
		expect(await foundAfter(text, arcFlattened(0.99))).toContain("claim-failed");
		expect(await foundAfter(text, (p) => without(p, "hanging hole"))).toContain("feature-missing");
		const side = pointsMoved((p) => p.x > 20, 0.02, 0);
		expect(await foundAfter(text, side)).toContain("claim-failed");
	});
});
