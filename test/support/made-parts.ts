import type { Part } from "../../src/drawing/index.js";
import { type Job, readJob } from "../../src/job/index.js";
import { strokeLettering } from "../../src/lettering/index.js";
import type { Neck } from "../../src/neck/index.js";
import type { Problem } from "../../src/problem/index.js";
import type { Bench } from "../../src/tools/index.js";

/** What the tools make of a job, before anything is drawn or written. */
export interface MadeParts {
	readonly neck: Neck;
	readonly bench: Bench;
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
}

export const LETTERS = strokeLettering();

/** Jobs read before: properties that draw the same jobs share them. */
const READ = new Map<string, Job>();

function jobOf(job: object | string): Job {
	const text = typeof job === "string" ? job : JSON.stringify(job);
	const known = READ.get(text);
	if (known) return known;
	const read = readJob(text, { allowUnusual: false, only: [] });
	if (!read.ok) throw new Error(JSON.stringify(read.problems));
	READ.set(text, read.job);
	return read.job;
}

/** A job's neck. @throws Error if the job is refused */
export function neckOf(job: object): Neck {
	return jobOf(job).bench.neck;
}

/** A job's neck and parts. @throws Error if the job itself is refused */
export function madeParts(job: object | string): MadeParts {
	const { bench, wanted } = jobOf(job);
	const built = wanted.map(({ tool, name, settings, stock, layers }) => {
		const own = { ...bench, stock, layers, letters: LETTERS };
		return tool.build(own, { ...settings, ...tool.defaults(own, settings) }, name);
	});
	return {
		neck: bench.neck,
		bench: { ...bench, layers: 1, letters: LETTERS },
		parts: built.flatMap(({ parts }) => parts),
		problems: built.flatMap(({ problems }) => problems),
	};
}

/** The neck of some job values over an ordinary one. */
export function neckWith(values: object): Neck {
	return neckOf(jobWith(values, ["slot-strip"]));
}

/** A job for an ordinary neck, some of its values replaced. */
export function jobWith(neck: object, make: readonly unknown[], other: object = {}) {
	return {
		format: 1,
		job: "Plain neck",
		neck: {
			scale: 647.7,
			frets: 22,
			radius: 304.8,
			width: { nut: 43, "last-fret": 56 },
			...neck,
		},
		wire: { "crown-width": 2.7, "crown-height": 1.3, "tang-width": 0.53, "tang-depth": 1.6 },
		stock: { material: "acrylic", thickness: 3 },
		...other,
		make,
	};
}
