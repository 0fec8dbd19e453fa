import { loadJob } from "../../job/index.js";
import { type FretRow, fretColumns, fretTable, isFanned, type Neck } from "../../neck/index.js";
import { stable } from "../../units/index.js";
import { type Console, EXIT, reportProblems, table } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { readJobFile } from "../job-file.js";

export interface FretsFlags {
	readonly csv?: boolean;
	/** CSV as spreadsheets read it where the decimal sign is a comma. */
	readonly decimalComma?: boolean;
	readonly json?: boolean;
	readonly allowUnusual?: boolean;
}

/** `camber frets JOB`: the neck's fret table. */
export async function fretsCommand(
	path: string,
	flags: FretsFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const file = await readJobFile(path, disk);
	if ("code" in file) {
		reportProblems(console, [file], "");
		return EXIT.refused;
	}
	const { allowUnusual = false } = flags;
	const read = await loadJob(file.text, { load: file.load, allowUnusual });
	if (!read.ok) {
		reportProblems(console, read.problems, path);
		return EXIT.refused;
	}
	const { neck, job } = read.job.bench;
	const rows = fretTable(neck);
	if (flags.json) console.out(`${JSON.stringify(jsonTable(job, neck, rows), null, "\t")}\n`);
	else if (flags.csv) console.out(csvTable(neck, rows, flags.decimalComma ?? false));
	else console.out(`${job}, lengths in mm from the theoretical nut\n${textTable(neck, rows)}\n`);
	return EXIT.ok;
}

function textTable(neck: Neck, rows: readonly FretRow[]): string {
	const cols = fretColumns(neck);
	return table([cols.map((c) => c.head), ...rows.map((r) => cols.map((c) => c.cell(r)))]);
}

/**
 * RFC 4180: CRLF, quotes where a cell needs them; units in the heads, since no line above says
 * them. With a decimal comma the semicolon separates, as spreadsheets of such places expect.
 */
function csvTable(neck: Neck, rows: readonly FretRow[], decimalComma: boolean): string {
	const cols = fretColumns(neck);
	const separator = decimalComma ? ";" : ",";
	const heads = cols.map(({ head, unit }) => (unit ? `${head} ${unit}` : head));
	const cells = rows.map((row) => cols.map((c) => figure(c.cell(row), decimalComma)));
	return [heads, ...cells]
		.map((line) => `${line.map((cell) => quoted(cell, separator)).join(separator)}\r\n`)
		.join("");
}

/**
 * A figure as a spreadsheet takes it for a number. It opens 3/4 as a day of a month, quoted or
 * not, but 0 3/4 and 13 5/32 as numbers shown as fractions (common practice, no source).
 */
function figure(cell: string, decimalComma: boolean): string {
	if (/^-?\d+\/\d+$/u.test(cell)) return cell.replace(/^-?/u, "$&0 ");
	return decimalComma && /^-?\d+\.\d+$/u.test(cell) ? cell.replace(".", ",") : cell;
}

function quoted(cell: string, separator: string): string {
	const needs = cell.includes(separator) || /["\r\n]/u.test(cell);
	return needs ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function jsonTable(job: string, neck: Neck, rows: readonly FretRow[]) {
	const numbers = (row: FretRow) =>
		Object.fromEntries(
			Object.entries(row).map(([k, v]) => [k, typeof v === "number" ? stable(v) : v]),
		);
	return { job, units: "mm, rad", fanned: isFanned(neck), frets: rows.map(numbers) };
}
