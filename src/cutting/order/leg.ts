import { distance, type Point } from "../../geometry/index.js";
import type { Stop, Way } from "./stop.js";

/** Ways that differ by less are equal, mm. */
export const GAIN = 1e-9;

/** A stop, done in one of its ways. */
export interface Step {
	readonly stop: Stop;
	readonly way: Way;
}

/** A way through all stops of a part. */
export interface Leg {
	readonly steps: readonly Step[];
	readonly travel: number;
	readonly to: Point;
}

/** Travel of a leg and of the way on from it, if that is known, mm. */
export function withEnd({ travel, to }: Leg, toward: Point | null): number {
	return travel + (toward ? distance(to, toward) : 0);
}
