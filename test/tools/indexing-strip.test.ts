import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drawing/index.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { notchesOf } from "../support/measure-path.js";
import { reading } from "../support/random-neck.js";
import {
	expectSound,
	faultsOf,
	foundAfter,
	lacking,
	runFindings,
	sizesOf,
	withPoints,
} from "../support/scale-tools.js";

function strip(settings: object = {}, neck: object = {}) {
	return madeParts(jobWith(neck, [{ "indexing-strip": settings }]));
}

/** The notches on the lower edge, from the left: flanks as they are cut. */
function cutNotches(part: Part) {
	return notchesOf(outlineOf(part))
		.filter(({ edge }) => Math.abs(edge) < 1e-9)
		.map(({ flanks: [left, right], depth }) => ({ left: left.x, right: right.x, depth }))
		.sort((a, b) => a.left - b.left);
}

const codes = (settings: object, neck: object = {}) =>
	strip(settings, neck).problems.map((p) => p.code);

describe("the notches of an indexing strip", () => {
	// d(n) = 647.7·(1 − 2^(−n/12)): 12 is half the scale.
	const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));

	it("put a pin against their nut-side flank at d(n), the nut's cut included", () => {
		const cut = cutNotches(strip({ pin: "4 mm", "pin-play": "0.2 mm" }).parts[0]!);
		expect(cut).toHaveLength(23);
		cut.forEach(({ left, right }, n) => {
			expect(left + 2).toBeCloseTo(d(n), 9);
			expect(right - left).toBeCloseTo(4.2, 9);
		});
		expect(cut[12]!.left + 2).toBeCloseTo(323.85, 9);
	});

	it.each([62.5, -62.5])("lie %s mm farther where the pin stands so far from the blade", (c) => {
		const cut = cutNotches(strip({ "pin-to-blade": `${c} mm` }).parts[0]!);
		expect(cut.map(({ left }, n) => left + 1.5 - c - d(n))).toEqual(
			cut.map(() => expect.closeTo(0, 9)),
		);
	});

	it("cut the nut where its face is, every fret where it was", () => {
		const cut = cutNotches(strip({}, { "nut-shift": 1.25 }).parts[0]!);
		expect(cut[0]!.left + 1.5).toBeCloseTo(1.25, 9);
		expect(cut[1]!.left + 1.5).toBeCloseTo(d(1), 9);
	});

	it("cut the zero fret, whose nut is no datum, at the theoretical nut", () => {
		const [part] = strip({}, { "nut-shift": -3, "zero-fret": true }).parts;
		expect(cutNotches(part!)[0]!.left + 1.5).toBeCloseTo(0, 9);
		expect(part!.notes.join(" ")).toContain("Notch 0 is the zero fret's slot");
	});

	it("are 2 mm deeper than the pin unless told", () => {
		expect(cutNotches(strip().parts[0]!)[3]!.depth).toBeCloseTo(5, 9);
		expect(cutNotches(strip({ "notch-depth": "7 mm" }).parts[0]!)[3]!.depth).toBeCloseTo(7, 9);
	});

	it("keep their flanks 3 mm off the numbers, whose digits hang below their line", () => {
		// A pin of 1 mm: both digits of a number come to lie over the flanks of its notch.
		const thin = { pin: "1 mm", "pin-play": 0 };
		const { parts } = strip(thin, { scale: 800, frets: 46, division: 19 });
		expect(parts.flatMap(faultsOf)).toEqual([]);
	});

	it("stand on the other edge for a second scale after a half turn", () => {
		const [part] = strip({
			"pin-to-blade": "10 mm",
			"second-edge": { scale: "620 mm", frets: 20 },
		}).parts;
		const size = (id: string) => sizesOf(part!).find((c) => c.id === id)!;
		const { nominal: height } = size("height");
		const right = size("length").at[1]!.x;
		const upper = notchesOf(outlineOf(part!))
			.filter(({ edge }) => Math.abs(edge - height) < 1e-9)
			.map(({ flanks }) => Math.max(flanks[0].x, flanks[1].x))
			.sort((a, b) => b - a);
		expect(upper).toHaveLength(21);
		// The second nut lies the usual margin of 12 mm from the right end.
		upper.forEach((x, n) => {
			const along = right - 12 - x + 1.5 - 10;
			expect(along).toBeCloseTo(620 * (1 - 2 ** (-n / 12)), 9);
		});
	});
});

describe("an indexing strip is refused", () => {
	it("for fanned frets", () => {
		const neck = {
			scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
			strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 },
		};
		expect(codes({}, neck)).toEqual(["fanned-in-a-mitre-box"]);
	});

	it("where less than 1.5 mm would remain between notches, the narrowest named", () => {
		const { problems } = strip({ pin: "10 mm" });
		expect(problems).toMatchObject([
			{ code: "index-land-too-narrow", facts: { fret: 22, before: 21 } },
		]);
		expect(problems[0]!.facts.land).toBeCloseTo(d(22) - d(21) - 10.1, 9);
		expect(problems[0]!.facts.more).toBe(1);
	});

	const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));

	it("where it is too low or too short for its hole, or its notches too shallow for the pin", () => {
		expect(codes({ "hanging-hole": "5 mm", "end-margin": "12 mm" })).toEqual(["length-range"]);
		expect(codes({ "hanging-hole": "none", "end-margin": "12 mm" })).toEqual([]);
		expect(codes({ "strip-height": "12 mm" })).toEqual(["index-strip-too-low"]);
		expect(codes({ pin: "6 mm", "notch-depth": "2.9 mm" })).toEqual(["notch-below-pin"]);
		expect(codes({ pin: "6 mm", "notch-depth": "3 mm" })).toEqual([]);
	});

	it("where the second scale's division does not hold its frets", () => {
		const second = { scale: 600, frets: 6, division: { cents: [100, 200, 300] } };
		expect(codes({ "second-edge": second })).toEqual(["division-too-short"]);
		const positions = { scale: 600, frets: 2, division: { positions: [30, 700] } };
		expect(codes({ "second-edge": positions })).toEqual(["position-beyond-saddle"]);
	});

	it("where it is too short for the name of its scale", () => {
		const second = { scale: 330, frets: 1 };
		const found = codes({ "hanging-hole": "15 mm", "second-edge": second }, { frets: 1 });
		expect(found).toEqual(["label-too-long", "label-too-long"]);
	});
});

describe("any indexing strip", () => {
	const settings = fc.record(
		{
			pin: reading(1, 4, 1).map((x) => `${x} mm`),
			"pin-play": fc.constantFrom("0 mm", "0.3 mm"),
			"pin-to-blade": reading(-300, 300, 1).map((x) => `${x} mm`),
			"hanging-hole": fc.constantFrom("none", "5 mm", "12 mm"),
			"end-margin": fc.constantFrom("20 mm", "30 mm"),
			"second-edge": fc.constantFrom("plain", { scale: "500 mm", frets: 15, division: 12 }),
		},
		{ requiredKeys: [] },
	);

	it("is sound on any neck of one scale, its claims what is cut", () => {
		expectSound("indexing-strip", settings, { leastGap: 7, fanned: false });
	});
});

describe("a written indexing strip", () => {
	const with2 = "indexing-strip: {pin-to-blade: -80 mm, second-edge: {scale: 628 mm, frets: 21}}";
	const kerf = (text: string) => text.replace("make:", "machine: {kerf: 0.16 mm}\nmake:");
	const text = kerf(making("indexing-strip"));

	it("is found as promised in every format", async () => {
		expect(await runFindings(text)).toEqual([]);
		expect(await runFindings(kerf(making(with2)))).toEqual([]);
	});

	const isOutline = (feature: string) => feature === "outline";
	const around = (x: number, n: number) => Math.abs(x - 648 * (1 - 2 ** (-n / 12))) < 3;

	it.each([
		["undamaged", (p) => p, undefined],
		[
			"notch 7 moved by 0.02 mm",
			(p) => withPoints(p, isOutline, (q) => (around(q.x, 7) ? { ...q, x: q.x + 0.02 } : q)),
			"claim-failed",
		],
		[
			"notch 7 deeper by 0.02 mm",
			(p) =>
				withPoints(p, isOutline, (q) =>
					around(q.x, 7) && q.y > 3 && q.y < 8 ? { ...q, y: q.y + 0.02 } : q,
				),
			"claim-failed",
		],
		["no hole", (p) => lacking(p, "hanging hole"), "feature-missing"],
		["no line of the nut", (p) => lacking(p, "theoretical nut"), "count-differs"],
	] as [string, Parameters<typeof foundAfter>[1], string | undefined][])(
		"is found out where it is damaged: %s",
		async (_, change, code) => {
			const found = await foundAfter(text, change);
			if (code === undefined) expect(found).toEqual([]);
			else expect(found).toContain(code);
		},
	);
});
