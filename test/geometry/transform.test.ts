import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	closed,
	combined,
	type Move,
	moved,
	movedPoint,
	pathLength,
	pointAt,
	rectangle,
	reversed,
	STAY,
	segments,
	shift,
	signedArea,
	undone,
	vertex,
} from "../../src/geometry/index.js";

const PATH = closed(vertex(1, 1, 0.4), vertex(5, 1), vertex(5, 3, -1), vertex(1, 3));
const place = fc.double({ min: -500, max: 500, noNaN: true });
const anyMove: fc.Arbitrary<Move> = fc.record({
	x: place,
	y: place,
	turn: fc.oneof(
		fc.double({ min: -7, max: 7, noNaN: true }),
		fc.integer({ min: -5, max: 5 }).map((k) => (k * Math.PI) / 2),
	),
	mirror: fc.boolean(),
});

describe("a move", () => {
	test("that stays changes nothing", () => {
		expect(moved(PATH, STAY)).toEqual(PATH);
	});

	test("that shifts, shifts", () => {
		expect(movedPoint({ x: 1, y: 2 }, shift(10, -20))).toEqual({ x: 11, y: -18 });
	});

	test("turns counter-clockwise, and by quarters exactly", () => {
		const quarter = (k: number): Move => ({ x: 0, y: 0, turn: (k * Math.PI) / 2, mirror: false });
		expect(movedPoint({ x: 3, y: 1 }, quarter(1))).toEqual({ x: -1, y: 3 });
		expect(movedPoint({ x: 3, y: 1 }, quarter(2))).toEqual({ x: -3, y: -1 });
		expect(movedPoint({ x: 3, y: 1 }, quarter(-1))).toEqual({ x: 1, y: -3 });
		expect(movedPoint({ x: 3, y: 1 }, quarter(9))).toEqual({ x: -1, y: 3 });
	});

	test("mirrors about the x axis before it turns", () => {
		const move: Move = { x: 0, y: 0, turn: Math.PI / 2, mirror: true };
		expect(movedPoint({ x: 3, y: 1 }, move)).toEqual({ x: 1, y: 3 });
	});

	test("that mirrors flips every bulge and the sense of the path", () => {
		const flipped = moved(PATH, { ...STAY, mirror: true });
		expect(flipped.points.map((v) => v.bulge)).toEqual([-0.4, 0, 1, 0]);
		expect(signedArea(flipped)).toBeCloseTo(-signedArea(PATH), 12);
		expect(signedArea(reversed(flipped))).toBeCloseTo(signedArea(PATH), 12);
	});

	test("that mirrors takes the points of arcs along", () => {
		const flipped = segments(moved(PATH, { ...STAY, mirror: true }));
		for (const [i, s] of segments(PATH).entries()) {
			const [there, here] = [pointAt(s, 0.3), pointAt(flipped[i]!, 0.3)];
			expect(here.x).toBeCloseTo(there.x, 12);
			expect(here.y).toBeCloseTo(-there.y, 12);
		}
	});

	test("leaves no negative zero in a bulge", () => {
		const bulges = moved(rectangle(0, 0, 1, 1), { ...STAY, mirror: true }).points.map(
			(v) => v.bulge,
		);
		expect(bulges.every((b) => Object.is(b, 0))).toBe(true);
	});

	test("keeps lengths", () => {
		fc.assert(
			fc.property(anyMove, (move) => {
				expect(pathLength(moved(PATH, move))).toBeCloseTo(pathLength(PATH), 9);
			}),
			{ seed: 8, numRuns: 200, endOnFailure: true },
		);
	});
});

test("two moves combined are one after the other", () => {
	fc.assert(
		fc.property(anyMove, anyMove, (first, second) => {
			const once = moved(PATH, combined(first, second));
			const twice = moved(moved(PATH, first), second);
			for (const [i, v] of twice.points.entries()) {
				expect(once.points[i]!.x).toBeCloseTo(v.x, 9);
				expect(once.points[i]!.y).toBeCloseTo(v.y, 9);
				expect(once.points[i]!.bulge).toBe(v.bulge);
			}
		}),
		{ seed: 9, numRuns: 300, endOnFailure: true },
	);
});

describe("undone", () => {
	test("leads every point back, whatever the move", () => {
		fc.assert(
			fc.property(anyMove, place, place, (move, x, y) => {
				const back = movedPoint(movedPoint({ x, y }, move), undone(move));
				expect(back.x).toBeCloseTo(x, 9);
				expect(back.y).toBeCloseTo(y, 9);
			}),
			{ seed: 11, numRuns: 300 },
		);
	});
});
