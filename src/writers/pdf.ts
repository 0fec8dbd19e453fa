import type { Pens, Sheet } from "../drawing/index.js";
import { checkPens, strokesOf } from "./drawn.js";
import { oneLine } from "./one-line.js";
import { pageContent, pointsText } from "./pdf-content.js";

/** Sides of a page that every reader takes, in points (ISO 32000-1, annex C.2). */
const SMALLEST_SIDE = 3;
const LARGEST_SIDE = 14_400;

/**
 * Sheets as the pages of a PDF 1.7, true to size.
 *
 * Every page is as large as its sheet, whose lower left corner is the origin. Arcs become cubic
 * Bézier curves within 1e-4 mm, other coordinates are rounded to 1e-6 mm. No fonts, no dates and no
 * identifier: the same drawing gives the same bytes. Printers are asked not to scale
 * (PrintScaling None, ISO 32000-1, table 150). Control characters and line breaks in the title
 * become spaces.
 *
 * @throws RangeError (as a rejection) on no pages, pages that do not start at 0, 0 or have sides
 *   below 3 or above 14 400 points (1.06 mm to 5.08 m), notes (texts on paper are drawn as paths), NaN,
 *   infinities, pieces without length, colours that are not #rrggbb, and marks outside the sheet
 * @example await writePdf([sheet], pens, "Fret slots") // "%PDF-1.7\n…" in bytes
 */
export async function writePdf(
	pages: readonly Sheet[],
	pens: Pens,
	title: string,
): Promise<Uint8Array> {
	checkPens(pens);
	if (pages.length === 0) throw new RangeError("a PDF needs a page");
	const drawn = pages.map((sheet) => {
		checkNotes(sheet);
		return { sides: sidesOf(sheet), content: pageContent(strokesOf(sheet), pens) };
	});
	const { PDFDocument, PDFName, PrintScaling } = await import("@cantoo/pdf-lib");
	const pdf = await PDFDocument.create({ updateMetadata: false });
	pdf.setTitle(oneLine(title));
	pdf.setCreator("camber");
	pdf.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
	for (const { sides, content } of drawn) {
		const { node } = pdf.addPage(sides);
		node.set(PDFName.Contents, pdf.context.register(pdf.context.flateStream(content)));
	}
	return await pdf.save({ useObjectStreams: false });
}

/** Width and height of a page in points, as they are written. */
function sidesOf({ name, size }: Sheet): [number, number] {
	const { minX, minY, maxX, maxY } = size;
	if (minX !== 0 || minY !== 0) throw new RangeError(`${name} does not start at 0, 0`);
	const side = (mm: number) => {
		const points = Number(pointsText(mm));
		if (points >= SMALLEST_SIDE && points <= LARGEST_SIDE) return points;
		throw new RangeError(`${name} is no size for a page of PDF: ${mm} mm`);
	};
	return [side(maxX), side(maxY)];
}

function checkNotes({ name, notes }: Sheet): void {
	if (notes.length === 0) return;
	throw new RangeError(`${name}: a page takes texts as paths, not as a note: "${notes[0]!.text}"`);
}
