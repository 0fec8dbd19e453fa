import { loadJob, withFit } from "../../job/index.js";
import { type Problem, placeText, problem } from "../../problem/index.js";
import { type FitBlock, fitBlocks } from "../../report/index.js";
import { type Console, EXIT, table, wrapText } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { readJobFile } from "../job-file.js";
import { newFile } from "../new-file.js";
import { residualChart } from "../residual-chart.js";
import { refused } from "./make.js";

/** Flags of `camber fit`. */
export interface FitFlags {
	readonly write?: string;
	readonly force?: boolean;
	readonly json?: boolean;
	readonly allowUnusual?: boolean;
}

/** `camber fit JOB`: what a job's readings come to, and what they cannot decide. */
export async function fitCommand(
	path: string,
	flags: FitFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const refuse = (problems: readonly Problem[]) =>
		refused(console, flags, problems, path, placeText, flags.write !== undefined);
	const file = await readJobFile(path, disk);
	if ("code" in file) return refuse([file]);
	const { allowUnusual = false } = flags;
	const read = await loadJob(file.text, { load: file.load, allowUnusual });
	if (!read.ok) return refuse(read.problems);
	const { job } = read;
	if (!job.fit && !job.wireFit) return refuse([problem("no-readings", ["neck"], {})]);
	const blocks = fitBlocks(job);
	if (flags.json)
		console.out(`${JSON.stringify({ job: job.bench.job, units: "mm", blocks }, null, "\t")}\n`);
	else console.out(`${job.bench.job}, lengths in mm\n\n${blocks.map(blockText).join("\n\n")}\n`);
	if (flags.write === undefined) return EXIT.ok;
	const failed = await newFile(disk, flags.write, withFit(file.text, job), flags.force ?? false);
	if (failed) return refuse([failed]);
	if (!flags.json)
		console.out(
			`\nWritten to ${flags.write}: numbers count there, the readings stay as the record.\n`,
		);
	return EXIT.ok;
}

function blockText({ title, facts, rows, notes, residuals }: FitBlock): string {
	const named = facts.map(([name, value]) => wrapText(`  ${name}: ${value}`, "    "));
	return [
		title,
		...named,
		...(rows.length > 0 ? [table(rows)] : []),
		...residuals.map(residualChart),
		...notes.map((note) => wrapText(`  - ${note}`, "    ")),
	].join("\n");
}
