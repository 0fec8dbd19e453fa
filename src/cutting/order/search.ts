/** What a search over subsets knows: ways in groups, of each of which one is taken. */
export interface Search {
	/** Of every way. */
	readonly groups: readonly number[];
	/** Of every group the set of groups that come before it, a bit for each. */
	readonly before: readonly number[];
	/** Travel to the end of each way from where the head stands. */
	readonly first: Float64Array;
	/** The same from the end of each way. */
	readonly hops: readonly Float64Array[];
}

/** What it found. */
export interface Found {
	/** Of each way the travel through all groups that ends with it, infinite where none may, mm. */
	readonly best: Float64Array;
	/** The ways in their order up to a last one. */
	trace(last: number): number[];
}

/**
 * The least travel through all groups by dynamic programming over their subsets (Held and Karp,
 * "A dynamic programming approach to sequencing problems", 1962): for each set of groups and each
 * way to end it, the least travel and the way before.
 */
export function search(given: Search): Found {
	const { groups, before, first, hops } = given;
	const n = groups.length;
	const full = 2 ** before.length - 1;
	const table: Table = {
		least: new Float64Array((full + 1) * n).fill(Number.POSITIVE_INFINITY),
		previous: new Int32Array((full + 1) * n),
	};
	spread(given, table, { set: 0, sum: 0, way: -1 }, first);
	for (let set = 1; set < full; set++) {
		for (let way = 0; way < n; way++) {
			const sum = table.least[set * n + way]!;
			if (sum < Number.POSITIVE_INFINITY) spread(given, table, { set, sum, way }, hops[way]!);
		}
	}
	const best = table.least.subarray(full * n);
	return { best, trace: (last) => traced(groups, table.previous, full, last) };
}

/** For set · ways + way: the least travel through the set that ends with the way, and by which. */
interface Table {
	readonly least: Float64Array;
	readonly previous: Int32Array;
}

interface Reached {
	readonly set: number;
	readonly sum: number;
	/** The last one, −1 where there is none yet. */
	readonly way: number;
}

/** Enters every way that may follow what is reached, where that is less than was known. */
function spread(
	{ groups, before }: Search,
	{ least, previous }: Table,
	{ set, sum, way }: Reached,
	travels: Float64Array,
): void {
	const n = groups.length;
	for (let next = 0; next < n; next++) {
		const group = groups[next]!;
		if ((set & (1 << group)) !== 0 || (before[group]! & ~set) !== 0) continue;
		const at = (set | (1 << group)) * n + next;
		if (sum + travels[next]! >= least[at]!) continue;
		least[at] = sum + travels[next]!;
		previous[at] = way;
	}
}

function traced(
	groups: readonly number[],
	previous: Int32Array,
	full: number,
	last: number,
): number[] {
	const ways: number[] = [];
	let set = full;
	for (let way = last; way >= 0; ) {
		ways.push(way);
		const from = previous[set * groups.length + way]!;
		set &= ~(1 << groups[way]!);
		way = from;
	}
	return ways.reverse();
}
