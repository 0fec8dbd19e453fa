import type { Where } from "../problem/index.js";

/**
 * Most levels of a text that is parsed at all; far more than a job may have, far fewer than would
 * exhaust the parser's stack.
 */
const MOST_LEVELS = 100;

/** Where a text is nested so deep that it must not be parsed; null if nowhere. Comments do not count. */
export function deepPlace(text: string): Where | null {
	const columns: number[] = [];
	let open = 0;
	for (const [i, whole] of text.split("\n").entries()) {
		const line = whole.replace(/(^|\s)#.*$/u, "");
		for (const column of line.trim() === "" ? [] : blockColumns(line)) {
			while (columns.length > 0 && columns.at(-1)! >= column) columns.pop();
			columns.push(column);
			if (columns.length > MOST_LEVELS) return { path: [], line: i + 1, column: column + 1 };
		}
		for (const { 0: sign, index } of line.matchAll(/[[\]{}]/gu)) {
			open = "[{".includes(sign) ? open + 1 : Math.max(0, open - 1);
			if (open > MOST_LEVELS) return { path: [], line: i + 1, column: index + 1 };
		}
	}
	return null;
}

/** Columns at which a line begins a block: its first sign, and what follows each "- " or "? ". */
function blockColumns(line: string): number[] {
	const lead = /^\s*(?:[-?:]\s+)*/u.exec(line)![0];
	return [...[...lead.matchAll(/[-?:]/gu)].map(({ index }) => index), lead.length];
}
