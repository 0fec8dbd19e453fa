import type { Line } from "./line.js";
import { LONGEST_RUN, moveRun } from "./move-run.js";
import { NEIGHBOURS } from "./neighbours.js";
import { turnRun } from "./turn-run.js";

/**
 * Improves a line until neither a run of steps turned around nor a run of up to three moved to
 * another place makes it shorter, or as near to it as the effort goes.
 *
 * @param levels - of the steps, rising: exchanges stay within one
 * @param looks - that may be taken
 * @returns looks that are left
 */
export function exchange(line: Line, levels: readonly number[], looks: number): number {
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
