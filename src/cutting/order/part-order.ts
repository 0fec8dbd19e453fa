import type { Point } from "../../geometry/index.js";
import { EXACT, exactTravels, MOST_EXACT, searchSize } from "./exact-legs.js";
import type { Job } from "./job.js";
import { nearLeg } from "./near-leg.js";
import { search } from "./search.js";
import type { Stop } from "./stop.js";

/**
 * The order of parts in which their cuts are nearest to each other, for any place where the head
 * may stand at first and, if given, any last part.
 */
export function partOrders(jobs: readonly Job[]): (head: Point, last?: Job) => Job[] {
	const busy = jobs.filter(({ stops }) => stops.cut.length > 0);
	const idle = jobs.filter(({ stops }) => stops.cut.length === 0);
	if (busy.length < 2) return () => [...busy, ...idle];
	const groups = busy.map(({ stops }) => stops.cut);
	const ordered = isSearchable(groups)
		? exactOrders(groups)
		: (head: Point) => nearOrder(groups, head);
	return (head, last) => {
		const end = last && busy.includes(last) ? busy.indexOf(last) : null;
		return [...ordered(head, end).map((i) => busy[i]!), ...idle];
	};
}

/** Whether the best order of groups can be searched for in bounded time. */
function isSearchable(groups: readonly (readonly Stop[])[]): boolean {
	const exits = groups.map((stops) => stops.reduce((n, { ways }) => n + ways.length, 0));
	const all = exits.reduce((a, b) => a + b, 0);
	const size = groups.reduce((n, stops, i) => n + searchSize(stops) * (1 + all - exits[i]!), 0);
	return groups.length <= MOST_EXACT && size + (2 ** groups.length * all * all) / 4 <= EXACT;
}

/** The best order of groups, as `search` finds it among the places at which each may end. */
function exactOrders(groups: readonly (readonly Stop[])[]) {
	const exits = groups.flatMap((stops, group) =>
		stops.flatMap(({ ways }) => ways.map(({ to }) => ({ group, to }))),
	);
	const starts = groups.map((_, i) => exits.findIndex(({ group }) => group === i));
	const row = (from: Point, own: number) => {
		const travels = new Float64Array(exits.length).fill(Number.POSITIVE_INFINITY);
		groups.forEach((stops, group) => {
			if (group !== own) travels.set(exactTravels(from, stops), starts[group]!);
		});
		return travels;
	};
	const hops = exits.map(({ to, group }) => row(to, group));
	return (head: Point, end: number | null): number[] => {
		const { best, trace } = search({
			groups: exits.map(({ group }) => group),
			before: groups.map(() => 0),
			first: row(head, -1),
			hops,
		});
		const isLast = (i: number) => end === null || exits[i]!.group === end;
		const last = best.reduce((a, d, i) => (isLast(i) && !(best[a]! <= d && isLast(a)) ? i : a), 0);
		return trace(last).map((i) => exits[i]!.group);
	};
}

/** A good order of many groups, each taken as the places at which it may end. */
function nearOrder(groups: readonly (readonly Stop[])[], head: Point): number[] {
	const ends = groups.map((stops, i): Stop & { readonly group: number } => {
		const open = stops.filter((_, k) => !stops.some(({ before }) => before.includes(k)));
		const ways = open
			.flatMap((stop) => stop.ways)
			.map(({ to }) => ({ from: to, to, travel: 0, paths: [] }));
		return { marks: [], ways, before: [], group: i };
	});
	const { steps } = nearLeg(head, ends, null);
	return steps.map(({ stop }) => (stop as (typeof ends)[number]).group);
}
