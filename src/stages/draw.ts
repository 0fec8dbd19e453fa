import { kerfIn } from "../cutting/index.js";
import { type Sheet, sheetOfOne, type TitleFacts } from "../drawing/index.js";
import type { Job } from "../job/index.js";
import type { Lettering } from "../lettering/index.js";
import { cautionsFor } from "../shop/index.js";
import type { MadeTool } from "./build.js";

/** How drawings are made. */
export interface DrawOptions {
	/** Whether the reference layer is drawn: yes. */
	readonly dimensions?: boolean;
}

/** Every part's own drawing. */
export function drawAll(
	job: Job,
	tools: readonly MadeTool[],
	letters: Lettering,
	{ dimensions = true }: DrawOptions,
): Sheet[] {
	const { bench, fileName } = job;
	return tools.flatMap(({ parts, wanted }) =>
		parts.map((part) => {
			const facts: TitleFacts = {
				job: bench.job,
				date: bench.date,
				kerf: kerfIn(bench.machine, part.stock) ?? 0,
				cautions: cautionsFor(bench.machine.kind, wanted.stock.material),
			};
			return sheetOfOne(part, facts, letters, `${fileName}-${part.name}`, dimensions);
		}),
	);
}
