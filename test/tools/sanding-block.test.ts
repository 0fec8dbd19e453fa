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
import { arcsOf, notchesOf } from "../support/measure-path.js";
import { contourFaults, labelFaults } from "../support/part-faults.js";
import { RUNS, randomJob, reading } from "../support/random-neck.js";

const COMPOUND = { radius: { nut: "10 in", "last-fret": "16 in" } };
const STRINGS = { strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 } };

const made = (neck: object, settings: object = {}, other: object = {}) =>
	madeParts(jobWith(neck, [{ "sanding-block": settings }], other));
const codes = (...args: Parameters<typeof made>) => made(...args).problems.map((p) => p.code);

function parts(...args: Parameters<typeof made>): readonly Part[] {
	const { parts, problems } = made(...args);
	expect(problems).toEqual([]);
	return parts;
}

function workingArc(part: Part) {
	const arcs = arcsOf(outlineOf(part)).filter((a) => a.radius > 2);
	expect(arcs).toHaveLength(1);
	return arcs[0]!;
}

const notes = (part: Part) => part.notes.join(" ");
const notchesIn = (part: Part) => notchesOf(outlineOf(part)).sort((a, b) => a.centre - b.centre);

describe("the ribs of a sanding block", () => {
	it("have an arc larger than the board's by skin and abrasive, so that the grit is at the board's", () => {
		// 12 in = 304.8; 304.8 + 0.8 + 0.3.
		expect(workingArc(parts({ radius: "12 in" })[0]!).radius).toBeCloseTo(305.9, 9);
		const thick = parts({ radius: "12 in" }, { skin: "1.5 mm", abrasive: "0.55 mm" });
		expect(workingArc(thick[0]!).radius).toBeCloseTo(306.85, 9);
	});

	it("add the crown height for dressing crowns", () => {
		// 304.8 + 1.3 + 0.8 + 0.3.
		expect(workingArc(parts({}, { for: "crowns" })[0]!).radius).toBeCloseTo(307.2, 9);
		expect(notes(parts({}, { for: "crowns" })[0]!)).toContain("306.100 mm, on the crowns' tops");
	});

	it("reach beyond the board's edges, and stand 38 mm over the arc or a little more", () => {
		const [rib] = parts({});
		const arc = workingArc(rib!);
		expect(Math.abs(arc.start.x - arc.end.x)).toBeCloseTo(62, 9);
		// s = 31²/(305.9 + √(305.9² − 31²)) = 961/610.2252 = 1.57483, from hand.
		expect(arc.sagitta).toBeCloseTo(1.57483, 5);
		expect(Math.max(...outlineOf(rib!).points.map((p) => p.y))).toBe(40);
	});

	it("are concave: the arc's middle lies over its ends, within the plate", () => {
		const [rib] = parts({});
		const radius = rib!.claims.find((c) => c.id === "radius") as SizeClaim;
		expect(radius.at[1]!.y).toBeGreaterThan(radius.at[0]!.y);
	});

	it("come as many as the length asks for, and the sheet is told so", () => {
		// Half of 647.7·(1 − 2^(−22/12)) = 232.98; (232.98 − 3)/25 = 9.2, so 10 gaps.
		const [rib, rail] = parts({});
		expect([rib!.layers, rail!.layers]).toEqual([11, 2]);
		expect(parts({}, { ribs: 5 })[0]!.layers).toBe(5);
	});
});

describe("the joints of a sanding block", () => {
	it("have slots as wide as the sheet and the fit, and a little deeper than half the rail", () => {
		const all = parts(
			{},
			{ "joint-fit": "-0.05 mm" },
			{ stock: { material: "mdf", thickness: 4 } },
		);
		const slots = all.flatMap(notchesIn);
		expect(slots).toHaveLength(2 + all[0]!.layers!);
		for (const { width } of slots) expect(width).toBeCloseTo(3.95, 9);
		const height = Math.max(...outlineOf(all[1]!).points.map((p) => p.y));
		for (const { depth } of slots) expect(depth).toBeCloseTo(height / 2 + 0.2, 9);
	});

	it("stand at the pitch, and make any length", () => {
		const [, rail] = parts({}, { ribs: 4, "rib-pitch": "60 mm" });
		const centres = notchesIn(rail!).map((n) => n.centre);
		expect(centres.slice(1).map((x, i) => x - centres[i]!)).toEqual(
			[60, 60, 60].map((d) => expect.closeTo(d, 9)),
		);
		// 3·60 + slot 3.1 + two ends of 8.
		expect((rail!.claims.find((c) => c.id === "length") as SizeClaim).nominal).toBeCloseTo(
			199.1,
			9,
		);
	});

	it("bring ribs and rails flush above, and keep a curved block's rails off the skin", () => {
		const [rib, rail] = parts({});
		const [, right] = notchesIn(rib!);
		const top = right!.edge;
		const height = Math.max(...outlineOf(rail!).points.map((p) => p.y));
		const inner = Math.min(right!.flanks[0].x, right!.flanks[1].x);
		const { sagitta, radius } = workingArc(rib!);
		const arcThere = sagitta - (radius - Math.sqrt(radius ** 2 - inner ** 2));
		expect(top - height - arcThere).toBeCloseTo(1, 9);
		const floors = top - right!.depth + (height - notchesIn(rail!)[0]!.depth);
		expect(floors).toBeGreaterThan(0);
	});

	it("are deeper by a mill's cutter, whose round the floor keeps", () => {
		const mill = { machine: { kind: "mill", cutter: 2 } };
		const given = { "block-height": "45 mm" };
		const all = [parts({}, given), parts({}, given, mill)];
		const [plain, milled] = all.map((p) => notchesIn(p[1]!)[0]!.depth);
		expect(milled! - plain!).toBeCloseTo(1, 9);
		expect(codes({}, {}, mill)).toEqual([]);
	});
});

describe("a solid stack", () => {
	it("has ribs alone, without skin, side by side", () => {
		const all = parts({}, { skin: 0 });
		expect(all.map((p) => p.name)).toEqual(["sanding-block-rib"]);
		expect(all[0]!.layers).toBe(34);
		expect(workingArc(all[0]!).radius).toBeCloseTo(305.1, 9);
		expect(notchesIn(all[0]!)).toEqual([]);
	});

	it("takes no pitch but the sheet's thickness", () => {
		expect(codes({}, { skin: 0, "rib-pitch": "10 mm" })).toEqual(["length-range"]);
		expect(codes({}, { skin: 0, "rib-pitch": "3 mm" })).toEqual([]);
	});
});

describe("a compound board", () => {
	it("refuses the cylindrical block and gets a flat beam, with the lines to use it on", () => {
		expect(codes(COMPOUND, { form: "curved" })).toEqual(["cylinder-on-cone"]);
		const [rib] = parts(COMPOUND);
		expect(arcsOf(outlineOf(rib!)).filter((a) => a.radius > 3.1)).toEqual([]);
		// y/R is least at the last fret: 28/406.4 = 0.0688976; ·254 = 17.5 at the nut.
		expect(notes(rib!)).toContain("17.5 at the nut and 28.0 at the last fret, the outermost");
		expect(notes(rib!)).toContain("8.8 at the nut and 14.0 at the last fret");
	});

	it("is told where its radius grows at more than one rate", () => {
		const kinked = { radius: { nut: 254, "12": 300, "last-fret": 420 } };
		expect(notes(parts(kinked)[0]!)).toContain("a kink");
		expect(notes(parts(COMPOUND)[0]!)).not.toContain("a kink");
	});

	it("has lines of constant y/R that are straight on its surface", () => {
		// z = −R + √(R² − y²) with y = c·R and R linear in x is linear in x: no hump at the middle.
		const z = (r: number, c: number) => -r + Math.sqrt(r ** 2 - (c * r) ** 2);
		const c = 28 / 406.4;
		const middle = z((254 + 406.4) / 2, c);
		expect(middle).toBeCloseTo((z(254, c) + z(406.4, c)) / 2, 12);
	});
});

describe("a flat beam", () => {
	it("is refused on a cylinder whose strings spread, with the hump that it would plane off", () => {
		const { problems } = made({ ...STRINGS, radius: 184.15 }, { form: "flat" });
		expect(problems.map((p) => p.code)).toEqual(["beam-planes-hump"]);
		// k²·D²/8R: k = 8.25/647.7 a mm, D = 466, R = 184.15 gives 0.0239; the exact hump is a little more.
		expect(Number(problems[0]!.facts.hump)).toBeGreaterThan(0.0235);
		expect(Number(problems[0]!.facts.hump)).toBeLessThan(0.0245);
		expect(codes({ width: 50 }, { form: "flat" })).toEqual([]);
	});

	it("works a flat board, whose block has no arc", () => {
		const [rib, rail] = parts({ radius: "flat" });
		expect(rib!.claims.map((c) => c.id)).toContain("straightness");
		expect(rail!.workingEdge).toContain("lower edge");
		expect(codes({ radius: "flat" }, { form: "curved" })).toEqual(["curve-on-flat"]);
	});
});

describe("what a block has no room for is refused", () => {
	it.each([
		[{ "block-height": "20 mm" }, "block-too-low"],
		[{ dowel: "12 mm", "block-width": "40 mm" }, "length-range"],
		[{ "rib-pitch": "5 mm" }, "length-range"],
		[{ "block-width": "20 mm", dowel: "none" }, "label-too-long"],
		[{ ribs: 2, "rib-pitch": "8 mm" }, "label-too-long"],
	])("%o", (settings, code) => {
		expect(codes({}, settings)).toEqual([code]);
	});

	it("at a height that the message then allows, and at none below", () => {
		for (const settings of [{}, { skin: 0 }, { dowel: "none" }, { dowel: "10 mm" }]) {
			const at = (mm: number) => made({}, { ...settings, "block-height": `${mm} mm` }).problems;
			const [low] = at(20);
			expect(low?.code).toBe("block-too-low");
			const least = Number(low!.facts.least);
			expect(at(least)).toEqual([]);
			expect(at(least - 1).map((p) => p.code)).toEqual(["block-too-low"]);
		}
	});
});

const anyBlock = fc.record({
	for: fc.constantFrom("wood", "crowns"),
	skin: fc.constantFrom("0.8 mm", "0", "1.2 mm"),
	"block-width": fc.option(
		reading(38, 90, 1).map((x) => `${x} mm`),
		{ nil: undefined },
	),
	"block-height": fc.option(
		reading(30, 60, 1).map((x) => `${x} mm`),
		{ nil: undefined },
	),
	ribs: fc.option(fc.integer({ min: 4, max: 14 }), { nil: undefined }),
	dowel: fc.constantFrom("none", "4 mm", "6 mm"),
});

describe("blocks of any neck", () => {
	const anyJob = fc.tuple(randomJob({ leastGap: 5 }), anyBlock).map(([{ job }, settings]) => ({
		...job,
		make: [{ "sanding-block": JSON.parse(JSON.stringify(settings)) }],
	}));

	it("have sound contours, labels in place, letters 3 mm off working edges, and measure as claimed", () => {
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
		expect(seen).toBeGreaterThan(12);
	});
});

/** Letters and holes within 3 mm of a working edge. */
function tooNear(part: Part): string[] {
	const working = part.working.flatMap(segments);
	const outline = outlineOf(part);
	return part.marks
		.filter((m) => m.path !== outline && m.operation !== "score")
		.filter((m) => m.path.points.some((p) => working.some((s) => distanceTo(s, p) < 3 - 1e-9)))
		.map((m) => `${m.feature} is too near`);
}

describe("the files of a sanding block", () => {
	const MACHINE = "machine: {kerf: 0.16 mm, bed: 600 x 400 mm}";
	const text = making(
		"sanding-block: {ribs: 4}",
		"sanding-block: {name: stack, skin: 0, for: crowns, ribs: 3}",
	).replace("make:", `${MACHINE}\nmake:`);
	const beam = making("sanding-block: {ribs: 3}").replace(
		"radius: 12 in",
		"radius: {nut: 10 in, last-fret: 16 in}",
	);
	type MadeJob = Extract<Made, { ok: true }>;
	let job: MadeJob;
	beforeAll(async () => {
		job = await ok(text);
	});

	async function ok(of: string, options = {}): Promise<MadeJob> {
		const result = await make(of, options);
		if (!result.ok) throw new Error(JSON.stringify(result.problems));
		return result;
	}

	it("are measured again without a finding, as drawings and on paper", async () => {
		for (const result of [
			job,
			await ok(beam, { formats: ["svg", "dxf"] }),
			await ok(beam, { paper: "A4" }),
		]) {
			expect(result.proven.length).toBeGreaterThan(0);
			expect(result.proven.flatMap((p) => p.findings)).toEqual([]);
		}
	});

	/** What is found in the rib's SVG after its contours were changed. */
	async function found(change: (path: Path, feature: string) => Path | null): Promise<string[]> {
		const { sheet } = job.drawings.find((d) => d.sheet.name.endsWith("sanding-block-rib"))!;
		const changed: Sheet = {
			...sheet,
			placed: sheet.placed.map((p) => ({
				...p,
				part: {
					...p.part,
					marks: p.part.marks.flatMap((m) => {
						const path = m.operation === "cut" ? change(m.path, m.feature) : m.path;
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
		const dropped = await found((path, feature) => (feature === "dowel hole 2" ? null : path));
		const moved = await found((path, feature) =>
			feature === "dowel hole 1"
				? { ...path, points: path.points.map((p) => ({ ...p, x: p.x + 0.02 })) }
				: path,
		);
		const flatter = await found((path, feature) =>
			feature === "outline"
				? {
						...path,
						points: path.points.map((p) =>
							p.bulge < 0 && Math.abs(p.y) < 1 ? { ...p, bulge: p.bulge * 0.98 } : p,
						),
					}
				: path,
		);
		const shallow = await found((path, feature) =>
			feature === "outline"
				? {
						...path,
						points: path.points.map((p) => (p.y > 15 && p.y < 25 ? { ...p, y: p.y + 0.05 } : p)),
					}
				: path,
		);
		for (const codes of [dropped, moved, flatter, shallow]) expect(codes.length).toBeGreaterThan(0);
	});
});
