import type { Claim, Operation, Stock } from "../drawing/index.js";
import type { Extents, Move, Path, Point } from "../geometry/index.js";
import type { Problem } from "../problem/index.js";

/** A drawing as a file holds it: millimetres, y up, arcs as bulges. */
export interface ReadDrawing {
	readonly format: "svg" | "dxf" | "pdf";
	/** The page of an SVG or a PDF; null where a format has none. */
	readonly page: Extents | null;
	readonly strokes: readonly ReadStroke[];
	readonly texts: readonly ReadText[];
	/** What was wrong with the file's form: units, layers, numbers. */
	readonly findings: readonly Problem[];
}

/** One path of a file, in the file's order. */
export interface ReadStroke {
	/** By its layer or group; null where no operation is called so. */
	readonly operation: Operation | null;
	readonly layer: string;
	readonly path: Path;
}

/** A text of a file that is no path: it gets lost in cutting programs. */
export interface ReadText {
	readonly text: string;
	readonly layer: string;
	readonly at: Point;
	readonly height: number;
	/** Radians, counter-clockwise. */
	readonly turn: number;
}

/** What a manifest says of a part: what a file that shows it is measured against. */
export interface PromisedPart {
	readonly name: string;
	readonly tool: string;
	readonly stock: Stock;
	readonly claims: readonly Claim[];
	/** Nominal working edges. */
	readonly working: readonly Path[];
	/** Box of all that is cut, scored and engraved, nominal, in the part's own frame. */
	readonly box: Extents;
	/** Number of marks of each operation. */
	readonly marks: Readonly<Partial<Record<Operation, number>>>;
	/** How many of its cuts are meant to end elsewhere than they begin: lines, slots cut once, an outline between tabs. */
	readonly open: number;
	/** Nominal paths of all that is cut, as they are without tabs; material on the left. */
	readonly outline: readonly Path[];
	/** Nominal paths of all that is scored. */
	readonly scores: readonly Path[];
	/** Width of the cut that its paths are moved for; 0 for a nominal part, mm. */
	readonly kerf: number;
	/** Meant at nominal size: its open lines and shared edges are meant. */
	readonly nominal: boolean;
}

/** What a manifest says of a file. */
export interface PromisedFile {
	readonly name: string;
	readonly format: "svg" | "dxf";
	readonly placed: readonly { readonly part: PromisedPart; readonly move: Move }[];
	/** Coordinates of the file times this are those of the finished part's sheet. */
	readonly stretch: Point;
	/** The bed with its margin and spacing, of a laid-out sheet. */
	readonly bed: { readonly size: Point; readonly margin: number; readonly spacing: number } | null;
	/** Whether the reference layer is drawn. */
	readonly dimensions: boolean;
}

/**
 * What a manifest says of one page of paper, in true millimetres from the page's lower left
 * corner, y up: as it comes out of the printer.
 */
export interface PromisedPage {
	readonly width: number;
	readonly height: number;
	/** Straight lines that are as long as they say. */
	readonly rules: readonly { readonly from: Point; readonly to: Point }[];
	/** Middles of the crosses that neighbouring pages are laid together by. */
	readonly crosses: readonly Point[];
	/** The piece of a part that it shows; null on a page that shows none. */
	readonly tile: PromisedTile | null;
}

/** A piece of a part on a page. */
export interface PromisedTile {
	readonly part: PromisedPart;
	/** From the part's own frame to the page. */
	readonly move: Move;
	/** What is drawn of it: all that lies in this box and nothing else. */
	readonly window: Extents;
	/** The piece of the window up to the seams: those of all pages lie side by side and cover the part. */
	readonly own: Extents;
}

/** What a manifest says of one thing on paper: a PDF with its pages, or an SVG for each page. */
export interface PromisedPrint {
	readonly files: readonly {
		readonly name: string;
		readonly format: "pdf" | "svg";
		readonly pages: readonly PromisedPage[];
	}[];
	/**
	 * Measured / nominal, x across and y along the feed: a true point p of a page lies in the file at
	 * c + (p − c)/made, c the middle of the page.
	 */
	readonly made: Point;
}

/** One claim as a file keeps it. */
export interface Measured {
	readonly file: string;
	readonly part: string;
	readonly claim: Claim;
	/** NaN where the feature was not found. */
	readonly value: number;
	readonly deviation: number;
	readonly tolerance: number;
}
