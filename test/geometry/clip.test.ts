import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	circle,
	clipped,
	closed,
	distanceTo,
	type Extents,
	extents,
	line,
	open,
	type Path,
	pathLength,
	rectangle,
	reversed,
	segments,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";

const box: Extents = { minX: 0, minY: 0, maxX: 10, maxY: 10 };
const corners = (path: Path) => path.points.map(({ x, y }) => [x, y]);

describe("clipped", () => {
	it("cuts a line at the very coordinates of the sides", () => {
		const steep = line({ x: -1 / 3, y: 1 }, { x: 11, y: 9.7 });
		const [piece, ...others] = clipped(steep, box);
		expect(others).toEqual([]);
		expect(piece!.points.map(({ x }) => x)).toEqual([0, 10]);
		const out = { minX: 10, minY: 0, maxX: 20, maxY: 10 };
		expect(clipped(line({ x: 0, y: 5 }, { x: 30, y: 5 }), out)).toEqual([
			line({ x: 10, y: 5 }, { x: 20, y: 5 }),
		]);
	});

	it("returns what is wholly inside as it is, and nothing of what is wholly outside", () => {
		const inside = [circle({ x: 5, y: 5 }, 5), rectangle(0, 0, 10, 10), line(...ends(1, 9))];
		for (const path of inside) expect(clipped(path, box)).toEqual([path]);
		expect(clipped(rectangle(10.5, 0, 20, 10), box)).toEqual([]);
		expect(clipped(line({ x: 0, y: 30 }, { x: 30, y: 0 }), box)).toEqual([]);
	});

	it("keeps arcs, in the path's order and direction", () => {
		const round = circle({ x: 10, y: 5 }, 3);
		const [half, ...others] = clipped(round, box);
		expect(others).toEqual([]);
		expect(half!.closed).toBe(false);
		expect([corners(half!)[0], corners(half!).at(-1)].flat()).toEqual([10, 8, 10, 2]);
		for (const s of segments(half!)) {
			expect(s).toMatchObject({ kind: "arc", radius: expect.closeTo(3, 12) });
		}
		expect(pathLength(half!)).toBeCloseTo(3 * Math.PI, 12);
		const [back] = clipped(reversed(round), box);
		expect([corners(back!)[0], corners(back!).at(-1)].flat()).toEqual([10, 2, 10, 8]);
	});

	it("joins the piece over a closed path's start", () => {
		const frame = rectangle(2, 2, 20, 8);
		for (let i = 0; i < 4; i++) {
			expect(clipped(startedAt(frame, i), box).map(corners)).toEqual([
				[
					[10, 8],
					[2, 8],
					[2, 2],
					[10, 2],
				],
			]);
		}
		const wide = rectangle(-5, 2, 20, 8);
		expect(clipped(wide, box).map(corners)).toEqual([
			[
				[0, 2],
				[10, 2],
			],
			[
				[10, 8],
				[0, 8],
			],
		]);
	});

	it("does not cut where a path only touches a side from inside", () => {
		const bow = open(vertex(-5, 5), vertex(1, 5, 1), vertex(10, 5), vertex(2, 5));
		const pieces = clipped(bow, { ...box, minY: 0.5 });
		expect(pieces).toHaveLength(1);
		expect(pieces[0]!.points).toHaveLength(4);
		const peak = open(vertex(-5, 5), vertex(5, 10), vertex(15, 5));
		expect(clipped(peak, box).map(corners)).toEqual([
			[
				[0, 7.5],
				[5, 10],
				[10, 7.5],
			],
		]);
	});

	it("gives nothing for a touch from outside, a corner or a crumb", () => {
		expect(clipped(circle({ x: 13, y: 5 }, 3), box)).toEqual([]);
		expect(clipped(line({ x: 5, y: 15 }, { x: 15, y: 5 }), box)).toEqual([]);
		const grazed = line({ x: 5, y: 15 - 5e-7 }, { x: 15 - 5e-7, y: 5 });
		expect(clipped(grazed, box)).toEqual([]);
		expect(clipped(line({ x: 10 - 4e-7, y: 5 }, { x: 20, y: 5 }), box)).toEqual([]);
	});

	it("counts what runs along a side as inside, on both of two boxes", () => {
		const along = line({ x: 10, y: -5 }, { x: 10, y: 5 });
		const piece = line({ x: 10, y: 0 }, { x: 10, y: 5 });
		expect(clipped(along, box)).toEqual([piece]);
		expect(clipped(along, { ...box, minX: 10, maxX: 20 })).toEqual([piece]);
	});

	it("cuts flat arcs of kilometres without losing their place", () => {
		const flat = open(vertex(-100, 5, 1e-7), vertex(100, 5));
		const [piece] = clipped(flat, box);
		expect(piece!.points.map(({ x }) => x)).toEqual([0, 10]);
		const sagitta = 1e-7 * 100;
		expect(piece!.points[0]!.y).toBeCloseTo(5 - sagitta, 9);
		expect(piece!.points[1]!.y).toBeCloseTo(5 - sagitta * (1 - 0.01), 9);
	});

	it("refuses a box without room", () => {
		expect(() => clipped(line(...ends(0, 1)), { ...box, maxX: 0 })).toThrow(RangeError);
	});

	it("takes a path apart over a grid of boxes without a gap or a doubled stretch", () => {
		const at = fc.double({ min: -20, max: 20, noNaN: true });
		const corner = fc.record({
			x: at,
			y: at,
			bulge: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
		});
		const paths = fc.array(corner, { minLength: 3, maxLength: 7 }).filter(isApart);
		fc.assert(
			fc.property(paths, fc.boolean(), (points, isClosed) => {
				const path = isClosed ? closed(...points) : open(...points);
				const all = segments(path);
				const pieces = gridOf(extents(path)).flatMap((cell) => {
					const own = clipped(path, cell);
					for (const piece of own) {
						const { minX, minY, maxX, maxY } = extents(piece);
						expect(minX).toBeGreaterThan(cell.minX - 1e-8);
						expect(minY).toBeGreaterThan(cell.minY - 1e-8);
						expect(maxX).toBeLessThan(cell.maxX + 1e-8);
						expect(maxY).toBeLessThan(cell.maxY + 1e-8);
						for (const p of piece.points) {
							expect(Math.min(...all.map((s) => distanceTo(s, p)))).toBeLessThan(2e-6);
						}
					}
					return own;
				});
				const sum = pieces.reduce((total, piece) => total + pathLength(piece), 0);
				expect(Math.abs(sum - pathLength(path))).toBeLessThan(1e-5);
			}),
			{ seed: 20, numRuns: 150 },
		);
	});
});

function ends(from: number, to: number) {
	return [
		{ x: from, y: from },
		{ x: to, y: to },
	] as const;
}

function isApart(points: readonly { x: number; y: number }[]): boolean {
	return points.every((p, i) => {
		const next = points[(i + 1) % points.length]!;
		return Math.hypot(p.x - next.x, p.y - next.y) > 0.1;
	});
}

/** Boxes of 7 mm that cover a box, from a place that no corner of a path is likely to share. */
function gridOf({ minX, minY, maxX, maxY }: Extents): Extents[] {
	const cells: Extents[] = [];
	for (let x = Math.floor(minX) - 0.137; x < maxX; x += 7) {
		for (let y = Math.floor(minY) - 0.219; y < maxY; y += 7) {
			cells.push({ minX: x, minY: y, maxX: x + 7, maxY: y + 7 });
		}
	}
	return cells;
}
