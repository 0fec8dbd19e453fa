import { clipped, STAY } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Problem } from "../problem/index.js";
import { contourFaults } from "./contours.js";
import { countFaults } from "./counts.js";
import { crossingFaults } from "./crossing-cuts.js";
import { doubledFaults, doubledPairs } from "./doubled.js";
import { finishedPart } from "./finished.js";
import { found } from "./found.js";
import { judged } from "./judge.js";
import { laidStrokes } from "./laid-strokes.js";
import { lineFaults } from "./lines.js";
import { measureFinished, type Remarked } from "./measure.js";
import { outlineFaults } from "./outline.js";
import { MOST_PIECES, pathWeb } from "./path-web.js";
import { gap } from "./plane.js";
import { joinedOverSeams } from "./print-joints.js";
import { type TilePage, workInPart } from "./print-page.js";
import { seamPieces } from "./print-seams.js";
import { isTab } from "./tab-gaps.js";
import type { Measured, PromisedFile, PromisedPart, ReadDrawing, ReadStroke } from "./types.js";
import { wholeFault } from "./whole.js";

/** What the height of an arc may be off by, as a share of its page: half the last of 24 bits at each end. */
const LAST_BIT = 2 ** -23;

/** Findings after which measuring is pointless. */
const POINTLESS: ReadonlySet<string> = new Set(["unit-slip", "mirrored", "drawing-too-large"]);

/** What a part's pages show together, measured. */
export interface PrintedPart {
	readonly measured: readonly Measured[];
	readonly findings: readonly Problem[];
}

/**
 * The part that pages show when they are laid together at their seams, measured as any part is.
 *
 * Paper shows the nominal part, whole: it has no tabs, and nothing on it is moved for a kerf. Paths
 * that lie on each other or cross, numbers of paths and open contours are looked for as in other
 * files; where a cut begins, beds and spacing do not matter on paper.
 *
 * @param pages - all of them, of one part
 */
export function printedPart(pages: readonly TilePage[], letters: Lettering): PrintedPart {
	const part = onPaper(pages[0]!.tile.part);
	const strokes = together(pages);
	const drawing: ReadDrawing = { format: "pdf", page: null, strokes, texts: [], findings: [] };
	const looked = inspected(drawing, part, letters);
	if (looked.some(({ code }) => POINTLESS.has(code))) {
		return { measured: [], findings: looked };
	}
	const finished = finishedPart(part, strokes, null);
	const most = Math.max(...pages.flatMap(({ width, height }) => [width, height])) * LAST_BIT;
	const measured = measureFinished(part, finished, letters).map((m) => judgedOnPaper(m, most));
	const faults = [...outlineFaults(part, finished), ...lineFaults(part, finished)];
	return { measured, findings: [...looked, ...judged(measured), ...faults] };
}

/** What is promised of a part on paper. */
function onPaper(part: PromisedPart): PromisedPart {
	const { outline, scores, marks } = part;
	const claims = part.claims.filter((claim) => claim.kind === "label" || !isTab(claim));
	const counts = { cut: outline.length, score: scores.length, engrave: marks.engrave ?? 0 };
	const open = outline.filter((path) => !path.closed).length;
	return { ...part, claims, marks: counts, open, kerf: 0 };
}

/** Strokes of all pages up to their seams, joined over them. */
function together(pages: readonly TilePage[]): ReadStroke[] {
	const work = pages.map(workInPart);
	const pieces = seamPieces(pages, work);
	const strokes = work.flatMap((own, page) =>
		own.flatMap((stroke) =>
			clipped(stroke.path, pieces.boxes[page]!).map((path) => ({ ...stroke, path, page })),
		),
	);
	return joinedOverSeams(strokes, pieces);
}

function inspected(drawing: ReadDrawing, part: PromisedPart, letters: Lettering): Problem[] {
	const promised: PromisedFile = {
		name: "",
		format: "svg",
		placed: [{ part, move: STAY }],
		stretch: { x: 1, y: 1 },
		bed: null,
		dimensions: true,
	};
	const laid = laidStrokes(drawing, promised);
	const whole = wholeFault(laid, promised, letters);
	const counts = countFaults(drawing, laid, promised, letters);
	if (whole) return [whole, ...counts];
	const web = pathWeb(laid);
	if (!web) {
		const facts = { limit: MOST_PIECES, of: "pieces of cuts and scores" };
		return [found("drawing-too-large", "error", facts), ...counts];
	}
	const doubled = doubledPairs(web);
	return [
		...counts,
		...contourFaults(laid, promised),
		...doubledFaults(laid, web, doubled, promised),
		...crossingFaults(web, doubled, promised),
	];
}

/** A radius changes by r/s, nearly, for what the arc's height s over its chord is off by. */
function judgedOnPaper(one: Remarked, most: number): Remarked {
	const { claim, tolerance } = one;
	if (claim.kind !== "radius") return one;
	const chord = gap(claim.at[0]!, claim.at[2]!);
	const sagitta = (chord * chord) / (8 * claim.nominal);
	return { ...one, tolerance: Math.max(tolerance, (most * claim.nominal) / sagitta) };
}
