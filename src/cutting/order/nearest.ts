import { distance, type Point } from "../../geometry/index.js";
import type { Stop } from "./stop.js";

/** How many stops must at least be done before each, one after the other. */
export function levelsOf(stops: readonly Stop[]): number[] {
	const levels: (number | undefined)[] = [];
	const levelOf = (i: number): number => {
		levels[i] ??= stops[i]!.before.reduce((most, k) => Math.max(most, levelOf(k) + 1), 0);
		return levels[i]!;
	};
	return stops.map((_, i) => levelOf(i));
}

/** Level by level from the nearest stop to the nearest. */
export function nearest(head: Point, stops: readonly Stop[], levels: readonly number[]): number[] {
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
				const far = distance(at, from);
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
