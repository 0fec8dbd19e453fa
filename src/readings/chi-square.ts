/** Terms after which both expansions below have long settled for the few degrees of freedom met here. */
const MOST_TERMS = 1000;

/**
 * Chance that a sum of squares of `df` standard normal deviates exceeds x.
 *
 * Upper incomplete gamma Q(df/2, x/2): the series below df/2 + 1, the continued fraction above
 * (Abramowitz and Stegun 6.5.29 and 6.5.31).
 *
 * @param x - 0 or more; infinite gives 0
 * @param df - whole, 1 or more
 * @throws RangeError outside these ranges
 * @example chiSquareTail(3.8415, 1) // 0.05
 */
export function chiSquareTail(x: number, df: number): number {
	if (!(x >= 0)) throw new RangeError(`chi-square cannot be ${x}`);
	if (!Number.isInteger(df) || df < 1) throw new RangeError(`no chi-square with ${df}`);
	if (x === 0) return 1;
	if (x === Number.POSITIVE_INFINITY) return 0;
	const a = df / 2;
	const half = x / 2;
	const front = Math.exp(a * Math.log(half) - half) / gammaOfHalves(df);
	return half < a + 1 ? 1 - front * series(a, half) : front * fraction(a, half);
}

/** Γ(n/2) for whole n: from Γ(1/2) = √π and Γ(1) = 1 upwards. */
function gammaOfHalves(n: number): number {
	let value = n % 2 === 0 ? 1 : Math.sqrt(Math.PI);
	for (let k = n % 2 === 0 ? 2 : 1; k < n; k += 2) value *= k / 2;
	return value;
}

function series(a: number, x: number): number {
	let term = 1 / a;
	let sum = term;
	for (let n = 1; n < MOST_TERMS && term > sum * Number.EPSILON; n++) {
		term *= x / (a + n);
		sum += term;
	}
	return sum;
}

/** Lentz's way through 1/(x + 1 − a − 1(1 − a)/(x + 3 − a − …)). */
function fraction(a: number, x: number): number {
	let b = x + 1 - a;
	let c = Number.POSITIVE_INFINITY;
	let d = 1 / b;
	let value = d;
	for (let n = 1; n < MOST_TERMS; n++) {
		const top = -n * (n - a);
		b += 2;
		d = 1 / (top * d + b);
		c = b + top / c;
		value *= c * d;
		if (Math.abs(c * d - 1) < Number.EPSILON) break;
	}
	return value;
}
