import { distance, type Point } from "../../geometry/index.js";
import type { Leg, Step } from "./leg.js";
import type { Stop } from "./stop.js";

/** The best ways through stops in their order. */
export function bestWays(head: Point, stops: readonly Stop[], toward: Point | null): Leg {
	let sums: number[] = [];
	const cameFrom: number[][] = [];
	stops.forEach(({ ways }, i) => {
		const before = stops[i - 1]?.ways;
		const from: number[] = [];
		const next = ways.map((way, w) => {
			if (!before) return distance(head, way.from) + way.travel;
			let best = Number.POSITIVE_INFINITY;
			for (let k = 0; k < before.length; k++) {
				const sum = sums[k]! + distance(before[k]!.to, way.from);
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
	const all = (k: number) => sums[k]! + (toward ? distance(ends[k]!.to, toward) : 0);
	let w = sums.reduce((a, _, k) => (all(k) < all(a) ? k : a), 0);
	const leg = { travel: sums[w]!, to: ends[w]!.to };
	const steps: Step[] = [];
	for (let i = stops.length - 1; i >= 0; i--) {
		steps.unshift({ stop: stops[i]!, way: stops[i]!.ways[w]! });
		w = cameFrom[i]![w]!;
	}
	return { ...leg, steps };
}
