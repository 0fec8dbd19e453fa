import { GAIN } from "./leg.js";
import { hop, type Line, otherWay, reckon, stepAt } from "./line.js";

/** Turns the run around that begins or ends at i and gains most by it, if one does. */
export function turnRun(line: Line, i: number, low: number, high: number): boolean {
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

/** Turns the steps from i to j around, each run from its other end. */
export function turnAround(order: Int32Array, i: number, j: number): void {
	const run = order.subarray(i, j + 1).reverse();
	for (let k = 0; k < run.length; k++) run[k] = otherWay(run[k]!, order.length);
}
