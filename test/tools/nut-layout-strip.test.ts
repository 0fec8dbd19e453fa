import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import { stringLines } from "../../src/neck/index.js";
import { stringCentres } from "../../src/tools/nut-layout-strip/centres.js";
import { JOB, making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { faultsOfPart, findingsOf, foundInDamaged, fullyMade } from "../support/part-checks.js";
import { shifted, without } from "../support/proof-measure-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";

/** Six strings, string 1 first; given values of an invented set. */
const GAUGES = ["0.010 in", "0.013 in", "0.017 in", "0.026 in", "0.036 in", "0.046 in"];
const STRINGS = { count: 6, "at-nut": 35.5, "at-saddle": 52 };

const made = (settings: object = {}, neck: object = {}) =>
	madeParts(jobWith({ strings: STRINGS, ...neck }, [{ "nut-layout-strip": settings }]));

function strips(settings: object = {}, neck: object = {}): readonly [Part, Part] {
	const { parts, problems } = made(settings, neck);
	expect(problems).toEqual([]);
	return parts as readonly [Part, Part];
}

const codes = (settings: object, neck: object = {}) =>
	made(settings, neck).problems.map(({ code }) => code);

/** Distances of the strings on a strip, bass to treble. */
function distances(part: Part): number[] {
	const claims = part.claims.filter(({ id }) => /^string-\d/u.test(id)) as SizeClaim[];
	return claims.map(({ nominal }) => nominal);
}

/** Places of the strings' scored lines, bass to treble. */
function places(part: Part): number[] {
	const lines = part.marks.filter(({ feature }) => /^string \d/u.test(feature));
	return lines.map(({ path }) => path.points[0]!.x);
}

const textsOf = (part: Part) => part.claims.flatMap((c) => (c.kind === "label" ? [c.text] : []));

describe("the places of the strings", () => {
	it("with equal centres are 7.1 mm apart on a spread of 35.5 mm, 3.75 mm from the edges", () => {
		// By hand: (43 - 35.5)/2 = 3.75; 35.5/5 = 7.1.
		const [nut, saddle] = strips();
		[3.75, 10.85, 17.95, 25.05, 32.15, 39.25].forEach((x, i) => {
			expect(distances(nut)[i]).toBeCloseTo(x, 9);
		});
		// 52/5 = 10.4 at the saddle, from the outer bass string.
		[0, 10.4, 20.8, 31.2, 41.6, 52].forEach((x, i) => {
			expect(distances(saddle)[i]).toBeCloseTo(x, 9);
		});
	});

	it("with equal gaps leave the same air, worked by hand from the given gauges", () => {
		// All diameters: 0.148 in; less half of both outer ones, 0.028 in: 0.120 in = 3.048 mm lie
		// between the outer middles. The air is (35.5 - 3.048)/5 = 6.4904 mm.
		const [nut] = strips({ "string-gauges": GAUGES });
		const wanted = [3.75];
		for (const halves of [0.041, 0.031, 0.0215, 0.015, 0.0115]) {
			wanted.push(wanted.at(-1)! + 6.4904 + halves * 25.4);
		}
		expect(distances(nut)).toHaveLength(6);
		distances(nut).forEach((x, i) => {
			expect(x).toBeCloseTo(wanted[i]!, 9);
		});
		expect(wanted.at(-1)).toBeCloseTo(39.25, 9);
		expect(nut.notes.join(" ")).toContain("6.49 mm");
	});

	it("with equal gaps between courses keep the pair gap within them", () => {
		// By hand: four courses 2 mm wide between outer middles 24 mm apart, strings of 1.0, 1.0 |
		// 0.8, 0.6 | 0.5, 0.4 | 0.3, 0.3 mm: (24 - 8 - 0.9 - 0.55 - 0.35)/3 = 4.7333.
		const all = stringCentres({ count: 4, pairGap: 2 }, 24, [1, 1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.3]);
		const air = 14.2 / 3;
		const wanted = [0, 2, 2.9 + air, 4.9 + air, 5.45 + 2 * air, 7.45 + 2 * air, 22, 24];
		all.forEach((x, i) => {
			expect(x).toBeCloseTo(wanted[i]!, 9);
		});
	});

	it("follow the margins from the board's edges", () => {
		const [both] = strips({ "bass-margin": 4, "treble-margin": "3 mm" });
		expect(distances(both)[0]).toBeCloseTo(4, 9);
		expect(distances(both)[5]).toBeCloseTo(40, 9);
		expect(distances(both)[1]).toBeCloseTo(11.2, 9);
		const [one] = strips({ "treble-margin": 3 });
		expect(distances(one)[5]).toBeCloseTo(40, 9);
		expect(distances(one)[0]).toBeCloseTo(4.5, 9);
	});

	it("are the strings' own lines where centres are alike, on any neck", () => {
		fc.assert(
			fc.property(
				randomJob({ leastGap: 5, strings: true, make: ["nut-layout-strip"] }),
				({ job }) => {
					const { parts, neck, problems } = madeParts(job);
					expect(problems).toEqual([]);
					const along = (end: "nut" | "saddle") =>
						stringLines(neck).map((s) => {
							const [bass, treble] = [neck.guides.bass[end], neck.guides.treble[end]];
							const lean = (treble.x - bass.x) / (treble.y - bass.y);
							return s[end].y * Math.hypot(1, lean);
						});
					expect(parts).toHaveLength(2);
					for (const [i, end] of (["nut", "saddle"] as const).entries()) {
						const wanted = along(end);
						const found = places(parts[i]!);
						expect(found).toHaveLength(wanted.length);
						found.forEach((x, k) => {
							expect(x).toBeCloseTo(wanted[k]!, 9);
						});
					}
				},
			),
			RUNS,
		);
	});

	it("are mirrored on a left-handed neck, the letters not", () => {
		const settings = { "string-gauges": GAUGES, "bass-margin": 4 };
		const [right, left] = ["right", "left"].map((handed) => strips(settings, { handed }));
		for (const i of [0, 1]) {
			expect(places(left![i]!)).toEqual(places(right![i]!).map((x) => -x));
			expect(textsOf(left![i]!)).toEqual(textsOf(right![i]!));
			expect(distances(left![i]!)).toEqual(distances(right![i]!));
		}
	});
});

describe("a strip", () => {
	it("is sound on any neck, and measures what it claims", () => {
		let seen = 0;
		fc.assert(
			fc.property(
				randomJob({ leastGap: 5, strings: true, make: ["nut-layout-strip"] }),
				({ job }) => {
					const { parts } = madeParts(job);
					seen += parts.length;
					expect(parts.flatMap(faultsOfPart)).toEqual([]);
				},
			),
			RUNS,
		);
		expect(seen).toBe(2 * RUNS.numRuns);
	});

	it("is as long as the board is wide at the nut, with number and distance at every line", () => {
		const [nut, saddle] = strips();
		expect(nut.claims.find(({ id }) => id === "length")!.nominal).toBeCloseTo(43, 9);
		expect(textsOf(nut)).toContain("10.85   5");
		expect(textsOf(saddle)).toContain("5   10.40");
		expect(textsOf(nut)).toContain("Plain neck");
		expect(textsOf(nut)).toContain("NUT: 6 strings, equal centres");
	});

	it("ends at the board's edge at the moved face of the nut", () => {
		// By hand: 13 mm of taper over the 22 frets, 2 mm from the theoretical nut.
		const [nut] = strips({}, { "nut-shift": 2 });
		const reach = 647.7 * (1 - 2 ** (-22 / 12));
		const length = nut.claims.find(({ id }) => id === "length")!.nominal;
		expect(length).toBeCloseTo(43 + (13 * 2) / reach, 9);
	});

	it("lets the lines of near strings end in two rows", () => {
		const courses = { strings: { courses: 4, "pair-gap": 2, "at-nut": 30, "at-saddle": 40 } };
		const ends = strips({}, courses)[1].marks.flatMap(({ feature, path }) =>
			/^string \d/u.test(feature) ? [path.points[1]!.y] : [],
		);
		expect(new Set(ends).size).toBe(2);
		expect(
			new Set(
				strips()[1]
					.marks.filter((m) => /^string \d/u.test(m.feature))
					.map((m) => m.path.points[1]!.y),
			).size,
		).toBe(1);
	});

	it("can be had for one end alone", () => {
		expect(made({ ends: ["saddle"] }).parts.map(({ name }) => name)).toEqual([
			"nut-layout-strip-saddle",
		]);
	});
});

describe("a layout", () => {
	it.each([
		["no strings", {}, { strings: undefined }, "layout-needs-strings"],
		["gaps without gauges", { "string-spacing": "gaps" }, {}, "gaps-need-gauges"],
		["too few gauges", { "string-gauges": GAUGES.slice(1) }, {}, "gauges-count"],
		["a string beside the board", { "bass-margin": 10 }, {}, "string-at-edge"],
		["a string on the edge", { "bass-margin": 1 }, {}, "string-at-edge"],
		["no room between strings", { "bass-margin": 20, "treble-margin": 20 }, {}, "strings-too-near"],
		[
			"strings that overlap",
			{ "bass-margin": 16, "treble-margin": 16, "string-gauges": Array(6).fill(3) },
			{},
			"strings-touch",
		],
	])("is refused with %s", (_, settings, neck, code) => {
		expect(codes(settings, neck)).toContain(code);
	});
});

describe("the written strips", () => {
	const SIX = making(`nut-layout-strip: {string-gauges: [${GAUGES.join(", ")}]}`);
	const EIGHT = making("nut-layout-strip")
		.replace(
			/strings: .*/u,
			"strings: {courses: 4, pair-gap: 2, at-nut: 30, at-saddle: 40}\n  handed: left",
		)
		.replace("make:", "machine: {kerf: 0.16 mm}\nmake:");

	it.each([SIX, EIGHT])("are measured again without a finding", async (text) => {
		expect(text).not.toBe(JOB);
		const drawn = await fullyMade(text, { formats: ["svg", "dxf", "pdf"] });
		expect(new Set(drawn.files.map(({ format }) => format))).toEqual(
			new Set(["svg", "dxf", "pdf", "json"]),
		);
		expect(findingsOf(drawn)).toEqual([]);
	});

	it("betray a moved line, a missing one and a distance in another's place", async () => {
		const made = await fullyMade(SIX, { formats: ["svg"] });
		const found = (change: (part: Part) => Part) => foundInDamaged(made, "strip-nut", change);
		expect(await found((p) => p)).toEqual([]);
		expect(await found((p) => shifted(p, "string 4", 0.02, 0))).toContain("claim-failed");
		expect(await found((p) => without(p, "string 4"))).toContain("feature-missing");
		expect(await found((p) => without(p, "label string-4"))).toContain("label-wrong");
		expect(await found((p) => shifted(p, "centre line", -0.02, 0))).toContain("claim-failed");
	});
});
