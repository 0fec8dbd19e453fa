import Papa from "papaparse";
import { type Problem, problem } from "../problem/index.js";
import { parseLength, type Unit } from "../units/index.js";

/** One reading of a file of slots. */
export interface FileReading {
	readonly fret: number;
	readonly at: number;
	/** The line it was read along, where the file has a column for it. */
	readonly string: "bass" | "treble" | null;
}

/** Most rows of a file of readings. */
const MOST_ROWS = 5000;
const FRET = ["fret", "slot", "n"];
const AT = ["at", "reading", "position", "distance", "from nut"];
const STRING = ["string", "line", "side"];

/**
 * Readings of slots from a table with a head: a column for the fret, one for the reading, and, on
 * a fanned board, one that says bass or treble. Commas, semicolons or tabs between cells; with
 * semicolons or tabs a decimal comma is one. A unit may stand in the head, "reading mm", or behind
 * the figures.
 *
 * @param unit - of figures without one, where the head names none
 */
export function readingsOfFile(
	text: string,
	file: string,
	unit: Unit,
): readonly FileReading[] | Problem {
	const refuse = (row: number, reason: string) =>
		problem("readings-file", [], { file, row, reason });
	const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/u, "").trim(), {
		skipEmptyLines: true,
	});
	const [head, ...rows] = parsed.data;
	if (!head || rows.length === 0) return refuse(1, "it has no rows under its head");
	if (rows.length > MOST_ROWS) return refuse(1, `it has more than ${MOST_ROWS} rows`);
	const names = head.map((name) => name.trim().toLowerCase());
	const column = (known: readonly string[]) =>
		names.findIndex((name) => known.some((k) => name === k || name.startsWith(`${k} `)));
	const [fret, at, string] = [column(FRET), column(AT), column(STRING)];
	if (fret < 0 || at < 0) {
		return refuse(1, `its head names ${names.join(", ") || "nothing"}, not fret and reading`);
	}
	const own = /\b(mm|cm|in)\W*$/u.exec(names[at]!)?.[1] as Unit | undefined;
	const isCommaDecimal = parsed.meta.delimiter !== ",";
	const readings: FileReading[] = [];
	for (const [i, cells] of rows.entries()) {
		const given = (cells[at] ?? "").trim();
		const number = isCommaDecimal ? given.replace(/^([+-]?\d+),(\d+)/u, "$1.$2") : given;
		const length = parseLength(number, own ?? unit);
		const n = Number((cells[fret] ?? "").trim() || Number.NaN);
		const along = string < 0 ? "" : (cells[string] ?? "").trim().toLowerCase();
		if (!Number.isInteger(n) || n < 1) return refuse(i + 2, `"${cells[fret] ?? ""}" is no fret`);
		if (typeof length !== "number") return refuse(i + 2, `"${given}" is no length`);
		if (string >= 0 && along !== "bass" && along !== "treble") {
			return refuse(i + 2, `"${along}" is neither bass nor treble`);
		}
		readings.push({
			fret: n,
			at: length,
			string: along === "" ? null : (along as "bass" | "treble"),
		});
	}
	return readings;
}
