import type { Machine } from "../cutting/index.js";
import { BY_HAND, type Job } from "../job/index.js";
import { type Problem, problem } from "../problem/index.js";

export type Format = "svg" | "dxf" | "pdf";
export const FORMATS: readonly Format[] = ["svg", "dxf", "pdf"];

/** What is written in which format. */
export interface Formats {
	/** Drawings for machines, each in one piece. */
	readonly drawings: readonly ("svg" | "dxf")[];
	/** Parts on pages of paper. */
	readonly pages: readonly ("pdf" | "svg")[];
	/** Pages that show no part. */
	readonly documents: readonly ("pdf" | "svg")[];
}

/**
 * What a job is written in.
 *
 * Without a word on formats: drawings as SVG and DXF, and a PDF besides where the job names its
 * paper; a PDF alone where its machine is a printer or a paper is asked for. Asked for with a
 * paper, SVG means pages of it, and DXF, which has no pages, is refused.
 *
 * @param asked - formats by name; undefined where none are
 * @param onPaper - whether a paper is asked for besides what the job says
 */
export function formatsOf(
	job: Job,
	asked: readonly Format[] | undefined,
	onPaper: boolean,
): Formats | Problem {
	const chosen = asked ?? usualFormats(job, onPaper);
	const pages = chosen.filter((f) => f === "pdf" || (f === "svg" && onPaper)) as Formats["pages"];
	if (onPaper && chosen.includes("dxf")) return problem("dxf-on-paper", []);
	const drawings = onPaper ? [] : chosen.filter((f) => f !== "pdf");
	return { drawings, pages, documents: pages.length > 0 ? pages : ["pdf"] };
}

/** Whether nothing but paper comes of a job: no drawings are asked for, or no tool makes a part. */
export function isPaperOnly({ wanted }: Job, { drawings }: Formats): boolean {
	return drawings.length === 0 || wanted.every(({ tool }) => tool.onPaper);
}

/**
 * The job as it is where nothing but paper comes of it: its machine is a printer, without kerf,
 * cutter, tabs or bed, and the cautions are those of paper.
 */
export function printedJob(job: Job): Job {
	const { machine } = job.bench;
	const printer: Machine = {
		...machine,
		kind: "printer",
		tolerance: machine.kind === "printer" ? machine.tolerance : BY_HAND,
		kerf: 0,
		cutter: null,
		relief: "none",
		tabs: null,
		bed: null,
		speeds: null,
		stretch: { x: 1, y: 1 },
	};
	return { ...job, bench: { ...job.bench, machine: printer } };
}

function usualFormats({ bench, namesPaper }: Job, onPaper: boolean): readonly Format[] {
	if (onPaper || bench.machine.kind === "printer") return ["pdf"];
	return namesPaper ? FORMATS : ["svg", "dxf"];
}
