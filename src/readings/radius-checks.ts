import { type Problem, problem } from "../problem/index.js";
import type { ReadingPath } from "./radius-estimate.js";

/** A problem for each of these sizes that is given and not a finite length above 0. */
export function needsAboveZero(
	sizes: Readonly<Record<string, number | undefined>>,
	path: ReadingPath,
): Problem[] {
	return Object.entries(sizes).flatMap(([key, given]) =>
		given === undefined || (Number.isFinite(given) && given > 0)
			? []
			: [problem("reading-not-above-zero", [...path, key], { key, given: String(given) })],
	);
}

/** A problem for a chord that reaches beyond the board, where its width is given. */
export function beyondBoard(
	key: string,
	chord: number,
	board: number | undefined,
	path: ReadingPath,
): Problem[] {
	if (board === undefined || !(chord > board)) return [];
	return [problem("chord-beyond-board", [...path, key], { chord, board })];
}
