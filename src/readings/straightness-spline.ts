/** A smooth curve with its slope and its second derivative. */
export interface Smooth {
	readonly at: (x: number) => number;
	readonly slope: (x: number) => number;
	readonly bend: (x: number) => number;
}

/** Second derivatives at the knots, 0 at both ends: the usual tridiagonal equations. */
function bendsOf(xs: readonly number[], ys: readonly number[]): number[] {
	const last = xs.length - 1;
	const bends = xs.map(() => 0);
	const upper = xs.map(() => 0);
	for (let i = 1; i < last; i++) {
		const [before, after] = [xs[i]! - xs[i - 1]!, xs[i + 1]! - xs[i]!];
		const turn = 6 * ((ys[i + 1]! - ys[i]!) / after - (ys[i]! - ys[i - 1]!) / before);
		const pivot = 2 * (before + after) - before * upper[i - 1]!;
		upper[i] = after / pivot;
		bends[i] = (turn - before * bends[i - 1]!) / pivot;
	}
	for (let i = last - 1; i > 0; i--) bends[i]! -= upper[i]! * bends[i + 1]!;
	return bends;
}

/**
 * The natural cubic spline through some points.
 *
 * @param xs - two or more, rising
 */
export function naturalSpline(xs: readonly number[], ys: readonly number[]): Smooth {
	const bends = bendsOf(xs, ys);
	const piece = (x: number) => {
		const next = xs.findIndex((knot, i) => i > 0 && x <= knot);
		const i = (next === -1 ? xs.length - 1 : next) - 1;
		const h = xs[i + 1]! - xs[i]!;
		return { i, h, a: (xs[i + 1]! - x) / h, b: (x - xs[i]!) / h };
	};
	return {
		at(x) {
			const { i, h, a, b } = piece(x);
			const curve = (a ** 3 - a) * bends[i]! + (b ** 3 - b) * bends[i + 1]!;
			return a * ys[i]! + b * ys[i + 1]! + (curve * h * h) / 6;
		},
		slope(x) {
			const { i, h, a, b } = piece(x);
			const curve = (3 * b * b - 1) * bends[i + 1]! - (3 * a * a - 1) * bends[i]!;
			return (ys[i + 1]! - ys[i]!) / h + (curve * h) / 6;
		},
		bend(x) {
			const { i, a, b } = piece(x);
			return a * bends[i]! + b * bends[i + 1]!;
		},
	};
}
