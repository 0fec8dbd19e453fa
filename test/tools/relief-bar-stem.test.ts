import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import { problemText } from "../../src/problem/index.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { notchesOf } from "../support/measure-path.js";
import { faultsOfPart, findingsOf, foundInDamaged, fullyMade } from "../support/part-checks.js";
import { shifted, without, withPaths } from "../support/proof-measure-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";

const STEM = { "reads-with": "dial", "dial-held-by": "stem", "dial-reach": "32 mm" };

const made = (settings: object = {}, other: object = {}) =>
	madeParts(jobWith({}, [{ "relief-bar": { "stand-on": [1, 12], ...STEM, ...settings } }], other));

function parts(settings: object = {}, other: object = {}) {
	const { parts, problems } = made(settings, other);
	expect(problems).toEqual([]);
	const [cheek, left, right, block] = parts as [Part, Part, Part, Part];
	return { cheek, left, right, block };
}

const size = (part: Part, id: string) =>
	part.claims.find((c): c is SizeClaim => c.id === id && c.kind !== "label")!.nominal;
const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));
const reachOf = (part: Part) => {
	const xs = outlineOf(part).points.map((p) => p.x);
	return [Math.min(...xs), Math.max(...xs)] as const;
};
const holesOf = (part: Part, name: string) =>
	part.marks
		.filter(({ feature }) => feature.startsWith(name))
		.map(({ path: { points } }) => ({
			x: (points[0]!.x + points[1]!.x) / 2,
			y: points[0]!.y,
			diameter: Math.abs(points[0]!.x - points[1]!.x),
		}));

describe("a relief bar around a dial's stem", () => {
	it("has two cheeks and as many sheets between them as the stem is thick", () => {
		// By hand: 8 / 3 = 2.67, so 3 sheets of 3 mm, 9 mm, which leave 1 mm of play.
		const { cheek, left, right, block } = parts();
		expect([cheek, left, right, block].map(({ name, layers }) => [name, layers])).toEqual([
			["relief-bar", 2],
			["relief-bar-left", 3],
			["relief-bar-right", 3],
			["relief-bar-zero-block", 2],
		]);
		expect(cheek.notes.join(" ")).toContain(
			"9 mm thick together, the stem 8 mm: 1 mm of play across the bar",
		);
		// 9.525 / 2 = 4.76: two sheets of 5 mm, 0.475 mm of play; a sheet of 10 mm is enough by itself.
		const sheet = (thickness: number) => ({ stock: { material: "mdf", thickness } });
		const thick = { "dial-stem": "3/8 in" };
		expect(parts(thick, sheet(5)).left.layers).toBe(2);
		expect(parts(thick, sheet(10)).left.layers).toBeUndefined();
		expect(parts(thick, sheet(10)).block.layers).toBeUndefined();
	});

	it("leaves a channel as wide as stem and play over the fret that is read", () => {
		// By hand on 647.7 mm: fret 6 lies d(6) − d(1) from fret 1, the channel 4.05 mm to either side.
		const { cheek, left, right } = parts();
		const at = d(6) - d(1);
		expect(reachOf(left)).toEqual([-1.5, expect.closeTo(at - 4.05, 9)]);
		expect(reachOf(right)).toEqual([
			expect.closeTo(at + 4.05, 9),
			expect.closeTo(d(12) - d(1) + 1.5, 9),
		]);
		expect(size(left, "length") + 8.1 + size(right, "length")).toBeCloseTo(
			size(cheek, "length"),
			9,
		);
		expect(notchesOf(outlineOf(cheek))).toHaveLength(1);
	});

	it("is as wide open once it is glued up on its dowels", () => {
		const { cheek, left, right } = parts();
		const inPieces = [...holesOf(left, "dowel"), ...holesOf(right, "dowel")];
		expect(inPieces).toEqual(holesOf(cheek, "dowel"));
		expect(inPieces.map((h) => h.diameter)).toEqual([3, 3, 3, 3].map((x) => expect.closeTo(x, 9)));
		const apart = size(cheek, "dowel-hole-2-to-dowel-hole-3");
		const walls =
			size(left, "dowel-hole-2-to-the-channel") + size(right, "the-channel-to-dowel-hole-3");
		expect(apart - walls).toBeCloseTo(8.1, 9);
		expect(holesOf(parts({ dowel: "none" }).cheek, "dowel")).toEqual([]);
	});

	it("ends under the dial's body, and presses on the stem in the middle of its grip", () => {
		// By hand: the body 32 mm over the feet, the bar 1 mm lower; a stem of 12 mm ends at 20,
		// and is gripped from there to 31, its middle 25.5.
		const { cheek, left, right } = parts();
		expect(size(cheek, "height-over-relief")).toBe(29);
		expect([size(left, "height"), size(right, "height")]).toEqual([31, 31]);
		expect(holesOf(cheek, "clamp")).toEqual([
			{ x: expect.closeTo(d(6) - d(1), 9), y: 25.5, diameter: expect.closeTo(4, 9) },
		]);
		const thin = parts({ "dial-stem": "5 mm", "stem-length": "20 mm" }).cheek;
		expect(holesOf(thin, "clamp")[0]).toMatchObject({ y: 21.5, diameter: expect.closeTo(2.5, 9) });
		expect(size(parts({ "bar-height": "30 mm" }).cheek, "height-over-relief")).toBe(28);
	});

	it("needs no screw around a stem that the sheets just hold", () => {
		// Three sheets of 3 mm make up 9 mm.
		const snug = parts({ "dial-stem": "9 mm", "clamp-screw": "none" }).cheek;
		expect(holesOf(snug, "clamp")).toEqual([]);
		expect(snug.notes.join(" ")).toContain("tape around the stem");
	});

	it("has the layers that the stem asks for, and no others", () => {
		const { problems } = madeParts(
			jobWith({}, [{ "relief-bar": { "stand-on": [1, 12], ...STEM, layers: 2 } }]),
		);
		expect(problems.map((p) => p.code)).toEqual(["stem-bar-has-its-layers"]);
	});

	it("says where it is too thick to stand between the strings", () => {
		/*
		 * Five sheets of 3 mm are 15; six strings over 35.5 at the nut and 52 at the saddle stand at
		 * fret 1 of 647.7 mm 35.5/5 + (16.5/5)·(1 − 2^(−1/12)) = 7.285 apart.
		 */
		const strings = { count: 6, "at-nut": 35.5, "at-saddle": 52 };
		const notes = (neck: object) =>
			madeParts(
				jobWith(neck, [{ "relief-bar": { "stand-on": [1, 12], ...STEM } }]),
			).parts[0]!.notes.join(" ");
		expect(notes({ strings })).toContain("15 mm thick, and the strings are 7.3 mm apart");
		expect(notes({})).not.toContain("apart at most");
	});

	it("is sound on any neck, and measures what it claims", () => {
		let seen = 0;
		const stem = fc.record({
			"dial-stem": fc.constantFrom("6 mm", "8 mm", "3/8 in"),
			"dial-reach": fc.constantFrom("30 mm", "41.3 mm"),
			dowel: fc.constantFrom("none", "3 mm"),
		});
		fc.assert(
			fc.property(randomJob({ leastGap: 5 }), stem, ({ job, drawn }, own) => {
				const bar = { ...STEM, "stand-on": [1, drawn.frets], "foot-width": "2 mm", ...own };
				const { parts, problems } = madeParts({
					...job,
					stock: { material: "mdf", thickness: "3.2 mm" },
					make: [{ "relief-bar": bar }],
				});
				const near = ["stand-on", "dial-stem", "dowel", "hanging-hole"];
				expect(problems.filter((p) => !near.includes(String(p.where.path[0])))).toEqual([]);
				seen += parts.length;
				expect(parts.flatMap(faultsOfPart)).toEqual([]);
			}),
			RUNS,
		);
		expect(seen).toBeGreaterThan(2 * RUNS.numRuns);
	});
});

describe("a bar around a stem is refused", () => {
	const refusal = (settings: object, other: object = {}) => {
		const { problems } = made(settings, other);
		expect(problems).toHaveLength(1);
		return `${problems[0]!.where.path.join(".")}: ${problemText(problems[0]!)}`;
	};

	it("in a sheet that leaves the stem too much play, with the sheets that do", () => {
		// By hand: two sheets of 5 mm leave 2 mm; two may be 4 to 9.5 / 2 mm thick, one 8 to 9.5.
		const stock = { material: "mdf", thickness: 5 };
		const text = refusal({}, { stock });
		expect(text).toContain("dial-stem: between cheeks with 2 sheets of 5 mm a stem of 8 mm");
		expect(text).toContain("2 mm of play");
		expect(text).toContain("a stock of 4 mm to 4.75 mm, or 8 mm to 9.5 mm.");
		expect(refusal({}, { stock: { material: "mdf", thickness: 10 } })).toContain(
			"stock of 8 mm to 9.5 mm.",
		);
	});

	it.each([
		["of a dial that is not measured", { "dial-reach": undefined }, "leaves the dial's body"],
		["without a screw for its play", { "clamp-screw": "none" }, "clamp-screw: without a screw"],
		["by a screw as wide as the stem", { "clamp-screw": "6.5 mm" }, "at most 6 mm"],
		// Letters end 17.5 mm over the feet, dowels need 6 mm more, and the body 1 mm of air.
		["of a dial that reaches too little", { "dial-reach": "24 mm" }, "24.5 mm or more"],
		["by too little of it", { "stem-length": "8.5 mm" }, "stem-length: 8.5 mm"],
		["longer than plunger and all", { "stem-length": "30 mm" }, "9 mm to 29 mm"],
		// The stem ends at 20 mm, of which 8 mm are to be gripped.
		["in a bar below its grip", { "bar-height": "27 mm" }, "28 mm to 32 mm"],
		["in a bar that meets the body", { "bar-height": "33 mm" }, "28 mm to 32 mm"],
		// By hand: fret 18 is nearest the middle, d(18) − d(17) = 13.62 mm from fret 17; with half a foot
		// of 1.5 and less 4.05 the piece is 11.07 long, and two dowels need 9 mm besides their own.
		["with dowels between near frets", { "stand-on": [17, 20] }, "dowel: 3 mm"],
		// By hand: d(14) − d(13) = 17.16 mm and half a foot of 1.5, less 4.05 of the channel and 5 and 3
		// of plate around the hole, leave 6.6 for it.
		[
			"with a wide hole between near frets",
			{ "stand-on": [12, 14], "hanging-hole": "7 mm" },
			"hanging-hole: 7 mm",
		],
	])("%s", (_, settings, words) => {
		expect(refusal(settings)).toContain(words);
	});
});

describe("the written bar around a stem", () => {
	const ENTRY =
		"relief-bar: {stand-on: [1, 12], reads-with: dial, dial-held-by: stem, dial-reach: 32 mm}";
	const machined = (machine: string) =>
		making(ENTRY).replace("make:", `machine: ${machine}\nmake:`);

	it.each([
		["as drawn", making(ENTRY)],
		["for a beam", machined("{kerf: 0.16 mm}")],
		["for a cutter", machined("{kind: mill, cutter: 2 mm}")],
	])("is measured again without a finding %s", async (_, text) => {
		const drawn = await fullyMade(text, { formats: ["svg", "dxf", "pdf"] });
		expect(drawn.proven.length).toBeGreaterThanOrEqual(12);
		expect(findingsOf(drawn)).toEqual([]);
	});

	it("is found out when it is damaged", async () => {
		const drawn = await fullyMade(machined("{kerf: 0.16 mm}"), { formats: ["svg"] });
		const found = (name: string, change: (p: Part) => Part) => foundInDamaged(drawn, name, change);
		const wider = (by: number) => (p: Part) =>
			withPaths(p, "outline", ({ points, closed }) => {
				const flank = Math.max(...points.map((v) => v.x));
				return [
					{ closed, points: points.map((v) => (v.x > flank - 1 ? { ...v, x: v.x + by } : v)) },
				];
			});
		expect(await found("bar-left", (p) => p)).toEqual([]);
		expect(await found("bar-left", wider(0.02))).toContain("claim-failed");
		expect(await found("bar-left", (p) => shifted(p, "dowel hole 2", 0, 0.02))).toContain(
			"off-place",
		);
		expect(await found("bar-right", (p) => without(p, "dowel hole 3"))).toContain(
			"feature-missing",
		);
		expect(await found("relief-bar", (p) => shifted(p, "clamp screw hole", 0.05, 0))).toContain(
			"off-place",
		);
	});
});
