import { type Problem, placeText, problemText } from "../problem/index.js";

/** Where a command writes; tests give their own. */
export interface Console {
	out(text: string): void;
	err(text: string): void;
}

/** Exit codes: all well; refused; camber itself failed. */
export const EXIT = { ok: 0, refused: 2, failed: 70 } as const;

/** Longest line on the console. */
const LINE = 100;

/** Most problems told at once: more of them have one cause. */
const MOST_TOLD = 40;

/**
 * Problems, one a line, with their places.
 *
 * @param writes - whether the command would have written files
 */
export function reportProblems(
	console: Console,
	problems: readonly Problem[],
	file: string,
	placeOf: (p: Problem, file: string) => string = placeText,
	writes = true,
): void {
	for (const p of problems.slice(0, MOST_TOLD)) {
		const place = placeOf(p, file);
		console.err(`${p.severity}: ${place ? `${place}: ` : ""}${problemText(p)}\n`);
	}
	if (problems.length > MOST_TOLD) console.err(`And ${problems.length - MOST_TOLD} more.\n`);
	const errors = problems.filter((p) => p.severity === "error").length;
	if (!writes) return;
	if (errors > 1) console.err(`${errors} errors; no file was written.\n`);
	else if (errors === 1) console.err("No file was written.\n");
}

/** Text broken between words to the console's width, later lines set in. */
export function wrapText(text: string, indent = ""): string {
	const lines: string[] = [];
	for (const word of text.split(" ")) {
		const last = lines.at(-1);
		if (last !== undefined && `${last} ${word}`.length <= LINE)
			lines[lines.length - 1] += ` ${word}`;
		else lines.push(lines.length === 0 ? word : `${indent}${word}`);
	}
	return lines.join("\n");
}

/** Rows in columns, as wide as their widest cell; numbers right-aligned. */
export function table(rows: readonly (readonly string[])[], gap = "  "): string {
	const widths = rows[0]!.map((_, i) => Math.max(...rows.map((r) => (r[i] ?? "").length)));
	const body = rows.slice(1);
	const numeric = widths.map((_, i) =>
		body.every((r) => /^[-\d]/u.test(r[i] ?? "") || r[i] === ""),
	);
	return rows
		.map((row) =>
			row
				.map((cell, i) => (numeric[i] ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
				.join(gap)
				.trimEnd(),
		)
		.join("\n");
}
