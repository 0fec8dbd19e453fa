import type { Extents } from "../geometry/index.js";
import type { Findings } from "./findings.js";
import type { Matrix } from "./matrix.js";
import { readNumbers } from "./number-reader.js";
import type { Attributes } from "./svg-elements.js";
import { MM_PER_PX, svgLength } from "./svg-length.js";

/** Sizes printed with seven digits: this share of 500 mm is a twentieth of a micrometre. */
const SAME_SIZE = 1e-7;

/** What one unit of an SVG is, and the page it covers. */
export interface SvgSize {
	/** From units, y down, to millimetres, y up; the drawing keeps its origin. */
	readonly matrix: Matrix;
	readonly page: Extents | null;
}

/**
 * The size of an SVG by its width, height and viewBox (SVG 2, 8.2 and 8.6). Without a viewBox
 * a unit is a CSS pixel, as it is taken to be where no size is given.
 *
 * A drawing whose sides disagree is shown by its smaller scale, unless it says otherwise with
 * preserveAspectRatio.
 */
export function svgSize(attributes: Attributes, findings: Findings): SvgSize {
	const { width = "", height = "", viewBox } = attributes;
	const [w, h] = [svgLength(width), svgLength(height)];
	const box = viewBox === undefined ? null : boxOf(viewBox, findings);
	const sized = w > 0 && h > 0 && Number.isFinite(w + h);
	if (!sized || !box) {
		if (!sized) findings.add("svg-no-size", "error", { factor: MM_PER_PX });
		else if (!box) sayFactor(findings, MM_PER_PX, MM_PER_PX);
		const own = sized ? [0, 0, w / MM_PER_PX, h / MM_PER_PX] : null;
		return sizeBy(MM_PER_PX, MM_PER_PX, box ?? own);
	}
	const [x, y] = [exact(w / box[2]!), exact(h / box[3]!)];
	if (x !== 1 || y !== 1) sayFactor(findings, x, y);
	if (Math.abs(x / y - 1) <= SAME_SIZE) return sizeBy(x, x, box);
	const fit = attributes.preserveAspectRatio ?? "";
	if (/none/u.test(fit)) return sizeBy(x, y, box);
	const one = /slice/u.test(fit) ? Math.max(x, y) : Math.min(x, y);
	return sizeBy(one, one, box);
}

function exact(factor: number): number {
	return Math.abs(factor - 1) <= SAME_SIZE ? 1 : factor;
}

/** A true size that some programs will not see, or sides that disagree. */
function sayFactor(findings: Findings, x: number, y: number): void {
	const agree = Math.abs(x / y - 1) <= SAME_SIZE;
	const said = (factor: number) => factor.toPrecision(7).replace(/\.?0+$/u, "");
	findings.add("svg-size", agree ? "warning" : "error", { x: said(x), y: said(y) });
}

function boxOf(text: string, findings: Findings): number[] | null {
	const box = readNumbers(text);
	if (box?.length === 4 && box[2]! > 0 && box[3]! > 0 && box.every(Number.isFinite)) return box;
	findings.noNumber(text, "viewBox");
	return null;
}

function sizeBy(x: number, y: number, box: readonly number[] | null): SvgSize {
	const matrix = { a: x, b: 0, c: 0, d: -y, e: 0, f: 0 };
	if (!box) return { matrix, page: null };
	const [left, top, width, height] = box as [number, number, number, number];
	return {
		matrix,
		page: {
			minX: left * x,
			minY: 0 - (top + height) * y,
			maxX: (left + width) * x,
			maxY: 0 - top * y,
		},
	};
}
