import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { Part, Sheet, SizeClaim } from "../../src/drawing/index.js";
import { distanceTo, type Path, segments } from "../../src/geometry/index.js";
import { type Made, make } from "../../src/make.js";
import { Prover, promisedOf } from "../../src/proof/index.js";
import { writeSvg } from "../../src/writers/index.js";
import { making } from "../support/job-text.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import { measured, outlineOf } from "../support/measure-part.js";
import { arcsOf } from "../support/measure-path.js";
import { contourFaults, labelFaults } from "../support/part-faults.js";
import { RUNS, randomJob, reading } from "../support/random-neck.js";

const COMPOUND = { radius: { nut: 254, "last-fret": 406.4 } };
const STEADY = { width: 50, radius: 300 };
/** The last fret of the ordinary neck: 647.7·(1 − 2^(−22/12)). */
const LAST = 647.7 * (1 - 2 ** (-22 / 12));

const made = (neck: object, settings: object = {}) =>
	madeParts(jobWith(neck, [{ "sled-rails": settings }]));
const codes = (...args: Parameters<typeof made>) => made(...args).problems.map((p) => p.code);

function rails(...args: Parameters<typeof made>): readonly [Part, Part] {
	const { parts, problems } = made(...args);
	expect(problems).toEqual([]);
	expect(parts).toHaveLength(2);
	return [parts[0]!, parts[1]!];
}

function edgeOf(part: Part) {
	const arcs = arcsOf(outlineOf(part)).filter((a) => a.radius > 2);
	expect(arcs).toHaveLength(1);
	const { start, end, radius, sagitta } = arcs[0]!;
	return { radius, sagitta, half: Math.abs(start.x - end.x) / 2, side: start.y };
}

const size = (part: Part, id: string) => part.claims.find((c) => c.id === id) as SizeClaim;
const notes = (part: Part) => part.notes.join(" ");

describe("the edges of a pair of rails", () => {
	it("are the board's arc lifted by the rail's height, from the finished board", () => {
		const [nut, end] = rails(STEADY, { "rail-height": "25 mm" }).map(edgeOf);
		expect([nut!.radius, end!.radius]).toEqual([expect.closeTo(325, 9), expect.closeTo(325, 9)]);
	});

	it("follow the cone of a compound board on beyond its ends", () => {
		// R grows by 152.4 over LAST; 40 before the nut, and 60 past a board that ends at 480.
		const rate = 152.4 / LAST;
		const given = { "before-nut": "40 mm", "board-end": "480 mm", "past-end": "60 mm" };
		const [nut, end] = rails(COMPOUND, given).map(edgeOf);
		expect(nut!.radius).toBeCloseTo(254 - 40 * rate + 20, 9);
		expect(end!.radius).toBeCloseTo(254 + 540 * rate + 20, 9);
		for (const rail of rails(COMPOUND, given)) expect(notes(rail)).toContain("drawn out beyond");
	});

	it("are wider than the board: at equal angle from the centre, and 10 mm more", () => {
		// Board half 25 on 300: the sled bears at 320·25/300 = 26.667.
		for (const { half } of rails(STEADY).map(edgeOf)) expect(half).toBeCloseTo(36.6667, 4);
		// y/R is greatest at the nut, 21.5/254; the end rail bears there on its own radius.
		const [, end] = rails(COMPOUND).map(edgeOf);
		expect(end!.half).toBeCloseTo((end!.radius * 21.5) / 254 + 10, 9);
	});

	it("are convex, with their crown foot and rail height over the bench", () => {
		const all = rails(COMPOUND, { "foot-height": "62 mm", "rail-height": "18 mm" });
		for (const part of all) {
			const { sagitta, side } = edgeOf(part);
			expect(sagitta).toBeGreaterThan(1);
			expect(side + sagitta).toBeCloseTo(80, 9);
			expect(size(part, "height").nominal).toBe(80);
			expect(Math.min(...outlineOf(part).points.map((p) => p.y))).toBe(0);
		}
	});
});

describe("a flat plate over both rails", () => {
	/** A point of the circle of a radius whose crown is at a height over the board's. */
	const on = (x: number, radius: number, lift: number, angle: number) => ({
		x,
		y: radius * Math.sin(angle),
		z: lift - radius * (1 - Math.cos(angle)),
	});

	it("runs parallel to the board's own line at every angle, to a tenth of a micrometre", () => {
		// The board and the rails as circles in space, from R(x) = 254 + 152.4·x/LAST and h = 20.
		const board = (x: number) => 254 + (152.4 * x) / LAST;
		const [nut, end] = rails(COMPOUND).map(edgeOf);
		const [a, b] = [-30, 506];
		expect(nut!.radius).toBeCloseTo(board(a) + 20, 9);
		expect(end!.radius).toBeCloseTo(board(b) + 20, 9);
		for (const angle of [0, 0.03, 0.06, 0.0847]) {
			const [p, q] = [on(a, nut!.radius, 20, angle), on(b, end!.radius, 20, angle)];
			for (const x of [0, 120, 300, LAST]) {
				const under = on(x, board(x), 0, angle);
				const t = (x - a) / (b - a);
				const plate = { y: p.y + (q.y - p.y) * t, z: p.z + (q.z - p.z) * t };
				const h = Math.hypot(plate.y - under.y, plate.z - under.z);
				// The plate's normal leans along the neck by rate·(1 − cos): the height is h times its cosine.
				const lean = (152.4 / LAST) * (1 - Math.cos(angle));
				expect(Math.abs(h / Math.hypot(1, lean) - 20)).toBeLessThan(1e-4);
			}
		}
	});

	it("would tilt on skids of a fixed spread: they sink differently on two radii", () => {
		const [nut, end] = rails(COMPOUND);
		const sink = (r: number) => r - Math.sqrt(r * r - 30 * 30);
		const apart = sink(edgeOf(nut).radius) - sink(edgeOf(end).radius);
		expect(apart).toBeGreaterThan(0.5);
		expect(notes(nut)).toContain("Skids under it would not do");
		expect(notes(rails(STEADY)[0])).not.toContain("Skids");
	});

	it("is said to be longer than the rails are apart", () => {
		// 30 + 476 + 30: the board ends 10 mm past the last fret at 465.94, in whole mm.
		expect(notes(rails({})[0])).toContain("536.00 mm apart");
		expect(notes(rails({})[1])).toContain("longer than 539.0 mm");
	});
});

describe("a flat board", () => {
	it("has level rails, equally high, and straight", () => {
		const [nut, end] = rails({ radius: "flat", width: 52 });
		for (const part of [nut, end]) {
			expect(arcsOf(outlineOf(part)).filter((a) => a.radius > 2)).toEqual([]);
			expect(measured(part, size(part, "straightness"))).toBe(0);
			expect(size(part, "height").nominal).toBe(70);
			expect(size(part, "width").nominal).toBe(72);
		}
	});
});

describe("a fanned neck", () => {
	it("has its rails clear of the foremost corner of the nut and of the last fret", () => {
		const fanned = {
			scale: { bass: 690, treble: 650, "square-fret": 7 },
			strings: { count: 6, "at-nut": 36, "at-saddle": 52 },
		};
		const at = (part: Part) =>
			part.claims.find((c) => c.id === "label-station") as { text?: string };
		const place = Number(/at (-?[\d.]+)/u.exec(at(rails(fanned)[0]).text!)![1]);
		expect(place).toBeLessThan(-30 - 5);
	});
});

describe("rails are refused", () => {
	it.each([
		["where they would meet the board", {}, { "before-nut": "2.4 mm" }, "rail-meets-board"],
		["where they would meet its end", {}, { "past-end": 0 }, "rail-meets-board"],
		["on a board that ends before its last fret", {}, { "board-end": "460 mm" }, "length-range"],
		[
			"on a radius of two rates",
			{ radius: { nut: 254, "12": 270, "last-fret": 400 } },
			{},
			"rails-need-one-cone",
		],
		[
			"where the radius has vanished",
			{ radius: { nut: 400, "last-fret": 40 } },
			{ "past-end": "100 mm" },
			"radius-vanishes",
		],
		["without room for marks", {}, { "foot-height": "5 mm" }, "rail-too-low"],
	])("%s", (_, neck, settings, code) => {
		expect(codes(neck, settings)).toEqual([code]);
	});

	it("no nearer than half their thickness and a gap", () => {
		expect(codes({}, { "before-nut": "2.5 mm", "past-end": "2.5 mm" })).toEqual([]);
	});

	it("below the height that the message asks for, and not at it", () => {
		const { problems } = made({}, { "foot-height": "5 mm" });
		const least = Number(problems[0]!.facts.least);
		expect(codes({}, { "foot-height": `${least - 20} mm` })).toEqual([]);
		expect(codes({}, { "foot-height": `${least - 21} mm` })).toEqual(["rail-too-low"]);
	});
});

describe("the notes of a rail", () => {
	it("warn of the router and defer to its manual and the codes", () => {
		for (const rail of rails({})) {
			for (const words of [
				"eye and ear protection",
				"clamp",
				"keep hands off",
				"manual",
				"codes",
			]) {
				expect(notes(rail)).toContain(words);
			}
			expect(notes(rail)).not.toMatch(/\bsafe\b/u);
		}
	});

	it("tell what a bit beside the bearing line leaves", () => {
		// √(300² + 5²) − 300 = 25/600 = 0.0417.
		expect(notes(rails(STEADY)[0])).toContain("0.042 mm at 5 mm");
	});
});

describe("rails of any neck", () => {
	const anyRails = fc.record({
		"rail-height": reading(8, 40, 1).map((x) => `${x} mm`),
		"foot-height": reading(10, 90, 1).map((x) => `${x} mm`),
		"before-nut": reading(8, 60, 1).map((x) => `${x} mm`),
		"rail-hole": fc.constantFrom("none", "5 mm", "12 mm"),
	});
	const anyJob = fc
		.tuple(randomJob({ leastGap: 5 }), anyRails)
		.map(([{ job }, settings]) => ({ ...job, make: [{ "sled-rails": settings }] }));

	it("have sound contours, labels in place, nothing near working edges, and measure as claimed", () => {
		let seen = 0;
		fc.assert(
			fc.property(anyJob, (job) => {
				for (const part of madeParts(job).parts) {
					seen++;
					const off = part.claims.flatMap((claim) => {
						if (claim.kind === "label") return [];
						const by = Math.abs(measured(part, claim)) - Math.abs(claim.nominal);
						return Math.abs(by) < 1e-9 ? [] : [`${claim.id} is off by ${by}`];
					});
					expect([...contourFaults(part), ...labelFaults(part), ...tooNear(part), ...off]).toEqual(
						[],
					);
				}
			}),
			{ ...RUNS, numRuns: 25 },
		);
		expect(seen).toBeGreaterThan(20);
	});
});

/** Marks within 3 mm of a working edge. */
function tooNear(part: Part): string[] {
	const working = part.working.flatMap(segments);
	const outline = outlineOf(part);
	return part.marks
		.filter((m) => m.path !== outline)
		.filter((m) => m.path.points.some((p) => working.some((s) => distanceTo(s, p) < 3 - 1e-9)))
		.map((m) => `${m.feature} is too near`);
}

describe("the files of sled rails", () => {
	type MadeJob = Extract<Made, { ok: true }>;
	const on = (text: string) =>
		text.replace("make:", "machine: {kerf: 0.16 mm, bed: 400 x 300 mm}\nmake:");
	const compound = making("sled-rails").replace("12 in", "{nut: 10 in, last-fret: 16 in}");
	const flat = making("sled-rails").replace("12 in", "flat");
	let job: MadeJob;
	beforeAll(async () => {
		job = await ok(on(compound));
	});

	async function ok(of: string, options = {}): Promise<MadeJob> {
		const result = await make(of, options);
		if (!result.ok) throw new Error(JSON.stringify(result.problems));
		return result;
	}

	it("are measured again without a finding, as drawings and on paper", async () => {
		for (const result of [job, await ok(flat), await ok(compound, { paper: "A4" })]) {
			expect(result.proven.length).toBeGreaterThan(0);
			expect(result.proven.flatMap((p) => p.findings)).toEqual([]);
		}
	});

	/** What is found in the nut rail's SVG after its paths were changed. */
	async function found(change: (path: Path, feature: string) => Path | null): Promise<string[]> {
		const { sheet } = job.drawings.find((d) => d.sheet.name.endsWith("sled-rails-nut"))!;
		const changed: Sheet = {
			...sheet,
			placed: sheet.placed.map((p) => ({
				...p,
				part: {
					...p.part,
					marks: p.part.marks.flatMap((m) => {
						const path = change(m.path, m.feature);
						return path ? [{ ...m, path }] : [];
					}),
				},
			})),
		};
		const promised = promisedOf(new TextDecoder().decode(job.files.at(-1)!.bytes), "manifest.json");
		if ("code" in promised) throw new Error(JSON.stringify(promised));
		const file = promised.files.find((f) => f.name === `${sheet.name}.svg`)!;
		const bytes = new TextEncoder().encode(writeSvg(changed, job.job.bench.machine.pens));
		return (await new Prover(LETTERS).prove(bytes, file)).findings.map((f) => f.code);
	}

	it("are found out where they were damaged, and only there", async () => {
		expect(await found((path) => path)).toEqual([]);
		const only = (name: string, change: (path: Path) => Path | null) =>
			found((path, feature) => (feature === name ? change(path) : path));
		const shifted = (path: Path, x: number, y: number): Path => ({
			...path,
			points: path.points.map((p) => ({ ...p, x: p.x + x, y: p.y + y })),
		});
		const damages = [
			await only("hanging hole", () => null),
			await only("upper centre mark", (path) => shifted(path, 0.05, 0)),
			await only("outline", (path) => ({
				...path,
				points: path.points.map((p) => (p.y > 60 ? { ...p, bulge: p.bulge * 0.98 } : p)),
			})),
			await only("outline", (path) => ({
				...path,
				points: path.points.map((p) => (p.y > 60 ? { ...p, y: p.y + 0.02 } : p)),
			})),
		];
		for (const findings of damages) expect(findings.length).toBeGreaterThan(0);
	});
});
