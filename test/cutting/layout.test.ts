import { Clipper, EndType, FillRule } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutFaults } from "../../src/cutting/layout/layout-faults.js";
import { type Layout, layOut } from "../../src/cutting/layout.js";
import type { Bed } from "../../src/cutting/machine.js";
import type { Mark, Part, Placed, Stock } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	line,
	open,
	type Path,
	type Point,
	pointAt,
	rectangle,
	reversed,
	segments,
	vertex,
} from "../../src/geometry/index.js";
import { problemText } from "../../src/problem/index.js";
import { inflated, polygonsOf } from "../support/cut-with-beam.js";

const ACRYLIC: Stock = { material: "acrylic", thickness: 3 };
const PLYWOOD: Stock = { material: "plywood", thickness: 3, grain: "x" };
const BED: Bed = { size: { x: 600, y: 400 }, margin: 5, spacing: 3 };

function part(name: string, cuts: readonly Path[], stock: Stock = ACRYLIC): Part {
	const marks = cuts.map((path, i): Mark => ({ operation: "cut", path, feature: `contour ${i}` }));
	const words = { tool: "test", title: "Plate", workingEdge: "none", working: [] };
	return { name, ...words, stock, marks, claims: [], notes: [] };
}

function plate(name: string, width: number, height: number, stock: Stock = ACRYLIC): Part {
	return part(name, [rectangle(0, 0, width, height)], stock);
}

function sheetsOf(parts: readonly Part[], bed: Bed = BED): readonly Layout[] {
	const result = layOut(parts, bed);
	if (!result.ok) throw new Error(result.problems.map(problemText).join("; "));
	return result.layouts;
}

/** A point after the move, by its own formula. */
function carried({ x, y }: Point, { move }: Placed): Point {
	const [c, s] = [Math.cos(move.turn), Math.sin(move.turn)];
	expect(move.mirror).toBe(false);
	return { x: c * x - s * y + move.x, y: s * x + c * y + move.y };
}

/** The outlines of a part on its sheet as polygons of chords. */
function polygons(placed: Placed): Point[][] {
	const all = polygonsOf(placed.part.marks.map((m) => m.path));
	return all.map((points) => points.map((p) => carried(p, placed)));
}

/** What a bed's parts do wrong, measured by polygons and another library's offsets. */
function measuredFaults({ placed }: Layout, { size, margin, spacing }: Bed): string[] {
	const drawn = placed.map((p) => ({ name: p.part.name, points: polygons(p) }));
	const outside = drawn.filter(({ points }) =>
		points.flat().some(({ x, y }) => {
			const least = Math.min(x, y, size.x - x, size.y - y);
			return least < margin - 1e-6;
		}),
	);
	const around = drawn.map(({ points }) => inflated(points, spacing / 2 - 1e-4, EndType.Polygon));
	const near = around.flatMap((a, i) =>
		around.slice(i + 1).flatMap((b, k) => {
			const both = Clipper.intersectD(a, b, FillRule.NonZero, 6);
			return both.length > 0 ? [`${i} and ${i + 1 + k} are too near`] : [];
		}),
	);
	return [...outside.map(({ name }) => `${name} lies in the margin`), ...near];
}

const side = fc.integer({ min: 50, max: 1200 }).map((tenths) => tenths / 10);
const stock = fc.constantFrom<Stock>(
	ACRYLIC,
	ACRYLIC,
	{ material: "acrylic", thickness: 4 },
	PLYWOOD,
	{ material: "plywood", thickness: 3 },
);

/** Plates, discs, wedges and plates with round ends, anywhere about their own origin. */
const anyPart = fc
	.record({
		width: side,
		height: side,
		shape: fc.nat(3),
		x: side,
		y: side,
		stock,
		id: fc.nat(9999),
	})
	.map(({ width, height, shape, x, y, stock: sheet, id }) => {
		const [right, top] = [width - x, height - y];
		const outline = [
			() => rectangle(-x, -y, right, top),
			() => circle({ x, y: -y }, width / 3),
			() => closed(vertex(-x, -y), vertex(right, -y), vertex(-x + width / 4, top)),
			() =>
				closed(vertex(-x, -y), vertex(right, -y, 0.6), vertex(right, top), vertex(-x, top, 0.3)),
		][shape]!();
		return part(`part-${id}`, [outline], sheet);
	});

const anyBed = fc.record({
	size: fc.record({
		x: fc.integer({ min: 300, max: 500 }),
		y: fc.integer({ min: 300, max: 500 }),
	}),
	margin: fc.integer({ min: 0, max: 100 }).map((tenths) => tenths / 10),
	spacing: fc.integer({ min: 5, max: 80 }).map((tenths) => tenths / 10),
});

/** Of a bar, in lengths of the bed: most go on the diagonal, some not at all. */
const reach = fc.double({ min: 1.01, max: 1.2, noNaN: true });

const RUNS = { seed: 2_718, numRuns: 60 };

describe("layOut", () => {
	it("keeps margin, spacing, stock and grain of any parts and loses or doubles none", () => {
		const parts = fc.array(anyPart, { minLength: 1, maxLength: 14 });
		fc.assert(
			fc.property(parts, fc.nat(13), anyBed, (list, again, bed) => {
				const all = [...list, list[again % list.length]!];
				const layouts = sheetsOf(all, bed);
				expect(layouts.flatMap((layout) => measuredFaults(layout, bed))).toEqual([]);
				const placed = layouts.flatMap((layout) => layout.placed.map((p) => p.part));
				for (const p of new Set(all)) {
					const count = (where: readonly Part[]) => where.filter((q) => q === p).length;
					expect(count(placed)).toBe(count(all));
				}
				expect(placed.length).toBe(all.length);
				for (const layout of layouts) {
					for (const { part: p, move } of layout.placed) {
						expect(p.stock).toEqual(layout.stock);
						if (p.stock.grain) expect(move.turn).toBe(0);
						expect([0, Math.PI / 2]).toContain(move.turn);
					}
				}
			}),
			RUNS,
		);
	});

	it("puts sheets in the order in which their stocks first appear", () => {
		const thick = { material: "acrylic", thickness: 5 };
		const parts = [
			plate("a", 10, 10, thick),
			plate("b", 10, 10),
			plate("c", 10, 10, PLYWOOD),
			plate("d", 10, 10, { material: "acrylic", thickness: 5 + 1e-9 }),
			plate("e", 10, 10, { material: "plywood", thickness: 3 }),
		];
		const names = sheetsOf(parts).map(({ placed }) => placed.map((p) => p.part.name).sort());
		expect(names).toEqual([["a", "d"], ["b"], ["c"], ["e"]]);
	});

	it("turns a plate of 300 x 100 mm on a bed of 120 x 320 mm", () => {
		const bed = { size: { x: 120, y: 320 }, margin: 5, spacing: 3 };
		const [sheet, ...more] = sheetsOf([plate("a", 300, 100)], bed);
		expect(more).toEqual([]);
		// 100 wide and 300 high from (5, 5): its own corner (0, 0) comes to (105, 5).
		expect(sheet!.placed[0]!.move).toEqual({ x: 105, y: 5, turn: Math.PI / 2, mirror: false });
	});

	it("fills a bed to its last hundredth, whatever the decimals", () => {
		// 2 · 0.3 + 3 · 33.3 + 2 · 0.7 = 101.9 and 2 · 0.3 + 2 · 20.1 + 0.7 = 41.5
		const six = Array.from({ length: 6 }, (_, i) => {
			const [x, y] = [i * 1.7, -i * 2.3];
			return part(`p${i}`, [rectangle(x, y, x + 33.3, y + 20.1)], PLYWOOD);
		});
		const bed = { size: { x: 101.9, y: 41.5 }, margin: 0.3, spacing: 0.7 };
		expect(sheetsOf(six, bed).length).toBe(1);
		expect(sheetsOf(six, { ...bed, size: { x: 101.899, y: 41.5 } }).length).toBe(2);
		const places = sheetsOf(six, bed)[0]!.placed.map((p) => {
			const { x, y } = carried(p.part.marks[0]!.path.points[0]!, p);
			return [x, y];
		});
		const wanted = [0.3, 34.3, 68.3].flatMap((x) => [0.3, 21.1].map((y) => [x, y]));
		for (const [x, y] of wanted) {
			expect(
				places.filter((p) => Math.hypot(p[0]! - x!, p[1]! - y!) < 1e-9),
				`${x}, ${y}`,
			).toHaveLength(1);
		}
	});

	it("takes a second sheet when one is not enough, and no more", () => {
		const plates = (count: number) =>
			Array.from({ length: count }, (_, i) => plate(`p${i}`, 100, 100));
		const bed = { size: { x: 212, y: 212 }, margin: 2, spacing: 5 };
		expect(sheetsOf(plates(4), bed).map((s) => s.placed.length)).toEqual([4]);
		expect(sheetsOf(plates(5), bed).map((s) => s.placed.length)).toEqual([4, 1]);
	});

	it("finds the one sheet on which plates lie and stand around each other", () => {
		// Four plates of 60 x 40 around a middle of 20 x 20: the bed is 100 x 100, full but for that.
		const four = Array.from({ length: 4 }, (_, i) => plate(`p${i}`, 60, 40));
		const bed = { size: { x: 100, y: 100 }, margin: 0, spacing: 0 };
		expect(sheetsOf(four, bed).length).toBe(1);
	});

	it("fills a bed that is as wide as its plates, by any decimals", () => {
		for (let i = 1; i <= 40; i++) {
			const [width, margin, spacing] = [10 + i * 0.37, i * 0.13, i * 0.11];
			const bed = { size: { x: 3 * width + 2 * spacing + 2 * margin, y: 50 }, margin, spacing };
			const three = [1, 2, 3].map((k) =>
				part(`p${k}`, [rectangle(k * 0.7, 0, k * 0.7 + width, 30)], PLYWOOD),
			);
			expect(sheetsOf(three, bed).length, `${width} ${margin} ${spacing}`).toBe(1);
		}
	});

	it("leaves as much as it can of the last sheet", () => {
		// Six of 98 x 48 with 2 between fill a corner of 298 x 98, or of 198 x 148, or all in a row.
		const six = Array.from({ length: 6 }, (_, i) => plate(`p${i}`, 98, 48));
		const [sheet] = sheetsOf(six, { ...BED, spacing: 2 });
		const all = sheet!.placed.flatMap((p) => polygons(p).flat());
		const right = Math.max(...all.map((p) => p.x)) - 5;
		const top = Math.max(...all.map((p) => p.y)) - 5;
		expect(right * top).toBeLessThan(300 * 100);
	});

	it("gives the same sheets for the same parts", () => {
		const parts = fc.sample(anyPart, { seed: 5, numRuns: 15 });
		expect(JSON.stringify(sheetsOf(parts))).toBe(JSON.stringify(sheetsOf([...parts])));
	});

	it("tells the share of the bed within the outlines, holes not taken off", () => {
		const hole = reversed(circle({ x: 20, y: 20 }, 5));
		const first = part("a", [hole, rectangle(0, 0, 100, 50)]);
		const disc = part("b", [circle({ x: 0, y: 0 }, 20)]);
		// (100 · 50 + π · 20²) / (600 · 400)
		expect(sheetsOf([first, disc])[0]!.used).toBeCloseTo((5000 + 1256.637_061) / 240_000, 9);
	});

	it("joins an outline that tabs cut into pieces before it takes its area", () => {
		const pieces = [
			open(vertex(12, 0), vertex(100, 0), vertex(100, 50), vertex(52, 50)),
			open(vertex(48, 50), vertex(0, 50), vertex(0, 0), vertex(8, 0)),
		];
		const marks = pieces.map((path): Mark => ({ operation: "cut", path, feature: "outline" }));
		const held = { ...part("a", []), marks };
		expect(sheetsOf([held])[0]!.used).toBeCloseTo(5000 / 240_000, 12);
	});

	it("gives scores and engraving their room as well", () => {
		const scored = plate("a", 50, 50);
		const across = line({ x: -40, y: 25 }, { x: 90, y: 25 });
		const marks: Mark[] = [...scored.marks, { operation: "score", path: across, feature: "line" }];
		const [sheet] = sheetsOf([{ ...scored, marks }, plate("b", 50, 50)]);
		const [a] = sheet!.placed;
		expect(a!.part.name).toBe("a");
		expect(
			Math.min(
				...polygons(a!)
					.flat()
					.map((p) => p.x),
			),
		).toBeCloseTo(5, 9);
		expect(measuredFaults(sheet!, BED)).toEqual([]);
	});
});

describe("a part that is too long for its bed", () => {
	it("goes on the diagonal, where the same room is left both ways", () => {
		const [bar, ...more] = sheetsOf([plate("bar", 650, 30)]);
		expect(more).toEqual([]);
		expect(measuredFaults(bar!, BED)).toEqual([]);
		const { turn } = bar!.placed[0]!.move;
		const [c, s] = [Math.cos(turn), Math.abs(Math.sin(turn))];
		expect(590 - (650 * c + 30 * s)).toBeCloseTo(390 - (650 * s + 30 * c), 6);
		const corners = polygons(bar!.placed[0]!).flat();
		const middle = (xs: readonly number[]) => (Math.min(...xs) + Math.max(...xs)) / 2;
		expect(middle(corners.map((p) => p.x))).toBeCloseTo(300, 9);
		expect(middle(corners.map((p) => p.y))).toBeCloseTo(200, 9);
	});

	it("shares its sheet with what finds room in the corners beside it", () => {
		/*
		 * The bar of 650 x 30 takes 560.5 wide at most: it lies at about 32°. Each corner beside it is
		 * a triangle of about 550 x 340, in which a plate of 200 x 150 has room and one of 400 x 200
		 * has not: 400·tan 32° + 200 is more than the 390 of the bed.
		 */
		const small = [plate("a", 200, 150), plate("b", 200, 150)];
		const [both, ...none] = sheetsOf([plate("bar", 650, 30), ...small]);
		expect(none).toEqual([]);
		expect(both!.placed.map((p) => p.part.name).sort()).toEqual(["a", "b", "bar"]);
		expect(measuredFaults(both!, BED)).toEqual([]);
		const two = sheetsOf([plate("bar", 650, 30), plate("large", 400, 200), ...small]);
		expect(two.map(({ placed }) => placed.map((p) => p.part.name).sort())).toEqual([
			["large"],
			["a", "b", "bar"],
		]);
	});

	it("keeps its spacing to any parts beside it, whichever way it slants, and loses none", () => {
		const bars = fc.array(
			fc.record({ length: reach, height: fc.integer({ min: 8, max: 60 }), rises: fc.boolean() }),
			{ minLength: 1, maxLength: 2 },
		);
		let beside = 0;
		fc.assert(
			fc.property(bars, fc.array(anyPart, { maxLength: 14 }), anyBed, (list, others, bed) => {
				const longest = Math.max(bed.size.x, bed.size.y) - 2 * bed.margin;
				const long = list.map(({ length, height, rises }, i) => {
					const right = longest * length;
					const bar = rises
						? closed(vertex(0, 0), vertex(right, 0), vertex(right, height), vertex(0, height))
						: closed(vertex(0, 0), vertex(right, 0), vertex(0, height));
					return part(`bar-${i}`, [bar], ACRYLIC);
				});
				const result = layOut([...long, ...others], bed);
				fc.pre(result.ok);
				if (!result.ok) return;
				expect(result.layouts.flatMap((layout) => measuredFaults(layout, bed))).toEqual([]);
				const placed = result.layouts.flatMap((l) => l.placed.map((p) => p.part.name)).sort();
				expect(placed).toEqual([...long, ...others].map((p) => p.name).sort());
				beside += result.layouts.filter(
					({ placed: all }) => all.length > 1 && all.some((p) => p.part.name === "bar-0"),
				).length;
			}),
			RUNS,
		);
		expect(beside).toBeGreaterThan(RUNS.numRuns / 3);
	});

	it("is looked at along both diagonals", () => {
		/*
		 * A wedge of 650 x 60. Turned by +t it takes 650·cos t + 60·sin t by 650·sin t: at 306 high
		 * 601.7 wide. Turned by −t it takes 650·cos t by 650·sin t + 60·cos t: at 600 wide 305.4 high.
		 */
		const wedge = closed(vertex(0, 0), vertex(650, 0), vertex(0, 60));
		const bed = { size: { x: 600, y: 306 }, margin: 0, spacing: 2 };
		const [sheet] = sheetsOf([part("wedge", [wedge])], bed);
		expect(measuredFaults(sheet!, bed)).toEqual([]);
		expect(sheet!.placed[0]!.move.turn).toBeCloseTo((-22.6 * Math.PI) / 180, 2);
		const mirrored = closed(vertex(0, 0), vertex(650, 60), vertex(0, 60));
		const [other] = sheetsOf([part("wedge", [mirrored])], bed);
		expect(other!.placed[0]!.move.turn).toBeCloseTo((22.6 * Math.PI) / 180, 2);
	});

	it("is judged by its outline, not by its box", () => {
		// A bar with round ends, 700 x 30: a box of that size fits at no angle.
		const bed = { size: { x: 600, y: 400 }, margin: 0, spacing: 2 };
		const slim = closed(vertex(0, 0), vertex(670, 0, 1), vertex(670, 30), vertex(0, 30, 1));
		expect(layOut([plate("box", 700, 30)], bed).ok).toBe(false);
		const [sheet] = sheetsOf([part("slim", [slim])], bed);
		expect(measuredFaults(sheet!, bed)).toEqual([]);
	});

	it("finds the angle even if hardly any is left", () => {
		// Of a line of no width 720 of the diagonal's 721.11 fit between two angles 3.5° apart.
		const bed = { size: { x: 600, y: 400 }, margin: 0, spacing: 2 };
		const [sheet] = sheetsOf([plate("thread", 720, 1)], bed);
		expect(measuredFaults(sheet!, bed)).toEqual([]);
	});

	it("is refused with its size and the bed's if it fits at no angle, once for all copies", () => {
		const long = plate("long", 740, 40);
		const result = layOut([long, plate("b", 10, 10), long, plate("high", 20, 900)], BED);
		if (result.ok) throw new Error("laid out");
		expect(result.problems.map((p) => p.code)).toEqual(Array(2).fill("part-larger-than-bed"));
		expect(result.problems[0]!.facts).toEqual({
			part: "long",
			width: 740,
			height: 40,
			bedWidth: 590,
			bedHeight: 390,
			grain: "",
		});
		expect(problemText(result.problems[0]!)).toContain("740 x 40 mm");
		expect(problemText(result.problems[0]!)).toContain("590 x 390 mm");
	});

	it.each([
		["upright", 300, 100, { size: { x: 120, y: 320 }, margin: 5, spacing: 3 }],
		["on the diagonal", 650, 30, BED],
	])("is refused where only its grain keeps it from lying %s", (_, width, height, bed) => {
		expect(layOut([plate("a", width, height)], bed).ok).toBe(true);
		const result = layOut([plate("a", width, height, PLYWOOD)], bed);
		if (result.ok) throw new Error("laid out");
		expect(result.problems.map((p) => p.facts.grain)).toEqual(["x"]);
		expect(problemText(result.problems[0]!)).toContain("grain");
	});
});

describe("layoutFaults", () => {
	const at = (p: Part, x: number, y: number, turn = 0): Placed => ({
		part: p,
		move: { x, y, turn, mirror: false },
	});
	const disc = part("disc", [circle({ x: 0, y: 0 }, 10)]);
	const bed = (spacing: number): Bed => ({ ...BED, spacing });

	it("names what lies in the margin", () => {
		const faults = [5, 4.999].map((x) => layoutFaults([at(plate("a", 50, 50), x, 5)], BED));
		expect(faults).toEqual([[], ["a lies in the margin"]]);
		for (const [x, y] of [
			[14.9, 50],
			[50, 14.9],
			[585.1, 50],
			[50, 385.1],
		] as const) {
			expect(layoutFaults([at(disc, x, y)], BED)).toEqual(["disc lies in the margin"]);
		}
	});

	it("measures between outlines whose boxes overlap", () => {
		// Centres 18 and 16 apart along x and y: √(18² + 16²) − 20 = 4.083
		const two = [at(disc, 100, 100), at(disc, 118, 116)];
		expect(layoutFaults(two, bed(4.08))).toEqual([]);
		expect(layoutFaults(two, bed(4.09))).toHaveLength(1);
	});

	it("measures from arcs square to lines, whichever way these run", () => {
		// A square of 40 standing on its corner: its sides are 20, the disc's edge 34 − 10 from its middle.
		const square = rectangle(-20, -20, 20, 20);
		const away = 34 * Math.SQRT1_2;
		for (const path of [square, reversed(square)]) {
			for (const [x, y] of [
				[away, away],
				[-away, away],
				[away, -away],
				[-away, -away],
			] as const) {
				const two = [at(part("square", [path]), 200, 200, Math.PI / 4), at(disc, 200 + x, 200 + y)];
				for (const placed of [two, [...two].reverse()]) {
					expect(layoutFaults(placed, bed(3.999))).toEqual([]);
					expect(layoutFaults(placed, bed(4.001))).toHaveLength(1);
				}
			}
		}
	});

	it("finds parts that cross and parts within each other", () => {
		const large = plate("large", 100, 100);
		for (const placed of [
			[at(large, 50, 50), at(disc, 100, 100)],
			[at(disc, 100, 100), at(large, 50, 50)],
			[at(large, 50, 50), at(disc, 50, 100)],
			[at(large, 50, 50), at(large, 50, 50)],
			[at(plate("lying", 100, 10), 50, 100), at(plate("standing", 10, 100), 95, 55)],
		]) {
			expect(layoutFaults(placed, bed(0.1))).toHaveLength(1);
		}
	});

	it("measures between any two shapes as closely as points strewn on them do", () => {
		const bulge = fc.double({ min: -0.4, max: 0.9, noNaN: true });
		const shape = fc.record({
			bulges: fc.array(bulge, { minLength: 3, maxLength: 5 }),
			radius: fc.integer({ min: 8, max: 20 }),
			turn: fc.double({ min: 0, max: 6, noNaN: true }),
		});
		const shapes = shape.map(({ bulges, radius, turn }) => {
			const corners = bulges.map((b, i) => {
				const angle = turn + (i * 2 * Math.PI) / bulges.length;
				return vertex(radius * Math.cos(angle), radius * Math.sin(angle), b);
			});
			return part("shape", [closed(...corners)]);
		});
		const strewn = (placed: Placed) =>
			placed.part.marks
				.flatMap((m) => segments(m.path))
				.flatMap((s) =>
					Array.from({ length: 200 }, (_, i) => carried(pointAt(s, i / 200), placed)),
				);
		fc.assert(
			fc.property(shapes, shapes, fc.double({ min: 0, max: 6, noNaN: true }), (one, other, way) => {
				const a = at(one, 200, 200);
				const b = at(other, 200 + 62 * Math.cos(way), 200 + 62 * Math.sin(way));
				const others = strewn(b);
				const apart = Math.min(
					...strewn(a).map((p) => Math.min(...others.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))),
				);
				fc.pre(apart > 1);
				expect(layoutFaults([a, b], bed(apart - 0.03))).toEqual([]);
				expect(layoutFaults([a, b], bed(apart + 1e-6))).toHaveLength(1);
			}),
			{ seed: 31, numRuns: 25 },
		);
	});
});
