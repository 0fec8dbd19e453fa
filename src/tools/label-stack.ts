import { LETTER_HEIGHTS, type Lettering } from "../lettering/lettering.js";
import { type Label, label } from "./label.js";

/** Between the lines of a stack, mm. */
const LEADING = 2;
/** Smallest letters for one line before the text is rather broken into two, mm. */
const EASY_TO_READ = 2.5;

/** How far round letters reach under their baseline at most, mm. */
const UNDER = 0.3;

/** A text that may be broken between its pieces. */
export interface StackedText {
	readonly id: string;
	readonly pieces: readonly string[];
	/** Between pieces on one line. */
	readonly between: string;
	/** Largest letters, mm. */
	readonly most: number;
}

interface Line {
	readonly id: string;
	readonly text: string;
	readonly height: number;
}

/** Lines of text over each other, mm. */
export interface Stack {
	readonly lines: readonly Line[];
	readonly height: number;
}

/** The lines of a text in letters of this height; null where a piece alone is too long. */
function broken(
	letters: Lettering,
	{ id, pieces, between }: StackedText,
	height: number,
	room: number,
): Line[] | null {
	const texts: string[] = [];
	for (const piece of pieces) {
		const last = texts.at(-1);
		const longer = last === undefined ? piece : `${last}${between}${piece}`;
		if (letters.width(piece, height) > room) return null;
		if (last !== undefined && letters.width(longer, height) <= room) {
			texts[texts.length - 1] = longer;
		} else texts.push(piece);
	}
	return texts.map((text, i) => ({ id: i === 0 ? id : `${id}-${i + 1}`, text, height }));
}

/** A text in as large letters as go on a line; else on two lines, and last in the smallest. */
function linesOf(letters: Lettering, text: StackedText, room: number): Line[] | null {
	const heights = LETTER_HEIGHTS.filter((h) => h <= text.most).reverse();
	const ways = heights.map((h) => broken(letters, text, h, room));
	const legible = ways.filter((way) => way !== null && way[0]!.height >= EASY_TO_READ);
	const most = (count: number) => legible.find((way) => way!.length <= count);
	return most(1) ?? most(2) ?? ways.at(-1) ?? null;
}

/** Texts over each other within a width, the first on top; or the text that does not fit. */
export function stackOf(
	letters: Lettering,
	texts: readonly StackedText[],
	room: number,
): Stack | string {
	const lines: Line[] = [];
	for (const text of texts) {
		const own = linesOf(letters, text, room);
		if (!own) return text.pieces.join(text.between);
		lines.push(...own);
	}
	return { lines, height: lines.reduce((sum, l) => sum + l.height + LEADING, UNDER - LEADING) };
}

/** The labels of a stack about x = 0, above `bottom`. */
export function stackLabels(letters: Lettering, { lines, height }: Stack, bottom: number): Label[] {
	let y = bottom + height + LEADING;
	return lines.map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(letters, id, text, { at: { x: 0, y }, height, align: "centre" });
	});
}
