import type { Job } from "../job/index.js";
import { parentElement } from "../writers/xml.js";
import { facts, list, row, section, tableOf } from "./blocks.js";
import type { FitBlock } from "./fit-block.js";
import { fitBlocks } from "./fit-blocks.js";
import { pictureOf } from "./picture.js";
import { residualPlot } from "./residual-plot.js";

/** What a job's readings came to; nothing for a neck of numbers alone. */
export function fitSections(job: Job): string[] {
	return fitBlocks(job).map((block) => fitSection(block, job));
}

function fitSection({ title, facts: entries, rows, notes, residuals }: FitBlock, job: Job): string {
	const [heads, ...body] = rows;
	return section(`Readings: ${title.toLowerCase()}`, { class: "long" }, [
		facts(entries),
		...residuals.flatMap((line) => pictureOf(residualPlot(line), job.bench.machine.pens)),
		...(heads
			? [
					tableOf(
						heads,
						[
							parentElement(
								"tbody",
								{},
								body.map((cells) => row(cells)),
							),
						],
						{},
						body.length > 12,
					),
				]
			: []),
		...(notes.length > 0 ? [list(notes)] : []),
	]);
}
