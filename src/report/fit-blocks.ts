import type { Job } from "../job/index.js";
import type { BlockPart, FitBlock } from "./fit-block.js";
import { radiusBlock, reliefBlock, widthBlock } from "./fit-board-block.js";
import { heightsBlock, wireBlock } from "./fit-fret-block.js";
import { fannedBlock, scaleBlock } from "./fit-scale-block.js";

/** What a job's readings came to, block by block; none for a job of numbers alone. */
export function fitBlocks({
	fit,
	wireFit,
	bench,
}: Pick<Job, "fit" | "wireFit" | "bench">): FitBlock[] {
	const blocks = [
		...(fit ? neckBlocks(fit, bench.neck.frets) : []),
		...(wireFit ? [wireBlock(wireFit)] : []),
	];
	return blocks.map((block) => ({ ...NOTHING, ...block }));
}

function neckBlocks(fit: NonNullable<Job["fit"]>, frets: number): BlockPart[] {
	const { scale, radius, width, relief, heights, plan } = fit;
	return [
		...(scale ? ["squareFret" in scale ? fannedBlock(scale) : scaleBlock(scale)] : []),
		...(radius ? [radiusBlock(radius)] : []),
		...(width ? [widthBlock(width)] : []),
		...(relief ? [reliefBlock(relief)] : []),
		...(heights && plan ? [heightsBlock(heights, plan, frets)] : []),
	];
}

const NOTHING = { facts: [], rows: [], notes: [], residuals: [] };
