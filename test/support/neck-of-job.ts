import { readJob } from "../../src/job/index.js";
import type { Neck } from "../../src/neck/index.js";
import type { Problem } from "../../src/problem/index.js";
import { problemText } from "../../src/problem/index.js";
import { jobText } from "./job-text.js";

/** The job's neck of these values, or why there is none. */
export function neckOrProblems(values: string): Neck | readonly Problem[] {
	const read = readJob(jobText(/neck:[\s\S]*?\nwire/u, `neck: ${values}\nwire`));
	return read.ok ? read.job.bench.neck : read.problems;
}

/** The neck of these values. @throws Error if a job with them is refused */
export function neckOfJob(values: string): Neck {
	const neck = neckOrProblems(values);
	if ("frets" in neck) return neck;
	throw new Error(neck.map(problemText).join("\n"));
}
