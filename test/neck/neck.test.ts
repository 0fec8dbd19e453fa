import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	edgePoint,
	fretLength,
	fretLine,
	fretNumbers,
	isFanned,
	lineLength,
	type Neck,
	pointOnFret,
	radiusAt,
	type StringLine,
	saddleLine,
	slantOf,
	widthAt,
} from "../../src/neck/index.js";
import { neckOf, neckWith } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";

const NEAR = 1e-9;

/** 1 to n. */
function numbers(n: number): number[] {
	return Array.from({ length: n }, (_, i) => i + 1);
}

/** The point at a distance along a line from its nut. */
function along({ nut, saddle }: StringLine, distance: number) {
	const size = Math.hypot(saddle.x - nut.x, saddle.y - nut.y);
	const t = distance / size;
	return { x: nut.x + (saddle.x - nut.x) * t, y: nut.y + (saddle.y - nut.y) * t };
}

describe("fretLine on one scale", () => {
	it("stands at L·u(n), square to the centre line, rising, on any neck", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: false }), ({ job, drawn }) => {
				const neck = neckOf(job);
				expect(isFanned(neck)).toBe(false);
				const lines = [0, ...numbers(drawn.frets)].map((n) => fretLine(neck, n));
				const off = lines.map(({ n, x }) => Math.abs(x - drawn.scale.bass * drawn.share(n)));
				expect(Math.max(...off)).toBeLessThan(NEAR);
				expect(Math.max(...lines.map(slantOf))).toBe(0);
				const gaps = lines.slice(1).map(({ x }, i) => x - lines[i]!.x);
				expect(Math.min(...gaps)).toBeGreaterThan(2.9);
				expect(saddleLine(neck).x).toBeCloseTo(drawn.scale.bass, 9);
			}),
			RUNS,
		);
	});
});

describe("fretLine on two scales", () => {
	it("joins the points at exactly d(n) on both outer strings", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), ({ job, drawn }) => {
				const neck = neckOf(job);
				for (const side of ["bass", "treble"] as const) {
					const string = neck.guides[side];
					const spread = drawn.strings!;
					expect(Math.abs(lineLength(string) - drawn.scale[side])).toBeLessThan(NEAR);
					expect(Math.abs(string.nut.y)).toBeCloseTo(spread.atNut / 2, 9);
					expect(Math.abs(string.saddle.y)).toBeCloseTo(spread.atSaddle / 2, 9);
					const off = [0, ...numbers(drawn.frets)].map((n) => {
						const p = along(string, drawn.scale[side] * drawn.share(n));
						return Math.abs(pointOnFret(fretLine(neck, n), p.y).x - p.x);
					});
					expect(Math.max(...off)).toBeLessThan(NEAR);
				}
			}),
			RUNS,
		);
	});

	it("is square at the square fret, whole or fractional, and has the nut's middle at 0", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), ({ job, drawn }) => {
				const neck = neckOf(job);
				expect(slantOf(fretLine(neck, drawn.squareFret))).toBeLessThan(1e-12);
				expect(Math.abs(fretLine(neck, 0).x)).toBeLessThan(NEAR);
			}),
			RUNS,
		);
	});

	it("leans the longer side's nut back: before the square fret bass leads to the nut", () => {
		const strings = { count: 6, "at-nut": 36, "at-saddle": 52 };
		const neck = neckWith({ scale: { bass: 690, treble: 650, "square-fret": 7 }, strings });
		const [nut, last] = [fretLine(neck, 0), fretLine(neck, 22)];
		expect(edgePoint(neck, nut, -1).x).toBeLessThan(edgePoint(neck, nut, 1).x);
		expect(edgePoint(neck, last, -1).x).toBeGreaterThan(edgePoint(neck, last, 1).x);
	});
});

describe("a left-handed neck", () => {
	it("is the mirror image of the right-handed one", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, left: false }), ({ job }) => {
				const right = neckOf(job);
				const values = { ...(job.neck as object), handed: "left" };
				const left = neckOf({ ...job, neck: values });
				const off = [0, ...fretNumbers(right)].flatMap((n) =>
					([-1, 1] as const).flatMap((side) => {
						const p = edgePoint(right, fretLine(right, n), side);
						const q = edgePoint(left, fretLine(left, n), side);
						return [Math.abs(p.x - q.x), Math.abs(p.y + q.y)];
					}),
				);
				expect(Math.max(...off)).toBeLessThan(NEAR);
			}),
			RUNS,
		);
	});

	it("has its treble side below, a right-handed one above", () => {
		expect(edgePoint(neckWith({}), fretLine(neckWith({}), 0), 1).y).toBe(21.5);
		const left = neckWith({ handed: "left" });
		expect(edgePoint(left, fretLine(left, 0), 1).y).toBe(-21.5);
	});
});

describe("edgePoint", () => {
	it("lies on the fret and on the board's edge, moved in by the inset", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3 }), ({ job, drawn }) => {
				const neck = neckOf(job);
				const up = drawn.left ? -1 : 1;
				const off = fretNumbers(neck).flatMap((n) =>
					([-1, 1] as const).flatMap((side) => {
						const fret = fretLine(neck, n);
						const p = edgePoint(neck, fret, side, drawn.binding);
						const half = widthAt(neck, p.x) / 2 - drawn.binding;
						return [Math.abs(pointOnFret(fret, p.y).x - p.x), Math.abs(p.y - side * up * half)];
					}),
				);
				expect(Math.max(...off)).toBeLessThan(NEAR);
			}),
			RUNS,
		);
	});

	it("follows an edge that bends at a station", () => {
		const neck = neckWith({ width: { nut: 43, "12": 52, "last-fret": 54 } });
		const at = (n: number) => edgePoint(neck, fretLine(neck, n), 1).y;
		expect(at(12)).toBeCloseTo(26, 9);
		expect(at(22)).toBeCloseTo(27, 9);
		const x = (n: number) => 647.7 * (1 - 2 ** (-n / 12));
		expect(at(5)).toBeCloseTo((43 + (9 * x(5)) / x(12)) / 2, 9);
		expect(at(17)).toBeCloseTo((52 + (2 * (x(17) - x(12))) / (x(22) - x(12))) / 2, 9);
	});
});

describe("fretLength", () => {
	it("is the board's width on a straight fret, less the binding on both sides", () => {
		const neck = neckWith({ width: 50, binding: 1.5 });
		expect(fretLength(neck, fretLine(neck, 7))).toBe(50);
		expect(fretLength(neck, fretLine(neck, 7), neck.binding)).toBe(47);
	});

	it("is the width over the cosine of the slant where a fret slants on an even board", () => {
		const strings = { count: 6, "at-nut": 36, "at-saddle": 52 };
		const neck = neckWith({
			scale: { bass: 690, treble: 650, "square-fret": 7 },
			strings,
			width: 60,
		});
		const fret = fretLine(neck, 20);
		expect(slantOf(fret)).toBeGreaterThan(0.1);
		expect(fretLength(neck, fret)).toBeCloseTo(60 / Math.cos(slantOf(fret)), 9);
	});
});

describe("radiusAt and widthAt", () => {
	it("are linear in distance along the centre line, not in the fret's number", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3 }), ({ job, drawn }) => {
				const neck = neckOf(job);
				const last = fretLine(neck, drawn.frets).x;
				const middle = (a: number, b: number) => (a + b) / 2;
				const { width, radius } = drawn;
				expect(Math.abs(widthAt(neck, last / 2) - middle(width.nut, width.lastFret))).toBeLessThan(
					NEAR,
				);
				const wanted = radius === "flat" ? null : middle(radius.nut, radius.lastFret);
				const found = radiusAt(neck, last / 2);
				expect(found === null ? null : Math.abs(found - wanted!) < NEAR).toBe(
					wanted === null ? null : true,
				);
			}),
			RUNS,
		);
	});
});

describe("fretNumbers", () => {
	it("begin at 1, or at 0 where a zero fret carries wire", () => {
		const plain: Neck = neckWith({ frets: 3 });
		expect(fretNumbers(plain)).toEqual([1, 2, 3]);
		expect(fretNumbers({ ...plain, zeroFret: true })).toEqual([0, 1, 2, 3]);
	});
});
