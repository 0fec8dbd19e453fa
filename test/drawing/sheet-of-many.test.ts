import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { layOut } from "../../src/cutting/layout.js";
import type { Mark, Note, Part, Sheet } from "../../src/drawing/index.js";
import { outlineOf } from "../../src/drawing/outline.js";
import { type BedFacts, type LaidOut, sheetOfMany } from "../../src/drawing/sheet-of-many.js";
import {
	circle,
	contains,
	extents,
	moved,
	open,
	rectangle,
	reversed,
	segments,
	shift,
	vertex,
} from "../../src/geometry/index.js";
import { CAUTION_LAST } from "../../src/shop/index.js";
import { writeSvg } from "../../src/writers/index.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import { crossed } from "../support/part-faults.js";
import { auditSvg, readSvg } from "../support/read-svg.js";
import { noteRectangle, overlap, overlaps, strokeRectangle } from "../support/rectangles.js";

const BED = { size: { x: 600, y: 400 }, margin: 5, spacing: 3 };
const made = madeParts(readFileSync("examples/heron-baritone.yaml", "utf8"));
const parts = made.parts.filter((p) => p.tool !== "kerf-coupon");
const { pens } = made.bench.machine;
const cautions = ["Laser: stay with it.", CAUTION_LAST];
const lines = ["Cut 5.21 m, score 2.30 m, engrave 4.10 m: about 9 min 20 s."];
const facts: BedFacts = { job: "Heron", date: null, kerf: 0, cautions, sheet: 1, of: 2, lines };

function laid(list: readonly Part[], bed = BED): LaidOut[] {
	const result = layOut(list, bed);
	if (!result.ok) throw new Error(JSON.stringify(result.problems));
	return result.layouts.map((layout) => ({ ...layout, bed: bed.size }));
}

function drawn(layout: LaidOut, change: Partial<BedFacts> = {}, dimensioned = true): Sheet {
	return sheetOfMany(layout, { ...facts, ...change }, LETTERS, "heron-sheet-1", dimensioned);
}

const texts = (notes: readonly Note[]) => notes.map((n) => n.text);

/** The rings of a sheet with the number in each. */
function ringsOf({ marks, notes }: Sheet) {
	return marks
		.filter((m) => m.feature.startsWith("number "))
		.map(({ path, feature }) => {
			const { minX, minY, maxX, maxY } = extents(path);
			const at = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
			const within = notes.filter((n) => {
				const { corners } = noteRectangle(n);
				return corners.every((p) => contains(path, p));
			});
			return { at, feature, path, within: texts(within) };
		});
}

/** What is wrong with the reference layer over the parts. */
function faults(sheet: Sheet): string[] {
	const { notes, placed, size } = sheet;
	const work = placed.flatMap(({ part, move }) =>
		part.marks.map((m): Mark => ({ ...m, path: moved(m.path, move) })),
	);
	const rectangles = notes.map(noteRectangle);
	const off = rectangles
		.filter(({ corners }) =>
			corners.some(({ x, y }) => x < size.minX || x > size.maxX || y < size.minY || y > size.maxY),
		)
		.map(({ text }) => `"${text}" runs off the sheet`);
	// A ring by chords, since a half circle's own chord would cross its number.
	const touching = ringsOf(sheet).flatMap(({ path, feature, at }) => {
		const radius = (extents(path).maxX - extents(path).minX) / 2;
		const chords = Array.from({ length: 24 }, (_, i) => {
			const on = (k: number) => ({
				x: at.x + radius * Math.cos((k * Math.PI) / 12),
				y: at.y + radius * Math.sin((k * Math.PI) / 12),
			});
			return strokeRectangle(feature, on(i), on(i + 1));
		});
		return work.flatMap((m) =>
			segments(m.path)
				.map((s) => strokeRectangle(m.feature, s.start, s.end))
				.filter((stroke) => chords.some((chord) => overlap(chord, stroke) > 0))
				.map(({ text }) => `${feature} is crossed by ${text}`),
		);
	});
	return [...overlaps(rectangles), ...off, ...crossed(rectangles, work), ...touching];
}

describe("sheetOfMany", () => {
	const [first] = laid(parts);

	it("is exactly the bed with its parts where it is not dimensioned", () => {
		const sheet = drawn(first!, {}, false);
		expect(sheet.size).toEqual({ minX: 0, minY: 0, maxX: 600, maxY: 400 });
		expect([sheet.marks, sheet.notes]).toEqual([[], []]);
		expect(sheet.placed).toBe(first!.placed);
		expect(sheet.name).toBe("heron-sheet-1");
		expect(sheet.title).toBe("Heron: sheet 1 of 2");
	});

	it("draws the bed's edges and nothing but the reference layer besides the parts", () => {
		const sheet = drawn(first!);
		expect(new Set(sheet.marks.map((m) => m.operation))).toEqual(new Set(["reference"]));
		const bed = sheet.marks.filter((m) => m.feature === "bed").map((m) => m.path);
		expect(bed).toEqual([rectangle(0, 0, 600, 400)]);
		expect(sheet.placed).toBe(first!.placed);
	});

	it("covers bed and block with 5 mm of white around them", () => {
		const sheet = drawn(first!);
		expect([sheet.size.minX, sheet.size.maxX, sheet.size.maxY]).toEqual([-5, 605, 405]);
		const lowest = Math.min(...sheet.notes.map((n) => n.at.y));
		expect(lowest).toBeLessThan(-6);
		expect(sheet.size.minY).toBeCloseTo(lowest - 0.3 * 2.5 - 5, 9);
		const below = sheet.notes.filter((n) => !/^\d+$/u.test(n.text));
		expect(below.every((n) => n.at.y + n.height < -6)).toBe(true);
	});

	it("gives every part a number of its own within its outline and lists it", () => {
		const sheet = drawn(first!);
		const rings = ringsOf(sheet);
		expect(rings.map((r) => r.within)).toEqual(first!.placed.map((_, i) => [String(i + 1)]));
		first!.placed.forEach(({ part, move }, i) => {
			const outline = moved(outlineOf(part), move);
			expect(contains(outline, rings[i]!.at), part.name).toBe(true);
			const degrees = Math.round((move.turn * 180) / Math.PI);
			const row = `${i + 1} ${part.name}${degrees === 0 ? "" : `, turned ${degrees}°`}`;
			expect(texts(sheet.notes)).toContain(row);
		});
	});

	it("keeps numbers and texts clear of each other and of all paths", () => {
		const coupon = madeParts(jobWith({}, [{ "kerf-coupon": {} }])).parts;
		const small = { size: { x: 540, y: 130 }, margin: 4, spacing: 2 };
		const sheets = [
			...laid([...parts, ...parts, ...coupon]),
			...laid([...parts, ...coupon], small),
		];
		expect(sheets.length).toBeGreaterThan(2);
		for (const sheet of sheets) expect(faults(drawn(sheet, { kerf: 0.16 }))).toEqual([]);
	});

	it("says job, sheet, stock, bed, share used, kerf, work and cautions", () => {
		const [grained] = laid(
			[plate("a", 240, 100, { material: "plywood", thickness: 3.2, grain: "x" })],
			BED,
		);
		const all = texts(drawn(grained!, { kerf: 0.18, date: "12 March" }).notes);
		expect(all.slice(1, 6)).toEqual([
			"Heron",
			"Sheet 1 of 2",
			"plywood, 3.2 mm, grain along x",
			"SCALE 1:1",
			"12 March",
		]);
		// 240 · 100 / (600 · 400)
		expect(all).toContain("Bed 600 x 400 mm, 10 % used");
		const joined = all.join(" ").replace(/ - /gu, " ");
		expect(joined).toContain("Paths lie 0.090 in the waste");
		expect(joined).toContain(lines[0]);
		expect(joined.endsWith(CAUTION_LAST)).toBe(true);
	});

	it("speaks of no kerf where there is none or all parts are nominal", () => {
		const told = (layout: LaidOut, kerf: number) => texts(drawn(layout, { kerf }).notes).join(" ");
		const [nominal] = laid([{ ...plate("a", 50, 50), nominal: true }]);
		const [mixed] = laid([{ ...plate("a", 50, 50), nominal: true }, plate("b", 50, 50)]);
		expect(told(mixed!, 0.18)).toContain("waste");
		expect(told(first!, 0.18)).toContain("waste");
		expect(told(first!, 0)).not.toContain("waste");
		expect(told(nominal!, 0.18)).not.toContain("waste");
	});

	it("tells the turn of a part on the diagonal to a tenth of a degree", () => {
		const [bar] = laid([plate("bar", 650, 30)]);
		const turn = (bar!.placed[0]!.move.turn * 180) / Math.PI;
		const row = texts(drawn(bar!).notes).find((t) => t.startsWith("1 bar, turned "))!;
		expect(Math.abs(Number(row.replace(/1 bar, turned |°/gu, "")) - turn)).toBeLessThan(0.06);
		expect(faults(drawn(bar!))).toEqual([]);
	});

	it("puts numbers beside parts that have no room for them, on no other part", () => {
		const threads = [1, 2, 3, 4].map((i) => plate(`thread-${i}`, 60, 3));
		const bed = { size: { x: 95, y: 130 }, margin: 5, spacing: 2 };
		const [sheet] = laid([plate("wide", 80, 80), ...threads], bed);
		const rings = ringsOf(drawn(sheet!));
		expect(faults(drawn(sheet!))).toEqual([]);
		const outlines = sheet!.placed.map(({ part, move }) => moved(outlineOf(part), move));
		sheet!.placed.forEach(({ part }, i) => {
			const { at } = rings[i]!;
			const onto = outlines.filter((o) => contains(o, at));
			expect(onto.length, part.name).toBe(part.name === "wide" ? 1 : 0);
			const near = rings.filter((r) => Math.hypot(r.at.x - at.x, r.at.y - at.y) < 4.8);
			expect(near).toEqual([rings[i]]);
		});
	});

	it("keeps the numbers of small parts side by side apart", () => {
		const placed = [0, 1, 2].map((i) => ({
			part: plate(`bit-${i}`, 3, 3),
			move: shift(50 + 4 * i, 50),
		}));
		const [a, b, c] = ringsOf(drawn({ ...first!, placed }));
		for (const [one, other] of [[a!, b!] as const, [b!, c!] as const, [a!, c!] as const]) {
			expect(Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y)).toBeGreaterThan(4.8);
		}
	});

	it("numbers parts that leave no room at all, at their own corner", () => {
		const threads = [1, 2, 3, 4].map((i) => plate(`thread-${i}`, 60, 3));
		const tight = { size: { x: 62, y: 20 }, margin: 1, spacing: 2 };
		const [sheet] = laid(threads, tight);
		const rings = ringsOf(drawn(sheet!));
		expect(rings.map((r) => r.feature)).toEqual(threads.map((_, i) => `number ${i + 1}`));
		rings.forEach(({ at }, i) => {
			const { minX, minY } = extents(moved(outlineOf(threads[i]!), sheet!.placed[i]!.move));
			expect([at.x - minX, at.y - minY]).toEqual([expect.closeTo(2.4, 9), expect.closeTo(2.4, 9)]);
		});
	});

	it("is written with every part's paths at their places", () => {
		const svg = writeSvg(drawn(first!), pens);
		expect(auditSvg(svg).filter((f) => f.rule !== "self-crossing")).toEqual([]);
		const cuts = readSvg(svg).groups.find((g) => g.attributes.id === "cut")!.paths;
		const wanted = first!.placed.flatMap(({ part, move }) =>
			part.marks.filter((m) => m.operation === "cut").map((m) => extents(moved(m.path, move))),
		);
		expect(cuts.length).toBe(wanted.length);
		for (const box of wanted) {
			const same = cuts.filter(({ path }) => {
				const b = extents(path);
				return Math.hypot(b.minX - box.minX, b.minY - box.minY, b.maxX - box.maxX) < 0.001;
			});
			expect(same).toHaveLength(1);
		}
	});
});

function plate(
	name: string,
	width: number,
	height: number,
	stock: Part["stock"] = { material: "acrylic", thickness: 3 },
): Part {
	const path = rectangle(0, 0, width, height);
	const marks: Mark[] = [{ operation: "cut", path, feature: "outline" }];
	const words = { tool: "test", title: "Plate", workingEdge: "none", working: [] };
	return { name, ...words, stock, marks, claims: [], notes: [] };
}

describe("outlineOf", () => {
	const cut = (feature: string, path: Mark["path"]): Mark => ({ operation: "cut", feature, path });

	it("is the cut path around all others", () => {
		const whole = plate("a", 50, 40);
		const hole = cut("hole", reversed(circle({ x: 10, y: 10 }, 3)));
		expect(outlineOf({ ...whole, marks: [hole, ...whole.marks] })).toEqual(rectangle(0, 0, 50, 40));
	});

	it("is joined from the pieces that tabs leave of it", () => {
		const pieces = [
			open(vertex(12, 0), vertex(50, 0), vertex(50, 40), vertex(22, 40)),
			open(vertex(18, 40), vertex(0, 40), vertex(0, 0), vertex(8, 0)),
		].map((path) => cut("outline", path));
		const { points, closed } = outlineOf({ ...plate("a", 1, 1), marks: pieces });
		expect(closed).toBe(true);
		expect(points.length).toBe(8);
		expect(points.every((p) => p.bulge === 0)).toBe(true);
	});

	it("refuses a part of which nothing is cut", () => {
		expect(() => outlineOf({ ...plate("a", 1, 1), marks: [] })).toThrow(RangeError);
	});
});
