import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { Claim, Part, SizeClaim } from "../../src/drawing/index.js";
import { type Move, moved, offset, type Path, reversed, undone } from "../../src/geometry/index.js";
import { type Cutter, loadCutter } from "../../src/proof/cut.js";
import { judged } from "../../src/proof/judge.js";
import { measurePart } from "../../src/proof/measure.js";
import type { ReadStroke } from "../../src/proof/types.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import {
	cutPart,
	faultsBeyond,
	measuredIn,
	promisedOf,
	strokesOf,
} from "../support/measured-parts.js";
import {
	arcFaceted,
	arcFlipped,
	holeChanged,
	labelsSwapped,
	notchFilled,
	notchMoved,
	scribbledOver,
	shifted,
	without,
	withPaths,
} from "../support/proof-measure-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";

let cutter: Cutter;
beforeAll(async () => {
	cutter = await loadCutter();
});

const FANNED = {
	scale: { bass: 660, treble: 630, "square-fret": 7 },
	strings: { count: 6, "at-nut": 36, "at-saddle": 52 },
	markers: [3, 5, { 12: "double" }],
};
const LASER = { machine: { kind: "laser", kerf: 0 } };
const MILL = { machine: { kind: "mill", cutter: "1.5 mm", relief: "floor" } };
const TANG = { "slot-strip": { slots: "tang" } };
const LINE = { "slot-strip": { slots: "line" } };
const HIGH_WIRE = {
	"crown-width": 2.032,
	"crown-height": 1.0668,
	"tang-width": 0.53,
	"tang-depth": 1.6,
};
const TWO_EDGES = { "second-edge": { scale: 628, frets: 20 }, "nut-end": "cleared" };

/** Jobs over all tools and the options that change what is claimed. */
const JOBS: Readonly<Record<string, object>> = {
	"a plain neck": jobWith({}, ["notched-straightedge", "radius-gauge", "slot-strip"]),
	"a fanned neck": jobWith(FANNED, ["notched-straightedge", "radius-gauge", "slot-strip"]),
	"a fanned neck with a zero fret": jobWith({ ...FANNED, "zero-fret": true }, [
		"notched-straightedge",
		TANG,
	]),
	"a moved nut": jobWith({ "nut-shift": 0.3, markers: [3, { 12: "double" }] }, [
		"notched-straightedge",
		TANG,
	]),
	"a zero fret with a moved nut": jobWith({ ...FANNED, "zero-fret": true, "nut-shift": -0.2 }, [
		TANG,
	]),
	"slots cut once": jobWith(FANNED, [LINE], LASER),
	"a second edge": jobWith({}, [{ "notched-straightedge": TWO_EDGES }]),
	"gauges of a compound board": jobWith({ radius: { nut: 254, "last-fret": 406.4 } }, [
		{ "radius-gauge": { faces: ["concave", "convex"] } },
	]),
	"holes that guide a drill": jobWith({ ...FANNED, "nut-shift": 0.3 }, ["marker-guide"]),
	"a kerf coupon": jobWith({}, ["kerf-coupon"], LASER),
	"crowns' arcs": jobWith({}, ["crown-gauge"]),
	"crowns on flanks": jobWith({}, ["crown-gauge"], { wire: HIGH_WIRE }),
	"relieved floors": jobWith({}, ["notched-straightedge"], MILL),
};
const cases = Object.entries(JOBS);

/** A measurement in the part's own marks is arithmetic alone. */
const exact = () => 1e-6;
/** What a cut part is judged by; a radius by its sagitta, as the measurement says itself. */
const KERF = 0.16;
const sweptBy = (found: readonly { claim: Claim; tolerance: number }[]) => (claim: Claim) =>
	claim.kind === "radius" ? found.find((m) => m.claim === claim)!.tolerance : 0.002;

function sweptFaults(part: Part, kerf: number): string[] {
	const found = measuredIn(part, kerf, cutter);
	return faultsBeyond(found, sweptBy(found));
}

/** A part's strokes as a file keeps them: laid somewhere on a sheet, six decimals, and back. */
function asWritten(part: Part, move: Move): ReadStroke[] {
	const six = (x: number) => Math.round(x * 1e6) / 1e6;
	return strokesOf(part).map((stroke) => {
		const laid = moved(stroke.path, move);
		const points = laid.points.map((p) => ({ ...p, x: six(p.x), y: six(p.y) }));
		return { ...stroke, path: moved({ ...laid, points }, undone(move)) };
	});
}

const MOVES: readonly Move[] = [
	{ x: 12.345678, y: 300, turn: Math.PI / 2, mirror: false },
	{ x: 700, y: 80.5, turn: Math.PI, mirror: false },
	{ x: -20, y: 900, turn: 0.3, mirror: false },
];

describe("a part measured in its own marks", () => {
	it.each(cases)("keeps every claim: %s", (_, job) => {
		const { parts } = madeParts(job);
		expect(parts.length).toBeGreaterThan(0);
		for (const part of parts) {
			const found = measuredIn(part);
			expect(found.map((m) => m.claim)).toEqual(part.claims);
			expect(faultsBeyond(found, exact)).toEqual([]);
		}
	});

	it.each(cases)("keeps every claim as a file holds it, laid anywhere: %s", (_, job) => {
		for (const part of madeParts(job).parts) {
			for (const move of MOVES) {
				const strokes = asWritten(part, move);
				expect(judged(measurePart(promisedOf(part, 0), strokes, LETTERS))).toEqual([]);
			}
		}
	});

	it.each(cases)("finds no large size or place true once it is a little larger: %s", (_, job) => {
		for (const part of madeParts(job).parts) {
			const larger = scaled(part, 1.0005);
			const kept = measuredIn(larger).filter(
				({ claim, deviation, tolerance }) => isLarge(claim) && Math.abs(deviation) <= tolerance,
			);
			expect(kept.map((m) => m.claim.id)).toEqual([]);
		}
	});
});

function isLarge(claim: Claim): claim is SizeClaim {
	return claim.kind !== "label" && claim.kind !== "angle" && Math.abs(claim.nominal) > 10;
}

function scaled(part: Part, by: number): Part {
	const grow = ({ points, closed }: Path): Path => ({
		closed,
		points: points.map((p) => ({ ...p, x: p.x * by, y: p.y * by })),
	});
	return { ...part, marks: part.marks.map((m) => ({ ...m, path: grow(m.path) })) };
}

describe("a part measured after its cut", () => {
	it.each(cases)("keeps every claim: %s", (_, job) => {
		for (const part of madeParts(job).parts) {
			const cut = cutPart(part, KERF, 0);
			expect(cut).not.toBeNull();
			expect(sweptFaults(cut!, KERF)).toEqual([]);
		}
	});

	it.each(cases)("keeps every claim with tabs: %s", (_, job) => {
		for (const part of madeParts(job).parts) {
			const tabbed = [
				[KERF, "laser"],
				[0, "laser"],
				[0, "mill"],
			] as const;
			for (const [kerf, kind] of tabbed) {
				const held = cutPart(part, kerf, 3, kind);
				expect(held, part.name).not.toBeNull();
				expect(held!.claims.length - part.claims.length).toBe(part.nominal ? 0 : 3);
				expect(sweptFaults(held!, kerf)).toEqual([]);
			}
		}
	});

	it.each(cases)("keeps every claim as a file holds it, laid anywhere: %s", (_, job) => {
		for (const part of madeParts(job).parts) {
			const held = cutPart(part, KERF, 2)!;
			const strokes = asWritten(held, MOVES[2]!);
			expect(judged(measurePart(promisedOf(held, KERF), strokes, LETTERS, cutter))).toEqual([]);
		}
	});

	it("keeps every claim of arcs nearly flat, wherever they lie, and none once they are flatter", () => {
		// Sagittas of 0.01 to 0.08 mm: width² / 8·radius.
		let arcs = 0;
		for (const radius of [1500, 2900, 4400, 6295.24, 9100]) {
			for (const width of [30.1, 33.4, 36.9]) {
				const [part] = madeParts(
					jobWith({}, [{ "radius-gauge": { radii: [radius], "gauge-width": width } }]),
				).parts;
				const flatter = withPaths(part!, "outline", ({ points, closed }) => [
					{
						closed,
						points: points.map((p) => (Math.abs(p.bulge) < 0.1 ? { ...p, bulge: 0 } : p)),
					},
				]);
				for (const kerf of [0.1, 0.16, 0.25]) {
					const cut = cutPart(part!, kerf, 0)!;
					for (const move of MOVES) {
						const strokes = asWritten(cut, move);
						const found = measurePart(promisedOf(cut, kerf), strokes, LETTERS, cutter);
						expect(judged(found)).toEqual([]);
						arcs++;
					}
				}
				expect(failing(part!, flatter)).toHaveProperty("sagitta");
				expect(failing(part!, cutPart(flatter, KERF, 0)!, KERF)).toHaveProperty("sagitta");
			}
		}
		expect(arcs).toBe(135);
	});

	it("needs a cutter only for what is moved for a kerf", () => {
		const [bar] = madeParts(JOBS["a plain neck"]!).parts;
		expect(() => measurePart(promisedOf(bar!, KERF), [], LETTERS)).toThrow(/nothing to cut/);
		expect(() => measurePart(promisedOf(bar!, 0), [], LETTERS)).not.toThrow();
	});
});

describe("any part of any neck", () => {
	const anyJob = fc
		.tuple(randomJob({ leastGap: 5 }), anyStraightedge, anyGauge, anyStrip)
		.map(([{ job }, ...make]) => ({ ...job, make }));

	it("keeps every claim in its own marks, after its cut and with tabs", () => {
		let cuts = 0;
		fc.assert(
			fc.property(anyJob, fc.constantFrom(0, 2), (job, tabs) => {
				for (const part of madeParts(job).parts) {
					expect(faultsBeyond(measuredIn(part), exact)).toEqual([]);
					const cut = cutPart(part, KERF, tabs);
					if (!cut) continue;
					cuts++;
					expect(judged(measuredIn(cut, KERF, cutter))).toEqual([]);
				}
			}),
			{ ...RUNS, numRuns: 25 },
		);
		expect(cuts).toBeGreaterThan(25);
	});
});

/** Claims that a spoilt part fails, by what is found of each, the good part's claims being promised. */
function failing(good: Part, spoilt: Part, kerf = 0): Record<string, string> {
	const found = judged(measurePart(promisedOf(good, kerf), strokesOf(spoilt), LETTERS, cutter));
	return Object.fromEntries(found.map(({ code, facts }) => [String(facts.claim), code]));
}

/** The same once both are moved for the kerf. */
function failingCut(good: Part, spoilt: Part): Record<string, string> {
	return failing(good, cutPart(spoilt, KERF, 0)!, KERF);
}

function partOf(job: string, tool: string): Part {
	return madeParts(JOBS[job]!).parts.find((part) => part.tool === tool)!;
}

describe("a spoilt straightedge", () => {
	const bar = partOf("a plain neck", "notched-straightedge");

	it.each([0.02, -0.02, 0.003])("fails for a notch moved by %f mm, and for no other", (by) => {
		const spoilt = notchMoved(bar, "notch-7", by);
		expect(failing(bar, spoilt)).toEqual({ "notch-7-centre": "claim-failed" });
		expect(failingCut(bar, spoilt)).toEqual({ "notch-7-centre": "claim-failed" });
	});

	it("misses a notch that is not there", () => {
		const missing = {
			"notch-7-centre": "feature-missing",
			"notch-7-width": "feature-missing",
			"notch-7-depth": "feature-missing",
		};
		expect(failing(bar, notchFilled(bar, "notch-7"))).toEqual(missing);
		expect(failingCut(bar, notchFilled(bar, "notch-7"))).toEqual(missing);
	});

	it("takes no neighbour for a notch that is not there, however near they stand", () => {
		const settings = { "side-clearance": "1.7 mm", "least-land": "0.3 mm" };
		const near = jobWith({ scale: 350, frets: 20 }, [{ "notched-straightedge": settings }]);
		const [close] = madeParts(near).parts as [Part];
		const widths = [18, 19, 20].map((n) => close.claims.find((c) => c.id === `notch-${n}-width`)!);
		for (const i of [1, 2]) {
			const land = widths[i]!.at[0]!.x - widths[i - 1]!.at[1]!.x;
			expect(land).toBeGreaterThan(0);
			expect(land).toBeLessThan(1);
		}
		for (const found of [
			failing(close, notchFilled(close, "notch-19")),
			failingCut(close, notchFilled(close, "notch-19")),
		]) {
			expect(found).toMatchObject({
				"notch-19-centre": "feature-missing",
				"notch-19-width": "feature-missing",
				"notch-19-depth": "feature-missing",
			});
		}
	});

	it("fails for a land that stands proud, and for the depths beside it", () => {
		const [from, to] = [12, 13].map((n) => bar.claims.find((c) => c.id === `notch-${n}-width`)!);
		const proud = withPaths(bar, "outline", ({ points, closed }) => [
			{
				closed,
				points: points.map((p) => {
					const isLand = p.y === 0 && p.x > from!.at[0]!.x + 0.1 && p.x < to!.at[0]!.x + 0.1;
					return isLand ? { ...p, y: -0.02 } : p;
				}),
			},
		]);
		expect(failing(bar, proud)).toEqual({
			"notch-12-depth": "claim-failed",
			"notch-13-depth": "claim-failed",
			"working-edge": "claim-failed",
		});
	});

	it("fails for a hole that is 0.01 mm too wide or lies elsewhere", () => {
		expect(failing(bar, holeChanged(bar, 0.01, 0))).toEqual({ "hanging-hole": "claim-failed" });
		expect(failingCut(bar, holeChanged(bar, 0.01, 0))).toEqual({ "hanging-hole": "claim-failed" });
		expect(failing(bar, holeChanged(bar, 0, 0.05))).toEqual({ "hanging-hole": "off-place" });
		expect(failing(bar, without(bar, "hanging hole"))).toEqual({
			"hanging-hole": "feature-missing",
		});
	});

	it("fails for numbers that are swapped, missing, moved or drawn over", () => {
		const wrong = (...n: number[]) =>
			Object.fromEntries(n.map((k) => [`label-fret-${k}`, "label-wrong"]));
		expect(failing(bar, labelsSwapped(bar, "label fret-3", "label fret-5"))).toEqual(wrong(3, 5));
		expect(failing(bar, without(bar, "label fret-5"))).toEqual(wrong(5));
		expect(failing(bar, shifted(bar, "label fret-5", 0.01, 0))).toEqual(wrong(5));
		expect(failing(bar, scribbledOver(bar, "label fret-5"))).toEqual(wrong(5));
	});

	it("takes letters that touch in one stroke, as files of loose pieces have them", () => {
		const touching = bar.claims
			.filter(({ kind }) => kind === "label")
			.map((label) => ({ label, ...strokesJoined(bar, label.feature) }))
			.filter(({ count }) => count > 0);
		expect(touching.length).toBeGreaterThan(0);
		for (const { label, part } of touching) {
			expect(failing(bar, part)).toEqual({});
			const wrong = { [label.id]: "label-wrong" };
			expect(failing(bar, shifted(part, label.feature, 0.01, 0))).toEqual(wrong);
		}
	});

	it("says so where the lettering is not at hand", () => {
		const labels = bar.claims.filter((c) => c.kind === "label");
		const nothing = judged(measurePart(promisedOf(bar, 0), strokesOf(bar), null));
		expect(nothing.map((p) => [p.code, p.facts.count])).toEqual([
			["font-not-given", labels.length],
		]);
	});

	it("fails when it is mirrored, turned end for end or drawn in inches", () => {
		const { outline } = promisedOf(bar, 0);
		const xs = outline[0]!.points.map((p) => p.x);
		const over = Math.min(...xs) + Math.max(...xs);
		const mirrored = everyPath(bar, (path) =>
			moved(path, { x: over, y: 0, turn: Math.PI, mirror: true }),
		);
		const centres = bar.claims.filter((c) => c.id.endsWith("-centre"));
		for (const spoilt of [mirrored, scaled(bar, 25.4), scaled(bar, 1 / 25.4)]) {
			const found = failing(bar, spoilt);
			for (const { id } of centres) expect(found[id], id).toBeDefined();
			const labels = bar.claims.filter((c) => c.kind === "label");
			for (const { id } of labels) expect(found[id], id).toBe("label-wrong");
		}
	});

	it("fails in every notch when it is cut on the wrong side of its contours, or not moved", () => {
		const cuts = bar.marks.filter((m) => m.operation === "cut").map((m) => m.path);
		const inward = offset(cuts, -KERF / 2).paths;
		const wrong = {
			...bar,
			marks: [
				...bar.marks.filter((m) => m.operation !== "cut"),
				...inward.map((path) => ({ operation: "cut" as const, path, feature: "cut" })),
			],
		};
		const widths = bar.claims.filter((c) => c.kind === "width" || c.kind === "length");
		for (const spoilt of [wrong, bar]) {
			const found = failing(bar, spoilt, KERF);
			for (const { id } of widths) expect(found[id], id).toBe("claim-failed");
			expect(found["hanging-hole"]).toBe("claim-failed");
		}
	});

	it("fails for a tab of another width", () => {
		const held = cutPart(bar, KERF, 3)!;
		expect(failing(held, held, KERF)).toEqual({});
		const wider = cutPart(bar, 0.2, 3)!;
		expect(failing(held, wider, KERF)).toMatchObject({ "tab-1": "claim-failed" });
	});
});

/** A label whose open strokes are joined where two of them end at one place, and how often. */
function strokesJoined(part: Part, feature: string): { part: Part; count: number } {
	const own = part.marks.filter((m) => m.feature === feature).map((m) => m.path);
	const rest: Path[] = [];
	let count = 0;
	const touch = (a: Path, b: Path) => {
		const [end, start] = [a.points.at(-1)!, b.points[0]!];
		return !a.closed && !b.closed && Math.hypot(end.x - start.x, end.y - start.y) < 1e-6;
	};
	for (const path of own) {
		const pairs = rest.flatMap((other, at) =>
			[other, reversed(other)].flatMap((a) => [path, reversed(path)].map((b) => ({ at, a, b }))),
		);
		const pair = pairs.find(({ a, b }) => touch(a, b));
		if (!pair) rest.push(path);
		else {
			const points = [...pair.a.points.slice(0, -1), ...pair.b.points];
			rest[pair.at] = { closed: false, points };
			count++;
		}
	}
	const others = part.marks.filter((m) => m.feature !== feature);
	const joined = rest.map((path) => ({ operation: "engrave" as const, path, feature }));
	return { part: { ...part, marks: [...others, ...joined] }, count };
}

function everyPath(part: Part, change: (path: Path) => Path): Part {
	return { ...part, marks: part.marks.map((m) => ({ ...m, path: change(m.path) })) };
}

describe("a spoilt radius gauge", () => {
	const gauges = madeParts(JOBS["gauges of a compound board"]!).parts;

	it("fails for an arc that bends to the other side", () => {
		for (const gauge of gauges) {
			const arc = { radius: "claim-failed", sagitta: "claim-failed" };
			expect(failing(gauge, arcFlipped(gauge))).toMatchObject(arc);
		}
	});

	it("fails for an arc of twenty chords, drawn or cut", () => {
		for (const gauge of gauges) {
			const round = { radius: "not-round", sagitta: "not-round" };
			expect(failing(gauge, arcFaceted(gauge, 20))).toMatchObject(round);
			expect(failingCut(gauge, arcFaceted(gauge, 20))).toMatchObject(round);
		}
	});

	it("fails for an arc a little flatter", () => {
		for (const gauge of gauges) {
			const flatter = withPaths(gauge, "outline", ({ points, closed }) => {
				const least = Math.min(
					...points.filter((p) => p.bulge !== 0).map((p) => Math.abs(p.bulge)),
				);
				const bend = (b: number) => (Math.abs(b) === least ? b * 0.995 : b);
				return [{ closed, points: points.map((p) => ({ ...p, bulge: bend(p.bulge) })) }];
			});
			const arc = { radius: "claim-failed", sagitta: "claim-failed" };
			expect(failing(gauge, flatter)).toMatchObject(arc);
			expect(failingCut(gauge, flatter)).toMatchObject(arc);
		}
	});
});

describe("a spoilt strip", () => {
	const slots = [
		["a plain neck", "scored"],
		["a moved nut", "cut to a width"],
	] as const;
	it.each(slots)("fails for one slot moved by 0.02 mm: %s, %s", (job) => {
		const strip = partOf(job, "slot-strip");
		const spoilt = shifted(strip, "slot 9", 0.02, 0);
		expect(failing(strip, spoilt)).toEqual({ "slot-9-centre": "claim-failed" });
		expect(failingCut(strip, spoilt)).toEqual({ "slot-9-centre": "claim-failed" });
	});

	it("fails for one slanted slot moved, turned or missing, cut once or scored", () => {
		for (const job of ["slots cut once", "a fanned neck"]) {
			const strip = partOf(job, "slot-strip");
			const own = ["centre", "length", "bass-string", "treble-string", "slant"];
			const places = ["centre", "bass-string", "treble-string"];
			const all = (names: readonly string[], code: string) =>
				Object.fromEntries(names.map((name) => [`slot-9-${name}`, code]));
			expect(failing(strip, shifted(strip, "slot 9", 0.02, 0))).toEqual(
				all(places, "claim-failed"),
			);
			expect(failing(strip, without(strip, "slot 9"))).toEqual(all(own, "feature-missing"));
			const turned = withPaths(strip, "slot 9", ({ points: [a, b], closed }) => [
				{
					closed,
					points: [
						{ ...a!, x: a!.x + 0.01 },
						{ ...b!, x: b!.x - 0.01 },
					],
				},
			]);
			expect(failing(strip, turned)).toMatchObject({ "slot-9-slant": "claim-failed" });
		}
	});

	it("fails everywhere for a nut line that lies elsewhere", () => {
		const strip = partOf("a plain neck", "slot-strip");
		const found = failing(strip, shifted(strip, "theoretical nut", 0.01, 0));
		const centres = strip.claims.filter(
			(c) => c.kind === "position" && c.datum === "theoretical nut",
		);
		expect(Object.keys(found)).toEqual(centres.map((c) => c.id));
	});

	it("fails for a marker's cross that left the centre line", () => {
		const strip = partOf("a moved nut", "slot-strip");
		expect(failing(strip, shifted(strip, "marker 3", 0, 0.02))).toEqual({
			"marker-3-across": "claim-failed",
		});
	});
});

describe("a file with anything in it", () => {
	const number = fc.oneof(
		fc.double({ min: -50, max: 700, noNaN: true }),
		fc.constantFrom(0, -0, 1e-9, 1e300, Number.NaN, Number.POSITIVE_INFINITY),
	);
	const vertex = fc.record({
		x: number,
		y: number,
		bulge: fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3 }), fc.constant(1e200)),
	});
	const stroke = fc.record({
		operation: fc.constantFrom("cut", "score", "engrave", "tab", null),
		layer: fc.constant(""),
		path: fc.record({
			points: fc.oneof(
				fc.array(vertex, { maxLength: 6 }),
				fc.array(
					fc.record({
						x: fc.double({ min: -5, max: 40 }),
						y: fc.double({ min: -5, max: 40 }),
						bulge: fc.double({ min: -2, max: 2, noNaN: true }),
					}),
					{ maxLength: 6 },
				),
			),
			closed: fc.boolean(),
		}),
	});
	const parts = [
		...madeParts(JOBS["a fanned neck"]!).parts,
		...madeParts(JOBS["slots cut once"]!).parts,
	].map((part) => cutPart(part, KERF, 2)!);

	it("is measured without a throw, and holds no label", () => {
		fc.assert(
			fc.property(
				fc.array(stroke, { maxLength: 12 }),
				fc.constantFrom(...parts),
				(strokes, part) => {
					const read = strokes as readonly ReadStroke[];
					const found = measurePart(promisedOf(part, KERF), read, LETTERS, cutter);
					expect(found.length).toBe(part.claims.length);
					const labels = found.filter((m) => m.claim.kind === "label");
					expect(labels.every((m) => Number.isNaN(m.value))).toBe(true);
				},
			),
			{ seed: 7, numRuns: 150 },
		);
	});
});
