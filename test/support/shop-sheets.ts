import { readFileSync } from "node:fs";
import { readJob } from "../../src/job/index.js";
import type { Paper } from "../../src/paper/index.js";
import { shopSheet } from "../../src/tools/shop-sheet.js";
import type { Bench, Built } from "../../src/tools/tool.js";
import { LETTERS } from "./made-parts.js";
import { A4 } from "./papers.js";

const BENCHES = new Map<string, Omit<Bench, "paper">>();

/** The bench of a job, with the paper in its printer. @throws Error if the job is refused */
export function paperBench(job: object | string, paper: Paper = A4): Bench {
	const text = typeof job === "string" ? job : JSON.stringify(job);
	const known = BENCHES.get(text) ?? benchOf(text);
	BENCHES.set(text, known);
	return { ...known, paper };
}

function benchOf(text: string): Omit<Bench, "paper"> {
	const read = readJob(text, { allowUnusual: false, only: [] });
	if (!read.ok) throw new Error(JSON.stringify(read.problems));
	return { ...read.job.bench, layers: 1, letters: LETTERS };
}

/** The bench of an example job. */
export function exampleBench(name: string, paper: Paper = A4): Bench {
	return paperBench(readFileSync(`examples/${name}.yaml`, "utf8"), paper);
}

/** A shop sheet with some of its settings given. */
export function sheetOf(bench: Bench, given: object = {}): Built {
	return shopSheet.build(bench, shopSheet.settings("mm").parse(given), "shop-sheet");
}
