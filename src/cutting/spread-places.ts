import type { TabPlace } from "./tab-places.js";

/** Halvings of the distance between tabs: from metres to nanometres. */
const HALVINGS = 40;

/**
 * Some of the places on a contour, as far from each other along it as may be: the least way
 * between two neighbours is the greatest there is. One alone stands farthest from all working
 * edges. The same places give the same choice.
 *
 * @param places - in their order along the contour
 * @param around - length of the contour, mm
 * @param least - least way between two neighbours, mm
 * @returns `count` places in their order, or as many as there is room for
 */
export function spreadPlaces(
	places: readonly TabPlace[],
	around: number,
	least: number,
	count: number,
): TabPlace[] {
	const [first] = places;
	if (!first) return [];
	if (count === 1) return [places.reduce((a, b) => (b.clear > a.clear ? b : a), first)];
	let best = chosenApart(places, around, least, count);
	if (best.length < count) return best;
	let [low, high] = [least, around / count];
	for (let i = 0; i < HALVINGS; i++) {
		const middle = (low + high) / 2;
		const found = chosenApart(places, around, middle, count);
		if (found.length === count) best = found;
		if (found.length === count) low = middle;
		else high = middle;
	}
	return best;
}

/** Up to `count` places no nearer to each other than `apart`: the most that can be. */
function chosenApart(
	places: readonly TabPlace[],
	around: number,
	apart: number,
	count: number,
): TabPlace[] {
	const n = places.length;
	const next = nextOnes(places, around, apart);
	let best: number[] = [0];
	for (let start = 0; start < n; start++) {
		const limit = places[start]!.along + around - apart;
		const taken = [start];
		while (taken.length < count) {
			const i = next[taken.at(-1)!]!;
			const along = i < n ? places[i]!.along : Number.POSITIVE_INFINITY;
			if (along > limit) break;
			taken.push(i);
		}
		if (taken.length > best.length) best = taken;
		if (best.length === count) break;
	}
	return best.map((i) => places[i]!);
}

/** For every place the first one that is `apart` or more beyond it; the number of places if none. */
function nextOnes(places: readonly TabPlace[], around: number, apart: number): number[] {
	let j = 0;
	return places.map(({ along }) => {
		while (j < places.length && places[j]!.along < along + apart && along + apart <= around) j++;
		return along + apart <= around ? j : places.length;
	});
}
