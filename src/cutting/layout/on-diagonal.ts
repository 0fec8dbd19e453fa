import type { Part, Placed } from "../../drawing/index.js";
import { STAY } from "../../geometry/index.js";
import type { Bed } from "../machine.js";
import { mayTurn } from "./boxed.js";
import { EXACT, extentsOf, withCorner } from "./corner.js";

/** Coarse turns of half a circle; a part turned by half a circle more takes the same room. */
const COARSE = 180;

/** How often the turns around a good one are looked at ten times as closely. */
const CLOSER = 9;

/**
 * A part alone in the middle of the bed at the turn that leaves most room beside it, or null
 * where it fits at none. The room is taken from the part's moved paths, not from its box.
 */
export function onDiagonal(part: Part, bed: Bed): Placed | null {
	if (!mayTurn(part)) return null;
	const slack = (turn: number) => roomLeft(part, turn, bed);
	const step = Math.PI / COARSE;
	const coarse = Array.from({ length: COARSE }, (_, i) => slack(i * step));
	const peaks = coarse.flatMap((here, i) => {
		const before = coarse.at(i - 1)!;
		const after = coarse[(i + 1) % COARSE]!;
		return here >= before && here >= after ? [peakNear(slack, i * step, step)] : [];
	});
	const best = peaks.reduce((a, b) => (slack(b) > slack(a) ? b : a));
	if (slack(best) < -EXACT) return null;
	// Half a circle less leaves no part upside down.
	const turn = best > Math.PI / 2 ? best - Math.PI : best;
	const { minX, minY, maxX, maxY } = extentsOf({ part, move: { ...STAY, turn } });
	const x = (bed.size.x - (maxX - minX)) / 2;
	const y = (bed.size.y - (maxY - minY)) / 2;
	return withCorner(part, turn, { x, y });
}

/** What is left of the usable bed in the direction in which less is left, mm; below 0 outside. */
function roomLeft(part: Part, turn: number, { size, margin }: Bed): number {
	const box = extentsOf({ part, move: { ...STAY, turn } });
	const across = size.x - 2 * margin - (box.maxX - box.minX);
	return Math.min(across, size.y - 2 * margin - (box.maxY - box.minY));
}

function peakNear(slack: (turn: number) => number, from: number, step: number): number {
	let best = { turn: from, left: slack(from) };
	let reach = step;
	for (let i = 0; i < CLOSER; i++) {
		const middle = best.turn;
		for (let k = -10; k <= 10; k++) {
			const turn = middle + (k * reach) / 10;
			const left = slack(turn);
			if (left > best.left) best = { turn, left };
		}
		reach /= 10;
	}
	return best.turn;
}
