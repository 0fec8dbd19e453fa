/** A linear model fitted to values. */
export interface LeastSquares {
	readonly coefficients: readonly number[];
	/** (XᵀWX)⁻¹: times s² it is the coefficients' covariance. */
	readonly covariance: readonly (readonly number[])[];
	/** Value less fitted value, a row each, unweighted. */
	readonly residuals: readonly number[];
	/** Weighted sum of squared residuals. */
	readonly rss: number;
	/** Rows less columns. */
	readonly df: number;
	/** Share of each row in its own fitted value, 0 to 1. */
	readonly leverage: readonly number[];
}

/** Q and R of a matrix, thin: orthonormal columns, and the triangle that brings the matrix back. */
interface ThinQr {
	/** Q by columns. */
	readonly q: readonly Float64Array[];
	/** R by columns: entry i of column j for i ≤ j. */
	readonly r: readonly (readonly number[])[];
}

/** A column that keeps less than this share of its length beside the others depends on them. */
const DEPENDENT = 1e-13;

/**
 * Least squares by QR: the design itself is decomposed, never XᵀX, which would lose half the digits.
 *
 * Modified Gram-Schmidt with the values carried along as a last column is as stable as Householder's
 * reflections (Å. Björck, BIT 7, 1967, 1-21; from memory) and lighter for a few columns.
 *
 * @param design - a row of regressors for each value, at least as many rows as columns
 * @param weights - greater than 0, a value's inverse variance; all 1 if left out
 * @throws RangeError if rows and values differ in number, or the columns depend on each other
 * @example leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5]).coefficients // [1, 2]
 */
export function leastSquares(
	design: readonly (readonly number[])[],
	values: readonly number[],
	weights?: readonly number[],
): LeastSquares {
	const fit = independentSquares(design, values, weights);
	if (!fit) throw new RangeError("the columns depend on each other");
	return fit;
}

/**
 * Least squares as above, for designs that readings make.
 *
 * @returns null if the columns depend on each other
 * @throws RangeError if rows and values differ in number, or rows are too few
 */
export function independentSquares(
	design: readonly (readonly number[])[],
	values: readonly number[],
	weights?: readonly number[],
): LeastSquares | null {
	const width = design[0]?.length ?? 0;
	if (design.length !== values.length) throw new RangeError("a row is needed for each value");
	if (width === 0 || design.length < width) throw new RangeError("too few rows");
	const root = values.map((_, i) => Math.sqrt(weights?.[i] ?? 1));
	const parts = thinQr(columnsOf(design, root));
	if (!parts) return null;
	const { q, r } = parts;
	const rest = new Float64Array(values.map((y, i) => y * root[i]!));
	const coefficients = backSubstituted(r, takenOut(q, rest));
	const residuals = design.map((row, i) => values[i]! - product(row, coefficients));
	return {
		coefficients,
		covariance: inverseOfSquare(r),
		residuals,
		rss: residuals.reduce((sum, e, i) => sum + (root[i]! * e) ** 2, 0),
		df: design.length - width,
		leverage: design.map((_, i) => q.reduce((sum, column) => sum + column[i]! ** 2, 0)),
	};
}

/**
 * What is left of each further column once a design has been fitted to it.
 *
 * @throws RangeError if the design's columns depend on each other
 */
export function remainders(
	design: readonly (readonly number[])[],
	columns: readonly (readonly number[])[],
): Float64Array[] {
	const parts = thinQr(columnsOf(design));
	if (!parts) throw new RangeError("the columns depend on each other");
	return columns.map((column) => {
		const rest = new Float64Array(column);
		takenOut(parts.q, rest);
		return rest;
	});
}

/** A design by columns, each row times its factor: copied in a loop, as this is where fits spend their time. */
function columnsOf(
	design: readonly (readonly number[])[],
	factors?: readonly number[],
): Float64Array[] {
	const columns = design[0]!.map(() => new Float64Array(design.length));
	for (const [i, row] of design.entries()) {
		const factor = factors?.[i] ?? 1;
		for (let j = 0; j < columns.length; j++) columns[j]![i] = row[j]! * factor;
	}
	return columns;
}

function thinQr(columns: readonly Float64Array[]): ThinQr | null {
	const q: Float64Array[] = [];
	const r: number[][] = [];
	for (const column of columns) {
		const whole = Math.sqrt(product(column, column));
		const along = takenOut(q, column);
		const size = Math.sqrt(product(column, column));
		if (!(size > DEPENDENT * whole)) return null;
		for (let i = 0; i < column.length; i++) column[i]! /= size;
		q.push(column);
		r.push([...along, size]);
	}
	return { q, r };
}

/** Takes each direction's part out of a column, in place, and returns the parts. */
function takenOut(q: readonly Float64Array[], column: Float64Array): number[] {
	return q.map((direction) => {
		const part = product(direction, column);
		for (let i = 0; i < column.length; i++) column[i]! -= part * direction[i]!;
		return part;
	});
}

/** x of R·x = y. */
function backSubstituted(r: ThinQr["r"], y: readonly number[]): number[] {
	const x = [...y];
	for (let j = r.length - 1; j >= 0; j--) {
		x[j]! /= r[j]![j]!;
		for (let i = 0; i < j; i++) x[i]! -= r[j]![i]! * x[j]!;
	}
	return x;
}

/** Sum of products of two rows of the same length. */
export function product(a: ArrayLike<number>, b: ArrayLike<number>): number {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
}

/** gᵀ·C·g: the variance of a combination of coefficients, in units of s². */
export function spreadOf(
	covariance: readonly (readonly number[])[],
	gradient: readonly number[],
): number {
	return product(
		gradient,
		covariance.map((row) => product(row, gradient)),
	);
}

/** (RᵀR)⁻¹ from R⁻¹, a back substitution for each column. */
function inverseOfSquare(r: ThinQr["r"]): number[][] {
	const unit = (k: number) => r.map((_, i) => (i === k ? 1 : 0));
	const columns = r.map((_, k) => backSubstituted(r, unit(k)));
	return r.map((_, i) => r.map((_, j) => columns.reduce((sum, c) => sum + c[i]! * c[j]!, 0)));
}
