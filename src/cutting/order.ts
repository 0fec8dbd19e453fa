import type { Mark, Part, Placed, Sheet } from "../drawing/index.js";
import {
	around,
	extents,
	movedPoint,
	type Path,
	type Point,
	pointAt,
	reversed,
	segments,
	signedArea,
	windingNumber,
} from "../geometry/index.js";
import { startsOf } from "./starts.js";
import { endsOf, homeOf, TRAVELLED, type Travelled } from "./work.js";

/** Marks with this at the head of their feature are texts: each is finished before the next. */
const LABEL = "label ";
/** Elementary steps that an exact search may take; above, orders are improved step by step. */
const EXACT = 1.2e7;
/** The same for what is only scored or engraved. */
const EXACT_DRAWN = 1e5;
/** Most parts for which every one is tried as the last. */
const FEW_PARTS = 6;
/** Most stops, and most parts, of an exact search: its tables grow with 2^n. */
const MOST_EXACT = 14;
/** Exchanges that a search step by step may look at. */
const LOOKS = 400_000;
/** Stops beside which a run may be moved. */
const NEIGHBOURS = 5;
/** Most stops for which the order of the file is improved beside that from the nearest on. */
const FEW = 60;
/** Longest run of stops that is moved to another place in one go. */
const LONGEST_RUN = 3;
/** Ways that differ by less are equal, mm. */
const GAIN = 1e-9;
/** By how much a sheet's cuts may be farther apart than need be if scores and texts gain by it. */
const SPARE = 0.05;

/** One way to go along the marks of a stop, places on the sheet. */
interface Way {
	readonly from: Point;
	readonly to: Point;
	/** Between the stop's own paths, mm. */
	readonly travel: number;
	/** Of every mark of the stop, in their order. */
	readonly paths: readonly Path[];
}

/** Marks that are travelled one after the other: one, a text, or all cuts of a coupon. */
interface Stop {
	readonly marks: readonly Mark[];
	readonly ways: readonly Way[];
	/** Stops that must be done before, by their numbers. */
	readonly before: readonly number[];
}

interface Step {
	readonly stop: Stop;
	readonly way: Way;
}

/** A way through all stops of a part. */
interface Leg {
	readonly steps: readonly Step[];
	readonly travel: number;
	readonly to: Point;
}

/** A part's stops by operation. */
interface Job {
	readonly placed: Placed;
	readonly stops: Readonly<Record<Travelled, readonly Stop[]>>;
	readonly centre: Point;
}

/** A sheet's order of work and its ways, mm. */
interface Plan {
	readonly jobs: readonly Job[];
	readonly steps: ReadonlyMap<Job, readonly Step[]>;
	readonly cutTravel: number;
	readonly travel: number;
	/** Where the head stands when cutting begins. */
	readonly cutFrom: Point;
}

/**
 * The same sheet with parts and marks in the order of work and every path begun or turned so that
 * the head travels little between them.
 *
 * Operations follow each other as in every file: score, engrave, cut. Each is done part by part,
 * the parts in one order for all. Of a part's cuts whatever lies within a contour comes before
 * it, open cuts before the outer contour; contours begin where `startsOf` says. A text's strokes
 * stay together in reading order. A part that is meant to be nominal keeps the order of its cuts,
 * and its closed ones their starts. Marks that no head travels along keep their order.
 *
 * Up to about a dozen contours the cuts' order is the best there is; where parts are also scored
 * or engraved, their order may cost the cuts a twentieth if the rest gains by it. With more
 * contours it is improved by exchanges, within a bounded effort. The same sheet gives the same
 * order. Parts without cuts come last.
 *
 * @example inOrder(sheet) // a plate with a hole: the hole first, then the outline
 */
export function inOrder(sheet: Sheet): Sheet {
	const home = homeOf(sheet);
	const jobs = sheet.placed.filter(({ part }) => part.marks.length > 0).map(jobOf);
	if (jobs.length === 0) return sheet;
	const { jobs: order, steps } = bestPlan(jobs, home);
	const placed = order.map((job): Placed => {
		const { part, move } = job.placed;
		const idle = part.marks.filter(({ operation }) => !isTravelled(operation));
		const done = steps
			.get(job)!
			.flatMap(({ stop, way }) => stop.marks.map((mark, i) => ({ ...mark, path: way.paths[i]! })));
		return { part: { ...part, marks: [...idle, ...done] }, move };
	});
	const bare = sheet.placed.filter(({ part }) => part.marks.length === 0);
	return { ...sheet, placed: [...placed, ...bare] };
}

function isTravelled(operation: Mark["operation"]): boolean {
	return (TRAVELLED as readonly string[]).includes(operation);
}

// Stops

function jobOf(placed: Placed): Job {
	const { part, move } = placed;
	const marksOf = (operation: Travelled) => part.marks.filter((m) => m.operation === operation);
	const drawn = (operation: Travelled) => textBlocks(marksOf(operation)).map(stopOf);
	const stopOf = (marks: readonly Mark[]): Stop => {
		const paths = marks.map(({ path }) => (path.closed ? [path] : [path, reversed(path)]));
		return { marks, ways: waysOf(paths, placed), before: [] };
	};
	const box = around(part.marks.map(({ path }) => extents(path)));
	const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
	const cuts = marksOf("cut");
	const cut = part.nominal && cuts.length > 0 ? [stopOf(cuts)] : cutStops(cuts, part, placed);
	const stops = { score: drawn("score"), engrave: drawn("engrave"), cut };
	return { placed, stops, centre: movedPoint(middle, move) };
}

/** Marks one by one, but all of one text together. */
function textBlocks(marks: readonly Mark[]): Mark[][] {
	const texts = new Map<string, Mark[]>();
	const blocks: Mark[][] = [];
	for (const mark of marks) {
		const text = mark.feature.startsWith(LABEL) ? mark.feature : null;
		const block = text === null ? undefined : texts.get(text);
		if (block) block.push(mark);
		else {
			const begun = [mark];
			if (text !== null) texts.set(text, begun);
			blocks.push(begun);
		}
	}
	return blocks;
}

/** The least ways through paths in their order, one for each pair of a first and a last path. */
function waysOf(paths: readonly (readonly Path[])[], { move }: Placed): Way[] {
	const isStill = move.x === 0 && move.y === 0 && move.turn === 0 && !move.mirror;
	const onSheet = (path: Path): Way => {
		const [start, end] = endsOf(path);
		const from = isStill ? start : movedPoint(start, move);
		const to = path.closed ? from : isStill ? end : movedPoint(end, move);
		return { from, to, travel: 0, paths: [path] };
	};
	const [first, ...rest] = paths.map((choice) => choice.map(onSheet));
	return first!.flatMap((start) =>
		rest.reduce(
			(ways: readonly Way[], choice) =>
				choice.map((next) => {
					const far = ({ to, travel }: Way) => travel + gap(to, next.from);
					const last = ways.reduce((a, b) => (far(b) < far(a) ? b : a));
					const paths = [...last.paths, ...next.paths];
					return { ...next, from: start.from, travel: far(last), paths };
				}),
			[start],
		),
	);
}

/** Every cut as a stop, with what must be cut before it. */
function cutStops(cuts: readonly Mark[], part: Part, placed: Placed): Stop[] {
	const before = cutsBefore(cuts);
	return cuts.map((mark, i) => ({
		marks: [mark],
		ways: waysOf([startsOf(mark.path, part.working)], placed),
		before: before[i]!,
	}));
}

/** A closed contour, or one that tabs left open, by the numbers of its cuts. */
interface Loop {
	readonly cuts: readonly number[];
	readonly path: Path;
	readonly area: number;
}

/** For each cut the cuts that come before it: those within it, and open ones before outer ones. */
function cutsBefore(cuts: readonly Mark[]): number[][] {
	const loops = loopsOf(cuts);
	const loopOf = (i: number) => loops.find((loop) => loop.cuts.includes(i))!;
	const probes = cuts.map(({ path }) => pointAt(segments(path)[0]!, 0.5));
	const within = loops.map((loop) => {
		const around = segments(loop.path);
		return cuts.flatMap((_, i) => {
			if (loop.cuts.includes(i) || loopOf(i).area >= loop.area) return [];
			return windingNumber(around, probes[i]!) !== 0 ? [i] : [];
		});
	});
	return cuts.map(({ path }, i) => {
		const inside = within[loops.indexOf(loopOf(i))]!;
		if (!path.closed || within.some((others) => others.includes(i))) return inside;
		return cuts.flatMap((cut, k) => (!cut.path.closed || inside.includes(k) ? [k] : []));
	});
}

/** Closed cuts one by one; open ones of one feature joined by straight lines across their gaps. */
function loopsOf(cuts: readonly Mark[]): Loop[] {
	const groups = new Map<string, number[]>();
	cuts.forEach(({ path, feature }, i) => {
		const key = path.closed ? `closed ${i}` : `open ${feature}`;
		groups.set(key, [...(groups.get(key) ?? []), i]);
	});
	return [...groups.values()].map((members): Loop => {
		const points = members.flatMap((i) => cuts[i]!.path.points);
		const path = { points, closed: true };
		return { cuts: members, path, area: Math.abs(signedArea(path)) };
	});
}

// Parts

function bestPlan(jobs: readonly Job[], home: Point): Plan {
	const drawn = jobs.some(({ stops }) => stops.score.length + stops.engrave.length > 0);
	const first = planOf(partOrder(jobs, home), home);
	if (!drawn || jobs.length < 2) return first;
	// Where the engraving ends depends on the order of parts, and the best order on where it ends.
	const plans = [first];
	const add = (order: readonly Job[]) => {
		const isNew = plans.every(({ jobs }) => jobs.some((job, i) => job !== order[i]));
		if (isNew) plans.push(planOf(order, home));
	};
	add(partOrder(jobs, first.cutFrom));
	for (const last of jobs.length <= FEW_PARTS ? jobs : []) {
		for (let round = 0; round < 2; round++) {
			const known = plans.find((plan) => plan.jobs.at(-1) === last);
			add(partOrder(jobs, known?.cutFrom ?? last.centre, last));
		}
	}
	const least = Math.min(...plans.map(({ cutTravel }) => cutTravel));
	return plans
		.filter(({ cutTravel }) => cutTravel <= least * (1 + SPARE) + GAIN)
		.reduce((a, b) => (b.travel < a.travel - GAIN ? b : a));
}

/** All operations, part by part in a given order. */
function planOf(jobs: readonly Job[], home: Point): Plan {
	const steps = new Map<Job, Step[]>(jobs.map((job) => [job, []]));
	let at = home;
	let travel = 0;
	let cutTravel = 0;
	let cutFrom = home;
	for (const operation of TRAVELLED) {
		const busy = jobs.filter(({ stops }) => stops[operation].length > 0);
		if (operation === "cut") cutFrom = at;
		const legs = chain(
			busy.map(({ stops }) => stops[operation]),
			busy.map(({ centre }) => centre),
			at,
			// Drawn marks end toward the part that is cut first.
			operation === "cut" ? { steps: EXACT } : { steps: EXACT_DRAWN, toward: jobs[0]!.centre },
		);
		legs.forEach((leg, i) => {
			steps.get(busy[i]!)!.push(...leg.steps);
			travel += leg.travel;
			if (operation === "cut") cutTravel += leg.travel;
			at = leg.to;
		});
	}
	return { jobs, steps, cutTravel, travel, cutFrom };
}

/** Legs through groups of stops in their order: the best where each can be searched exactly. */
function chain(
	groups: readonly (readonly Stop[])[],
	centres: readonly Point[],
	head: Point,
	{ steps, toward: after }: { readonly steps: number; readonly toward?: Point },
): Leg[] {
	interface Reached extends Leg {
		readonly sum: number;
		readonly previous: Reached | null;
	}
	let reached: Reached[] = [];
	groups.forEach((stops, i) => {
		const starts: (Reached | null)[] = reached.length > 0 ? reached : [null];
		const isExact = searchSize(stops) * starts.length <= steps;
		const toward = centres[i + 1] ?? after ?? null;
		const next: Reached[] = [];
		const far = (s: Reached | null) => (s ? s.sum + gap(s.to, centres[i]!) : 0);
		const nearest = starts.reduce((a, b) => (far(b) < far(a) ? b : a));
		for (const previous of isExact ? starts : [nearest]) {
			const at = previous?.to ?? head;
			const legs = isExact ? exactLegs(at, stops) : [nearLeg(at, stops, toward)];
			for (const leg of legs) {
				const sum = (previous?.sum ?? 0) + leg.travel;
				const same = next.findIndex(({ to }) => gap(to, leg.to) === 0);
				if (same < 0) next.push({ ...leg, sum, previous });
				else if (sum < next[same]!.sum - GAIN) next[same] = { ...leg, sum, previous };
			}
		}
		reached = next;
	});
	const legs: Leg[] = [];
	const all = ({ sum, to }: Reached) => sum + (after ? gap(to, after) : 0);
	let last = reached.reduce<Reached | null>((a, b) => (a && all(a) <= all(b) ? a : b), null);
	for (; last; last = last.previous) legs.unshift(last);
	return legs;
}

/** The order of parts in which their cuts are nearest to each other. */
function partOrder(jobs: readonly Job[], head: Point, last?: Job): Job[] {
	const busy = jobs.filter(({ stops }) => stops.cut.length > 0);
	const idle = jobs.filter(({ stops }) => stops.cut.length === 0);
	if (busy.length < 2) return [...busy, ...idle];
	const groups = busy.map(({ stops }) => stops.cut);
	const exits = groups.map((stops) => stops.reduce((n, { ways }) => n + ways.length, 0));
	const all = exits.reduce((a, b) => a + b, 0);
	const size = groups.reduce((n, stops, i) => n + searchSize(stops) * (1 + all - exits[i]!), 0);
	const isExact = busy.length <= MOST_EXACT && size + (2 ** busy.length * all * all) / 4 <= EXACT;
	const end = last && busy.includes(last) ? busy.indexOf(last) : null;
	const order = isExact ? exactOrder(groups, head, end) : nearOrder(groups, head);
	return [...order.map((i) => busy[i]!), ...idle];
}

/** The best order of groups, as `search` finds it among the places at which each may end. */
function exactOrder(groups: readonly (readonly Stop[])[], head: Point, end: number | null) {
	const exits = groups.flatMap((stops, group) =>
		stops.flatMap(({ ways }) => ways.map(({ to }) => ({ group, to }))),
	);
	const index = new Map(exits.map(({ to }, i) => [to, i]));
	const row = (from: Point, own: number) => {
		const travels = new Float64Array(exits.length).fill(Number.POSITIVE_INFINITY);
		groups.forEach((stops, group) => {
			if (group === own) return;
			for (const { to, travel } of exactLegs(from, stops)) travels[index.get(to)!] = travel;
		});
		return travels;
	};
	const { best, trace } = search({
		groups: exits.map(({ group }) => group),
		before: groups.map(() => 0),
		first: row(head, -1),
		hops: exits.map(({ to, group }) => row(to, group)),
	});
	const isLast = (i: number) => end === null || exits[i]!.group === end;
	const last = best.reduce((a, d, i) => (isLast(i) && !(best[a]! <= d && isLast(a)) ? i : a), 0);
	return trace(last).map((i) => exits[i]!.group);
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

// Routes

/** What a search over subsets knows: ways in groups, of each of which one is taken. */
interface Search {
	/** Of every way. */
	readonly groups: readonly number[];
	/** Of every group the set of groups that come before it, a bit for each. */
	readonly before: readonly number[];
	/** Travel to the end of each way from where the head stands. */
	readonly first: Float64Array;
	/** The same from the end of each way. */
	readonly hops: readonly Float64Array[];
}

/** About how many steps a search through some stops takes. */
function searchSize(stops: readonly Stop[]): number {
	const n = stops.length;
	if (n > MOST_EXACT) return Number.POSITIVE_INFINITY;
	const ways = stops.reduce((sum, stop) => sum + stop.ways.length, 0);
	const free = stops.some(({ before }) => n > 1 && before.length === n - 1) ? n - 1 : n;
	return (2 ** free * ways * ways) / 4;
}

/**
 * The least travel through all groups by dynamic programming over their subsets (Held and Karp,
 * "A dynamic programming approach to sequencing problems", 1962): for each set of groups and each
 * way to end it, the least travel and the way before.
 *
 * @returns of each way the travel that ends with it, infinite where none may, and its trace
 */
function search({ groups, before, first, hops }: Search) {
	const n = groups.length;
	const full = 2 ** before.length - 1;
	const least = new Float64Array((full + 1) * n).fill(Number.POSITIVE_INFINITY);
	const previous = new Int32Array((full + 1) * n);
	const isNext = (set: number, group: number) =>
		(set & (1 << group)) === 0 && (before[group]! & ~set) === 0;
	const spread = (set: number, sum: number, travels: Float64Array, from: number) => {
		for (let b = 0; b < n; b++) {
			const group = groups[b]!;
			if (!isNext(set, group)) continue;
			const at = (set | (1 << group)) * n + b;
			if (sum + travels[b]! >= least[at]!) continue;
			least[at] = sum + travels[b]!;
			previous[at] = from;
		}
	};
	spread(0, 0, first, -1);
	for (let set = 1; set < full; set++) {
		for (let a = 0; a < n; a++) {
			const sum = least[set * n + a]!;
			if (sum < Number.POSITIVE_INFINITY) spread(set, sum, hops[a]!, a);
		}
	}
	const trace = (last: number) => {
		const ways: number[] = [];
		let set = full;
		for (let a = last; a >= 0; ) {
			ways.unshift(a);
			const from = previous[set * n + a]!;
			set &= ~(1 << groups[a]!);
			a = from;
		}
		return ways;
	};
	return { best: least.subarray(full * n), trace };
}

/** Of every way in which stops may end, the best leg to it. */
function exactLegs(head: Point, stops: readonly Stop[]): Leg[] {
	const all = stops.flatMap((stop) => stop.ways.map((way): Step => ({ stop, way })));
	const travelsFrom = (from: Point) =>
		Float64Array.from(all, ({ way }) => gap(from, way.from) + way.travel);
	const { best, trace } = search({
		groups: all.map(({ stop }) => stops.indexOf(stop)),
		before: stops.map(({ before }) => before.reduce((set, i) => set | (1 << i), 0)),
		first: travelsFrom(head),
		hops: all.map(({ way }) => travelsFrom(way.to)),
	});
	return all.flatMap(({ way }, i): Leg[] => {
		const travel = best[i]!;
		if (travel === Number.POSITIVE_INFINITY) return [];
		return [{ to: way.to, travel, steps: trace(i).map((w) => all[w]!) }];
	});
}

/**
 * A good leg through many stops: from the nearest to the nearest, then improved. A few are tried
 * from their given order too.
 *
 * @param toward - where the head goes afterwards, if that is known
 */
function nearLeg(head: Point, stops: readonly Stop[], toward: Point | null): Leg {
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

function withEnd({ travel, to }: Leg, toward: Point | null): number {
	return travel + (toward ? gap(to, toward) : 0);
}

/** How many stops must at least be done before each, one after the other. */
function levelsOf(stops: readonly Stop[]): number[] {
	const levels: (number | undefined)[] = [];
	const levelOf = (i: number): number => {
		levels[i] ??= stops[i]!.before.reduce((most, k) => Math.max(most, levelOf(k) + 1), 0);
		return levels[i]!;
	};
	return stops.map((_, i) => levelOf(i));
}

/** Level by level from the nearest stop to the nearest. */
function nearest(head: Point, stops: readonly Stop[], levels: readonly number[]): number[] {
	const order: number[] = [];
	const left = new Set(stops.keys());
	let at = head;
	for (let level = 0; left.size > 0; ) {
		let best = Number.POSITIVE_INFINITY;
		let next = -1;
		let end = at;
		for (const i of left) {
			if (levels[i] !== level) continue;
			for (const { from, to } of stops[i]!.ways) {
				const far = gap(at, from);
				if (far >= best) continue;
				best = far;
				next = i;
				end = to;
			}
		}
		if (next < 0) {
			level++;
			continue;
		}
		left.delete(next);
		order.push(next);
		at = end;
	}
	return order;
}

/** The best ways through stops in their order. */
function bestWays(head: Point, stops: readonly Stop[], toward: Point | null): Leg {
	let sums: number[] = [];
	const cameFrom: number[][] = [];
	stops.forEach(({ ways }, i) => {
		const before = stops[i - 1]?.ways;
		const from: number[] = [];
		const next = ways.map((way, w) => {
			if (!before) return gap(head, way.from) + way.travel;
			let best = Number.POSITIVE_INFINITY;
			for (let k = 0; k < before.length; k++) {
				const sum = sums[k]! + gap(before[k]!.to, way.from);
				if (sum >= best) continue;
				best = sum;
				from[w] = k;
			}
			return best + way.travel;
		});
		sums = next;
		cameFrom.push(from);
	});
	const ends = stops.at(-1)!.ways;
	const all = (k: number) => sums[k]! + (toward ? gap(ends[k]!.to, toward) : 0);
	let w = sums.reduce((a, _, k) => (all(k) < all(a) ? k : a), 0);
	const leg = { travel: sums[w]!, to: ends[w]!.to };
	const steps: Step[] = [];
	for (let i = stops.length - 1; i >= 0; i--) {
		steps.unshift({ stop: stops[i]!, way: stops[i]!.ways[w]! });
		w = cameFrom[i]![w]!;
	}
	return { ...leg, steps };
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

/** For every stop the numbers of those with ends nearest to its ends. */
function neighbours(stops: readonly Stop[]): Int32Array[] {
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

/**
 * Steps in an order that is being improved. The step at stop i has two numbers, i for the way it
 * is made and n + i for the same from its other end, where there is such a way; 2n stands for
 * where the head comes from and for where it goes.
 */
interface Line {
	readonly order: Int32Array;
	/** Where each stop stands in the order. */
	readonly places: Int32Array;
	readonly near: readonly Int32Array[];
	/** Starts and ends of all steps, by their numbers. */
	readonly fromX: Float64Array;
	readonly fromY: Float64Array;
	readonly toX: Float64Array;
	readonly toY: Float64Array;
	/** Whether it is known where the head goes. */
	readonly isBound: boolean;
	/** From the first step to each, and the same against the order with all steps turned, mm. */
	readonly along: Float64Array;
	readonly against: Float64Array;
	/** Stops beside which nothing has changed since no exchange was found there. */
	readonly quiet: Uint8Array;
}

function lineOf(
	steps: readonly Step[],
	order: Int32Array,
	near: Line["near"],
	head: Point,
	toward: Point | null,
): Line {
	const n = steps.length;
	const line: Line = {
		order,
		near,
		places: new Int32Array(n),
		fromX: new Float64Array(2 * n + 1),
		fromY: new Float64Array(2 * n + 1),
		toX: new Float64Array(2 * n + 1),
		toY: new Float64Array(2 * n + 1),
		isBound: toward !== null,
		along: new Float64Array(n),
		against: new Float64Array(n),
		quiet: new Uint8Array(n),
	};
	const put = (i: number, from: Point, to: Point) => {
		line.fromX[i] = from.x;
		line.fromY[i] = from.y;
		line.toX[i] = to.x;
		line.toY[i] = to.y;
	};
	steps.forEach((step, k) => {
		const other = turned(step).way;
		put(order[k]!, step.way.from, step.way.to);
		put(order[k]! + n, other.from, other.to);
	});
	put(2 * n, toward ?? head, head);
	reckon(line);
	return line;
}

/** The same way run from its other end, where there is such a one. */
function turned({ stop, way }: Step): Step {
	if (way.from === way.to || stop.marks.length > 1) return { stop, way };
	return { stop, way: stop.ways.find((other) => other !== way)! };
}

/** A step's number when it is run from its other end. */
function otherWay(i: number, n: number): number {
	return i < n ? i + n : i - n;
}

/** Travel from the end of one step to the start of another, mm. */
function hop({ fromX, fromY, toX, toY, isBound, order }: Line, a: number, b: number): number {
	if (b === 2 * order.length && !isBound) return 0;
	const x = toX[a]! - fromX[b]!;
	const y = toY[a]! - fromY[b]!;
	return Math.sqrt(x * x + y * y);
}

/** The number of the step at a place of the order. */
function stepAt({ order }: Line, k: number): number {
	return k < 0 || k >= order.length ? 2 * order.length : order[k]!;
}

/** Reckons a line anew after an exchange at some places. */
function reckon(line: Line, ...changed: number[]): void {
	const { order, places, along, against, quiet } = line;
	const n = order.length;
	for (let k = 0; k < n; k++) places[order[k]! % n] = k;
	for (let i = 1; i < n; i++) {
		const [a, b] = [order[i - 1]!, order[i]!];
		along[i] = along[i - 1]! + hop(line, a, b);
		against[i] = against[i - 1]! + hop(line, otherWay(b, n), otherWay(a, n));
	}
	for (const k of changed) if (k >= 0 && k < n) quiet[order[k]! % n] = 0;
}

/**
 * Improves a line until neither a run of steps turned around nor a run of up to three moved to
 * another place makes it shorter, or as near to it as the effort goes.
 *
 * @param levels - of the steps, rising: exchanges stay within one
 * @param looks - that may be taken
 * @returns looks that are left
 */
function exchange(line: Line, levels: readonly number[], looks: number): number {
	const n = line.order.length;
	let left = looks;
	for (let isBetter = true; isBetter && left > 0; ) {
		isBetter = false;
		for (let i = 0; i < n && left > 0; i++) {
			const stop = line.order[i]! % n;
			if (line.quiet[stop]) continue;
			const low = levels.indexOf(levels[i]!);
			const high = levels.lastIndexOf(levels[i]!);
			left -= (4 * LONGEST_RUN + 3) * NEIGHBOURS;
			if (turnRun(line, i, low, high) || moveRun(line, i, low, high)) isBetter = true;
			else line.quiet[stop] = 1;
		}
	}
	return left;
}

/** Turns the run around that begins or ends at i and gains most by it, if one does. */
function turnRun(line: Line, i: number, low: number, high: number): boolean {
	const { order, places, near } = line;
	const n = order.length;
	let most = GAIN;
	let best = -1;
	const look = (j: number) => {
		if (j < low || j > high) return;
		const gain = j < i ? turnGain(line, j, i) : turnGain(line, i, j);
		if (gain <= most) return;
		most = gain;
		best = j;
	};
	// A turn that gains brings one of the four steps at its ends to a nearer one.
	for (const stop of near[order[i]! % n]!) {
		const k = places[stop]!;
		look(k > i ? k - 1 : k + 1);
	}
	if (i > low)
		for (const stop of near[order[i - 1]! % n]!) if (places[stop]! > i) look(places[stop]!);
	if (i < high)
		for (const stop of near[order[i + 1]! % n]!) if (places[stop]! < i) look(places[stop]!);
	look(low);
	look(i);
	look(high);
	if (best < 0) return false;
	const [from, to] = [Math.min(i, best), Math.max(i, best)];
	turnAround(line.order, from, to);
	reckon(line, from - 1, from, to, to + 1);
	return true;
}

function turnGain(line: Line, i: number, j: number): number {
	const { order, along, against } = line;
	const n = order.length;
	const [first, last] = [order[i]!, order[j]!];
	const [prior, next] = [stepAt(line, i - 1), stepAt(line, j + 1)];
	const now = hop(line, prior, first) + along[j]! - along[i]! + hop(line, last, next);
	const then = hop(line, prior, otherWay(last, n)) + against[j]! - against[i]!;
	return now - then - hop(line, otherWay(first, n), next);
}

function turnAround(order: Int32Array, i: number, j: number): void {
	const run = order.subarray(i, j + 1).reverse();
	for (let k = 0; k < run.length; k++) run[k] = otherWay(run[k]!, order.length);
}

/** Moves the run of up to three from i on, either way round, to where it gains most. */
function moveRun(line: Line, i: number, low: number, high: number): boolean {
	const { order, places, near } = line;
	const n = order.length;
	let most = GAIN;
	let [end, to] = [-1, -1];
	for (let j = i; j <= Math.min(high, i + LONGEST_RUN - 1); j++) {
		const taken = runGain(line, i, j);
		if (taken <= GAIN) continue;
		const look = (k: number) => {
			if (k < low || k > high + 1 || (k >= i && k <= j + 1)) return;
			const gain = taken - runCost(line, i, j, k);
			if (gain <= most) return;
			most = gain;
			end = j;
			to = k;
		};
		for (const step of [order[i]!, order[j]!]) {
			for (const stop of near[step % n]!) {
				look(places[stop]!);
				look(places[stop]! + 1);
			}
		}
		look(low);
		look(high + 1);
	}
	if (end < 0) return false;
	if (straightCost(line, i, end, to) > runCost(line, i, end, to) + GAIN) turnAround(order, i, end);
	const run = order.slice(i, end + 1);
	if (to < i) order.copyWithin(to + run.length, to, i);
	else order.copyWithin(i, end + 1, to);
	const at = to < i ? to : to - run.length;
	order.set(run, at);
	reckon(line, i - 1, i, end, end + 1, at - 1, at, at + run.length - 1, at + run.length);
	return true;
}

/** What a line is shorter by without the run from i to j, mm. */
function runGain(line: Line, i: number, j: number): number {
	const [prior, next] = [stepAt(line, i - 1), stepAt(line, j + 1)];
	const ways = hop(line, prior, line.order[i]!) + hop(line, line.order[j]!, next);
	return ways - hop(line, prior, next);
}

/** What it is longer by with the run in front of place k, whichever way round is shorter, mm. */
function runCost(line: Line, i: number, j: number, k: number): number {
	const { order, along, against } = line;
	const n = order.length;
	const [a, b] = [stepAt(line, k - 1), stepAt(line, k)];
	const longer = against[j]! - against[i]! - (along[j]! - along[i]!);
	const ways = hop(line, a, otherWay(order[j]!, n)) + hop(line, otherWay(order[i]!, n), b);
	return Math.min(straightCost(line, i, j, k), ways + longer - hop(line, a, b));
}

/** The same with the run as it is. */
function straightCost(line: Line, i: number, j: number, k: number): number {
	const [a, b] = [stepAt(line, k - 1), stepAt(line, k)];
	return hop(line, a, line.order[i]!) + hop(line, line.order[j]!, b) - hop(line, a, b);
}

function gap(a: Point, b: Point): number {
	const x = a.x - b.x;
	const y = a.y - b.y;
	return Math.sqrt(x * x + y * y);
}
