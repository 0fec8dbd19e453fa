import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { notchesOf } from "../support/measure-path.js";
import { faultsOfPart, findingsOf, foundInDamaged, fullyMade } from "../support/part-checks.js";
import { shifted, without, withPaths } from "../support/proof-measure-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";

const made = (settings: object = {}, neck: object = {}) =>
	madeParts(jobWith(neck, [{ "relief-bar": settings }]));

function parts(settings: object = {}, neck: object = {}): readonly Part[] {
	const { parts, problems } = made(settings, neck);
	expect(problems).toEqual([]);
	return parts;
}

const size = (part: Part, id: string) =>
	part.claims.find((c): c is SizeClaim => c.id === id && c.kind !== "label")!.nominal;
const textsOf = (part: Part) => part.claims.flatMap((c) => (c.kind === "label" ? [c.text] : []));

describe("a relief bar", () => {
	it("stands on fret 1 and the body joint and reads at the fret nearest the middle", () => {
		// By hand on 647.7 mm: d(1) = 36.3524, d(14) = 359.1821, the middle 197.767; d(6) = 189.707
		// lies 8.06 before it, d(7) = 215.412 behind it by 17.65.
		const [bar] = parts({ "body-joint": 14 });
		const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));
		expect(d(14)).toBeCloseTo(359.182, 2);
		expect(size(bar!, "second-foot-place")).toBeCloseTo(d(14) - d(1), 9);
		expect(size(bar!, "pad-place")).toBeCloseTo(d(6) - d(1), 9);
		expect(textsOf(bar!).slice(0, 3)).toEqual(["1", "6", "14"]);
	});

	it("has feet and a pad 3 mm wide on one line, the edge between relieved by 2 mm", () => {
		const [bar] = parts({ "body-joint": 14 });
		const notches = notchesOf(outlineOf(bar!));
		expect(notches).toHaveLength(2);
		const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));
		expect(notches.map(({ depth }) => depth)).toEqual([2, 2]);
		expect(notches[0]!.width).toBeCloseTo(d(6) - d(1) - 3, 9);
		expect(notches[1]!.width).toBeCloseTo(d(14) - d(6) - 3, 9);
		expect(bar!.working).toHaveLength(3);
	});

	it("hangs a dial over the fret instead of the pad, its tip level with the feet", () => {
		const [bar] = parts({ "stand-on": [1, 12], "reads-with": "dial", "dial-reach": "48 mm" });
		expect(notchesOf(outlineOf(bar!))).toHaveLength(1);
		const hole = bar!.marks.find(({ feature }) => feature === "dial hole")!.path.points;
		const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));
		expect((hole[0]!.x + hole[1]!.x) / 2).toBeCloseTo(d(6) - d(1), 9);
		expect(hole[0]!.y).toBe(48);
		expect(Math.abs(hole[0]!.x - hole[1]!.x)).toBeCloseTo(6.4, 9);
	});

	it("comes with a zero block that reaches past both feet, or without", () => {
		const [bar, block] = parts({ "body-joint": 14 });
		expect(size(block!, "length")).toBeCloseTo(size(bar!, "second-foot-place") + 20, 9);
		expect(parts({ "body-joint": 14, "zero-block": false })).toHaveLength(1);
	});

	it("starts at the zero fret only where it is told to", () => {
		const zero = { "zero-fret": true };
		expect(textsOf(parts({ "body-joint": 14 }, zero)[0]!)[0]).toBe("1");
		expect(textsOf(parts({ "stand-on": [0, 14] }, zero)[0]!)[0]).toBe("0");
	});

	it("tells which way its own sag falsifies the reading", () => {
		expect(parts({ "body-joint": 14 })[0]!.notes.join(" ")).toMatch(
			/sags by 0\.0\d+ mm .*too small/u,
		);
	});

	it("would be found faulty with a hole at a foot, or with feet out of level", () => {
		const [bar] = parts({ "body-joint": 14 });
		expect(faultsOfPart(bar!)).toEqual([]);
		const low = bar!.claims.find(({ id }) => id === "height-over-relief")!.at[1]!.y;
		const near = faultsOfPart(shifted(bar!, "hanging hole", 5, 8 - low));
		expect(near.join()).toContain("too near to the working edge");
		const crooked = withPaths(bar!, "outline", ({ points, closed }) => [
			{ closed, points: points.map((v) => (v.x < 5 && v.y === 0 ? { ...v, y: -0.02 } : v)) },
		]);
		expect(faultsOfPart(crooked).join()).toContain("level is");
	});

	it("is sound on any neck, and measures what it claims", () => {
		let seen = 0;
		const dial = fc.constantFrom({}, { "reads-with": "dial", "dial-reach": "44 mm" });
		fc.assert(
			fc.property(randomJob({ leastGap: 5 }), dial, ({ job, drawn }, reads) => {
				if (drawn.frets < 3) return;
				const from = drawn.scale.bass * drawn.share(1);
				if (drawn.scale.treble * drawn.share(drawn.frets) - from < 40) return;
				const make = [
					{ "relief-bar": { "stand-on": [1, drawn.frets], ...reads, "foot-width": "2 mm" } },
				];
				const { parts, problems } = madeParts({ ...job, make });
				expect(problems).toEqual([]);
				seen += parts.length;
				expect(parts.flatMap(faultsOfPart)).toEqual([]);
			}),
			RUNS,
		);
		expect(seen).toBeGreaterThan(RUNS.numRuns);
	});
});

describe("a relief bar is refused", () => {
	it.each([
		["without a body joint", {}, "body-joint-needed"],
		["on a fret that is not there", { "body-joint": 30 }, "no-wire-at-fret"],
		["on the nut", { "stand-on": [0, 12] }, "no-wire-at-fret"],
		["on neighbours", { "stand-on": [3, 4] }, "no-fret-between"],
		["the wrong way round", { "stand-on": [12, 1] }, "no-fret-between"],
		// d(22) − d(20) = 22.26 mm, d(14) − d(12) = 35.33 mm.
		[
			"on frets too near for its letters and holes",
			{ "stand-on": [20, 22] },
			"relief-bar-too-short",
		],
		[
			"with a hanging hole that would meet the dial's",
			{
				"stand-on": [12, 14],
				"reads-with": "dial",
				"dial-reach": 40,
				"dial-hole": 15,
				"hanging-hole": 10,
			},
			"length-range",
		],
		[
			"with a dial of unknown reach",
			{ "body-joint": 14, "reads-with": "dial" },
			"dial-reach-needed",
		],
		[
			"too low for its dial",
			{ "body-joint": 14, "reads-with": "dial", "dial-reach": 48, "bar-height": 50 },
			"length-range",
		],
	])("%s", (_, settings, code) => {
		expect(made(settings).problems.map((p) => p.code)).toEqual([code]);
	});

	it("with a foot that would meet the next crown", () => {
		// By hand, an octave in 31 parts on 400 mm: behind fret 31 the next lies 4.42 mm off, which less
		// half a crown of 2.7 mm and 0.5 mm leaves a foot 2 x 2.57 mm wide. Before fret 60 it is 2.37 mm:
		// a foot 2 x 0.52 mm wide.
		const neck = { scale: 400, frets: 60, division: 31 };
		expect(made({ "stand-on": [1, 31] }, neck).problems).toEqual([]);
		expect(made({ "stand-on": [1, 60] }, neck).problems.map((p) => p.code)).toEqual([
			"length-range",
		]);
	});
});

describe("the written bar", () => {
	const FEELER = making("relief-bar: {body-joint: 14}").replace(
		"make:",
		"machine: {kerf: 0.16 mm}\nmake:",
	);
	const DIAL = making("relief-bar: {stand-on: [1, 12], reads-with: dial, dial-reach: 48 mm}");

	it.each([
		["with a pad", FEELER],
		["with a dial", DIAL],
	])("%s is measured again without a finding", async (_, text) => {
		const drawn = await fullyMade(text, { formats: ["svg", "dxf", "pdf"] });
		expect(drawn.files).toHaveLength(7);
		expect(findingsOf(drawn)).toEqual([]);
	});

	it("betrays a pad too high, a pad elsewhere, a moved dial hole and a missing one", async () => {
		const feeler = await fullyMade(FEELER, { formats: ["svg"] });
		const padAt = size(feeler.tools[0]!.parts[0]!, "pad-place");
		const pad = (x: number, y: number) => (p: Part) =>
			withPaths(p, "outline", ({ points, closed }) => [
				{
					closed,
					points: points.map((v) =>
						Math.abs(v.x - padAt) < 5 && v.y < 0.5 ? { ...v, x: v.x + x, y: v.y + y } : v,
					),
				},
			]);
		const inFeeler = (change: (p: Part) => Part) => foundInDamaged(feeler, "relief-bar", change);
		expect(await inFeeler((p) => p)).toEqual([]);
		expect(await inFeeler(pad(0, 0.02))).toContain("claim-failed");
		expect(await inFeeler(pad(0.05, 0))).toContain("claim-failed");
		const dial = await fullyMade(DIAL, { formats: ["svg"] });
		const inDial = (change: (p: Part) => Part) => foundInDamaged(dial, "relief-bar", change);
		expect(await inDial((p) => shifted(p, "dial hole", 0, 0.05))).toContain("off-place");
		expect(await inDial((p) => without(p, "dial hole"))).toContain("feature-missing");
	});
});
