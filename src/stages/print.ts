import { dimensions, NOTHING, type OutFile, sheetOfOne, titleBlocks } from "../drawing/index.js";
import type { Job } from "../job/index.js";
import type { Lettering } from "../lettering/index.js";
import {
	PAPER_PENS,
	type Print,
	type Printable,
	printOfDocument,
	printOfPart,
} from "../paper/index.js";
import { cautionsFor } from "../shop/index.js";
import { writePdf, writeSvg } from "../writers/index.js";
import type { MadeTool } from "./build.js";
import type { Formats } from "./formats.js";

/** Something on paper and how it lies in files: one with all pages, or one for each. */
export interface WrittenPrint {
	readonly print: Print;
	readonly format: "pdf" | "svg";
	readonly files: readonly OutFile[];
}

/**
 * All that goes on paper, every part at its nominal size: a page of paper knows no kerf. Parts
 * only where a format of paper is asked for, documents always.
 */
export async function printAll(
	job: Job,
	tools: readonly MadeTool[],
	letters: Lettering,
	formats: Formats,
	dimensioned = true,
): Promise<WrittenPrint[]> {
	const { bench } = job;
	const parts = formats.pages.length === 0 ? [] : tools.flatMap((tool) => tool.parts);
	const ofParts = parts.map((part) => {
		const name = fileName(job, part.name);
		const printable = dimensioned ? withInk(job, part, letters) : { ...BARE, part };
		return printOfPart(printable, bench.paper, { job: bench.job, name }, letters);
	});
	const ofDocuments = tools
		.flatMap((tool) => tool.documents)
		.map((d) => printOfDocument(d, bench.paper, bench.job, fileName(job, d.name), letters));
	const written: WrittenPrint[] = [];
	for (const [prints, wanted] of [
		[ofParts, formats.pages],
		[ofDocuments, formats.documents],
	] as const) {
		for (const print of prints) {
			for (const format of wanted) written.push(await writtenPrint(print, format));
		}
	}
	return written;
}

function fileName(job: Job, name: string): string {
	return `${job.fileName}-${name}`;
}

/** A part with its dimensions, and what is said of it. */
function withInk({ bench }: Job, part: Printable["part"], letters: Lettering): Printable {
	const facts = {
		job: bench.job,
		date: bench.date,
		kerf: 0,
		cautions: cautionsFor("printer", bench.stock.material),
	};
	const { marks, notes } = sheetOfOne(part, facts, letters, "", true);
	return {
		part,
		ink: dimensions(part, letters),
		full: { marks, notes },
		blocks: titleBlocks(part, facts, letters),
	};
}

const BARE = { ink: NOTHING, full: null, blocks: [] };

async function writtenPrint(print: Print, format: "pdf" | "svg"): Promise<WrittenPrint> {
	const { name, title, pages } = print;
	const parts = [...new Set(pages.flatMap(({ tile }) => (tile ? [tile.part.name] : [])))];
	const sheets = pages.map(({ sheet }) => sheet);
	if (format === "pdf") {
		const bytes = await writePdf(sheets, PAPER_PENS, sheets[0]?.title ?? title);
		return { print, format, files: [{ name: `${name}.pdf`, format, bytes, sheet: "", parts }] };
	}
	const files = sheets.map((sheet, i): OutFile => {
		const bytes = new TextEncoder().encode(writeSvg(sheet, PAPER_PENS, { page: true }));
		return { name: `${name}-page-${i + 1}.svg`, format, bytes, sheet: "", parts };
	});
	return { print, format, files };
}
