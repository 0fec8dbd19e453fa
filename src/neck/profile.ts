/** A value that changes along the centre line: straight between its knots. */
export interface Profile {
	/** One or more, x rising, mm from the theoretical nut. */
	readonly knots: readonly { readonly x: number; readonly value: number }[];
}

/** The same value everywhere. */
export function constant(value: number): Profile {
	return { knots: [{ x: 0, value }] };
}

/** One straight stretch of a profile: value + slope·(at − x), valid from `from` to `to`. */
export interface Stretch {
	readonly x: number;
	readonly value: number;
	readonly slope: number;
	readonly from: number;
	readonly to: number;
}

/** The straight stretches in order; the outer two reach on without end. */
export function stretches(profile: Profile): Stretch[] {
	const { knots } = profile;
	const first = knots[0]!;
	const open = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };
	if (knots.length === 1) return [{ ...first, slope: 0, ...open }];
	const last = knots.length - 2;
	return knots.slice(0, -1).map((k, i) => {
		const next = knots[i + 1]!;
		return {
			...k,
			slope: (next.value - k.value) / (next.x - k.x),
			from: i === 0 ? open.from : k.x,
			to: i === last ? open.to : next.x,
		};
	});
}

/** The value at a place; beyond the outer knots the outer stretches go on. */
export function valueAt(profile: Profile, x: number): number {
	const s = stretches(profile).find(({ to }) => x <= to)!;
	return s.value + s.slope * (x - s.x);
}

/** Whether a place lies beyond the outermost of two or more knots. */
export function isExtrapolated(profile: Profile, x: number): boolean {
	const { knots } = profile;
	return knots.length > 1 && (x < knots[0]!.x - 1e-9 || x > knots.at(-1)!.x + 1e-9);
}
