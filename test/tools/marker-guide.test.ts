import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drawing/index.js";
import { distanceTo, extents, pointAt, segments } from "../../src/geometry/index.js";
import { fretAt, labelClaims, SIX_STRINGS, sizeClaim } from "../support/bars.js";
import { foundAfter, foundInJob, pointsMoved } from "../support/camber-tools.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf, pathsOf } from "../support/measure-part.js";
import { crossingsAtHeight, crossingsAtPlace, slotAtHeight } from "../support/measure-path.js";
import { claimFaults } from "../support/part-checks.js";
import { contourFaults, crossed, labelFaults, labelRectangles } from "../support/part-faults.js";
import { shifted, without, withPaths } from "../support/proof-measure-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import { anyMarkerGuide } from "../support/random-tools.js";
import { strip } from "../support/strips.js";

const MARKED = { markers: [3, 5, 7, 9, { 12: "double" }, 15, 17] };
const FAN = { scale: { bass: 711.2, treble: 660.4, "square-fret": 7 }, strings: SIX_STRINGS };

const made = (neck: object, settings: object = {}, other: object = {}) =>
	madeParts(jobWith({ ...MARKED, ...neck }, [{ "marker-guide": settings }], other));

function guide(neck: object = {}, settings: object = {}, other: object = {}): Part {
	const { parts, problems } = made(neck, settings, other);
	expect(problems).toEqual([]);
	return parts[0]!;
}

/** Middle and diameter of a hole, from its path alone. */
function holeOf(part: Part, feature: string) {
	const [path] = pathsOf(part, feature);
	const { minX, maxX, minY, maxY } = extents(path!);
	expect(maxX - minX).toBeCloseTo(maxY - minY, 9);
	return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, diameter: maxX - minX };
}

describe("the holes of a marker guide", () => {
	it("are midway between the marker's fret and the one before, wider than the drill by its play", () => {
		// By hand, d(n) = 647.7·(1 − 2^(−n/12)): d(2) = 70.665, d(3) = 103.051; half their sum.
		const third = holeOf(guide(), "marker 3");
		expect(third.x).toBeCloseTo(86.858, 3);
		expect(third.y).toBeCloseTo(0, 9);
		expect(third.diameter).toBeCloseTo(3.1, 9);
		for (const n of [3, 5, 7, 9, 15, 17]) {
			const { x } = holeOf(guide(), `marker ${n}`);
			expect(x).toBeCloseTo((fretAt(n - 1) + fretAt(n)) / 2, 9);
		}
		const wide = guide({}, { drill: "6.35 mm", "drill-play": 0 });
		expect(holeOf(wide, "marker 5").diameter).toBeCloseTo(6.35, 9);
	});

	it("of a double marker are a fifth of the board's width to either side, or as far as is said", () => {
		// d(11) = 304.593, d(12) = 323.850, so x = 314.221; the board is 43 mm wide at the nut, 56 at
		// d(22) = 465.945: 43 + 13·314.221/465.945 = 51.767 there, a fifth of it 10.353.
		const [bass, treble] = ["bass", "treble"].map((side) => holeOf(guide(), `marker 12 ${side}`));
		expect([bass!.x, treble!.x]).toEqual([expect.closeTo(314.221, 3), expect.closeTo(314.221, 3)]);
		expect([bass!.y, treble!.y]).toEqual([expect.closeTo(-10.353, 3), expect.closeTo(10.353, 3)]);
		const left = guide({ handed: "left" }, { "double-marker-spread": 16 });
		expect(holeOf(left, "marker 12 bass").y).toBeCloseTo(8, 9);
		expect(holeOf(left, "marker 12 treble").y).toBeCloseTo(-8, 9);
	});

	it("are where the slot strip marks them, also on a fanned board", () => {
		for (const neck of [{}, FAN, { ...FAN, handed: "left", "nut-shift": 0.6 }]) {
			const marked = strip({ ...MARKED, ...neck });
			const part = guide(neck);
			for (const feature of ["marker 7", "marker 12 bass", "marker 12 treble"]) {
				const cross = pathsOf(marked, feature).flatMap((p) => p.points);
				const { x, y } = holeOf(part, feature);
				const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
				expect(x).toBeCloseTo(middle(cross.map((p) => p.x)), 9);
				expect(y).toBeCloseTo(middle(cross.map((p) => p.y)), 9);
			}
		}
	});

	it("are promised from the theoretical nut and from the centre line, wherever the nut stands", () => {
		const part = guide({ "nut-shift": -2 });
		const nominal = (id: string) => sizeClaim(part, id)!.nominal;
		expect(nominal("marker-12-treble-along")).toBeCloseTo(314.221, 3);
		expect(nominal("marker-12-treble-across")).toBeCloseTo(10.353, 3);
		expect(nominal("marker-12-treble-diameter")).toBeCloseTo(3.1, 9);
		expect(sizeClaim(part, "marker-3-along")!.datum).toBe("theoretical nut");
	});

	it("are those of the frets that are named, and the plate is no longer than they need", () => {
		const part = guide({}, { "markers-at": [5, 12, 5] });
		const cuts = part.marks.filter((m) => m.operation === "cut").map((m) => m.feature);
		const holes = ["marker 5", "marker 12 bass", "marker 12 treble"];
		expect(cuts).toEqual([...holes, "hanging hole", "outline"]);
		expect(extents(outlineOf(part)).maxX).toBeCloseTo(fretAt(12) + 10, 9);
		expect(extents(outlineOf(guide({}, { "end-margin": 20 }))).maxX).toBeCloseTo(
			fretAt(17) + 20,
			9,
		);
	});
});

describe("the plate of a marker guide", () => {
	it("is the board from the nut's actual face on, its taper and bends included", () => {
		const part = guide({ "nut-shift": 0.6, width: { nut: 43, "200 mm": 51, "last-fret": 56 } });
		expect(crossingsAtHeight([outlineOf(part)], 5)[0]).toBeCloseTo(0.6, 9);
		// 43 + 8·150/200 = 49 at 150 mm; 51 + 5·100/265.945 = 52.880 at 300 mm.
		expect(crossingsAtPlace([outlineOf(part)], 150)).toEqual([-24.5, 24.5].map(close));
		expect(crossingsAtPlace([outlineOf(part)], 300)[1]).toBeCloseTo(52.88 / 2, 3);
		expect(sizeClaim(part, "nut-end-bass")!.nominal).toBeCloseTo(0.6, 9);
		expect(part.notes.join(" ")).toContain("0.600 mm from the theoretical nut toward the saddle");
	});

	it("begins slanted on a fanned board, along the nut", () => {
		const part = guide({ ...FAN, "nut-shift": -1 });
		const nut = pathsOf(strip({ ...FAN, "nut-shift": -1 }), "actual nut face")[0]!;
		for (const y of [-15, 0, 15]) {
			const [x] = crossingsAtHeight([outlineOf(part)], y);
			expect(x).toBeCloseTo(slotAtHeight(nut, y), 9);
		}
		expect(part.notes.join(" ")).toContain("lay it letters up");
	});

	it("begins on the zero fret where there is one: the nut behind it is no datum", () => {
		const part = guide({ "zero-fret": true, "nut-shift": -3 });
		expect(extents(outlineOf(part)).minX).toBeCloseTo(0, 9);
		expect(pathsOf(part, "slot 0")).toEqual([]);
		expect(part.notes.join(" ")).toContain("the middle of the zero fret's slot");
	});

	it("carries a line on every slot up to its end, blind inside a binding, or none", () => {
		const part = guide({ binding: 1.5 });
		for (const n of [1, 12, 17]) {
			const { minX, maxX, maxY } = extents(pathsOf(part, `slot ${n}`)[0]!);
			expect([minX, maxX]).toEqual([fretAt(n), fretAt(n)].map(close));
			expect(maxY).toBeCloseTo(21.5 + (6.5 * fretAt(n)) / fretAt(22) - 1.5, 9);
			expect(sizeClaim(part, `slot-${n}-centre`)!.operation).toBe("score");
		}
		expect(pathsOf(part, "slot 18")).toEqual([]);
		const bare = guide({}, { "slot-lines": false });
		expect(bare.marks.filter((m) => m.operation === "score")).toEqual([]);
		expect(bare.notes.join(" ")).not.toContain("scored lines");
	});

	it("hangs by a hole beyond the last slot, or by none where the end margin is too short", () => {
		const last = fretAt(17);
		expect(holeOf(guide(), "hanging hole").x).toBeCloseTo(last + 10 - 3 - 2.5, 9);
		expect(pathsOf(guide({}, { "end-margin": "8.9 mm" }), "hanging hole")).toEqual([]);
		expect(holeOf(guide({}, { "end-margin": 9 }), "hanging hole").x).toBeCloseTo(last + 3.5, 9);
		expect(pathsOf(guide({}, { "hanging-hole": "none" }), "hanging hole")).toEqual([]);
	});

	it("tells job, scale, drill and, beside the holes, the frets", () => {
		const told = (part: Part) => labelClaims(part).map(({ text }) => text);
		expect(told(guide())).toEqual([
			...["3", "5", "7", "9", "12", "15", "17"],
			...["MARKER GUIDE", "drill 3 mm", "Plain neck", "25 1/2 in, 22 frets"],
		]);
		expect(told(guide({}, { drill: "1/8 in" }))).toContain("drill 1/8 in");
		const between = labelClaims(guide()).find(({ text }) => text === "12")!;
		expect(Math.abs(between.at[0].y)).toBeLessThan(2);
		expect(Math.abs(between.at[0].x - 314.221)).toBeLessThan(3);
	});

	it("says what it has no room to tell", () => {
		const narrow = { scale: 350, frets: 12, width: 18, radius: "flat", markers: [11, 12] };
		const settings = { drill: 4, "drill-play": 0 };
		const job = { ...jobWith(narrow, [{ "marker-guide": settings }]), job: "Sesquipedalianism" };
		const [part] = madeParts(job).parts;
		expect(labelClaims(part!).some(({ text }) => text === "Sesquipedalianism")).toBe(false);
		expect(part!.notes.join(" ")).toMatch(/No room for .*Sesquipedalianism/u);
	});
});

function close(x: number): unknown {
	return expect.closeTo(x, 9);
}

describe("a marker guide on a cambered board", () => {
	const said = (neck: object, settings: object = {}) => guide(neck, settings).notes.join(" ");

	it("tells how far the wood lies under a double marker's holes, and how it leans", () => {
		// R = 304.8, y = 10: y²/2R = 100/609.6 = 0.164 mm; asin(10/304.8) = 0.032814 rad = 1.88°.
		const notes = said({}, { "double-marker-spread": 20 });
		expect(notes).toContain("fret 12, 10 mm off the centre: 0.164 mm lower, 1.88° of lean");
	});

	it("goes by the radius at the marker where the board is compound", () => {
		// 254 at the nut, 406.4 at d(22): 254 + 152.4·314.221/465.945 = 356.77; 100/713.55 = 0.140;
		// asin(10/356.77) = 0.028033 rad = 1.61°.
		const compound = { radius: { nut: 254, "last-fret": 406.4 } };
		const notes = said(compound, { "double-marker-spread": 20 });
		expect(notes).toContain("0.140 mm lower, 1.61° of lean");
	});

	it("says nothing of it on a flat board or without double markers", () => {
		expect(said({ radius: "flat" })).not.toContain("lean");
		expect(said({ markers: [3, 5] })).not.toContain("lean");
	});
});

describe("a marker guide is refused", () => {
	const codes = (neck: object, settings: object = {}, other: object = {}) =>
		made(neck, settings, other).problems.map((p) => p.code);

	it("without a marker, or at a fret that has none", () => {
		expect(codes({ markers: [] })).toEqual(["guide-needs-markers"]);
		expect(codes({}, { "markers-at": [12, 13] })).toEqual(["no-marker-at-fret"]);
		expect(made({}, { "markers-at": [13] }).problems[0]!.facts.markers).toBe(
			"3, 5, 7, 9, 12, 15, 17",
		);
	});

	it("where the drill would come nearer than half a millimetre to a crown", () => {
		// d(17) − d(16) = 14.427, less the crown of 2.7 and twice 0.5: 10.727 are left.
		expect(codes({}, { drill: "10.72 mm", "drill-play": 0, "markers-at": [17] })).toEqual([]);
		const { problems } = made({}, { drill: "10.74 mm", "markers-at": [17, 15] });
		expect(problems.map((p) => p.code)).toEqual(["drill-meets-crown"]);
		expect(problems[0]!.facts).toMatchObject({
			feature: "marker 17",
			most: expect.closeTo(10.727, 3),
			more: 0,
		});
	});

	it("where a hole leaves less than 3 mm to the plate's sides or to its nut end", () => {
		// Half the board is 25.883 mm at marker 12: 25.883 − 3 − 1.55 = 21.333 off the centre are the
		// most, and less than 0.001 less square to the side, which leans by 6.5/465.945.
		const double = { "markers-at": [12] };
		expect(codes({}, { ...double, "double-marker-spread": "42.66 mm" })).toEqual([]);
		expect(codes({}, { ...double, "double-marker-spread": "42.67 mm" })).toEqual([
			"guide-hole-at-edge",
		]);
		expect(codes({}, { ...double, "double-marker-spread": 60 })).toEqual(["guide-hole-at-edge"]);
		// Marker 1 of a scale of 200 lies at d(1)/2 = 5.613; 3 + 1.55 before it the nut end may be.
		const short = { scale: 200, frets: 3, markers: [1], radius: "flat", width: 40 };
		expect(codes({ ...short, "nut-shift": 1.06 })).toEqual([]);
		const late = made({ ...short, "nut-shift": 1.07 }).problems;
		expect(late.map((p) => [p.code, p.facts.edge])).toEqual([["guide-hole-at-edge", "nut end"]]);
	});

	it("where two holes leave less than 3 mm between them", () => {
		const settings = { "drill-play": 0, "markers-at": [12] };
		expect(codes({}, { ...settings, "double-marker-spread": 6 })).toEqual([]);
		expect(codes({}, { ...settings, "double-marker-spread": 5.99 })).toEqual([
			"guide-holes-too-near",
		]);
	});

	it("with a hanging hole that the end margin has no room for", () => {
		expect(codes({}, { "hanging-hole": 6, "end-margin": 10 })).toEqual([]);
		expect(codes({}, { "hanging-hole": 7, "end-margin": 10 })).toEqual(["length-range"]);
	});
});

/** Letters, holes and scores of a guide that are nearer to a working edge than they may be. */
function nearEdges(part: Part): string[] {
	const outline = outlineOf(part);
	const marks = part.marks.filter((m) => m.path !== outline && m.operation !== "score");
	return marks
		.filter(({ path }) => {
			const edges = part.working.filter((edge) => edge !== path).flatMap(segments);
			const points = segments(path).flatMap((s) =>
				[0, 0.25, 0.5, 0.75, 1].map((u) => pointAt(s, u)),
			);
			return points.some((p) => edges.some((edge) => distanceTo(edge, p) < 3 - 1e-9));
		})
		.map(({ feature }) => `${feature} is too near to a working edge`);
}

describe("every marker guide of any neck", () => {
	it("has sound contours, letters apart, room beside its holes, and measures what it claims", () => {
		let seen = 0;
		let numbered = 0;
		const any = fc.tuple(randomJob({ leastGap: 5 }), anyMarkerGuide);
		fc.assert(
			fc.property(any, ([{ job }, entry]) => {
				for (const part of madeParts({ ...job, make: [entry] }).parts) {
					seen++;
					const scores = part.marks.filter((m) => m.operation === "score");
					expect([
						...contourFaults(part),
						...labelFaults(part),
						...crossed(labelRectangles(part), scores),
						...claimFaults(part),
						...nearEdges(part),
					]).toEqual([]);
					if (labelClaims(part).some(({ text }) => /^\d+$/u.test(text))) numbered++;
				}
			}),
			{ ...RUNS, numRuns: 80 },
		);
		expect(seen).toBeGreaterThan(25);
		expect(numbered).toBeGreaterThan(20);
	});
});

const withMarkers = (text: string) =>
	text.replace("  radius:", "  markers: [3, 5, 7, 9, {12: double}, 15]\n  radius:");

describe("the files of a marker guide", () => {
	const TEXT = withMarkers(making("marker-guide"));
	const KERF = TEXT.replace("make:", "machine: {kerf: 0.16 mm}\nmake:");

	it("measure what they promise, whatever their format", async () => {
		expect(await foundInJob(KERF)).toEqual([]);
		const fanned = KERF.replace(
			"scale: 648 mm",
			"scale: {bass: 27 in, treble: 25 in, square-fret: 7}",
		);
		expect(await foundInJob(fanned.replace("frets: 22", "frets: 22\n  handed: left"))).toEqual([]);
	});

	it("hold no hole that a cutter or a beam is too wide for", async () => {
		const milled = (cutter: string) =>
			TEXT.replace("make:", `machine: {kind: mill, cutter: ${cutter}}\nmake:`);
		expect(await foundInJob(milled("3 mm"))).toEqual([]);
		await expect(foundInJob(milled("3.175 mm"))).rejects.toThrow("narrower-than-cutter");
		const thin = TEXT.replace("- marker-guide", "- marker-guide: {drill: 1 mm}");
		const wide = thin.replace("make:", "machine: {kerf: 1.2 mm}\nmake:");
		await expect(foundInJob(wide)).rejects.toThrow(/narrower-than-kerf|radius-below-half-kerf/u);
	});

	it("are found out when they are damaged", async () => {
		const found = (change: (part: Part) => Part) => foundAfter(TEXT, change);
		expect(await found((p) => p)).toEqual([]);
		expect(await found((p) => shifted(p, "marker 12 bass", 0.05, 0))).toEqual(
			expect.arrayContaining(["claim-failed", "off-place"]),
		);
		expect(await found((p) => shifted(p, "marker 7", 0, 0.05))).toContain("claim-failed");
		expect(await found((p) => without(p, "marker 5"))).toContain("feature-missing");
		expect(await found(pointsMoved((p) => p.y > 10, 0, 0.02))).toContain("claim-failed");
		expect(await found(pointsMoved((p) => p.x < 1, 0.02, 0))).toContain("claim-failed");
		expect(await found((p) => shifted(p, "slot 9", 0.02, 0))).toContain("claim-failed");
		const wider = (p: Part) =>
			withPaths(p, "marker 9", ({ points, closed }) => {
				const middle = (points[0]!.x + points[1]!.x) / 2;
				const out = points.map((v) => ({ ...v, x: v.x + Math.sign(v.x - middle) * 0.005 }));
				return [{ closed, points: out }];
			});
		expect(await found(wider)).toContain("claim-failed");
	});
});
