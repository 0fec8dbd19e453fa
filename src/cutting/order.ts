import type { Mark, Placed, Sheet } from "../drawing/index.js";
import { jobOf } from "./order/job.js";
import { bestPlan } from "./order/plan.js";
import { homeOf, TRAVELLED } from "./work.js";

/**
 * The same sheet with parts and marks in the order of work and every path begun or turned so that
 * the head travels little between them.
 *
 * Operations follow each other as in every file: score, engrave, cut. Each is done part by part,
 * the parts in one order for all. Of a part's cuts whatever lies within a contour comes before
 * it, open cuts before the outer contour; contours begin where `startsOf` says. A text's strokes
 * stay together in reading order. A part that is meant to be nominal keeps the order of its cuts,
 * and its closed ones their starts. Marks that no head travels along keep their order.
 *
 * Up to about a dozen contours the cuts' order is the best there is; where parts are also scored
 * or engraved, their order may cost the cuts a twentieth if the rest gains by it. With more
 * contours it is improved by exchanges, within a bounded effort. The same sheet gives the same
 * order. Parts without cuts come last.
 *
 * @example inOrder(sheet) // a plate with a hole: the hole first, then the outline
 */
export function inOrder(sheet: Sheet): Sheet {
	const home = homeOf(sheet);
	const jobs = sheet.placed.filter(({ part }) => part.marks.length > 0).map(jobOf);
	if (jobs.length === 0) return sheet;
	const { jobs: order, steps } = bestPlan(jobs, home);
	const placed = order.map((job): Placed => {
		const { part, move } = job.placed;
		const idle = part.marks.filter(({ operation }) => !isTravelled(operation));
		const done = steps
			.get(job)!
			.flatMap(({ stop, way }) => stop.marks.map((mark, i) => ({ ...mark, path: way.paths[i]! })));
		return { part: { ...part, marks: [...idle, ...done] }, move };
	});
	const bare = sheet.placed.filter(({ part }) => part.marks.length === 0);
	return { ...sheet, placed: [...placed, ...bare] };
}

function isTravelled(operation: Mark["operation"]): boolean {
	return (TRAVELLED as readonly string[]).includes(operation);
}
