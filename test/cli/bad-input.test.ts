import { dirname } from "node:path";
import { describe, expect, it } from "vitest";
import { BAD_JOBS } from "../support/bad-jobs/index.js";
import { placeOf } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot } from "../support/temp-folder.js";

describe("a bad job", () => {
	it.each(BAD_JOBS)("is refused with its place and the way out: $title", async (job) => {
		const { file, out } = jobFile(job.text);
		const before = snapshot(dirname(file));
		const plain = await camber(["make", file, "-o", out]);
		expect(plain.code, plain.err).toBe(2);
		for (const piece of job.says) expect(plain.err).toContain(piece);
		const [first] = plain.err.split("\n");
		if (job.at === undefined) expect(first).toContain(`error: ${file}: `);
		else {
			const { line, column } = typeof job.at === "string" ? placeOf(job.text, job.at) : job.at;
			expect(first).toContain(`error: ${file}:${line}:${column}: `);
		}
		expect(plain.err).not.toMatch(/undefined|\bNaN mm|\s""|\n\s+at |Error:/u);
		expect(snapshot(dirname(file))).toEqual(before);
	});
});
