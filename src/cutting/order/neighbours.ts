import type { Stop } from "./stop.js";

/** Stops beside which a run may be moved. */
export const NEIGHBOURS = 5;

/** For every stop the numbers of those with ends nearest to its ends. */
export function neighbours(stops: readonly Stop[]): Int32Array[] {
	const count = Math.min(NEIGHBOURS, stops.length - 1);
	const ends = stops.flatMap(({ ways }, stop) => ways.map(({ from }) => ({ stop, ...from })));
	const [x, y] = [Float64Array.from(ends, (e) => e.x), Float64Array.from(ends, (e) => e.y)];
	const owners = Int32Array.from(ends, ({ stop }) => stop);
	const least = new Float64Array(stops.length);
	return stops.map((_, i) => {
		least.fill(Number.POSITIVE_INFINITY);
		for (let a = owners.indexOf(i); owners[a] === i; a++) {
			for (let b = 0; b < x.length; b++) {
				const far = (x[a]! - x[b]!) ** 2 + (y[a]! - y[b]!) ** 2;
				if (far < least[owners[b]!]!) least[owners[b]!] = far;
			}
		}
		least[i] = Number.POSITIVE_INFINITY;
		return lowest(least, count);
	});
}

/** Where the lowest of some values stand, the lowest first. */
function lowest(values: Float64Array, count: number): Int32Array {
	const found = new Int32Array(count);
	let size = 0;
	for (let i = 0; i < values.length && count > 0; i++) {
		if (size === count && values[i]! >= values[found[size - 1]!]!) continue;
		let at = size < count ? size++ : size - 1;
		for (; at > 0 && values[found[at - 1]!]! > values[i]!; at--) found[at] = found[at - 1]!;
		found[at] = i;
	}
	return found;
}
