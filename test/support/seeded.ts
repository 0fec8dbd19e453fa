/** A repeatable stream of numbers in [0, 1): mulberry32, a public-domain generator of 32 bits of state. */
export function seeded(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = state;
		t = Math.imul(t ^ (t >>> 15), t | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** A normal deviate of mean 0 and sd 1 from two numbers of a stream (Box and Muller, 1958). */
export function normal(next: () => number): number {
	return Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}
