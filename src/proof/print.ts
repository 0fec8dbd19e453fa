import type { Lettering } from "../lettering/index.js";
import { type Problem, problem } from "../problem/index.js";
import { type PrintPage, printPage, tilePages } from "./print-page.js";
import { printedPart } from "./print-part.js";
import { OF_WHOLE_PAGE, ruleFaults } from "./print-rules.js";
import { orderFaults, overlapFaults, windowFaults } from "./print-tiles.js";
import { type Proven, proven } from "./proven.js";
import { readPdf } from "./read-pdf.js";
import { readSvg } from "./read-svg.js";
import type { Measured, PromisedPrint, ReadDrawing } from "./types.js";

/** A file of a print as it was written. */
export interface PrintedFile {
	readonly name: string;
	readonly bytes: Uint8Array;
}

/** What a page's size may be off by, mm. */
const SIZE = 0.001;
/** Findings after which pages cannot be laid together. */
const STOPPING: ReadonlySet<string> = new Set([
	"drawing-missing",
	"drawing-too-large",
	"unreadable",
	"truncated",
	"page-bare",
	"page-count",
	"page-turned",
	"page-order",
	...OF_WHOLE_PAGE,
]);

/** One file with what was read of it. */
interface Read {
	readonly pages: readonly PrintPage[];
	readonly findings: readonly Problem[];
}

/**
 * What is printed on paper, measured: the size of every page, its rules, its crosses and what it
 * shows; that neighbours show the same; then the part that all pages show together.
 *
 * What the print was corrected for is undone first, so that all is measured as it comes out of the
 * printer. Where pages are missing, exchanged or off as a whole that is told and no claim measured.
 *
 * @param letters - the lettering whose strokes labels are compared with
 * @returns one entry for each promised file, in their order; the claims of a part are with the first
 *   file that shows it
 */
export async function provePrint(
	files: readonly PrintedFile[],
	promised: PromisedPrint,
	letters: Lettering,
): Promise<Proven[]> {
	const read: Read[] = [];
	for (let i = 0; i < promised.files.length; i++) {
		const before = promised.files.slice(0, i).reduce((sum, f) => sum + f.pages.length, 0);
		read.push(await readFile(files, promised, i, before));
	}
	const found = read.map(({ pages, findings }) => [...findings, ...pages.flatMap(pageFaults)]);
	const measured: Measured[][] = read.map(() => []);
	const tiles = tilePages(read.flatMap(({ pages }) => pages));
	const tell = (at: number, problems: readonly Problem[]) => found[at]!.push(...problems);
	const isStopped = () => found.flat().some(({ code }) => STOPPING.has(code));
	const inOrder = <T extends { readonly nth: number; readonly file: number }>(
		pages: readonly T[],
		problems: readonly Problem[],
	) => {
		for (const p of problems) tell(pages.find(({ nth }) => nth === p.facts.page)!.file, [p]);
	};
	if (!isStopped()) inOrder(tiles, orderFaults(tiles));
	if (!isStopped()) {
		inOrder(tiles, overlapFaults(tiles));
		for (const part of new Set(tiles.map(({ tile }) => tile.part))) {
			const own = tiles.filter(({ tile }) => tile.part === part);
			const shown = printedPart(own, letters);
			measured[own[0]!.file]!.push(...shown.measured);
			tell(own[0]!.file, shown.findings);
		}
	}
	return promised.files.map(({ name }, i) => proven(name, measured[i]!, found[i]!));
}

async function readFile(
	files: readonly PrintedFile[],
	{ files: all, made }: PromisedPrint,
	index: number,
	before: number,
): Promise<Read> {
	const { name, format, pages } = all[index]!;
	const file = files.find((f) => f.name === name);
	if (!file) return { pages: [], findings: [problem("drawing-missing", [], { file: name })] };
	const read = format === "pdf" ? await readPdf(file.bytes) : pageOfSvg(readSvg(file.bytes));
	const findings = [...read.findings];
	const isRead = !findings.some(({ code }) => STOPPING.has(code));
	if (isRead && read.pages.length !== pages.length) {
		const facts = { found: read.pages.length, promised: pages.length };
		findings.push(problem("page-count", [], facts));
	} else if (isRead) {
		read.pages.forEach(({ strokes }, i) => {
			if (strokes.length === 0) findings.push(problem("page-bare", [], { page: before + i + 1 }));
		});
	}
	const isWhole = !findings.some(({ code }) => STOPPING.has(code));
	return {
		pages: isWhole
			? read.pages.map((p, i) =>
					printPage(p, pages[i]!, made, { file: index, nth: before + i + 1 }),
				)
			: [],
		findings,
	};
}

function pageOfSvg(drawing: ReadDrawing) {
	return { pages: [drawing], findings: drawing.findings };
}

function pageFaults(page: PrintPage): Problem[] {
	const { width, height, promised, nth } = page;
	const rules = ruleFaults(page);
	const isOff =
		Math.abs(width - promised.width) > SIZE || Math.abs(height - promised.height) > SIZE;
	const facts = {
		page: nth,
		width,
		height,
		promisedWidth: promised.width,
		promisedHeight: promised.height,
	};
	return [
		...(isOff ? [problem("page-size", [], facts)] : []),
		...rules,
		...(rules.some(({ code }) => OF_WHOLE_PAGE.has(code)) ? [] : windowFaults(page)),
	];
}
