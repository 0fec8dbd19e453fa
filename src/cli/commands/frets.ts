import { readJob } from "../../job/index.js";
import { type FretRow, fretColumns, fretTable, isFanned, type Neck } from "../../neck/index.js";
import { stable } from "../../units/index.js";
import { type Console, EXIT, reportProblems, table } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { readJobFile } from "../job-file.js";

export interface FretsFlags {
	readonly csv?: boolean;
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
	const read = readJob(file.text, { allowUnusual: flags.allowUnusual ?? false });
	if (!read.ok) {
		reportProblems(console, read.problems, path);
		return EXIT.refused;
	}
	const { neck, job } = read.job.bench;
	const rows = fretTable(neck);
	if (flags.json) console.out(`${JSON.stringify(jsonTable(job, neck, rows), null, "\t")}\n`);
	else if (flags.csv) console.out(csvTable(neck, rows));
	else console.out(`${job}, lengths in mm from the theoretical nut\n${textTable(neck, rows)}\n`);
	return EXIT.ok;
}

function textTable(neck: Neck, rows: readonly FretRow[]): string {
	const cols = fretColumns(neck);
	return table([cols.map((c) => c.head), ...rows.map((r) => cols.map((c) => c.cell(r)))]);
}

/** RFC 4180: commas, CRLF; no cell needs quotes. */
function csvTable(neck: Neck, rows: readonly FretRow[]): string {
	const cols = fretColumns(neck);
	const lines = [cols.map((c) => c.head), ...rows.map((r) => cols.map((c) => c.cell(r)))];
	return lines.map((cells) => `${cells.join(",")}\r\n`).join("");
}

function jsonTable(job: string, neck: Neck, rows: readonly FretRow[]) {
	const numbers = (row: FretRow) =>
		Object.fromEntries(
			Object.entries(row).map(([k, v]) => [k, typeof v === "number" ? stable(v) : v]),
		);
	return { job, units: "mm, rad", fanned: isFanned(neck), frets: rows.map(numbers) };
}
