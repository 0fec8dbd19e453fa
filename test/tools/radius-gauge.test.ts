import { describe, expect, it } from "vitest";
import type { LabelClaim, Part } from "../../src/drawing/index.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { arcsOf, crossingsAtPlace } from "../support/measure-path.js";
import { faultsOf } from "../support/scale-tools.js";

const INCH = 25.4;
const compound = { radius: { nut: "10 in", "last-fret": "16 in" } };

function made(neck: object, settings: object = {}) {
	return madeParts(jobWith(neck, [{ "radius-gauge": settings }]));
}

function gauges(neck: object, settings: object = {}): readonly Part[] {
	const { parts, problems } = made(neck, settings);
	expect(problems).toEqual([]);
	return parts;
}

const names = (neck: object, settings: object = {}) => gauges(neck, settings).map((p) => p.name);
const codes = (neck: object, settings: object = {}) =>
	made(neck, settings).problems.map((p) => p.code);

/** The arc over the whole width, not one of the rounded corners. */
function workingArc(part: Part) {
	const arcs = arcsOf(outlineOf(part)).filter((a) => a.radius > 2);
	expect(arcs).toHaveLength(1);
	return arcs[0]!;
}

function texts(part: Part): string[] {
	return part.claims.filter((c): c is LabelClaim => c.kind === "label").map((c) => c.text);
}

describe("a radius gauge", () => {
	it("has one true arc of the board's radius over its whole width", () => {
		const [part] = gauges({ radius: "12 in" });
		const arc = workingArc(part!);
		expect(arc.radius).toBeCloseTo(304.8, 9);
		expect([arc.start.x, arc.end.x].sort((a, b) => a - b)).toEqual([-28, 28]);
		expect(arc.sagitta).toBeCloseTo(1.28881, 5);
	});

	it("is as wide as the widest place of the board up to the last fret, in whole mm", () => {
		const width = (neck: object) => {
			const arc = workingArc(gauges(neck)[0]!);
			return Math.abs(arc.start.x - arc.end.x);
		};
		expect(width({ width: 43 })).toBe(43);
		expect(width({ width: { nut: 43, "last-fret": 55.2 } })).toBe(56);
		expect(width({ width: { nut: 43, "12": 58, "last-fret": 50 } })).toBe(58);
		expect(width({ width: { nut: 43, "last-fret": 56, saddle: 90 } })).toBe(56);
	});

	it("is hollow where it lies on the board, round where it checks a block", () => {
		const [hollow, round] = gauges({}, { faces: ["concave", "convex"] });
		const middle = (part: Part) => crossingsAtPlace([outlineOf(part)], 1e-6);
		const sagitta = workingArc(hollow!).sagitta;
		expect(middle(hollow!)[0]).toBeCloseTo(sagitta, 6);
		expect(middle(round!).at(-1)).toBeCloseTo(sagitta, 6);
		// Both in one frame, arc on arc: hollow above, round below.
		expect(middle(hollow!).at(-1)).toBeGreaterThan(20);
		expect(middle(round!)[0]).toBeLessThan(-20);
		expect([hollow!.workingEdge, round!.workingEdge]).toEqual([
			"the concave arc, over its whole width",
			"the convex arc, over its whole width",
		]);
	});

	it("has its radius engraved in inch and mm, and the place where there is one", () => {
		expect(texts(gauges({ radius: "12 in" })[0]!)).toEqual(["12 in   R 304.8 mm", "concave"]);
		expect(texts(gauges(compound)[1]!)[1]).toBe("concave, fret 11");
	});

	it("sets its text in more lines on a narrow board, down to what cannot be read", () => {
		const own = (width: string) => gauges({}, { radii: ["7.947 in"], "gauge-width": width })[0]!;
		expect(texts(own("56 mm"))).toEqual(["7.947 in   R 201.85 mm", "concave"]);
		expect(texts(own("24 mm"))).toEqual(["7.947 in", "R 201.85 mm", "concave"]);
		const at = gauges(compound, { at: ["last-fret"], "gauge-width": "20 mm" })[0]!;
		expect(texts(at)).toEqual(["16 in", "R 406.4 mm", "concave", "last fret"]);
		expect(codes({}, { "gauge-width": "10 mm", "gauge-hole": "none" })).toEqual(["label-too-long"]);
	});
});

describe("the gauges of a neck", () => {
	it("are one on a cylinder, three on a compound board", () => {
		expect(names({})).toEqual(["radius-gauge-concave"]);
		expect(names(compound)).toEqual([
			"radius-gauge-nut-concave",
			"radius-gauge-fret-11-concave",
			"radius-gauge-last-fret-concave",
		]);
	});

	it("have the radius of their station, linear in distance", () => {
		const radii = gauges(compound, { at: ["nut", 12, "last-fret", "100 mm"] }).map(
			(p) => workingArc(p).radius / INCH,
		);
		const last = 647.7 * (1 - 2 ** (-22 / 12));
		expect(radii).toEqual(
			[10, 14.1702, 16, 10 + (6 * 100) / last].map((r) => expect.closeTo(r, 4)),
		);
	});

	it("take radii of one's own, on a flat board too", () => {
		const own = { radii: ["7.25 in", "9 1/2 in", 300] };
		expect(names({ radius: "flat" }, own)).toEqual([
			"radius-gauge-7-25in-concave",
			"radius-gauge-9-5in-concave",
			"radius-gauge-11-811in-concave",
		]);
		expect(codes({ radius: "flat" })).toEqual(["flat-board"]);
		expect(codes({ radius: "flat" }, { at: ["nut"] })).toEqual(["flat-board"]);
	});

	it("make each face once, however often it is listed", () => {
		expect(names({}, { faces: ["convex", "convex"] })).toEqual(["radius-gauge-convex"]);
	});
});

describe("the notes of a gauge", () => {
	const note = (neck: object, at: unknown) =>
		gauges(neck, { at: [at] })[0]!.notes.filter((n) => n.includes("extrapolated"));

	it("say where a radius is extrapolated beyond the measured stations, and only there", () => {
		const measured = { radius: { "1": 254, "12": 300 } };
		expect(note(measured, "nut")).toEqual([
			"The radius at nut is extrapolated beyond the measured stations.",
		]);
		expect(note(measured, "400 mm")).toHaveLength(1);
		expect(note(measured, "saddle")).toHaveLength(1);
		expect(note(measured, 7)).toEqual([]);
		expect(note({ radius: 254 }, "saddle")).toEqual([]);
		expect(note({ radius: { nut: 254, saddle: 380 } }, "saddle")).toEqual([]);
	});

	it("tell to hold it square to the centre line, the more so on fanned frets", () => {
		const fanned = {
			scale: { bass: 690, treble: 650, "square-fret": 7 },
			strings: { count: 6, "at-nut": 36, "at-saddle": 52 },
		};
		expect(gauges({})[0]!.notes[0]).toContain("square to the centre line");
		expect(gauges(fanned)[0]!.notes.join(" ")).toContain("not along the fret");
	});
});

describe("a gauge's plate", () => {
	const height = (part: Part) => part.claims.find((c) => c.id === "height")!.nominal;

	it("has room for arc, hole and two lines of letters", () => {
		expect(height(gauges({})[0]!)).toBe(28);
		expect(height(gauges({}, { "gauge-hole": "15 mm" })[0]!)).toBe(33);
		const narrow = { radii: ["7.947 in"], "gauge-width": "28 mm", "gauge-hole": "15 mm" };
		expect(height(gauges({}, narrow)[0]!)).toBeGreaterThan(33);
	});

	it("is refused where the lines that a narrow gauge needs do not fit its height", () => {
		const narrow = (height: string) =>
			codes({}, { radii: ["7.947 in"], "gauge-width": "20 mm", "gauge-height": height });
		expect(narrow("21 mm")).toEqual(["gauge-too-low"]);
		expect(narrow("23 mm")).toEqual([]);
	});

	it("keeps letters, arc and hole 2 mm apart at any height", () => {
		for (const height of [20, 21, 22, 24, 27, 40]) {
			for (const part of gauges(
				{},
				{
					"gauge-height": `${height} mm`,
					faces: ["concave", "convex"],
				},
			)) {
				const letters = part.marks.filter((m) => m.operation === "engrave");
				const ys = letters.flatMap((m) => m.path.points.map((p) => p.y));
				const [low, high] = [Math.min(...ys), Math.max(...ys)];
				const cuts = crossingsAtPlace(
					part.marks.filter((m) => m.operation === "cut").map((m) => m.path),
					1e-6,
				);
				const gap = Math.min(...cuts.map((y) => Math.max(low - y, y - high)));
				expect(gap).toBeGreaterThan(1.3);
				expect(cuts).toHaveLength(4);
			}
		}
	});

	it("keeps commas and all 3 mm off the arc, in the lowest plate that holds its letters", () => {
		const compound = { radius: { nut: 184, "last-fret": 510 }, width: 34 };
		const tight = { at: ["last-fret"], "gauge-hole": "none", faces: ["concave", "convex"] };
		const at = (height: number) => made(compound, { ...tight, "gauge-height": `${height} mm` });
		const heights = Array.from({ length: 80 }, (_, i) => 12 + i / 10);
		const [lowest] = heights.filter((height) => at(height).problems.length === 0);
		expect(at(lowest!).parts.map((part) => texts(part).join())).toEqual([
			expect.stringContaining(", "),
			expect.stringContaining(", "),
		]);
		expect(at(lowest!).parts.flatMap(faultsOf)).toEqual([]);
	});

	it("is refused where they would lie over each other", () => {
		expect(codes({}, { "gauge-height": "19 mm" })).toEqual(["gauge-too-low"]);
		expect(codes({}, { "gauge-height": "20 mm" })).toEqual([]);
		expect(codes({}, { "gauge-height": "14 mm", "gauge-hole": "none" })).toEqual([]);
		expect(codes({}, { "gauge-width": "20 mm", "gauge-hole": "15 mm" })).toEqual(["length-range"]);
	});

	it("is refused where the arc does not fit, or has no radius", () => {
		expect(codes({}, { radii: ["20 mm"], "gauge-width": "41 mm" })).toEqual([
			"chord-wider-than-circle",
		]);
		expect(codes({ width: 20, radius: { nut: 300, "12": 100 } }, { at: ["saddle"] })).toEqual([
			"radius-vanishes",
		]);
		expect(codes({ division: { cents: [100, 200] }, frets: 2 }, { at: [3] })).toEqual([
			"no-such-fret",
		]);
	});
});
