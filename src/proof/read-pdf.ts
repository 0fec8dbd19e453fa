import type { Problem } from "../problem/index.js";
import { MM_PER_INCH } from "../units/index.js";
import { Findings } from "./findings.js";
import { MOST_BYTES, MOST_PAGES } from "./limits.js";
import { pageStrokes } from "./pdf-page.js";
import type { ReadDrawing } from "./types.js";

/** A PDF as it was read. */
export interface ReadPdf {
	/** In the file's order; their findings are those of the file. */
	readonly pages: readonly ReadDrawing[];
	readonly findings: readonly Problem[];
}

/** Units of a PDF to the inch (ISO 32000-1, 8.3.2.3). */
const TO_THE_INCH = 72;

type Library = typeof import("pdfjs-dist/legacy/build/pdf.mjs");
type Document = Awaited<ReturnType<Library["getDocument"]>["promise"]>;
type Page = Awaited<ReturnType<Document["getPage"]>>;

/**
 * The stroked paths of a PDF's pages in millimetres, y up, from the lower left corner of each page.
 *
 * The operation of a path is the name of the marked content that it stands in. Cubics that are
 * arcs of circles become arcs, others lines within 1e-4 mm. The numbers of a file are read as
 * 32-bit floats: on A4 a place is true to about 1e-5 mm. Nothing is thrown: what cannot be read is
 * found and left out. A small file may unpack to a large one; its pages are read one at a time.
 *
 * @example (await readPdf(new Uint8Array(3))).findings[0]?.code // "unreadable"
 */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
	const findings = new Findings();
	if (bytes.length > MOST_BYTES) {
		findings.add("drawing-too-large", "error", { limit: MOST_BYTES, of: "bytes" });
		return { pages: [], findings: findings.list() };
	}
	const pages: ReadDrawing[] = [];
	const library = await import("pdfjs-dist/legacy/build/pdf.mjs");
	// The library takes the bytes that it is given for its own.
	const task = library.getDocument({
		data: bytes.slice(),
		verbosity: 0,
		useSystemFonts: false,
		isEvalSupported: false,
		stopAtErrors: true,
	});
	try {
		await readPages(await task.promise, library, findings, pages);
	} catch (error) {
		findings.add("unreadable", "error", { reason: reasonOf(error) });
	} finally {
		await task.destroy().catch(() => {});
	}
	return { pages, findings: findings.list() };
}

async function readPages(
	file: Document,
	library: Library,
	findings: Findings,
	pages: ReadDrawing[],
): Promise<void> {
	if (file.numPages > MOST_PAGES) {
		findings.add("drawing-too-large", "error", { limit: MOST_PAGES, of: "pages" });
		return;
	}
	for (let nth = 1; nth <= file.numPages; nth++) {
		const page = await file.getPage(nth);
		pages.push(await readPage(page, nth, library.OPS, findings));
		page.cleanup();
	}
}

async function readPage(
	page: Page,
	nth: number,
	codes: Library["OPS"],
	findings: Findings,
): Promise<ReadDrawing> {
	const [x0, y0, x1, y1] = page.view as [number, number, number, number];
	const unit = (page.userUnit * MM_PER_INCH) / TO_THE_INCH;
	if (page.rotate !== 0) {
		findings.add("page-turned", "error", { page: nth, degrees: page.rotate }, String(nth));
	}
	const matrix = { a: unit, b: 0, c: 0, d: unit, e: -x0 * unit, f: -y0 * unit };
	const operators = await page.getOperatorList();
	return {
		format: "pdf",
		page: { minX: 0, minY: 0, maxX: (x1 - x0) * unit, maxY: (y1 - y0) * unit },
		strokes: pageStrokes(operators, codes, matrix, nth, findings),
		texts: [],
		findings: [],
	};
}

function reasonOf(error: unknown): string {
	const name = error instanceof Error ? error.name : "";
	if (name === "PasswordException") return "it asks for a password";
	if (name === "InvalidPDFException") return "it is no PDF, or it is cut short or damaged";
	return "its pages cannot be made out";
}
