import { describe, expect, test } from "vitest";
import {
	circle,
	closed,
	extents,
	moved,
	type Offset,
	offset,
	type Path,
	pathLength,
	rectangle,
	reversed,
	segments,
	selfCrossings,
	signedArea,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";
import {
	beam,
	comb,
	hole,
	hollowGauge,
	NEARLY_TANGENT,
	random,
	SMALL_ARCS,
} from "../support/offset-cases.js";
import { judge } from "../support/offset-oracle.js";
import { outcomeOf, type TrialKind } from "../support/offset-trials.js";

const area = (paths: readonly Path[]) => paths.reduce((sum, p) => sum + signedArea(p), 0);

/** An offset that keeps what the definition says of it. */
function sound(contours: readonly Path[], distance: number): Offset {
	const result = offset(contours, distance);
	const verdict = judge(contours, result.paths, distance, random(9), 150);
	expect(verdict.error).toBeLessThan(1e-6);
	expect(verdict.misplaced).toBe(0);
	expect(verdict.tested).toBeGreaterThan(200);
	for (const path of result.paths) expect(selfCrossings(path)).toEqual([]);
	expect(result.sources.map((s) => s.length)).toEqual(result.paths.map((p) => p.points.length));
	expect(result.paths.length).toBe(contours.length + result.born - result.died);
	const given = contours.flatMap((p, contour) =>
		p.points.map((_, segment) => ({ contour, segment })),
	);
	const byPlace = (a: (typeof given)[0], b: typeof a) =>
		a.contour - b.contour || a.segment - b.segment;
	expect([...result.survived, ...result.vanished].sort(byPlace)).toEqual(given);
	return result;
}

/** A block of 10 × 10 with a notch of the width from below, 3 deep. */
const notched = (width: number) =>
	closed(
		...[vertex(0, 0), vertex(4, 0), vertex(4, 3), vertex(4 + width, 3), vertex(4 + width, 0)],
		...[vertex(10, 0), vertex(10, 10), vertex(0, 10)],
	);

describe("a rectangle", () => {
	test("shrinks to a rectangle", () => {
		const { paths } = sound([rectangle(0, 0, 10, 10)], -1);
		expect(paths).toEqual([rectangle(1, 1, 9, 9)]);
	});

	test("grows four round corners", () => {
		const { paths, sources } = sound([rectangle(0, 0, 10, 6)], 1);
		expect(signedArea(paths[0]!)).toBeCloseTo(60 + 32 + Math.PI, 12);
		expect(pathLength(paths[0]!)).toBeCloseTo(32 + 2 * Math.PI, 12);
		const { minX, minY, maxX, maxY } = extents(paths[0]!);
		const sides = [-1, -1, 11, 7].map((side) => expect.closeTo(side, 12));
		expect([minX, minY, maxX, maxY]).toEqual(sides);
		expect(
			sources[0]!.map(({ segment, corner }) => `${segment}${corner ? " corner" : ""}`),
		).toEqual([...["0", "0 corner", "1", "1 corner", "2", "2 corner", "3", "3 corner"]]);
	});

	test("shrunk by half its width or more is gone", () => {
		for (const distance of [-3, -3.001, -100]) {
			const { paths, died, survived } = sound([rectangle(0, 0, 10, 6)], distance);
			expect([paths, died, survived]).toEqual([[], 1, []]);
		}
		expect(sound([rectangle(0, 0, 10, 6)], -2.999).paths).toHaveLength(1);
	});
});

describe("a circle", () => {
	test("stays two half arcs, larger or smaller", () => {
		for (const distance of [1, -1, -1.9]) {
			const { paths } = sound([circle({ x: 3, y: 4 }, 2)], distance);
			expect(paths).toHaveLength(1);
			expect(paths[0]!.points.map((v) => v.bulge)).toEqual([
				expect.closeTo(1, 12),
				expect.closeTo(1, 12),
			]);
			expect(signedArea(paths[0]!)).toBeCloseTo(Math.PI * (2 + distance) ** 2, 11);
		}
	});

	test("shrunk by its radius is gone", () => {
		expect(sound([circle({ x: 3, y: 4 }, 2)], -2).paths).toEqual([]);
		expect(sound([circle({ x: 3, y: 4 }, 2)], -3).paths).toEqual([]);
	});

	test("that is a hole closes as the material grows", () => {
		const plate = [rectangle(-9, -9, 9, 9), hole(0, 0, 2)];
		expect(area(sound(plate, 1).paths)).toBeCloseTo(324 + 72 + Math.PI - Math.PI, 11);
		const { paths, died, vanished } = sound(plate, 2);
		expect([paths.length, died]).toEqual([1, 1]);
		expect(vanished).toEqual([
			{ contour: 1, segment: 0 },
			{ contour: 1, segment: 1 },
		]);
	});
});

describe("an arc", () => {
	test("takes the radius r + d where the material is inside it, r − d where it is outside", () => {
		const radii = (path: Path, distance: number) =>
			sound([path], distance)
				.paths.flatMap(segments)
				.flatMap((s) => (s.kind === "arc" ? [s.radius] : []));
		const slot = closed(vertex(2, 0), vertex(8, 0, 1), vertex(8, 4), vertex(2, 4, 1));
		expect(radii(slot, 0.5)).toEqual([expect.closeTo(2.5, 12), expect.closeTo(2.5, 12)]);
		expect(radii(slot, -0.5)).toEqual([expect.closeTo(1.5, 12), expect.closeTo(1.5, 12)]);
		expect(radii(hollowGauge(241.3), -1)).toEqual([expect.closeTo(242.3, 9)]);
		expect(radii(hollowGauge(241.3), 1).sort((a, b) => b - a)[0]).toBeCloseTo(240.3, 9);
	});

	test("over 270° is made of two", () => {
		const wide = closed(vertex(0, 0, 5), vertex(1, 0));
		const { paths, sources } = sound([wide], 0.3);
		expect(paths[0]!.points.every((v) => Math.abs(v.bulge) < 2.5)).toBe(true);
		expect(sources[0]!.filter((s) => !s.corner && s.segment === 0)).toHaveLength(2);
	});

	test("nearly straight is offset as exactly as a line", () => {
		for (const bulge of [1e-4, 1e-6, 1e-8, 1e-10]) {
			const bent = closed(vertex(0, 0, bulge), vertex(50, 0), vertex(50, 9), vertex(0, 9));
			// From 1e-8 on the oracle has no digits left for the arc: its centre is 1000 km away.
			const [path] = (bulge < 1e-7 ? offset : sound)([bent], -1).paths;
			// So flat an arc is a parabola, moved up by 1; over x from 1 to 49 it takes 33.2544 h.
			expect(signedArea(path!)).toBeCloseTo(48 * 7 + 33.2544 * 25 * bulge, 6);
			expect(extents(path!).minY).toBeCloseTo(1 - 25 * bulge, 6);
		}
	});
});

describe("a notch", () => {
	test("wider than twice the distance stays", () => {
		const { paths, vanished } = sound([notched(1.2)], 0.5);
		expect([paths.length, vanished]).toEqual([1, []]);
	});

	test("that closes is reported with its three sides", () => {
		for (const width of [1, 1 - 1e-12, 0.9, 0.1]) {
			const { paths, vanished, born, died } = sound([notched(width)], 0.5);
			expect([paths.length, born, died]).toEqual([1, 0, 0]);
			expect(vanished).toEqual([1, 2, 3].map((segment) => ({ contour: 0, segment })));
		}
	});

	test("exactly as wide as it is grown shut leaves no slit", () => {
		const [path] = sound([notched(1)], 0.5).paths;
		// The corners beside the mouth meet at its middle; behind them all is material.
		expect(path!.points).toContainEqual(expect.objectContaining({ x: 4.5, y: 0 }));
		expect(path!.points.every((v) => v.y <= 0 || v.x < 4 || v.x > 5)).toBe(true);
		const closing = sound([path!], -0.5);
		// A disc as wide as the notch reaches half of itself into the mouth.
		expect(signedArea(closing.paths[0]!)).toBeCloseTo(100 - Math.PI / 8, 9);
	});

	test("exactly as wide as it is grown shut leaves no slit where the numbers are rounded", () => {
		for (const turn of [0.1, 0.3, 1, 2, 4]) {
			const there = moved(notched(1), { x: 9000, y: -7000, turn, mirror: false });
			const { paths, vanished } = sound([there], 0.5);
			expect([paths.length, paths[0]!.points.length, vanished.length]).toEqual([1, 11, 3]);
		}
	});

	test("with a narrow mouth closes to a hole of its own", () => {
		const bottle = closed(
			...[vertex(0, 0), vertex(4, 0), vertex(4, 2), vertex(3, 2), vertex(3, 6), vertex(7, 6)],
			...[vertex(7, 2), vertex(5, 2), vertex(5, 0), vertex(10, 0), vertex(10, 10), vertex(0, 10)],
		);
		const { paths, born, died, vanished } = sound([bottle], 0.6);
		expect([paths.length, born, died]).toEqual([2, 1, 0]);
		expect(paths.map((p) => Math.sign(signedArea(p))).sort()).toEqual([-1, 1]);
		expect(vanished).toEqual([1, 7].map((segment) => ({ contour: 0, segment })));
	});
});

describe("contours", () => {
	const bone = closed(
		...[vertex(0, 0), vertex(4, 0), vertex(4, 1.5), vertex(6, 1.5), vertex(6, 0), vertex(10, 0)],
		...[vertex(10, 4), vertex(6, 4), vertex(6, 2.5), vertex(4, 2.5), vertex(4, 4), vertex(0, 4)],
	);

	test("split where they are narrow", () => {
		const { paths, born, died } = sound([bone], -0.5);
		expect([paths.length, born, died]).toEqual([2, 1, 0]);
		// Two squares of 3 × 3, each with a tip into the neck between two quarter circles.
		expect(area(paths)).toBeCloseTo(18 + 2 * (0.5 - Math.PI / 8), 11);
		expect(sound([bone], -0.4).born).toBe(0);
	});

	test("are counted by what becomes of each", () => {
		const { paths, born, died } = sound([bone, rectangle(12, 0, 12.9, 4)], -0.5);
		expect([paths.length, born, died]).toEqual([2, 1, 1]);
	});

	test("merge where they are close", () => {
		const pair = [rectangle(0, 0, 4, 4), rectangle(5, 0, 9, 4)];
		expect(sound(pair, 0.4).died).toBe(0);
		const { paths, born, died } = sound(pair, 0.6);
		expect([paths.length, born, died]).toEqual([1, 0, 1]);
	});

	test("that come to touch at a point are apart there", () => {
		const holes = [rectangle(0, 0, 20, 10), hole(5, 5, 2), hole(10, 5, 2)];
		expect(sound(holes, -0.5).paths).toHaveLength(3);
		expect(sound([circle({ x: 0, y: 0 }, 2), circle({ x: 5, y: 0 }, 2)], 0.5).paths).toHaveLength(
			2,
		);
	});

	test("that come to touch within a segment have no vertex there", () => {
		const holes = [rectangle(0, 0, 10, 20), hole(5, 5, 2), hole(5, 10, 2)];
		const { paths } = sound(holes, -0.5);
		expect(paths.map((p) => p.points.length)).toEqual([4, 2, 2]);
	});

	test("that share a corner which is round for both have each stretch about it once", () => {
		const pair = [
			closed(vertex(0, 0), vertex(-5, 3), vertex(-6, 1)),
			closed(vertex(0, 0), vertex(-6, -1), vertex(-5, -3)),
		];
		const { paths, died } = sound(pair, 0.5);
		expect([paths.length, died]).toEqual([1, 1]);
		const about = segments(paths[0]!).flatMap((s) =>
			s.kind === "arc" && Math.hypot(s.centre.x, s.centre.y) < 1e-9 ? [s.sweep] : [],
		);
		// From square to one triangle's long side to square to the other's: 180° less 2 · 30.96°.
		const turn = Math.PI - 2 * Math.atan2(3, 5);
		expect(about.reduce((sum, sweep) => sum + sweep, 0)).toBeCloseTo(turn, 9);
	});

	test("that touch are offset as one", () => {
		expect(sound([rectangle(0, 0, 5, 5), rectangle(5, 5, 9, 9)], 0.2).paths).toHaveLength(1);
		expect(sound([rectangle(0, 0, 5, 5), rectangle(5, 5, 9, 9)], -0.2).paths).toHaveLength(2);
	});

	test("of which there are none have none", () => {
		expect(offset([], 1)).toEqual({
			...{ paths: [], sources: [], survived: [], vanished: [], born: 0, died: 0 },
		});
	});

	test("by nothing are as they were", () => {
		const plate = [rectangle(-9, -9, 9, 9), hole(0, 0, 2)];
		const result = offset(plate, 0);
		expect(result.paths).toEqual(plate);
		expect([result.survived.length, result.vanished, result.born, result.died]).toEqual([
			6,
			[],
			0,
			0,
		]);
		expect(result.sources[1]).toEqual([
			{ contour: 1, segment: 0, corner: false },
			{ contour: 1, segment: 1, corner: false },
		]);
	});
});

describe("the sources of a segment", () => {
	test("are the segment at the distance from it, or the corner that it is about", () => {
		const { paths, sources } = sound([beam()], 0.075);
		const given = segments(beam());
		for (const [i, s] of segments(paths[0]!).entries()) {
			const { segment, corner } = sources[0]![i]!;
			const source = given[segment]!;
			if (corner && s.kind === "arc") {
				expect(Math.hypot(s.centre.x - source.end.x, s.centre.y - source.end.y)).toBeLessThan(1e-9);
				expect(s.radius).toBeCloseTo(0.075, 9);
			} else {
				expect([s.kind, corner]).toEqual([source.kind, false]);
				const off = Math.hypot(s.start.x - source.start.x, s.start.y - source.start.y);
				expect(off).toBeLessThan(0.075 * Math.SQRT2 + 1e-9);
			}
		}
	});
});

describe("a bar with 22 notches", () => {
	test.each([0.075, -0.075, 1.5875, -1.5875])("by %d keeps them all", (distance) => {
		const { paths, vanished } = sound([beam()], distance);
		expect([paths.length, vanished]).toEqual([1, []]);
	});

	test("loses them all at half their width", () => {
		const { paths, vanished } = sound([beam()], 1.75);
		expect([paths.length, vanished.length]).toEqual([1, 66]);
	});

	test("is the same wherever it starts and however it lies", () => {
		const usual = signedArea(offset([beam()], 1.5875).paths[0]!);
		for (let i = 0; i < beam().points.length; i += 13) {
			const there = moved(startedAt(beam(), i), { x: -700, y: 90, turn: i, mirror: i % 2 === 1 });
			const [path] = sound([i % 2 === 1 ? reversed(there) : there], 1.5875).paths;
			expect(signedArea(path!)).toBeCloseTo(usual, 7);
		}
	});
});

describe("hard contours", () => {
	test("with joints straight but for rounding keep the distance", () => {
		expect(sound([NEARLY_TANGENT], -0.1).paths).toHaveLength(1);
		expect(sound([NEARLY_TANGENT], 0.1).paths).toHaveLength(1);
		expect(sound([rectangle(-30, -9, 19, 39), SMALL_ARCS], 0.1).paths.length).toBeGreaterThan(1);
		expect(sound([reversed(SMALL_ARCS)], -0.1).paths.length).toBeGreaterThan(0);
	});

	test.each([1e-4, -1e-4, 1e-3, 100, 1000])("by %d keep the distance", (distance) => {
		sound([hollowGauge(241.3)], distance);
		sound([beam()], distance);
	});

	test("far from the origin keep the distance", () => {
		sound([moved(beam(), { x: 1e5, y: -3e5, turn: 0.3, mirror: false })], 0.1);
	});
});

test("a comb of five thousand segments keeps every tooth", () => {
	const points = (segments: number) => {
		const { paths } = offset([comb(segments)], 0.075);
		expect(paths).toHaveLength(1);
		return paths[0]!.points.length;
	};
	// Every segment keeps a point, and every other corner, which stands out, gets one more for its round.
	expect(points(5000) - points(500)).toBe(4500 + 4500 / 2);
});

describe("an offset is what its definition says", () => {
	test.each<[TrialKind, number]>([
		["random", 400],
		["grid", 400],
		["rounded", 200],
		["plate", 150],
	])("of contours of the kind '%s', %d of them", (kind, count) => {
		const outcomes = Array.from({ length: count }, (_, i) => outcomeOf(kind, i + 1));
		expect(outcomes.map((o) => o.wrong).filter((w) => w !== null)).toEqual([]);
		// The promise is 1e-6; the arithmetic is good for more.
		expect(Math.max(...outcomes.map((o) => o.error))).toBeLessThan(1e-9);
	});
});
