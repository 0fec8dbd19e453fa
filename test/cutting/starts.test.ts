import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compensated } from "../../src/cutting/compensate.js";
import { inOrder } from "../../src/cutting/order.js";
import { startsOf } from "../../src/cutting/starts.js";
import type { Part } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	line,
	type Path,
	type Point,
	pathLength,
	rectangle,
	reversed,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { pieces } from "../support/measure-path.js";

const SQUARE = rectangle(0, 0, 9, 9);
const QUARTER = Math.tan(Math.PI / 8);

function beginnings(path: Path, working: readonly Path[] = []): string[] {
	return startsOf(path, working).map(({ points }) => shown(points[0]!));
}

function shown({ x, y }: Point): string {
	return `${Number(x.toFixed(6)) + 0} ${Number(y.toFixed(6)) + 0}`;
}

describe("a contour's starts", () => {
	it("are its corners", () => {
		expect(beginnings(SQUARE)).toEqual(["0 0", "9 0", "9 9", "0 9"]);
	});

	it("are corners 3 mm off the working edges alone", () => {
		expect(beginnings(SQUARE, [line({ x: 0, y: 0 }, { x: 9, y: 0 })])).toEqual(["9 9", "0 9"]);
		expect(beginnings(SQUARE, [line({ x: 0, y: 6 }, { x: 9, y: 6 })])).toEqual([
			"0 0",
			"9 0",
			"9 9",
			"0 9",
		]);
		expect(beginnings(SQUARE, [line({ x: 0, y: 6.001 }, { x: 9, y: 6.001 })])).toEqual([
			"0 0",
			"9 0",
		]);
	});

	it("keep off arcs as well as off lines", () => {
		// An arc about (0, 0) of 6 mm: (0, 9) and (9, 0) are 3 mm off, one of 6.1 mm is nearer.
		const arc = (r: number) => ({ points: [vertex(r, 0, QUARTER), vertex(0, r)], closed: false });
		expect(beginnings(SQUARE, [arc(6)])).toEqual(["0 0", "9 0", "9 9", "0 9"]);
		expect(beginnings(SQUARE, [arc(6.1)])).toEqual(["0 0", "9 9"]);
	});

	it("are the ends of rounded corners, not where a flat arc goes on", () => {
		const rounded = closed(
			vertex(0, 0),
			vertex(18, 0, QUARTER),
			vertex(20, 2),
			vertex(20, 10),
			// A flat arc of 0.1 rad that meets the line after it at a turn of 0.05 rad.
			vertex(10, 10, Math.tan(0.1 / 4)),
			vertex(0, 10),
		);
		expect(beginnings(rounded)).toEqual(["0 0", "18 0", "20 2", "20 10", "0 10"]);
	});

	it("are any vertices where corners are too near, then middles of segments", () => {
		const bent = closed(
			vertex(0, 0),
			vertex(20, 0),
			vertex(20, 10),
			vertex(10, 10.5),
			vertex(0, 10),
		);
		const sides = [line({ x: 0, y: 0 }, { x: 0, y: 10 }), line({ x: 20, y: 0 }, { x: 20, y: 10 })];
		expect(beginnings(bent, sides)).toEqual(["10 10.5"]);
		expect(beginnings(rectangle(0, 0, 20, 10), sides)).toEqual(["10 0", "10 10"]);
	});

	it("are other places where even the middles are too near", () => {
		const fence = [0, 10, 20].map((x) => line({ x, y: 0 }, { x, y: 10 }));
		const starts = startsOf(rectangle(0, 0, 20, 10), fence).map(({ points }) => points[0]!);
		expect(starts).toHaveLength(2);
		for (const { x, y } of starts) {
			expect(Math.min(x, Math.abs(x - 10), 20 - x)).toBeGreaterThanOrEqual(3);
			expect([0, 10]).toContain(y);
		}
	});

	it("are the middles of a narrow slot's short ends between its working flanks", () => {
		const flanks = [
			line({ x: 0, y: 0 }, { x: 0, y: 50 }),
			line({ x: 0.5, y: 0 }, { x: 0.5, y: 50 }),
		];
		const slot = reversed(rectangle(0, 0, 0.5, 50));
		expect(beginnings(slot, flanks).sort()).toEqual(["0.25 0", "0.25 50"]);
		// As it is cut with a beam of 0.1 mm.
		const cut = reversed(rectangle(0.05, 0.05, 0.45, 49.95));
		expect(beginnings(cut, flanks).sort()).toEqual(["0.25 0.05", "0.25 49.95"]);
	});

	it("are the farthest places where those are no middles", () => {
		// Between two working sides 4 mm apart at x = 0 and 5 mm at x = 20 no place is 3 mm off.
		const wedge = closed(vertex(0, 0), vertex(20, 0), vertex(20, 5), vertex(0, 4));
		const sides = [line({ x: 0, y: 0 }, { x: 20, y: 0 }), line({ x: 20, y: 5 }, { x: 0, y: 4 })];
		const [start, ...others] = startsOf(wedge, sides);
		expect(others).toEqual([]);
		// On x = 20: y = (5 − y)·cos α with tan α = 1/20.
		const cos = 20 / Math.hypot(20, 1);
		expect(start!.points[0]!.x).toBe(20);
		expect(start!.points[0]!.y).toBeCloseTo((5 * cos) / (1 + cos), 6);
	});

	it("split arcs exactly", () => {
		const disc = circle({ x: 0, y: 0 }, 5);
		expect(beginnings(disc)).toEqual(["5 0", "-5 0"]);
		const sides = [line({ x: 7, y: -1 }, { x: 7, y: 1 }), line({ x: -7, y: -1 }, { x: -7, y: 1 })];
		const [top, bottom] = startsOf(disc, sides);
		expect(top!.points.map(shown)).toEqual(["0 5", "-5 0", "5 0"]);
		expect(bottom!.points.map(shown)).toEqual(["0 -5", "5 0", "-5 0"]);
		expect(top!.points[0]!.bulge).toBeCloseTo(QUARTER, 12);
		expect(top!.points[1]!.bulge).toBe(1);
		expect(top!.points[2]!.bulge).toBeCloseTo(QUARTER, 12);
	});

	it("leave area, direction and length as they are", () => {
		const corner = fc.record({
			radius: fc.double({ min: 2, max: 30, noNaN: true }),
			bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.4, max: 1, noNaN: true })),
		});
		const edge = fc.tuple(
			fc.double({ min: -30, max: 30, noNaN: true }),
			fc.double({ min: -30, max: 30, noNaN: true }),
			fc.double({ min: 1, max: 40, noNaN: true }),
		);
		const shape = fc.array(corner, { minLength: 2, maxLength: 7 });
		fc.assert(
			fc.property(
				shape,
				fc.array(edge, { maxLength: 6 }),
				fc.boolean(),
				(corners, edges, isHeld) => {
					const path: Path = {
						closed: true,
						points: corners.map(({ radius, bulge }, i) => {
							const angle = (2 * Math.PI * i) / corners.length;
							return vertex(radius * Math.cos(angle), radius * Math.sin(angle), bulge);
						}),
					};
					// With an edge at every vertex it begins within a segment.
					const held = path.points.map(({ x, y }) => line({ x, y }, { x: x + 0.1, y }));
					const starts = startsOf(path, [
						...edges.map(([x, y, size]) => line({ x, y }, { x: x + size, y: y + size / 3 })),
						...(isHeld ? held : []),
					]);
					expect(starts.length).toBeGreaterThan(0);
					for (const start of starts) {
						expect(signedArea(start)).toBeCloseTo(signedArea(path), 8);
						expect(pathLength(start)).toBeCloseTo(pathLength(path), 8);
						expect(missing(path, start)).toEqual([]);
						expect(start.points.length - path.points.length).toBeOneOf([0, 1]);
					}
				},
			),
			{ seed: 41, numRuns: 200 },
		);
	});
});

/** Vertices of a path that another lacks. */
function missing(path: Path, other: Path): Point[] {
	return path.points.filter(
		(p) => !other.points.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-9),
	);
}

describe("an open path", () => {
	it("is entered from either end", () => {
		const arc: Path = { points: [vertex(0, 0, 0.5), vertex(4, 0), vertex(9, 1)], closed: false };
		const [there, back] = startsOf(arc, [line({ x: 0, y: 0 }, { x: 1, y: 0 })]);
		expect(there).toEqual(arc);
		expect(back!.points).toEqual([vertex(9, 1), vertex(4, 0, -0.5), vertex(0, 0)]);
	});
});

/** Points along a path no further apart than a step, from its points and bulges alone. */
function sampled(path: Path, step: number): Point[] {
	return pieces(path).flatMap(({ a, b }) => {
		const chord = Math.hypot(b.x - a.x, b.y - a.y);
		const quarter = Math.atan(a.bulge);
		const size = a.bulge === 0 ? chord : (chord * 2 * quarter) / Math.sin(2 * quarter);
		const count = Math.ceil(size / step);
		return Array.from({ length: count + 1 }, (_, k) => {
			// From a along the chord of the part of the arc up to here: it turns half as fast.
			const u = k / count;
			const swept = 2 * quarter * u;
			const reach = a.bulge === 0 ? u : Math.sin(swept) / Math.sin(2 * quarter);
			const turn = swept - 2 * quarter;
			const [c, s] = [Math.cos(turn) * reach, Math.sin(turn) * reach];
			const [x, y] = [b.x - a.x, b.y - a.y];
			return { x: a.x + c * x - s * y, y: a.y + s * x + c * y };
		});
	});
}

/** From a point to the nearest of others, mm; beyond 4 mm only that it is more. */
function nearestOf(points: readonly Point[]): (p: Point) => number {
	const cells = new Map<number, Point[]>();
	const key = (x: number, y: number) => Math.floor(x / 4) * 100_003 + Math.floor(y / 4);
	for (const p of points) {
		const cell = cells.get(key(p.x, p.y));
		if (cell) cell.push(p);
		else cells.set(key(p.x, p.y), [p]);
	}
	return ({ x, y }) => {
		let least = 4;
		for (const dx of [-4, 0, 4]) {
			for (const dy of [-4, 0, 4]) {
				for (const p of cells.get(key(x + dx, y + dy)) ?? []) {
					least = Math.min(least, Math.hypot(p.x - x, p.y - y));
				}
			}
		}
		return least;
	};
}

/** Contours of a part that begin nearer to a working edge than 3 mm and than they must. */
function nearStarts(part: Part): string[] {
	const far = nearestOf(part.working.flatMap((path) => sampled(path, 0.05)));
	return part.marks
		.filter(({ operation, path }) => operation === "cut" && path.closed)
		.flatMap(({ path, feature }) => {
			const start = far(path.points[0]!);
			if (start >= 3 - 1e-6) return [];
			const most = Math.max(...sampled(path, 0.1).map(far));
			// Points 0.05 mm apart find a flank 0.25 mm away up to 0.0013 mm too far.
			return start < most - 0.002 ? [`${part.name}, ${feature}: ${start} of ${most}`] : [];
		});
}

describe("the starts of real parts", () => {
	const job = jobWith({ strings: { count: 6, "at-nut": 35, "at-saddle": 52 } }, [
		"notched-straightedge",
		{ "notched-straightedge": { name: "double", "second-edge": { scale: 640, frets: 19 } } },
		{ "radius-gauge": { at: ["nut", "last-fret"], faces: ["concave", "convex"] } },
		{ "slot-strip": { slots: "tang" } },
		"kerf-coupon",
	]);
	const { parts, problems } = madeParts(job);

	it.each([0, 0.16])("keep off their working edges, cut %f mm wide", (kerf) => {
		expect(problems).toEqual([]);
		expect(parts).toHaveLength(8);
		const size = { minX: -99, minY: -99, maxX: 900, maxY: 99 };
		const move = { x: 0, y: 0, turn: 0, mirror: false };
		const ordered = parts.map((part) => {
			const cut = compensated(part, kerf);
			if (!cut.ok) throw new Error(JSON.stringify(cut.problems));
			const placed = [{ part: cut.part, move }];
			const sheet = { name: "", title: "", size, placed, marks: [], notes: [] };
			return inOrder(sheet).placed[0]!.part;
		});
		// A coupon without working edges begins where it did; the others would not without care.
		expect(parts.flatMap(nearStarts).length).toBeGreaterThan(20);
		expect(ordered.flatMap(nearStarts)).toEqual([]);
	});
});
