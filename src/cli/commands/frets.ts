import { readJob } from "../../job/index.js";
import { type FretRow, fretTable, isFanned, type Neck } from "../../neck/index.js";
import { fixed, inches, MM_PER_INCH, sixtyFourth, stable, trimmed } from "../../units/index.js";
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

/** A column of the table: its head and how a row fills it. */
interface Column {
	readonly head: string;
	readonly cell: (row: FretRow) => string;
}

function columns(neck: Neck): Column[] {
	const mm = (value: number | null) => (value === null ? "" : fixed(value, 3));
	const bound = neck.binding > 0;
	const fanned = isFanned(neck);
	return [
		{ head: "fret", cell: (r) => String(r.fret) },
		{ head: "from nut", cell: (r) => mm(r.fromNut) },
		{ head: "inch", cell: (r) => inches(r.fromNut) },
		{ head: "1/64 in", cell: (r) => sixtyFourth(r.fromNut).text },
		{ head: "off by", cell: (r) => fixed(sixtyFourth(r.fromNut).error, 3) },
		{ head: "gap", cell: (r) => mm(r.gap) },
		...(fanned
			? [
					{ head: "bass string", cell: (r: FretRow) => mm(r.bass) },
					{ head: "treble string", cell: (r: FretRow) => mm(r.treble) },
					{ head: "slant deg", cell: (r: FretRow) => fixed((r.slant * 180) / Math.PI, 3) },
				]
			: []),
		{ head: "width", cell: (r) => mm(r.width) },
		...(bound || fanned ? [{ head: "fret length", cell: (r: FretRow) => mm(r.fretLength) }] : []),
		...(bound ? [{ head: "slot length", cell: (r: FretRow) => mm(r.slotLength) }] : []),
		{ head: "radius", cell: (r) => (r.radius === null ? "flat" : mm(r.radius)) },
		{
			head: "radius in",
			cell: (r) => (r.radius === null ? "flat" : trimmed(r.radius / MM_PER_INCH, 3)),
		},
	];
}

function textTable(neck: Neck, rows: readonly FretRow[]): string {
	const cols = columns(neck);
	return table([cols.map((c) => c.head), ...rows.map((r) => cols.map((c) => c.cell(r)))]);
}

/** RFC 4180: commas, CRLF; no cell needs quotes. */
function csvTable(neck: Neck, rows: readonly FretRow[]): string {
	const cols = columns(neck);
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
