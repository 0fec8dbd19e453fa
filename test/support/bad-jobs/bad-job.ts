import { jobText, making, withNeck } from "../job-text.js";

/** A place in a text, counted from 1. */
export interface Place {
	readonly line: number;
	readonly column: number;
}

/** A job with one fault. */
export interface BadJob {
	readonly title: string;
	readonly text: string;
	/** Codes of all its problems, in order. */
	readonly codes: readonly string[];
	/** Where the first problem points, by a piece of the text; undefined if it has no place. */
	readonly at?: string | Place;
	/** What the message must hold. */
	readonly says: readonly string[];
}

export function bad(
	title: string,
	text: string,
	code: string | readonly string[],
	at: string | Place | undefined,
	...says: string[]
): BadJob {
	const codes = typeof code === "string" ? [code] : code;
	return { title, text, codes, says, ...(at === undefined ? {} : { at }) };
}

export const scale = (value: string) => jobText("scale: 648 mm", `scale: ${value}`);
export const frets = (value: string) => jobText("frets: 22", `frets: ${value}`);
export const radius = (value: string) => jobText("radius: 12 in", `radius: ${value}`);
export const width = (value: string) => jobText(/width: \{nut.*\}/u, `width: ${value}`);
export const strings = (value: string) => jobText(/strings: .*/u, `strings: ${value}`);
export const wire = (from: string, to: string) => jobText(from, to);
export const division = (value: string) => withNeck(`division: ${value}`);
export const gauge = (settings: string) => making(`radius-gauge: ${settings}`);
export const bar = (settings: string) => making(`notched-straightedge: ${settings}`);
export const strip = (settings: string) => making(`slot-strip: ${settings}`);
export const fanned = (value: string) => scale(value);
