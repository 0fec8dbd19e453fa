import { Matrix, QrDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { leastSquares, remainders, spreadOf } from "../../src/readings/least-squares.js";
import { seeded } from "../support/seeded.js";

describe("leastSquares", () => {
	it("finds a line through points on it, and what each point decides of itself", () => {
		const fit = leastSquares(
			[
				[1, 0],
				[1, 1],
				[1, 2],
			],
			[1, 3, 5],
		);
		expect(fit.coefficients[0]).toBeCloseTo(1, 13);
		expect(fit.coefficients[1]).toBeCloseTo(2, 13);
		// h = 1/3 + (x − 1)²/2
		for (const [i, h] of [5 / 6, 1 / 3, 5 / 6].entries())
			expect(fit.leverage[i]).toBeCloseTo(h, 13);
		expect(fit.df).toBe(1);
		expect(spreadOf(fit.covariance, [1, 1])).toBeCloseTo(1 / 3, 13);
	});

	it("agrees with a general-purpose library's Householder QR (ml-matrix), weighted or not", () => {
		const next = seeded(5);
		const design = Array.from({ length: 30 }, () => [1, next(), next() ** 2, next() * 1000]);
		const values = design.map(() => next());
		const weights = design.map(() => 0.5 + next());
		for (const w of [undefined, weights]) {
			const root = values.map((_, i) => Math.sqrt(w?.[i] ?? 1));
			const qr = new QrDecomposition(new Matrix(design.map((r, i) => r.map((x) => x * root[i]!))));
			const theirs = qr.solve(Matrix.columnVector(values.map((y, i) => y * root[i]!))).to1DArray();
			const ours = leastSquares(design, values, w);
			theirs.forEach((b, i) => void expect(ours.coefficients[i]! / b).toBeCloseTo(1, 10));
			const q = qr.orthogonalMatrix.to2DArray();
			q.forEach((row, i) => {
				expect(ours.leverage[i]).toBeCloseTo(
					row.reduce((s, x) => s + x * x, 0),
					12,
				);
			});
		}
	});

	it("refuses columns that depend on each other, and too few rows", () => {
		expect(() =>
			leastSquares(
				[
					[1, 2],
					[2, 4],
					[3, 6],
				],
				[1, 2, 3],
			),
		).toThrow(RangeError);
		expect(() => leastSquares([[1, 2]], [1])).toThrow(RangeError);
		expect(() => leastSquares([[1], [1]], [1])).toThrow(RangeError);
	});
});

describe("remainders", () => {
	it("are the residuals of each further column", () => {
		const design = [
			[1, 0],
			[1, 1],
			[1, 2],
			[1, 3],
		];
		const column = [0, 1, 4, 9];
		const [rest] = remainders(design, [column]);
		leastSquares(design, column).residuals.forEach(
			(e, i) => void expect(rest![i]).toBeCloseTo(e, 12),
		);
	});
});
