import type { OutFile } from "../drawing/index.js";
import type { Job } from "../job/index.js";
import type { Proven } from "../proof/index.js";
import type { MadeTool, SkippedTool } from "../stages/build.js";
import type { Drawing } from "../stages/draw.js";
import type { WrittenPrint } from "../stages/print.js";

/** What a report is made of. */
export interface ReportFacts {
	readonly job: Job;
	/** Parts at nominal size with all that is promised of them. */
	readonly tools: readonly MadeTool[];
	/** Tools of kits that were not made, each with its reasons. */
	readonly skipped: readonly SkippedTool[];
	/** Every part's own drawing, then the laid-out sheets. */
	readonly drawings: readonly Drawing[];
	readonly prints: readonly WrittenPrint[];
	readonly files: readonly OutFile[];
	/** What each file was found to be; empty where nothing was measured. */
	readonly proven: readonly Proven[];
	/** The standing one last. */
	readonly cautions: readonly string[];
}
