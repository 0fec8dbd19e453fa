import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Ink } from "../../src/drawing/index.js";
import { extents } from "../../src/geometry/index.js";
import { edgePoint, fretLine, type Neck, radiusAt } from "../../src/neck/index.js";
import { bodyOf, type Paper } from "../../src/paper/index.js";
import { problemText } from "../../src/problem/index.js";
import { CAUTION_LAST } from "../../src/shop/index.js";
import { notchedStraightedge } from "../../src/tools/notched-straightedge.js";
import { stationTexts } from "../../src/tools/shop-sheet/stations.js";
import { spreadsOf } from "../../src/tools/shop-sheet/strings.js";
import { tableTexts } from "../../src/tools/shop-sheet/table.js";
import { feetAndInches, overCrown, wireList } from "../../src/tools/shop-sheet/wire.js";
import type { Bench } from "../../src/tools/tool.js";
import { inkFaults } from "../support/ink-faults.js";
import { jobWith, neckWith } from "../support/made-parts.js";
import { A3, A4, A5, LETTER, ROLL } from "../support/papers.js";
import { randomJob } from "../support/random-neck.js";
import { exampleBench, paperBench, sheetOf } from "../support/shop-sheets.js";

const EXAMPLES = readdirSync("examples").flatMap((file) =>
	file.endsWith(".yaml") ? [file.replace(".yaml", "")] : [],
);
const GIVEN = { overhang: 3, waste: 10 };
const FANNED = {
	scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
	strings: { count: 6, "at-nut": 36, "at-saddle": 52 },
};

function benchWith(neck: object, other: object = {}, paper: Paper = A4): Bench {
	return paperBench(jobWith(neck, ["slot-strip"], other), paper);
}

/** The pages of a sheet. @throws Error if it is refused */
function pagesOf(bench: Bench, given: object = {}): Ink[] {
	const { documents = [], problems } = sheetOf(bench, given);
	if (problems.length > 0) throw new Error(problems.map(problemText).join("\n"));
	return documents.flatMap(({ pages }) => pages.map(({ ink }) => ink));
}

function textsOf(pages: readonly Ink[]): string[] {
	return pages.flatMap(({ notes }) => notes.map(({ text }) => text));
}

/** Texts that share a baseline, left to right: a line as it is read. */
function linesOf({ notes }: Ink): string[] {
	const lines = new Map<string, { x: number; text: string }[]>();
	for (const { at, text } of notes) {
		const key = at.y.toFixed(6);
		lines.set(key, [...(lines.get(key) ?? []), { x: at.x, text }]);
	}
	return [...lines.values()].map((line) =>
		line
			.sort((a, b) => a.x - b.x)
			.map(({ text }) => text)
			.join(" | "),
	);
}

/** Length over the crown by a polyline through points of the board: no formula of the project. */
function byPolyline(neck: Neck, n: number, pieces = 2_000): number {
	const fret = fretLine(neck, n);
	const [a, b] = [edgePoint(neck, fret, -1), edgePoint(neck, fret, 1)];
	const at = (i: number) => {
		const [x, y] = [a.x + ((b.x - a.x) * i) / pieces, a.y + ((b.y - a.y) * i) / pieces];
		const radius = radiusAt(neck, x)!;
		return [x, y, Math.sqrt(radius ** 2 - y ** 2) - radius] as const;
	};
	let sum = 0;
	for (let i = 0; i < pieces; i++) {
		const [p, q] = [at(i), at(i + 1)];
		sum += Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
	}
	return sum;
}

describe("the table of a shop sheet", () => {
	it("has fret 12 of a 25 1/2 in scale at half of it, in every unit", () => {
		const neck = neckWith({ scale: "25.5 in" });
		const { heads, rows } = tableTexts(neck, wireList(neck, GIVEN));
		expect(heads[0]!.slice(0, 4)).toEqual(["fret", "from nut", "from nut", "nearest"]);
		expect(rows[11]!.slice(0, 4)).toEqual(["12", "323.850", "12.7500", "12 3/4"]);
	});

	it("has both strings' distances on a fanned neck, fret 12 at half of each scale", () => {
		const neck = neckWith(FANNED);
		const { heads, rows } = tableTexts(neck, wireList(neck, GIVEN));
		const row = Object.fromEntries(heads[0]!.map((head, i) => [head, rows[11]![i]]));
		expect(row["bass string"]).toBe("342.900");
		expect(row["treble string"]).toBe("323.850");
	});

	it("has the slots' length inside the binding on a bound board", () => {
		const neck = neckWith({ width: 50, binding: 1.5 });
		const { heads, rows } = tableTexts(neck, wireList(neck, GIVEN));
		expect(rows.map((row) => row[heads[0]!.indexOf("slot")])).toEqual(Array(22).fill("47.000"));
	});

	it("says flat of a flat board and no radius", () => {
		const neck = neckWith({ radius: "flat" });
		const { heads, rows } = tableTexts(neck, wireList(neck, GIVEN));
		expect(new Set(rows.map((row) => row[heads[0]!.indexOf("radius")]))).toEqual(new Set(["flat"]));
		expect(stationTexts(neck)).toBeNull();
	});
});

describe("the wire of a fret", () => {
	// Machinery's Handbook, segments of circles for radius 1 (from memory): 60°: l 1.0472, c 1.0000.
	it("is the handbook's arc over a chord as long as the radius", () => {
		const neck = neckWith({ radius: 60, width: 60 });
		expect(overCrown(neck, fretLine(neck, 5)) / 60).toBeCloseTo(1.0472, 4);
	});

	it("is 2R·asin(w/2R) and the overhang at both ends", () => {
		const neck = neckWith({ radius: 304.8, width: 56 });
		const arc = 2 * 304.8 * Math.asin(56 / (2 * 304.8));
		expect(arc).toBeCloseTo(56.0791, 4);
		const { pieces, total, order } = wireList(neck, { overhang: 2, waste: 25 });
		for (const { length } of pieces) expect(length).toBeCloseTo(arc + 4, 9);
		expect(pieces.length).toBe(22);
		expect(total).toBeCloseTo(22 * (arc + 4), 8);
		expect(order).toBeCloseTo(22 * (arc + 4) * 1.25, 8);
	});

	it("is straight on a flat board, and a zero fret has its piece", () => {
		const neck = neckWith({ radius: "flat", width: 50, "zero-fret": true });
		const { pieces } = wireList(neck, GIVEN);
		expect(pieces.map(({ fret }) => fret)).toEqual(Array.from({ length: 23 }, (_, i) => i));
		for (const { length } of pieces) expect(length).toBeCloseTo(56, 9);
	});

	it.each([
		["a cylinder", 240],
		["a compound board", { nut: 200, "last-fret": 400 }],
		["a board measured at a middle station", { nut: 200, 7: 230, "last-fret": 400 }],
	])("along a slanted fret of %s is a polyline through its points", (_, radius) => {
		for (const handed of ["right", "left"]) {
			const neck = neckWith({ ...FANNED, radius, handed });
			for (const n of [1, 7, 22]) {
				expect(overCrown(neck, fretLine(neck, n))).toBeCloseTo(byPolyline(neck, n), 6);
			}
		}
	});

	it("along a slanted fret is neither its straight length nor that of the board's own radius", () => {
		const neck = neckWith({ ...FANNED, radius: 184, width: 60 });
		const [a, b] = ([-1, 1] as const).map((side) => edgePoint(neck, fretLine(neck, 22), side));
		const chord = Math.hypot(b!.x - a!.x, b!.y - a!.y);
		const round = 2 * 184 * Math.asin(chord / (2 * 184));
		const length = overCrown(neck, fretLine(neck, 22));
		expect(length).toBeGreaterThan(chord + 0.1);
		expect(length).toBeLessThan(round - 0.005);
	});

	it("is bought in whole inches, never too few", () => {
		expect(feetAndInches(1524)).toBe("5 ft 0 in");
		expect(feetAndInches(1525)).toBe("5 ft 1 in");
		expect(feetAndInches(12 * 25.4 - 0.01)).toBe("1 ft 0 in");
		expect(feetAndInches(10)).toBe("0 ft 1 in");
	});

	it("stands on the sheet with its sum and with what is to be ordered", () => {
		const [page] = pagesOf(benchWith({ radius: 304.8, width: 56 }), { overhang: 2, waste: 25 });
		const lines = linesOf(page!).join("\n");
		expect(lines).toContain("22 pieces | 60.079");
		expect(lines).toContain("together | 1321.739");
		expect(lines).toContain("with 25 % waste, order | 1.653 m (5 ft 6 in)");
	});
});

describe("radii and strings on a shop sheet", () => {
	// Machinery's Handbook, segments of circles for radius 1 (from memory): 60°: h 0.1340, c 1.0000.
	it("have the handbook's sagitta", () => {
		const { rows } = stationTexts(neckWith({ radius: 100, width: 100 }))!;
		expect(rows[1]).toEqual(["nut", "0.000", "100.000", "3.94", "100.000", "13.397"]);
		expect(rows.map(([place]) => place)).toEqual(["at", "nut", "fret 12", "last fret", "saddle *"]);
	});

	it("go on in a straight line to the saddle, and say so", () => {
		const neck = neckWith({ frets: 12, radius: { nut: 250, 12: 300 }, width: { nut: 40, 12: 50 } });
		const { rows, notes } = stationTexts(neck)!;
		expect(rows.at(-1)!.slice(2, 5)).toEqual(["350.000", "13.78", "60.000"]);
		expect(notes.join(" ")).toContain("straight line");
	});

	it("have every string's place, treble positive, also on a left-handed neck", () => {
		for (const handed of ["right", "left"]) {
			const strings = { count: 3, "at-nut": 30, "at-saddle": 50 };
			const [nut, twelve, saddle] = spreadsOf(neckWith({ frets: 12, strings, handed }));
			expect(nut!.positions).toEqual([-15, 0, 15].map((y) => expect.closeTo(y, 9)));
			expect(twelve!.positions).toEqual([-20, 0, 20].map((y) => expect.closeTo(y, 9)));
			expect(saddle!.positions).toEqual([-25, 0, 25].map((y) => expect.closeTo(y, 9)));
		}
	});

	it("give the middle of every course, and how far its strings lie from it", () => {
		const strings = { courses: 4, "pair-gap": 2, "at-nut": 26, "at-saddle": 44 };
		const pages = pagesOf(benchWith({ width: { nut: 32, "last-fret": 50 }, strings }));
		const lines = pages.flatMap(linesOf).join("\n");
		expect(lines).toMatch(/4, bass \| -12\.000 \| -[\d.]+ \| -21\.000/u);
		expect(lines).toMatch(/1, treble \| 12\.000 \| [\d.]+ \| 21\.000/u);
		expect(lines).toContain("its strings | ±1.000 | ±1.000 | ±1.000");
		expect(lines).toMatch(/overall \| 26\.000 \| [\d.]+ \| 44\.000/u);
		expect(lines).toMatch(/course gap \| 8\.000 \| [\d.]+ \| 14\.000/u);
	});
});

describe("notches and slots on a shop sheet", () => {
	it("are those that the straightedge is built with", () => {
		const bench = benchWith({});
		const given = notchedStraightedge.settings("mm").parse({});
		const settings = { ...given, ...notchedStraightedge.defaults(bench, given) };
		const { claims } = notchedStraightedge.build(bench, settings, "bar").parts[0]!;
		const claimed = (id: string) => claims.find((c) => c.id === id)!.nominal.toFixed(3);
		const lines = linesOf(pagesOf(bench)[0]!).join("\n");
		expect(lines).toContain(`notch width | ${claimed("notch-22-width")}`);
		expect(lines).toContain(`to lap off | ${claimed("notch-22-depth")}`);
	});

	it("are as wide as the tang, and deeper by a hundredth to two of an inch", () => {
		const lines = linesOf(pagesOf(benchWith({}))[0]!).join("\n");
		expect(lines).toContain("slot width, as the tang | 0.530 (0.0209 in)");
		expect(lines).toContain("| 1.854 to 2.108");
	});
});

describe("the picture on a shop sheet", () => {
	const boxOf = ({ marks }: Ink, feature: string) =>
		extents(marks.find((m) => m.feature === feature)!.path);

	it("is drawn at the scale that it says", () => {
		const [page] = pagesOf(benchWith({ scale: "25.5 in", width: 50 }));
		const said = textsOf([page!]).find((t) => t.startsWith("picture 1:"))!;
		const scale = Number(/1:([\d.]+),/u.exec(said)![1]);
		const nut = boxOf(page!, "picture of the nut");
		expect(boxOf(page!, "picture of fret 12").minX - nut.minX).toBeCloseTo(323.85 / scale, 9);
		expect(boxOf(page!, "picture of the saddle").minX - nut.minX).toBeCloseTo(647.7 / scale, 9);
		expect(nut.maxY - nut.minY).toBeCloseTo(50 / scale, 9);
	});

	it("has the treble side above, on a left-handed neck below", () => {
		for (const handed of ["right", "left"]) {
			const [page] = pagesOf(benchWith({ handed }));
			const y = (text: string) => page!.notes.find((n) => n.text === text)!.at.y;
			expect(y("treble side") > y("bass side")).toBe(handed === "right");
		}
	});

	it("has the longer string's nut end further out on its own side", () => {
		for (const handed of ["right", "left"]) {
			const [page] = pagesOf(benchWith({ ...FANNED, handed }));
			const { points } = page!.marks.find((m) => m.feature === "picture of the nut")!.path;
			const [bass, treble] = [...points].sort((a, b) => a.x - b.x);
			expect(bass!.y < treble!.y).toBe(handed === "right");
		}
	});

	it("shows a marker's one centre or two", () => {
		const [page] = pagesOf(benchWith({ markers: [3, { 12: "double" }] }));
		const markers = page!.marks.filter((m) => m.feature.startsWith("picture of marker"));
		expect(markers.map(({ feature }) => feature)).toEqual([
			"picture of marker 3",
			"picture of marker 12 bass",
			"picture of marker 12 treble",
		]);
	});
});

describe("what a shop sheet says", () => {
	it("names job, date, scale, frets, division and hand", () => {
		const texts = textsOf(pagesOf(benchWith({ handed: "left" }, { date: "3 May" })));
		expect(texts).toContain("Plain neck");
		expect(texts).toContain("Shop sheet, 3 May");
		expect(texts.join(" ")).toContain(
			"25 1/2 in scale, 22 frets, 12 equal steps to the octave, left",
		);
	});

	it("ends its cautions with the standing one, and promises no safety", () => {
		const [page] = pagesOf(benchWith({}));
		const said = textsOf([page!]).filter((t) => t !== "-");
		const all = said.slice(said.indexOf("Cautions")).join(" ");
		expect(all.endsWith(CAUTION_LAST)).toBe(true);
		expect(said.join(" ").replace(CAUTION_LAST, "")).not.toMatch(/\bsafe/iu);
		expect(all).toMatch(/eye protection/u);
	});

	it("says where the nut's face stands if it was moved", () => {
		expect(textsOf(pagesOf(benchWith({ "nut-shift": 0.4 }))).join(" ")).toContain(
			"face at 0.400 mm",
		);
	});
});

describe("the pages of a shop sheet", () => {
	it.each([A4, LETTER, A3])(
		"hold every example, each thing at a place of its own: $name",
		(paper) => {
			for (const name of EXAMPLES) {
				const bench = exampleBench(name, paper);
				const pages = pagesOf(bench);
				const body = bodyOf(paper, paper.height!);
				for (const page of pages) expect(inkFaults(page, body), name).toEqual([]);
				if (bench.neck.frets <= 24) expect(pages.length, name).toBe(1);
			}
		},
	);

	it.each([
		["nine strings", { count: 9 }],
		["six courses", { courses: 6, "pair-gap": 2 }],
	])("are one up to 24 frets, also bound, fanned, with a zero fret and %s", (_, strings) => {
		for (const paper of [A4, LETTER]) {
			const full = {
				scale: { bass: 711, treble: 660, "square-fret": 7 },
				frets: 24,
				radius: { nut: 300, "last-fret": 500 },
				width: { nut: 60, "last-fret": 90 },
				strings: { ...strings, "at-nut": 50, "at-saddle": 80 },
				binding: 1.5,
				"zero-fret": true,
			};
			const pages = pagesOf(benchWith(full, {}, paper));
			expect(pages.length).toBe(1);
			expect(inkFaults(pages[0]!, bodyOf(paper, paper.height!))).toEqual([]);
		}
	});

	it("go on with the table's heads on each, every fret once and in order", () => {
		const pages = pagesOf(benchWith({ frets: 70, division: 31 }));
		expect(pages.length).toBeGreaterThan(1);
		const body = bodyOf(A4, 297);
		for (const page of pages) expect(inkFaults(page, body)).toEqual([]);
		const frets = pages.flatMap((page) =>
			linesOf(page).flatMap(
				(line) => /^(\d+) \| [\d.]+ \| [\d.]+ \| [\d/ ]+ \|/u.exec(line)?.[1] ?? [],
			),
		);
		expect(frets).toEqual(Array.from({ length: 70 }, (_, i) => String(i + 1)));
		const second = textsOf([pages[1]!]);
		expect(second[0]).toContain("continued");
		expect(second).toContain("fret");
	});

	it("are more on small paper, with every text of the large one", () => {
		const bench = benchWith({});
		const small = pagesOf({ ...bench, paper: A5 });
		expect(small.length).toBeGreaterThan(1);
		for (const page of small) expect(inkFaults(page, bodyOf(A5, 210))).toEqual([]);
		const words = (pages: Ink[]) => new Set(textsOf(pages).flatMap((t) => t.split(" ")));
		const missing = [...words(pagesOf(bench))].filter((word) => !words(small).has(word));
		expect(missing.filter((word) => !word.startsWith("1:"))).toEqual([]);
	});

	it("of a roll are as high as a usual sheet and no wider than can be read", () => {
		const { documents } = sheetOf(benchWith({}, {}, ROLL));
		expect(documents![0]!.height).toBe(297);
		const box = documents![0]!.pages[0]!.ink.notes.map(({ at, width }) => at.x + width);
		expect(Math.max(...box)).toBeLessThan(310);
	});

	it("hold any neck", () => {
		const body = bodyOf(LETTER, LETTER.height!);
		fc.assert(
			fc.property(randomJob({ leastGap: 3 }), ({ job }) => {
				const { documents = [], problems } = sheetOf(paperBench(job, LETTER));
				expect(problems).toEqual([]);
				for (const { ink } of documents[0]!.pages) expect(inkFaults(ink, body)).toEqual([]);
			}),
			{ seed: 7_301, numRuns: 10 },
		);
	});
});

describe("the check of pages", () => {
	const body = bodyOf(A4, 297);
	const [page] = pagesOf(benchWith({}));

	it("finds a text that is moved onto another, shrunk or moved out", () => {
		const [first, second, ...rest] = page!.notes;
		const with2 = (note: object): Ink => ({
			...page!,
			notes: [first!, { ...second!, ...note }, ...rest],
		});
		expect(inkFaults(with2({ at: first!.at }), body)).not.toEqual([]);
		expect(inkFaults(with2({ height: 1.8 }), body).join()).toContain("too small");
		expect(inkFaults(with2({ at: { x: 5, y: 100 } }), body).join()).toContain("outside");
	});

	it("finds a mark outside the body", () => {
		expect(inkFaults(page!, { ...body, minX: body.minX + 1 }).join()).toContain("outside: ");
	});
});

describe("a shop sheet is refused", () => {
	const refusal = (bench: Bench) => {
		const { documents = [], problems } = sheetOf(bench);
		expect(documents).toEqual([]);
		return problems.map(problemText).join("\n");
	};

	it("on paper too narrow for its table, with what it needs", () => {
		const said = refusal(exampleBench("kestrel-eight", A5));
		expect(said).toMatch(/need 1\d\d(\.\d+)? mm across, a page of A5 leaves them 122 mm/u);
	});

	it("on paper too low for its picture", () => {
		const low = { ...A4, name: "210 x 60 mm", height: 60 };
		expect(refusal(benchWith({}, {}, low))).toContain("60 mm high");
	});

	it("with a marker beyond the last fret", () => {
		const bench = benchWith({});
		const neck = { ...bench.neck, markers: [{ fret: 30, double: false }] };
		expect(refusal({ ...bench, neck })).toContain("a marker stands at fret 30");
	});

	it("where the board is wider than its circle", () => {
		const bench = benchWith(FANNED);
		const radius = { knots: [{ x: 0, value: 27 }] };
		expect(refusal({ ...bench, neck: { ...bench.neck, radius } })).toContain("half the board");
	});
});
