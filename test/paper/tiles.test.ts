import { beforeAll, describe, expect, it } from "vitest";
import type { Mark } from "../../src/drawing/index.js";
import {
	clipped,
	type Extents,
	extents,
	moved,
	movedPoint,
	pathLength,
	shift,
	stretched,
	undone,
} from "../../src/geometry/index.js";
import type { Print, PrintedPage } from "../../src/paper/index.js";
import { EXAMPLES, madeExample } from "../support/examples.js";

/** Papers, and every how many examples are printed on each. */
const PAPERS = { A4: 1, "150 x 210 mm": 2, "420 x 297 mm": 3, "roll 610 mm": 2 };

/** What is promised to a part in work: everything but the reference layer. */
const WORK = new Set(["cut", "score", "engrave"]);

/** Long and small, with notches, scored lines, arcs and many notes; every example makes them. */
const FEW = ["notched-straightedge", "slot-strip", "fret-rocker", "crown-gauge", "sanding-block"];

const all: Print[] = [];
beforeAll(async () => {
	for (const [i, name] of EXAMPLES.entries()) {
		for (const [paper, every] of Object.entries(PAPERS)) {
			if (i % every !== 0) continue;
			const { prints } = await madeExample(name, { paper, formats: ["svg"], only: FEW });
			all.push(...prints.map(({ print }) => print));
		}
	}
}, 60_000);

/** Prints of parts, without the pages of text that some of them end with. */
const ofParts = () =>
	all
		.map((print) => ({ ...print, pages: print.pages.filter(({ tile }) => tile !== null) }))
		.filter(({ pages }) => pages.length > 0);
const tiled = () => ofParts().filter(({ pages }) => pages.length > 1);

/** Marks as they come out of the printer: the correction undone about the page's middle. */
function trueMarks({ made }: Print, { sheet }: PrintedPage): Mark[] {
	const [x, y] = [sheet.size.maxX / 2, sheet.size.maxY / 2];
	const back = { x: 1 / made.x, y: 1 / made.y };
	return sheet.marks.map((mark) => ({
		...mark,
		path: moved(stretched(moved(mark.path, shift(-x, -y)), back), shift(x, y)),
	}));
}

/** A box of a page in the part's own frame. */
function inPart({ tile }: PrintedPage, box: Extents): Extents {
	const back = undone(tile!.move);
	const [a, b] = [
		movedPoint({ x: box.minX, y: box.minY }, back),
		movedPoint({ x: box.maxX, y: box.maxY }, back),
	];
	return {
		minX: Math.min(a.x, b.x),
		maxX: Math.max(a.x, b.x),
		minY: Math.min(a.y, b.y),
		maxY: Math.max(a.y, b.y),
	};
}

const areaOf = (b: Extents) => (b.maxX - b.minX) * (b.maxY - b.minY);

function overlapOf(a: Extents, b: Extents): number {
	const x = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
	const y = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
	return Math.max(0, x) * Math.max(0, y);
}

describe("parts on paper", () => {
	it("fill one page, or tiles: both occur", () => {
		expect(tiled().length).toBeGreaterThan(25);
		expect(ofParts().length).toBeGreaterThan(tiled().length);
	});

	it("lie within the printer's margins, in the file and on the paper, on every page", () => {
		const outside = all.flatMap((print) =>
			print.pages.flatMap((page, i) => {
				const { paper, name } = print;
				const { maxX, maxY } = page.sheet.size;
				const over = [...page.sheet.marks, ...trueMarks(print, page)].filter(({ path }) => {
					const box = extents(path);
					const inside = Math.min(box.minX, box.minY, maxX - box.maxX, maxY - box.maxY);
					return inside < paper.margin - 1e-6;
				});
				return over.map((m) => `${name} on ${paper.name}, page ${i + 1}: ${m.feature}`);
			}),
		);
		expect(outside).toEqual([]);
		expect(all.some(({ made }) => made.x !== 1)).toBe(true);
	});

	it("are whole: the pieces up to the seams lie side by side and hold every line of the part", () => {
		for (const print of ofParts()) {
			const { pages } = print;
			const { part } = pages[0]!.tile!;
			const own = pages.map((page) => inPart(page, page.tile!.own));
			own.forEach((box, i) => {
				for (const other of own.slice(i + 1)) expect(overlapOf(box, other)).toBeLessThan(1e-6);
			});
			const whole = own.reduce((a, b) => ({
				minX: Math.min(a.minX, b.minX),
				minY: Math.min(a.minY, b.minY),
				maxX: Math.max(a.maxX, b.maxX),
				maxY: Math.max(a.maxY, b.maxY),
			}));
			expect(own.reduce((sum, b) => sum + areaOf(b), 0)).toBeCloseTo(areaOf(whole), 5);
			const drawn = pages.reduce((sum, page) => {
				const { move, own: box } = page.tile!;
				const marks = trueMarks(print, page).filter((m) => WORK.has(m.operation));
				const pieces = marks.flatMap((m) => clipped(m.path, box));
				expect(move.mirror).toBe(false);
				return sum + pieces.reduce((s, p) => s + pathLength(p), 0);
			}, 0);
			const meant = part.marks.reduce((sum, m) => sum + pathLength(m.path), 0);
			expect(Math.abs(drawn - meant)).toBeLessThan(1e-3);
		}
	});

	it("lie on each page where the part's frame says, to the nanometre", () => {
		for (const print of ofParts()) {
			for (const page of print.pages) {
				const { part, move, window } = page.tile!;
				const lines = part.marks.flatMap((m) => clipped(moved(m.path, move), window));
				const marks = trueMarks(print, page).filter((m) => WORK.has(m.operation));
				expect(marks).toHaveLength(lines.length);
				marks.forEach(({ path }, i) => {
					const [a, b] = [extents(path), extents(lines[i]!)];
					for (const side of ["minX", "minY", "maxX", "maxY"] as const) {
						expect(Math.abs(a[side] - b[side])).toBeLessThan(1e-6);
					}
				});
			}
		}
	});

	it("have no seam through a slot, a notch or a hole where a shift by the overlap avoids it", () => {
		const seen = { seams: 0, through: 0 };
		for (const { pages, paper } of tiled()) {
			const { part } = pages[0]!.tile!;
			const own = pages.map((page) => inPart(page, page.tile!.own));
			const end = Math.max(...own.map((box) => box.maxX));
			const cuts = [...new Set(own.map((box) => box.maxX))].filter((x) => x < end - 1e-6);
			const lines = part.claims
				.filter((c) => /^(slot|notch) \d|hole/u.test(c.feature) && c.kind !== "label")
				.map((c) => {
					const at =
						c.kind === "position" ? c.at.slice(-1) : c.kind === "angle" ? c.at.slice(1) : c.at;
					return [Math.min(...at.map((p) => p.x)), Math.max(...at.map((p) => p.x))] as const;
				})
				.filter(([from, to]) => to - from < 3 * paper.overlap);
			const isFree = (x: number, clear: number) =>
				lines.every(([from, to]) => x <= from - clear || x >= to + clear);
			for (const x of cuts) {
				seen.seams++;
				if (isFree(x, 0)) continue;
				seen.through++;
				const shifts = Array.from({ length: 121 }, (_, k) => ((k - 60) / 60) * paper.overlap);
				expect(shifts.filter((d) => isFree(x + d, 1.3))).toEqual([]);
			}
		}
		expect(seen.seams).toBeGreaterThan(60);
		expect(seen.through).toBeLessThan(3);
	});

	it("show two neighbours' crosses at one place of the part", () => {
		for (const { pages } of tiled()) {
			const crosses = pages.flatMap(({ tile, crosses: own }) =>
				own.map((c) => movedPoint(c, undone(tile!.move))),
			);
			expect(crosses.length).toBeGreaterThan(3);
			const alone = crosses.filter(
				(c) => crosses.filter((d) => Math.hypot(c.x - d.x, c.y - d.y) < 1e-6).length < 2,
			);
			expect(alone).toEqual([]);
		}
	});

	it("come with rules of 100 mm and 4 in, both ways, on every page", () => {
		for (const { pages } of all) {
			for (const { rules } of pages) {
				const lengths = rules.map(({ from, to }) => [to.x - from.x, to.y - from.y]);
				for (const length of [100, 101.6]) {
					for (const way of [0, 1]) {
						const found = lengths.filter(
							(l) => Math.abs(l[way]! - length) < 1e-9 && Math.abs(l[1 - way]!) < 1e-9,
						);
						expect(found.length).toBeGreaterThan(0);
					}
				}
			}
		}
	});

	it("take the whole length of a roll on one page", () => {
		const rolls = ofParts().filter(({ paper }) => paper.height === null);
		expect(rolls.length).toBeGreaterThan(10);
		expect(rolls.filter(({ pages }) => pages.length > 1)).toEqual([]);
	});
});

describe("what is said of a part that one page holds", () => {
	it("stands on a page of its own where the part's leaves no room", () => {
		const isWhole = ({ pages }: Print) => pages.filter(({ tile }) => tile !== null).length === 1;
		// A drawing with all its notes is 46 cm high: more than A4.
		const gauges = all.filter(
			(print) => print.paper.name === "A4" && print.name.endsWith("crown-gauge") && isWhole(print),
		);
		expect(gauges.length).toBeGreaterThan(3);
		for (const { pages } of gauges) {
			const [part, ...texts] = pages;
			expect(part!.tile).not.toBeNull();
			// Its dozen notes and the cautions take more than half a page of strokes.
			const strokes = texts.flatMap(({ sheet }) => sheet.marks).length;
			expect(strokes).toBeGreaterThan(500);
			for (const { tile } of texts) expect(tile).toBeNull();
		}
	});
});
