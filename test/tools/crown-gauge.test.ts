import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drawing/index.js";
import { make } from "../../src/make.js";
import { foundInJob } from "../support/camber-tools.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf } from "../support/measure-part.js";
import { arcsOf, crossingsAtHeight, crossingsAtPlace } from "../support/measure-path.js";
import { RUNS, randomJob, reading } from "../support/random-neck.js";
import { expectSound, foundAfter, lacking, sizesOf, withPoints } from "../support/scale-tools.js";

const FANNED = {
	scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
	frets: 24,
	strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 },
};

function made(settings: object = {}, neck: object = {}, wire: object = {}, other: object = {}) {
	const job = jobWith(neck, [{ "crown-gauge": settings }], other);
	return madeParts({ ...job, wire: { ...job.wire, ...wire } });
}

function gauge(...of: Parameters<typeof made>): Part {
	const { parts, problems } = made(...of);
	expect(problems).toEqual([]);
	expect(parts).toHaveLength(1);
	return parts[0]!;
}

const codes = (...of: Parameters<typeof made>) => made(...of).problems.map(({ code }) => code);
const size = (part: Part, id: string) => sizesOf(part).find((c) => c.id === id)?.nominal;
const count = (part: Part) => sizesOf(part).filter(({ id }) => id.endsWith("-radius")).length;
const depths = (part: Part) =>
	sizesOf(part).flatMap((c) => (c.kind === "depth" ? [c.nominal] : []));
/** Width of either foot, from what a tongue is long. */
const foot = (part: Part) => (size(part, "tongue-1-length")! - size(part, "notch-1-width")!) / 2;
const textsOf = (part: Part) => part.claims.flatMap((c) => (c.kind === "label" ? [c.text] : []));

/** Arcs of the outline that are a notch's: those over a chord of the crown's width. */
function archesOf(part: Part, width: number) {
	return arcsOf(outlineOf(part)).filter(
		({ start, end }) => Math.abs(Math.hypot(start.x - end.x, start.y - end.y) - width) < 1e-9,
	);
}

describe("a notch of a crown gauge", () => {
	it("is the arc of a circle over the crown's width", () => {
		// R = w²/8h + h/2 (Machinery's Handbook, circular segments): 2.7²/10.4 + 0.65 = 1.350961538…;
		// 2.7²/8 + 0.5 = 1.41125 at 1 mm.
		const part = gauge();
		const radii = archesOf(part, 2.7).map(({ radius }) => radius);
		expect(radii).toHaveLength(4);
		expect(Math.min(...radii)).toBeCloseTo(1.350961538, 9);
		expect(Math.max(...radii)).toBeCloseTo(1.41125, 9);
		expect(size(part, "notch-1-radius")).toBeCloseTo(7.29 / 10.4 + 0.65, 12);
		expect(part.notes.join(" ")).toContain(
			"Notch 1, 1.3 mm (0.0512 in): an arc of 1.351 mm radius",
		);
	});

	it("is a half circle on straight flanks where the crown is higher than half its width", () => {
		// 2.032/2 = 1.016; 1.0668 − 1.016 = 0.0508 (0.080 and 0.042 in: 0.040 and 0.002 in).
		const wire = { "crown-width": 2.032, "crown-height": 1.0668 };
		const part = gauge({ "crown-heights": [1.0668] }, {}, wire);
		const [arch] = archesOf(part, 2.032);
		expect(arch!.radius).toBeCloseTo(1.016, 9);
		expect(arch!.sagitta).toBeCloseTo(1.016, 9);
		const feet = Math.min(...outlineOf(part).points.map(({ y }) => y));
		expect(arch!.start.y - feet).toBeCloseTo(0.0508, 9);
		expect(crossingsAtHeight([outlineOf(part)], feet + 0.03).slice(1, 3)).toEqual([
			expect.closeTo(-1.016, 9),
			expect.closeTo(1.016, 9),
		]);
		expect(part.notes.join(" ")).toContain("straight flanks of 0.051 mm");
	});

	it("is as deep over its feet as the crown is high, from the outline alone", () => {
		for (const height of [1.5, 1.3, 0.5, 0.3]) {
			const part = gauge({ "crown-heights": [height] });
			const [floor] = crossingsAtPlace([outlineOf(part)], 0);
			const feet = Math.min(...outlineOf(part).points.map(({ y }) => y));
			expect(floor! - feet).toBeCloseTo(height, 9);
		}
	});

	it("lies in the middle of its tongue, its feet and itself the working edge", () => {
		const part = gauge({ "foot-width": 3 });
		expect(part.working).toHaveLength(4);
		for (const { points, closed } of part.working) {
			expect(closed).toBe(false);
			const [a, b, c, d] = points as [
				(typeof points)[0],
				(typeof points)[0],
				(typeof points)[0],
				(typeof points)[0],
			];
			expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(3, 9);
			expect(Math.hypot(c.x - b.x, c.y - b.y)).toBeCloseTo(2.7, 9);
			expect(Math.hypot(d.x - c.x, d.y - c.y)).toBeCloseTo(3, 9);
		}
	});
});

describe("the heights of a crown gauge", () => {
	it("are the wire's and three lower by a tenth each, none under half a millimetre", () => {
		expect(depths(gauge())).toEqual([1.3, 1.2, 1.1, 1].map((h) => expect.closeTo(h, 9)));
		const low = gauge({}, {}, { "crown-height": 0.65 });
		expect(depths(low)).toEqual([0.65, 0.55].map((h) => expect.closeTo(h, 9)));
		expect(depths(gauge({}, {}, { "crown-height": 0.8 }))).toHaveLength(4);
		expect(depths(gauge({}, {}, { "crown-height": 0.4 }))).toEqual([0.4]);
	});

	it("are those of the job, the highest first, each engraved beside its tongue", () => {
		const part = gauge({ "crown-heights": ["0.9 mm", "0.047 in", "1.5 mm"] });
		expect(depths(part)).toEqual([1.5, 0.047 * 25.4, 0.9].map((h) => expect.closeTo(h, 9)));
		expect(textsOf(part)).toEqual([
			"1.5 mm",
			"1.194 mm",
			"0.9 mm",
			"CROWN GAUGE",
			"wire 2.7 x 1.3 mm",
			"Plain neck",
		]);
	});

	it("are refused where they are none of this wire, alike, too low or too many", () => {
		expect(codes({ "crown-heights": [1.5, 1.2] })).toEqual([]);
		expect(codes({ "crown-heights": [1.2, 1.501, 1.6] })).toEqual([
			"notch-above-wire",
			"notch-above-wire",
		]);
		expect(codes({ "crown-heights": [1.3, 1, 1.281] })).toEqual(["notches-alike"]);
		expect(codes({ "crown-heights": [1.3, 1, 1.28] })).toEqual([]);
		expect(() => made({ "crown-heights": [0.2] })).toThrow("length-range");
		expect(() => made({ "crown-heights": [] })).toThrow();
		expect(() => made({ "crown-heights": [1.3, 1.2, 1.1, 1, 0.9] })).toThrow();
	});
});

describe("the feet of a crown gauge", () => {
	// d(n) = 647.7·(1 − 2^(−n/12)), equal division.
	const d = (n: number, scale = 647.7) => scale * (1 - 2 ** (-n / 12));

	it("are 4 mm wide, or what the nearest two frets leave them in tenths", () => {
		// d(22) − d(21) = 10.81 leaves more than 4 mm; d(30) − d(29) = 6.8084, less a crown of 2.7 and
		// 0.5 mm, leaves 3.6084.
		expect(d(30) - d(29)).toBeCloseTo(6.8084, 4);
		expect(foot(gauge())).toBeCloseTo(4, 9);
		expect(foot(gauge({}, { frets: 30 }))).toBeCloseTo(3.6, 9);
	});

	it("are refused wider than that, and on frets that leave them none", () => {
		expect(codes({ "foot-width": 3.608 }, { frets: 30 })).toEqual([]);
		const { problems } = made({ "foot-width": 3.609 }, { frets: 30 });
		expect(problems).toMatchObject([{ code: "length-range", facts: { mm: 3.609 } }]);
		expect(problems[0]!.facts.allowed).toBe("at most 3.608 mm between frets 29 and 30");
		// d(43) − d(42) = 3.2131, less 2.7: half a millimetre of wood.
		const none = made({}, { frets: 43 }).problems;
		expect(none).toMatchObject([{ code: "no-room-for-feet", facts: { fret: 42, beside: 43 } }]);
		expect(none[0]!.facts.wood).toBeCloseTo(d(43) - d(42) - 2.7, 9);
		expect(codes({ "foot-width": 1.5 }, { frets: 43 })).toEqual(["no-room-for-feet"]);
		expect(codes({ "foot-width": 20 }, { frets: 1, "nut-shift": 0 })).toEqual([]);
	});

	it("stand clear of a nut that was moved to the first fret, not of one behind a zero fret", () => {
		// d(1) = 36.3525: the nut 15 mm before it leaves 36.3525 − 15 − 1.35 − 0.5 = 19.5025.
		const moved = { frets: 1, "nut-shift": 15 };
		expect(codes({ "foot-width": 19.5 }, moved)).toEqual([]);
		const { problems } = made({ "foot-width": 19.6 }, moved);
		expect(problems[0]!.facts.allowed).toBe("at most 19.503 mm between the nut and fret 1");
		const zero = { frets: 1, "zero-fret": true, "nut-shift": -2 };
		expect(foot(gauge({}, zero))).toBeCloseTo(4, 9);
		expect(gauge({}, zero).notes.join(" ")).toContain("with the nut out");
	});

	it.each([
		["treble", 690, 650],
		["bass", 650, 690],
	])("are as wide as fanned frets allow at the %s edge, square to the fret", (_, bass, treble) => {
		// Outer strings 36 mm apart and parallel, a board of 43 mm, fret 0 square: fret n joins
		// (bass·u, −18) and (treble·u, 18), u = 1 − 2^(−n/12). Worked from these points alone.
		const ends = (n: number) => {
			const u = 1 - 2 ** (-n / 12);
			return [
				{ x: bass * u, y: -18 },
				{ x: treble * u, y: 18 },
			] as const;
		};
		const turn = (n: number) => Math.atan2((bass - treble) * (1 - 2 ** (-n / 12)), 36);
		const woodFrom = (n: number, m: number, y: number) => {
			const [[a, b], [p, q]] = [ends(n), ends(m)];
			const size = Math.hypot(b.x - a.x, b.y - a.y);
			const normal = { x: (b.y - a.y) / size, y: -(b.x - a.x) / size };
			const from = { x: a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y), y };
			const cross = (v: { x: number; y: number }) => v.x * (q.y - p.y) - v.y * (q.x - p.x);
			const apart = cross({ x: p.x - from.x, y: p.y - from.y }) / cross(normal);
			const slant = Math.abs(turn(n) - turn(m));
			return Math.abs(apart) - 1.35 - 1.35 / Math.cos(slant) - 1.5 * Math.tan(slant);
		};
		const frets = Array.from({ length: 29 }, (_, i) => i + 1);
		const least = Math.min(
			...frets.flatMap((n) =>
				[-21.5, 21.5].flatMap((y) => [woodFrom(n, n + 1, y), woodFrom(n + 1, n, y)]),
			),
		);
		const fan = {
			scale: { bass, treble, "square-fret": 0 },
			strings: { count: 6, "at-nut": 36, "at-saddle": 36 },
			width: 43,
			frets: 30,
		};
		const { problems } = made({ "foot-width": 20 }, fan);
		expect(problems[0]!.facts.allowed).toBe(
			`at most ${Number((least - 0.5).toFixed(3))} mm between frets 29 and 30`,
		);
		// Fret 29 would stand 6.79 mm from fret 30 square to the neck at this edge: the fan takes more.
		expect(least).toBeLessThan(646.111 * (2 ** (-29 / 12) - 2 ** (-30 / 12)) - 2.7);
		expect(gauge({}, FANNED).notes[0]).toContain("square to the fret");
	});

	it("stand on wood alone, half a millimetre from all else, on any neck that is not fanned", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 5, fanned: false }), ({ job, drawn }) => {
				const { parts, problems } = madeParts({ ...job, make: ["crown-gauge"] });
				const at = (n: number) => drawn.scale.bass * drawn.share(n);
				const w = drawn.crown.width;
				const gaps = Array.from({ length: drawn.frets }, (_, i) => at(i + 1) - at(i) - w);
				const nut = drawn.zeroFret ? gaps[0]! : at(1) - drawn.nutShift - w / 2;
				const wood = Math.min(nut, ...gaps.slice(1));
				if (wood < 2) {
					expect(problems.map(({ code }) => code)).toEqual(["no-room-for-feet"]);
					return;
				}
				const own = foot(parts[0]!);
				expect(own).toBeLessThan(wood - 0.5 + 1e-9);
				expect(own).toBeGreaterThan(Math.min(4, wood - 0.6) - 1e-9);
			}),
			RUNS,
		);
	});
});

describe("the plate of a crown gauge", () => {
	const mm = (min: number, max: number) => reading(min, max, 2).map((x) => `${x} mm`);
	const settings = fc.record(
		{
			"crown-heights": fc.uniqueArray(
				fc.constantFrom("0.4 mm", "0.55 mm", "0.7 mm", "0.85 mm", "0.9 mm"),
				{
					minLength: 1,
					maxLength: 4,
				},
			),
			"foot-width": mm(1.5, 2.2),
			"hanging-hole": fc.constantFrom("none", "3 mm", "12 mm"),
		},
		{ requiredKeys: [] },
	);

	it("is sound on any neck, its claims what is cut", () => {
		expectSound("crown-gauge", settings, { leastGap: 6 });
	});

	it("is sound with one to four notches", () => {
		for (const heights of [[1.3], [1.3, 0.9], [1.3, 1.1, 0.9], [1.4, 1.2, 1, 0.8]]) {
			expect(count(gauge({ "crown-heights": heights }))).toBe(heights.length);
		}
	});

	it("stands out over the crowns beside by more than a crown", () => {
		const part = gauge({ "crown-heights": [1.3] }, {}, { "crown-height": 1.3 });
		const ys = outlineOf(part).points.map(({ y }) => y);
		const feet = Math.min(...ys);
		// Beyond the tongue the plate begins where its body does: 1.3 + 1.5 + 3.5 over the wood.
		const [body] = crossingsAtPlace([outlineOf(part)], 10);
		expect(body! - feet).toBeCloseTo(6.3, 9);
	});
});

describe("a mill", () => {
	const milled = (cutter: number) =>
		make(
			making("crown-gauge").replace("make:", `machine: {kind: mill, cutter: ${cutter} mm}\nmake:`),
			{ formats: ["svg"] },
		);

	it("is refused where its cutter is wider than a notch's arc", async () => {
		// The tightest arc has R 1.351: a cutter of 2.7 mm fits into it, one of 2.71 mm does not.
		const made = await milled(2.71);
		expect(made.ok ? [] : made.problems.map(({ code }) => code)).toContain("radius-below-cutter");
		expect((await milled(2.69)).ok).toBe(true);
	});
});

describe("a written crown gauge", () => {
	const kerf = (text: string) => text.replace("make:", "machine: {kerf: 0.16 mm}\nmake:");
	const text = making("crown-gauge");
	const flanks = text.replace(
		"crown-width: 2.7 mm, crown-height: 1.3 mm",
		"crown-width: 2.032 mm, crown-height: 1.0668 mm",
	);

	it.each([
		["as drawn", text],
		["with a kerf", kerf(text)],
		["on flanks", flanks],
		["on flanks, with a kerf", kerf(flanks)],
		["of one low notch, with a kerf", kerf(making("crown-gauge: {crown-heights: [0.3 mm]}"))],
	])("is found as promised in every format: %s", async (_, job) => {
		expect(await foundInJob(job)).toEqual([]);
	});

	const isOutline = (feature: string) => feature === "outline";
	// The lower tongue's notch: its arc's ends lie 1.35 mm on either side of the middle.
	const inNotch = (q: { x: number; y: number }) => q.y < -23 && Math.abs(q.x) < 2;
	const onFeet = (q: { x: number; y: number }) => q.y < -23 && q.x > 2;
	type Point = { x: number; y: number };
	const change = (is: (q: Point) => boolean, x: number, y: number) => (p: Part) =>
		withPoints(p, isOutline, (q) => (is(q) ? { ...q, x: q.x + x, y: q.y + y } : q));
	const bulged = (by: number) => (p: Part) =>
		withPoints(p, isOutline, (q) => {
			const { bulge } = q as Point & { bulge: number };
			return inNotch(q) && bulge !== 0 ? { ...q, bulge: bulge * by } : q;
		});

	it.each([
		["undamaged", (p) => p, undefined],
		["a notch 0.02 mm beside its place", change(inNotch, 0.02, 0), "claim-failed"],
		["a notch wider on one side", change((q) => inNotch(q) && q.x > 0, 0.01, 0), "claim-failed"],
		["a notch deeper by a hundredth", bulged(1.01), "claim-failed"],
		["a foot out of level", change(onFeet, 0, 0.02), "claim-failed"],
		["no hole", (p) => lacking(p, "hanging hole"), "feature-missing"],
		["no height beside a notch", (p) => lacking(p, "label notch-2"), "label-wrong"],
	] as [string, Parameters<typeof foundAfter>[1], string | undefined][])(
		"is found out where it is damaged: %s",
		async (_, damage, code) => {
			const found = await foundAfter(text, damage);
			if (code === undefined) expect(found).toEqual([]);
			else expect(found).toContain(code);
		},
	);
});
