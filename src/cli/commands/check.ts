import { make } from "../../make.js";
import { type Console, EXIT, reportProblems } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { readJobFile } from "../job-file.js";
import { count, partLines, printCautions, printMade } from "./make.js";

export interface CheckFlags {
	readonly machine?: string;
	readonly paper?: string;
	readonly sheets?: boolean;
	readonly allowUnusual?: boolean;
}

/** `camber check JOB`: all problems, or what would be made; writes nothing. */
export async function checkCommand(
	path: string,
	flags: CheckFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const job = await readJobFile(path, disk, flags.machine);
	if ("code" in job) {
		reportProblems(console, [job], "");
		return EXIT.refused;
	}
	const made = await make(job.text, {
		load: job.load,
		...(flags.paper === undefined ? {} : { paper: flags.paper }),
		...(flags.sheets === false ? { sheets: false } : {}),
		...(job.machine ? { machine: job.machine } : {}),
		allowUnusual: flags.allowUnusual ?? false,
	});
	if (!made.ok) {
		reportProblems(console, made.problems, path);
		return EXIT.refused;
	}
	const parts = partLines(made);
	const left = made.skipped.length;
	const without = left > 0 ? `, ${count(left, "tool")} of the kit not` : "";
	console.out(`${path}: no problems. It would make ${count(parts.length, "part")}${without}:\n`);
	printMade(console, made);
	printCautions(console, made);
	return EXIT.ok;
}
