import type { Point } from "../../geometry/index.js";
import { bestWays } from "./best-ways.js";
import { exchange } from "./exchange.js";
import { GAIN, type Leg, withEnd } from "./leg.js";
import { lineOf } from "./line.js";
import { levelsOf, nearest } from "./nearest.js";
import { neighbours } from "./neighbours.js";
import type { Stop } from "./stop.js";

/** Exchanges that a search step by step may look at. */
const LOOKS = 400_000;

/** Most stops for which the order of the file is improved beside that from the nearest on. */
const FEW = 60;

/**
 * A good leg through many stops: from the nearest to the nearest, then improved. A few are tried
 * from their given order too.
 *
 * @param toward - where the head goes afterwards, if that is known
 */
export function nearLeg(head: Point, stops: readonly Stop[], toward: Point | null): Leg {
	const levels = levelsOf(stops);
	const given = stops.map((_, i) => i).sort((a, b) => levels[a]! - levels[b]! || a - b);
	const tries = [nearest(head, stops, levels), ...(stops.length <= FEW ? [given] : [])];
	return tries
		.map((order) =>
			improved(
				head,
				order.map((i) => stops[i]!),
				order.map((i) => levels[i]!),
				toward,
			),
		)
		.reduce((a, b) => (withEnd(b, toward) < withEnd(a, toward) - GAIN ? b : a));
}

/** Stops whose order is improved by exchanges, in turn with the choice of their ways. */
function improved(
	head: Point,
	stops: readonly Stop[],
	levels: readonly number[],
	toward: Point | null,
): Leg {
	const near = neighbours(stops);
	const numbers = new Map(stops.map((stop, i) => [stop, i]));
	let leg = bestWays(head, stops, toward);
	for (let looks = LOOKS; looks > 0; ) {
		const order = Int32Array.from(leg.steps, ({ stop }) => numbers.get(stop)!);
		const line = lineOf(leg.steps, order, near, head, toward);
		looks = exchange(line, levels, looks);
		const sequence = Array.from(line.order, (i) => stops[i % stops.length]!);
		const next = bestWays(head, sequence, toward);
		if (withEnd(next, toward) > withEnd(leg, toward) - GAIN) break;
		leg = next;
	}
	return leg;
}
