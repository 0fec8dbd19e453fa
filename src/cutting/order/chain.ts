import { distance, type Point } from "../../geometry/index.js";
import { exactLegs, searchSize } from "./exact-legs.js";
import { GAIN, type Leg } from "./leg.js";
import { nearLeg } from "./near-leg.js";
import type { Stop } from "./stop.js";

/** A leg with all before it. */
interface Reached extends Leg {
	/** Travel up to its end, mm. */
	readonly sum: number;
	readonly previous: Reached | null;
}

/**
 * Legs through groups of stops in their order: the best where each can be searched exactly.
 *
 * @param centres - of the groups
 * @param options.steps - elementary ones that the search through one group may take
 * @param options.toward - where the head goes afterwards, if that is known
 */
export function chain(
	groups: readonly (readonly Stop[])[],
	centres: readonly Point[],
	head: Point,
	{ steps, toward: after }: { readonly steps: number; readonly toward?: Point },
): Leg[] {
	let reached: readonly Reached[] = [];
	groups.forEach((stops, i) => {
		const starts: readonly (Reached | null)[] = reached.length > 0 ? reached : [null];
		if (searchSize(stops) * starts.length <= steps) {
			reached = leastOf(
				starts.flatMap((start) => added(start, exactLegs(start?.to ?? head, stops))),
			);
		} else {
			const far = (s: Reached | null) => (s ? s.sum + distance(s.to, centres[i]!) : 0);
			const start = starts.reduce((a, b) => (far(b) < far(a) ? b : a));
			const toward = centres[i + 1] ?? after ?? null;
			reached = added(start, [nearLeg(start?.to ?? head, stops, toward)]);
		}
	});
	const all = ({ sum, to }: Reached) => sum + (after ? distance(to, after) : 0);
	const legs: Leg[] = [];
	let last = reached.reduce<Reached | null>((a, b) => (a && all(a) <= all(b) ? a : b), null);
	for (; last; last = last.previous) legs.push(last);
	return legs.reverse();
}

function added(previous: Reached | null, legs: readonly Leg[]): Reached[] {
	return legs.map((leg) => ({ ...leg, sum: (previous?.sum ?? 0) + leg.travel, previous }));
}

/** Of those that end in one place the least. */
function leastOf(all: readonly Reached[]): Reached[] {
	const least: Reached[] = [];
	for (const one of all) {
		const same = least.findIndex(({ to }) => to.x === one.to.x && to.y === one.to.y);
		if (same < 0) least.push(one);
		else if (one.sum < least[same]!.sum - GAIN) least[same] = one;
	}
	return least;
}
