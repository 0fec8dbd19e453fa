import { Clipper, FillRule, type PathsD } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import { type Made, type MakeOptions, make } from "../../src/make.js";
import { inflated, pathsWithin, polygonsOf } from "../support/cut-with-beam.js";
import { madeExample } from "../support/examples.js";
import { making } from "../support/job-text.js";
import { readSvg } from "../support/read-svg.js";

type MadeJob = Extract<Made, { ok: true }>;

const BARE: MakeOptions = { formats: ["svg"], dimensions: false, proof: false };

async function job(machine: string, entries: readonly string[], options = BARE): Promise<MadeJob> {
	const text = making(...entries).replace("make:", `machine: {${machine}}\nmake:`);
	const result = await make(text, options);
	if (!result.ok) throw new Error(JSON.stringify(result.problems));
	return result;
}

function sheetsOf(made: MadeJob) {
	return made.drawings
		.filter(({ laid }) => laid)
		.map((drawing) => {
			const file = made.files.find((f) => f.sheet === drawing.sheet.name && f.format === "svg")!;
			return { drawing, svg: readSvg(new TextDecoder().decode(file.bytes)) };
		});
}

/** Whether the boxes of two lists of polygons lie apart: then so do they. */
function areApart(a: PathsD, b: PathsD): boolean {
	const [one, other] = [Clipper.getBoundsPathsD(a), Clipper.getBoundsPathsD(b)];
	const beside = one.right < other.left || other.right < one.left;
	return beside || one.bottom < other.top || other.bottom < one.top;
}

function manifestOf(made: MadeJob) {
	return JSON.parse(new TextDecoder().decode(made.files.at(-1)!.bytes));
}

describe.each([
	"heron-baritone",
	"linnet-nylon",
	"plover-bass",
	"siskin-nineteen",
	"wren-mandolin",
])("the written sheets of %s", (example) => {
	it("hold every part as often as it has layers, one sheet of stock each, apart by the spacing and off the margin", async () => {
		const made = await madeExample(example, BARE);
		const { bed } = made.job.bench.machine;
		const parts = made.tools.flatMap((t) => t.parts);
		const sheets = sheetsOf(made);
		const names = sheets.flatMap(({ drawing }) => drawing.placed.map((p) => p.part.name));
		const pieces = parts.flatMap((p) => Array(p.layers ?? 1).fill(p.name));
		expect([...names].sort()).toEqual(pieces.sort());
		for (const { drawing, svg } of sheets) {
			expect(svg.attributes.width).toBe(`${bed!.size.x.toFixed(6)}mm`);
			const stocks = drawing.placed.map(({ part }) => JSON.stringify(part.stock));
			expect(new Set(stocks).size).toBe(1);
			const cut = svg.groups.find((g) => g.attributes.id === "cut")!.paths;
			const outlines = drawing.placed.map(({ part, move }) => {
				const own = pathsWithin(cut, part, move);
				expect(own.length).toBeGreaterThan(0);
				const lines = inflated(polygonsOf(own), bed!.spacing / 2 - 2e-4, 1);
				return Clipper.unionD(lines, [], FillRule.NonZero, 6);
			});
			for (const [i, a] of outlines.entries()) {
				for (const b of outlines.slice(i + 1)) {
					if (areApart(a, b)) continue;
					expect(Clipper.intersectD(a, b, FillRule.NonZero, 6)).toEqual([]);
				}
			}
			const far = cut.flatMap((p) => p.path.points);
			expect(Math.min(...far.flatMap(({ x, y }) => [x, y]))).toBeGreaterThan(bed!.margin - 1e-5);
			expect(Math.max(...far.map((p) => p.x))).toBeLessThan(bed!.size.x - bed!.margin + 1e-5);
			expect(Math.max(...far.map((p) => p.y))).toBeLessThan(bed!.size.y - bed!.margin + 1e-5);
		}
	});
});

describe("a sheet", () => {
	const all = ["slot-strip", "notched-straightedge", "radius-gauge"];

	it("holds a part as often as it has layers, and says so", async () => {
		const made = await job("bed: 400 x 300 mm", ["radius-gauge: {layers: 3}"]);
		const [{ drawing }] = sheetsOf(made) as [ReturnType<typeof sheetsOf>[number]];
		expect(drawing.placed.map(({ part }) => part.name)).toEqual(
			Array(3).fill("radius-gauge-concave"),
		);
		const [part] = made.tools.flatMap((t) => t.parts);
		expect(part!.notes.join(" ")).toContain("Cut 3 of it");
		expect(manifestOf(made).tools[0]).toMatchObject({ layers: 3 });
	});

	it("tells its lengths and its time in the manifest, and they add up", async () => {
		const speeds = "speeds: {cut: 10 mm/s, score: 50 mm/s, engrave: 100 mm/s, travel: 200 mm/s}";
		const made = await job(`bed: 600 x 400 mm, ${speeds}`, all);
		const [sheet] = manifestOf(made).sheets;
		const { cut, score, engrave, travel, seconds } = sheet.work;
		expect(seconds).toBeCloseTo(cut / 10 + score / 50 + engrave / 100 + travel / 200, 6);
		expect(sheet).toMatchObject({ stock: { material: "acrylic", thickness: 3 } });
		expect(sheet.used).toBeGreaterThan(0.05);
	});

	it("is left out where no bed is known or none is wanted", async () => {
		const none = await job("kerf: 0", all);
		const unwanted = await job("bed: 600 x 400 mm", all, { ...BARE, sheets: false });
		for (const made of [none, unwanted]) {
			expect(sheetsOf(made)).toEqual([]);
			expect(manifestOf(made).sheets).toEqual([]);
			expect(made.files).toHaveLength(4);
		}
	});
});
