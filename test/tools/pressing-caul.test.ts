import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import {
	dropAt,
	edgePoint,
	fretLine,
	fretNumbers,
	pointOnFret,
	radiusAt,
} from "../../src/neck/index.js";
import { crownTop } from "../../src/tools/crown-top.js";
import { fewestCauls, fretRanges } from "../../src/tools/pressing-caul/fewest.js";
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
import { RUNS, randomJob, reading } from "../support/random-neck.js";

const COMPOUND = { radius: { nut: "10 in", "last-fret": "16 in" } };
const FANNED = {
	scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
	strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 },
};

function made(neck: object, settings: object = {}, other: object = {}) {
	return madeParts(jobWith(neck, [{ "pressing-caul": settings }], other));
}
const cauls = (neck: object, settings: object = {}) => {
	const { parts, problems } = made(neck, settings);
	expect(problems).toEqual([]);
	return parts;
};
const codes = (neck: object, settings: object = {}) =>
	made(neck, settings).problems.map((p) => p.code);
const size = (part: Part, id: string) =>
	(part.claims.find((c) => c.id === id) as SizeClaim | undefined)?.nominal;

describe("a pressing caul", () => {
	it("has the radius of the crown tops: the board's and the crown's height", () => {
		// Parallel curves: 12 in = 304.8, with a crown of 1.3.
		const [caul, ...others] = cauls({ radius: "12 in" });
		expect(others).toEqual([]);
		expect(size(caul!, "radius")).toBeCloseTo(306.1, 9);
		expect(caul!.name).toBe("pressing-caul");
		expect(caul!.title).toContain("frets 1-22");
	});

	it("is as wide as the longest of its frets and a margin on either side, in whole mm", () => {
		const last = 56;
		expect(size(cauls({})[0]!, "width")).toBe(last + 4);
		expect(size(cauls({}, { "side-margin": "5.2 mm" })[0]!, "width")).toBe(67);
	});

	it("is held by a slot in its back, by two holes, or by neither", () => {
		const ids = (mount: string, more: object = {}) =>
			cauls({}, { mount, ...more })[0]!
				.claims.filter((c) => c.kind !== "label")
				.map((c) => c.id);
		expect(ids("slot")).toEqual(expect.arrayContaining(["slot-width", "slot-depth", "shoulder"]));
		expect(ids("holes")).toEqual(
			expect.arrayContaining(["mounting-hole-left", "mounting-hole-right"]),
		);
		expect(ids("none").sort()).toEqual(["height", "radius", "sagitta", "width"]);
		const slot = cauls({}, { "mount-size": "8 mm", "slot-depth": "10 mm" })[0]!;
		expect([size(slot, "slot-width"), size(slot, "slot-depth")]).toEqual([8, 10]);
		expect(size(slot, "shoulder")).toBe(26);
	});

	it("is refused where mount, margin or height have no room", () => {
		expect(codes({}, { "mount-size": "40 mm", "side-margin": 0, "caul-height": "15 mm" })).toEqual([
			"caul-too-low",
		]);
		expect(codes({ width: 40 }, { "mount-size": "36 mm" })).toEqual(["length-range"]);
		expect(codes({}, { mount: "holes", "mount-size": "19 mm" })).toEqual(["length-range"]);
		expect(codes({}, { mount: "holes", "hole-spacing": "60 mm" })).toEqual(["length-range"]);
		expect(codes({ radius: 29 }, { "side-margin": "10 mm" })).toEqual(["length-range"]);
		expect(codes({ radius: "flat" })).toEqual(["flat-board-caul"]);
	});

	it("says how thick to make it, by the sheet that it is cut from", () => {
		const notes = (thickness: number) =>
			made({}, {}, { stock: { material: "mdf", thickness } }).parts[0]!.notes.join(" ");
		expect(notes(3)).toContain("layers: 4");
		expect(notes(5)).toContain("layers: 3");
		expect(notes(12)).not.toContain("layers");
	});
});

describe("the cauls of a compound board", () => {
	it("are the fewest that keep the gap, found by trying every way to part the frets", () => {
		for (const most of [0.02, 0.05, 0.1]) {
			const { neck, bench } = made(COMPOUND);
			const tops = fretNumbers(neck).map((n) => crownTop(neck, bench.wire, n)!);
			// Radii rise from fret to fret here, so that each caul serves a run: the first is its radius.
			const rise = (radius: number, chord: number) =>
				radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2);
			const gap = (i: number, j: number) =>
				rise(tops[i]!.radius, tops[j]!.length) - rise(tops[j]!.radius, tops[j]!.length);
			const fewest: number[] = [0];
			for (let end = 1; end <= tops.length; end++) {
				const ways: number[] = [];
				for (let start = 0; start < end; start++) {
					const run = tops.slice(start, end).map((_, k) => gap(start, start + k));
					if (Math.max(...run) <= most) ways.push(fewest[start]! + 1);
				}
				fewest.push(Math.min(...ways));
			}
			expect(fewestCauls(tops, most)).toHaveLength(fewest.at(-1)!);
		}
	});

	it("are named by their frets and serve each once", () => {
		const parts = cauls(COMPOUND, { "most-gap": "0.2 mm" });
		expect(parts.length).toBeGreaterThan(1);
		expect(parts[0]!.name).toMatch(/^pressing-caul-frets-1-\d+$/u);
		expect(parts.at(-1)!.name).toMatch(/-22$/u);
		expect(cauls(COMPOUND).length).toBeGreaterThan(parts.length);
	});

	it("are refused where slanted frets let no caul keep the gap, with the gap that one keeps", () => {
		const neck = { ...FANNED, radius: { nut: "7.25 in", "last-fret": "20 in" } };
		const { problems } = made(neck, { "most-gap": "0.01 mm" });
		expect(problems.map((p) => p.code)).toEqual(["caul-gap-unreachable"]);
		const least = problems[0]!.facts.least as number;
		expect(codes(neck, { "most-gap": `${least} mm` })).toEqual([]);
		expect(codes(neck, { "most-gap": `${least - 0.001} mm` })).toEqual(["caul-gap-unreachable"]);
	});
});

describe("fretRanges", () => {
	it("joins neighbours", () => {
		expect(fretRanges([1, 2, 3, 7])).toBe("frets 1-3, 7");
		expect(fretRanges([4])).toBe("fret 4");
		expect(fretRanges([0, 1])).toBe("frets 0-1");
	});
});

describe("the arc of a caul over any neck's crowns", () => {
	/**
	 * How the caul stands over the crowns' surface along a fret when it rests on the fret's ends, by
	 * points of that surface alone: least and middle height, mm.
	 */
	function stand(neck: ReturnType<typeof made>["neck"], crown: number, n: number, radius: number) {
		const fret = fretLine(neck, n);
		const [a, b] = [edgePoint(neck, fret, -1), edgePoint(neck, fret, 1)];
		const chord = Math.hypot(b.x - a.x, b.y - a.y);
		const top = (y: number) => {
			const p = pointOnFret(fret, y);
			return -dropAt(radiusAt(neck, p.x)! + crown, p.y);
		};
		const [left, right] = [top(a.y), top(b.y)];
		const over = (t: number) => {
			const s = (t - 0.5) * chord;
			const caul = Math.sqrt(radius ** 2 - s ** 2) - Math.sqrt(radius ** 2 - (chord / 2) ** 2);
			return caul + left + (right - left) * t - top(a.y + (b.y - a.y) * t);
		};
		const all = Array.from({ length: 41 }, (_, i) => over(i / 40));
		return { least: Math.min(...all), middle: over(0.5) };
	}

	it("touches the ends of every fret first and keeps the gap in the middle", () => {
		let seen = 0;
		fc.assert(
			fc.property(randomJob({ leastGap: 5 }), reading(0.03, 0.2), ({ job }, most) => {
				const { neck, bench } = madeParts({ ...job, make: ["slot-strip"] });
				if (neck.radius === "flat") return;
				const { wire } = bench;
				const tops = fretNumbers(neck).map((n) => crownTop(neck, wire, n)!);
				for (const { radius, frets } of fewestCauls(tops, most)) {
					for (const { n } of frets) {
						const { least, middle } = stand(neck, wire.crownHeight, n, radius);
						expect(least).toBeGreaterThan(-1e-5);
						expect(middle).toBeLessThan(most + 1e-9);
						seen++;
					}
				}
			}),
			RUNS,
		);
		expect(seen).toBeGreaterThan(100);
	});
});

describe("every caul of any neck", () => {
	const mm = (from: number, to: number) => reading(from, to, 1).map((x) => `${x} mm`);
	it("has sound contours, letters apart, and measures what it claims", () => {
		const settings = fc.record({
			"most-gap": reading(0.04, 0.3).map((x) => `${x} mm`),
			"side-margin": mm(0, 6),
			mount: fc.constantFrom("slot", "holes", "none"),
			"slot-depth": mm(4, 20),
		});
		checkParts("pressing-caul", settings);
	});
});

describe("the files of a caul", () => {
	const compound = (entry: string) =>
		making(entry).replace("radius: 12 in", "radius: {nut: 10 in, last-fret: 13 in}");

	it("measure what they promise, whatever their format", async () => {
		const kerf = "machine: {kerf: 0.16 mm}\nmake:";
		expect(await foundInJob(making("pressing-caul").replace("make:", kerf))).toEqual([]);
		expect(await foundInJob(compound("pressing-caul: {mount: holes, most-gap: 0.2 mm}"))).toEqual(
			[],
		);
	});

	it("are found out when they are damaged", async () => {
		const slotted = making("pressing-caul");
		const holed = making("pressing-caul: {mount: holes}");
		expect(await foundAfter(slotted, (p) => p)).toEqual([]);
		expect(await foundAfter(slotted, arcFlattened(0.99))).toContain("claim-failed");
		const floor = pointsMoved((p) => Math.abs(p.x) < 4 && p.y < 25, 0, 0.02);
		expect(await foundAfter(slotted, floor)).toContain("claim-failed");
		const slot = pointsMoved((p) => Math.abs(p.x) < 4, 0.02, 0);
		expect(await foundAfter(slotted, slot)).toContain("claim-failed");
		const one = (p: Part) => without(p, "mounting hole right");
		expect(await foundAfter(holed, one)).toContain("feature-missing");
	});
});
