import type { Note, Operation, Pens, Sheet } from "../drawing/index.js";
import { movedPoint } from "../geometry/index.js";
import { fixed, trimmed } from "../units/index.js";
import { checkNote, checkPens, operationsOf, type Stroke, strokesOf } from "./drawn.js";
import { oneLine } from "./one-line.js";
import { FLIP_Y, mm, pairOf, pathData } from "./svg-path.js";
import { emptyElement, parentElement, textElement } from "./xml.js";

/** Height of capitals in a usual sans-serif font, as a share of its size (from memory). */
export const CAP_HEIGHT = 0.7;

/** What a file holds besides its drawing. */
export interface SvgOptions {
	/** Asks printing programs for paper of the sheet's size, without margins (CSS Paged Media 3). */
	readonly page?: boolean;
}

/**
 * A sheet as SVG 1.1, true to size.
 *
 * `width` and `height` in mm equal the viewBox, so that one unit is one millimetre and line
 * widths and font sizes go without a unit. One `<path>` per contour, in one group per
 * operation in the order of work; each path carries `data-feature` and `data-part`. Notes are
 * `<text>`; the viewBox keeps the coordinates of the parts, apart from the sign of y.
 * Control characters and line breaks in texts become spaces.
 *
 * @throws RangeError on NaN, infinities, pieces without length, notes without text, colours
 *   that are not #rrggbb, and marks outside the sheet
 * @example writeSvg(sheet, pens) // '<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns=…'
 */
export function writeSvg(sheet: Sheet, pens: Pens, { page = false }: SvgOptions = {}): string {
	checkPens(pens);
	const { minX, maxX, minY, maxY } = sheet.size;
	const strokes = strokesOf(sheet);
	if (!(maxX > minX) || !(maxY > minY)) throw new RangeError(`${sheet.name} has no size`);
	const width = mm(maxX - minX);
	const height = mm(maxY - minY);
	const groups = operationsOf(sheet, strokes).map((operation) => {
		const { colour, width: line } = pens[operation];
		const children = [
			...strokes.filter((s) => s.operation === operation).map(pathElement),
			...(operation === "reference" ? sheet.notes.map((n) => noteElement(n, colour)) : []),
		];
		return parentElement("g", groupAttributes(operation, colour, line), children);
	});
	const root = parentElement(
		"svg",
		{
			xmlns: "http://www.w3.org/2000/svg",
			version: "1.1",
			width: `${width}mm`,
			height: `${height}mm`,
			viewBox: `${pairOf({ x: minX, y: maxY })} ${width} ${height}`,
		},
		[
			textElement("title", {}, sheet.title),
			textElement("desc", {}, description(sheet)),
			...(page ? [pageRule(maxX - minX, maxY - minY)] : []),
			...groups,
		],
	);
	return `<?xml version="1.0" encoding="UTF-8"?>\n${root}\n`;
}

function pageRule(width: number, height: number): string {
	const size = [width, height].map((side) => `${trimmed(side, 6)}mm`).join(" ");
	return textElement("style", {}, `@page { size: ${size}; margin: 0 }`);
}

function groupAttributes(operation: Operation, colour: string, width: number) {
	return {
		id: operation,
		class: operation,
		fill: "none",
		stroke: colour,
		"stroke-width": mm(width),
	};
}

function pathElement({ path, feature, part }: Stroke): string {
	return emptyElement("path", {
		d: pathData(path),
		"data-feature": feature,
		"data-part": part,
	});
}

function noteElement({ text, at, height, turn, width }: Note, colour: string): string {
	checkNote(oneLine(text), height, width, at);
	const { x, y } = movedPoint(at, FLIP_Y);
	const degrees = fixed((-turn * 180) / Math.PI, 6);
	return textElement(
		"text",
		{
			transform: `translate(${mm(x)} ${mm(y)}) rotate(${degrees})`,
			"font-family": "sans-serif",
			"font-size": mm(height / CAP_HEIGHT),
			textLength: mm(width),
			lengthAdjust: "spacingAndGlyphs",
			fill: colour,
			stroke: "none",
		},
		text,
	);
}

/** What the drawing is, in words: its scale, and each part's stock, working edge and notes. */
function description(sheet: Sheet): string {
	const parts = sheet.placed.map(({ part }) => {
		const { material, thickness } = part.stock;
		const stock = `${material}, ${trimmed(thickness, 3)} mm thick`;
		const edge = `Working edge: ${part.workingEdge}.`;
		return [`${part.title} (${part.name}): ${stock}.`, edge, ...part.notes].join(" ");
	});
	return ["Full size: one unit is one millimetre.", ...parts].join(" ");
}
