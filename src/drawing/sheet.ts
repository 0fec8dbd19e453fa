import type { Extents, Move } from "../geometry/index.js";
import type { Mark, Note, Part } from "./part.js";

/** A part at its place on a sheet. */
export interface Placed {
	readonly part: Part;
	readonly move: Move;
}

/** One drawing, written once in every format. A single-part file is a sheet of one. */
export interface Sheet {
	readonly name: string;
	readonly title: string;
	/** What the drawing covers, mm, margin included. */
	readonly size: Extents;
	readonly placed: readonly Placed[];
	/** What is drawn besides the parts, on the reference layer. */
	readonly marks: readonly Mark[];
	readonly notes: readonly Note[];
}

/** A file as bytes, not yet on any disk. */
export interface OutFile {
	readonly name: string;
	readonly format: "svg" | "dxf" | "pdf" | "json" | "html";
	readonly bytes: Uint8Array;
	readonly sheet: string;
	/** Parts shown. */
	readonly parts: readonly string[];
}
