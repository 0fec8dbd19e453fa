import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { circle, type Path, type Point, vertex } from "../../src/geometry/index.js";
import { longestSweep, OFF_CIRCLE, piecesOf } from "../../src/writers/bezier.js";
import { onCurve } from "../support/pdf-pages.js";

/** An arc around (3, −7). */
function arc(radius: number, from: number, sweep: number): Path {
	const at = (angle: number) => ({
		x: 3 + radius * Math.cos(angle),
		y: -7 + radius * Math.sin(angle),
	});
	const [start, end] = [at(from), at(from + sweep)];
	return {
		closed: false,
		points: [vertex(start.x, start.y, Math.tan(sweep / 4)), vertex(end.x, end.y)],
	};
}

/** How far points of the curves are outside the circle around (3, −7), and how far they turn. */
function sampled(path: Path, radius: number, steps: number) {
	let from: Point = path.points[0]!;
	let [least, most, turned] = [0, 0, 0];
	let angle = Math.atan2(from.y + 7, from.x - 3);
	for (const piece of piecesOf(path)) {
		if (piece.kind === "line") throw new Error("an arc became a line");
		for (let i = 1; i <= steps; i++) {
			const { x, y } = onCurve([from, piece.one, piece.two, piece.end], i / steps);
			const off = Math.hypot(x - 3, y + 7) - radius;
			[least, most] = [Math.min(least, off), Math.max(most, off)];
			const next = Math.atan2(y + 7, x - 3);
			turned += Math.atan2(Math.sin(next - angle), Math.cos(next - angle));
			angle = next;
		}
		from = piece.end;
	}
	return { least, most, turned };
}

describe("curves for arcs", () => {
	it("stay within 1e-4 mm of the circle, outside it, and run the arc's own way", () => {
		expect(OFF_CIRCLE).toBe(1e-4);
		const radius = fc.double({ min: 0, max: 4, noNaN: true }).map((power) => 10 ** power);
		const sweep = fc
			.double({ min: 0.001, max: 0.999, noNaN: true })
			.chain((share) => fc.constantFrom(share * 2 * Math.PI, -share * 2 * Math.PI));
		const from = fc.double({ min: -3, max: 3, noNaN: true });
		fc.assert(
			fc.property(radius, from, sweep, (r, a, turn) => {
				const { least, most, turned } = sampled(arc(r, a, turn), r, 40);
				expect(most).toBeLessThanOrEqual(1e-4 + 1e-9);
				expect(least).toBeGreaterThan(-1e-9);
				expect(turned).toBeCloseTo(turn, 9);
			}),
			{ seed: 40_417, numRuns: 300 },
		);
	});

	it.each([1, 12.7, 254, 10_000])("go round a full circle of radius %d", (radius) => {
		const { most, turned } = sampled(circle({ x: 3, y: -7 }, radius), radius, 200);
		expect(most).toBeLessThanOrEqual(1e-4 + 1e-9);
		expect(turned).toBeCloseTo(2 * Math.PI, 9);
	});

	it("are as few as the bound allows: their error is above 0.8 of it where it is what limits", () => {
		for (const radius of [1, 30, 304.8, 10_000]) {
			const sweep = longestSweep(radius);
			const { most } = sampled(arc(radius, 0.4, sweep), radius, 400);
			expect(piecesOf(arc(radius, 0.4, sweep))).toHaveLength(1);
			expect(most / OFF_CIRCLE).toBeGreaterThan(0.8);
			expect(most).toBeLessThanOrEqual(OFF_CIRCLE);
		}
	});

	// de Boor, Höllig and Sabin, CAGD 4 (1987), and usual in textbooks: 2.73e-4 of the radius for a
	// quarter (from memory).
	it("of a quarter turn are off by 0.000273 of the radius, and at most a quarter turn long", () => {
		expect(longestSweep(0.3)).toBeCloseTo(Math.PI / 2, 12);
		expect(longestSweep(1e-9)).toBeCloseTo(Math.PI / 2, 12);
		const { most } = sampled(arc(0.3, 0, Math.PI / 2), 0.3, 2000);
		expect(most / 0.3).toBeCloseTo(2.725e-4, 7);
		expect(longestSweep(0.3668)).toBeCloseTo(Math.PI / 2, 12);
		expect(longestSweep(0.368)).toBeLessThan(Math.PI / 2);
	});

	it("have handles of 4/3·tan(π/8) on a quarter of radius 0.3", () => {
		const quarter = {
			closed: false,
			points: [vertex(0.3, 0, Math.tan(Math.PI / 8)), vertex(0, 0.3)],
		};
		const handle = 0.3 * 0.5522847498;
		expect(piecesOf(quarter)).toEqual([
			{
				kind: "curve",
				one: { x: expect.closeTo(0.3, 12), y: expect.closeTo(handle, 10) },
				two: { x: expect.closeTo(handle, 10), y: expect.closeTo(0.3, 12) },
				end: { x: 0, y: 0.3 },
			},
		]);
	});

	it("keep the ends of every segment exactly, and lines as they are", () => {
		const path = {
			closed: true,
			points: [vertex(0.1, 0.2, 0.3), vertex(50.7, 0.7), vertex(60.3, 33.3, -2), vertex(0.7, 20.9)],
		};
		const ends = piecesOf(path).map(({ end: { x, y } }) => ({ x, y }));
		for (const { x, y } of path.points) expect(ends).toContainEqual({ x, y });
		expect(piecesOf(path).filter((p) => p.kind === "line")).toEqual([
			{ kind: "line", end: path.points[2] },
			{ kind: "line", end: path.points[0] },
		]);
	});

	it("of an arc whose centre is a thousand kilometres away keep its sagitta", () => {
		const flat = { closed: false, points: [vertex(0, 0, 1e-6), vertex(600, 0)] };
		const [piece, more] = piecesOf(flat);
		expect(more).toBeUndefined();
		if (piece?.kind !== "curve") throw new Error("not a curve");
		const { x, y } = onCurve([{ x: 0, y: 0 }, piece.one, piece.two, piece.end], 0.5);
		expect(x).toBeCloseTo(300, 9);
		expect(y).toBeCloseTo(-300e-6, 12);
	});
});
