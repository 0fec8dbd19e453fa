import { GAIN } from "./leg.js";
import { hop, type Line, otherWay, reckon, stepAt } from "./line.js";
import { turnAround } from "./turn-run.js";

/** Longest run of stops that is moved to another place in one go. */
export const LONGEST_RUN = 3;

/** Moves the run of up to three from i on, either way round, to where it gains most. */
export function moveRun(line: Line, i: number, low: number, high: number): boolean {
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
	move(line, i, end, to);
	return true;
}

/** Moves the run from i to j in front of place k, whichever way round is shorter. */
function move(line: Line, i: number, j: number, k: number): void {
	const { order } = line;
	if (straightCost(line, i, j, k) > runCost(line, i, j, k) + GAIN) turnAround(order, i, j);
	const run = order.slice(i, j + 1);
	if (k < i) order.copyWithin(k + run.length, k, i);
	else order.copyWithin(i, j + 1, k);
	const at = k < i ? k : k - run.length;
	order.set(run, at);
	reckon(line, i - 1, i, j, j + 1, at - 1, at, at + run.length - 1, at + run.length);
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
