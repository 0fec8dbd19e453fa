import { distance, type Point } from "../../geometry/index.js";
import type { Leg, Step } from "./leg.js";
import { type Found, search } from "./search.js";
import type { Stop } from "./stop.js";

/** Elementary steps that an exact search may take; above, orders are improved step by step. */
export const EXACT = 1.2e7;

/** Most stops, and most parts, of an exact search: its tables grow with 2^n. */
export const MOST_EXACT = 14;

/** About how many steps a search through some stops takes. */
export function searchSize(stops: readonly Stop[]): number {
	const n = stops.length;
	if (n > MOST_EXACT) return Number.POSITIVE_INFINITY;
	const ways = stops.reduce((sum, stop) => sum + stop.ways.length, 0);
	const free = stops.some(({ before }) => n > 1 && before.length === n - 1) ? n - 1 : n;
	return (2 ** free * ways * ways) / 4;
}

/** Of every way in which stops may end, the best leg to it. */
export function exactLegs(head: Point, stops: readonly Stop[]): Leg[] {
	const all = stepsOf(stops);
	const { best, trace } = searchFrom(head, stops, all);
	return all.flatMap(({ way }, i): Leg[] => {
		const travel = best[i]!;
		if (travel === Number.POSITIVE_INFINITY) return [];
		return [{ to: way.to, travel, steps: trace(i).map((w) => all[w]!) }];
	});
}

/** Of every way of the stops, in their order, the travel of the best leg to it, mm; infinite if none. */
export function exactTravels(head: Point, stops: readonly Stop[]): Float64Array {
	return searchFrom(head, stops, stepsOf(stops)).best;
}

function stepsOf(stops: readonly Stop[]): Step[] {
	return stops.flatMap((stop) => stop.ways.map((way) => ({ stop, way })));
}

function searchFrom(head: Point, stops: readonly Stop[], all: readonly Step[]): Found {
	const travelsFrom = (from: Point) =>
		Float64Array.from(all, ({ way }) => distance(from, way.from) + way.travel);
	return search({
		groups: all.map(({ stop }) => stops.indexOf(stop)),
		before: stops.map(({ before }) => before.reduce((set, i) => set | (1 << i), 0)),
		first: travelsFrom(head),
		hops: all.map(({ way }) => travelsFrom(way.to)),
	});
}
