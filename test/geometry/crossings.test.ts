import { describe, expect, test } from "vitest";
import {
	circle,
	closed,
	crossingsAmong,
	moved,
	open,
	type Path,
	rectangle,
	reversed,
	segments,
	selfCrossings,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";

/** The same ring begun at every vertex, and each of those the other way round. */
function variants(path: Path): Path[] {
	const starts = path.points.map((_, i) => startedAt(path, i));
	return [...starts, ...starts.map(reversed)];
}

/** Where a path crosses itself, without repeats. */
function places(path: Path): string[] {
	const clean = (v: number) => (Math.round(v * 1e7) / 1e7 + 0).toFixed(6);
	return [...new Set(selfCrossings(path).map(({ at: p }) => `${clean(p.x)} ${clean(p.y)}`))].sort();
}

const SLOT = closed(vertex(2, 0), vertex(8, 0, 1), vertex(8, 4), vertex(2, 4, 1));
const BOW_TIE = closed(vertex(0, 0), vertex(4, 4), vertex(4, 0), vertex(0, 4));
/** A rectangle with an arch in its lower edge that reaches y = 3 of 3: it touches the top. */
const TOUCHING = closed(
	...[vertex(0, 0), vertex(1, 0, -1), vertex(7, 0), vertex(8, 0)],
	...[vertex(8, 3), vertex(0, 3)],
);
/** As before, but the arch comes through the top, which is at y = 2. */
const THROUGH = closed(
	...[vertex(0, 0), vertex(1, 0, -1), vertex(7, 0), vertex(8, 0)],
	...[vertex(8, 2), vertex(0, 2)],
);
/** A spike: out to (9, 2) and back on itself. */
const SPIKE = closed(
	...[vertex(0, 0), vertex(4, 0), vertex(4, 2), vertex(9, 2), vertex(4, 2 + 1e-10)],
	...[vertex(4, 4), vertex(0, 4)],
);

describe("a path does not meet itself", () => {
	test.each([
		["a rectangle", rectangle(0, 0, 4, 2)],
		["a circle of two half arcs", circle({ x: 1, y: 2 }, 3)],
		["a slot with tangent arcs", SLOT],
		["a triangle", closed(vertex(0, 0), vertex(4, 0), vertex(0, 3))],
		["a lens of two flat arcs", closed(vertex(0, 0, 1e-4), vertex(50, 0, 1e-4))],
	])("%s, whichever way it runs and wherever it starts", (_, path) => {
		for (const turn of [0, 0.3, 2]) {
			for (const variant of variants(moved(path, { x: 500, y: -20, turn, mirror: false }))) {
				expect(selfCrossings(variant)).toEqual([]);
			}
		}
	});

	test("where it is open and its ends are apart", () => {
		expect(selfCrossings(open(vertex(0, 0), vertex(4, 0), vertex(4, 4)))).toEqual([]);
	});
});

describe("a path meets itself", () => {
	test.each([
		["where a bow-tie crosses", BOW_TIE, ["2.000000 2.000000"]],
		["where an arc touches a line", TOUCHING, ["4.000000 3.000000"]],
		["where an arc comes through a line", THROUGH, ["1.763932 2.000000", "6.236068 2.000000"]],
	])("%s, whichever way it runs and wherever it starts", (_, path, expected) => {
		for (const variant of variants(path)) expect(places(variant)).toEqual(expected);
	});

	test("where a corner touches an edge from within", () => {
		const path = closed(vertex(0, 0), vertex(2, 4), vertex(4, 0), vertex(4, 4), vertex(0, 4));
		for (const variant of variants(path)) {
			expect(places(variant)).toEqual(["2.000000 4.000000"]);
		}
	});

	test("along a spike that runs back on itself", () => {
		for (const variant of variants(SPIKE)) {
			expect(selfCrossings(variant).length).toBeGreaterThan(0);
		}
	});

	test("where an open path comes back to its start", () => {
		const path = open(vertex(0, 0), vertex(4, 0), vertex(4, 4), vertex(0, 0));
		expect(places(path)).toEqual(["0.000000 0.000000"]);
	});

	test("and it is told which segments and how far along", () => {
		expect(selfCrossings(BOW_TIE)).toEqual([
			{
				...{ first: 0, second: 2, at: { x: 2, y: 2 } },
				...{ onFirst: expect.closeTo(0.5, 14), onSecond: expect.closeTo(0.5, 14) },
			},
		]);
	});
});

test("the crossings among segments come in their order, the lower one first", () => {
	const all = [...segments(rectangle(0, 0, 4, 4)), ...segments(rectangle(2, 2, 6, 6))];
	const met = crossingsAmong(all).filter(({ first, second }) => first < 4 && second >= 4);
	expect(met.map(({ first, second, at }) => [first, second, at.x, at.y])).toEqual([
		[1, 4, 4, 2],
		[2, 7, 2, 4],
	]);
});
