import { type Ink, inkOf, NOTHING, stroke, TEXT, wrapped, writing } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import type { Lettering } from "../../lettering/index.js";

/** Height of a heading, mm (ISO 3098). */
export const HEADING = 3.5;
/** What hangs below the baseline, as a share of the height: g, p, commas. */
export const HANG = 0.3;
/** Air over and under a heading, mm. */
const HEADING_AIR = 1.2;
/** An item's text stands in by this much, mm. */
const INDENT = 3;
/** Between a name and its value, and between the columns of a grid, mm. */
export const GUTTER = 2;

/** A strip of a column: how high it is, and what it draws under its upper left corner. */
export interface Line {
	readonly size: number;
	readonly ink: (corner: Point) => Ink;
}

/** A block that is kept whole where a page has room for it. */
export type Block = readonly Line[];

/** What lines are set with. */
export interface Setting {
	readonly letters: Lettering;
	/** Width of the column, mm. */
	readonly width: number;
	/** From line to line, mm. */
	readonly leading: number;
}

/** Where the baseline lies under the top of a line: capitals and what hangs below in its middle. */
function baseline(size: number, height: number): number {
	return size - (size - (1 + HANG) * height) / 2 - HANG * height;
}

/** One line with texts at places of their own, measured from the column's left. */
export function textsLine(
	{ letters }: Pick<Setting, "letters">,
	size: number,
	texts: readonly {
		readonly text: string;
		readonly x: number;
		readonly align?: "left" | "right";
		readonly height?: number;
	}[],
): Line {
	const down = baseline(size, Math.max(...texts.map(({ height = TEXT }) => height)));
	return {
		size,
		ink: ({ x, y }) =>
			inkOf(
				...texts
					.filter(({ text }) => text !== "")
					.map(({ text, x: over, align = "left", height = TEXT }) =>
						writing(letters, text, { x: x + over, y: y - down }, { height, align }),
					),
			),
	};
}

/** A heading over a stroke as wide as the column. */
export function headingLines(set: Setting, text: string): Line[] {
	const rule: Line = {
		size: HEADING_AIR,
		ink: ({ x, y }) =>
			stroke(
				"shop sheet rule",
				{ x, y: y - HEADING_AIR / 2 },
				{ x: x + set.width, y: y - HEADING_AIR / 2 },
			),
	};
	return [rule, ...plainHeading(set, text)];
}

/** A heading by itself. */
export function plainHeading(set: Setting, text: string): Line[] {
	const size = (1 + HANG) * HEADING + HEADING_AIR / 2;
	return broken(set.letters, text, set.width, HEADING).map((line) =>
		textsLine(set, size, [{ text: line, x: 0, height: HEADING }]),
	);
}

/** A text in as many lines as it needs. */
export function paragraph(set: Setting, text: string): Line[] {
	return wrapped(set.letters, text, set.width).map((t) =>
		textsLine(set, set.leading, [{ text: t, x: 0 }]),
	);
}

/** Texts with a dash before each. */
export function items(set: Setting, texts: readonly string[]): Line[] {
	return texts.flatMap((text) =>
		wrapped(set.letters, text, set.width - INDENT).map((t, i) =>
			textsLine(set, set.leading, [
				{ text: i === 0 ? "-" : "", x: 0 },
				{ text: t, x: INDENT },
			]),
		),
	);
}

/** A name and, at the column's right end, its value; the value below where both find no room. */
export function pair(set: Setting, name: string, value: string): Line[] {
	const { letters, width, leading } = set;
	const right = { text: value, x: width, align: "right" as const };
	const room = width - letters.width(value, TEXT) - GUTTER;
	const short = letters.width(name, TEXT) <= room;
	const names = short ? [name] : wrapped(letters, name, width);
	const lines = names.map((text, i) =>
		textsLine(set, leading, [
			{ text, x: 0 },
			...(short || (i === names.length - 1 && letters.width(text, TEXT) <= room) ? [right] : []),
		]),
	);
	if (short || letters.width(names.at(-1)!, TEXT) <= room) return lines;
	return [...lines, textsLine(set, leading, [right])];
}

/** How wide the columns of a grid are at least, mm. */
export function gridWidths(letters: Lettering, rows: readonly (readonly string[])[]): number[] {
	return rows[0]!.map((_, i) => Math.max(...rows.map((row) => letters.width(row[i]!, TEXT))));
}

/** Least width of a grid, mm. */
export function gridWidth(letters: Lettering, rows: readonly (readonly string[])[]): number {
	const widths = gridWidths(letters, rows);
	return widths.reduce((a, b) => a + b, 0) + GUTTER * (widths.length - 1);
}

/** Rows of texts in columns: the first to the left, the others to the right, spread over the width. */
export function grid(set: Setting, rows: readonly (readonly string[])[]): Line[] {
	const ends = gridEnds(set, rows);
	return rows.map((row) =>
		textsLine(
			set,
			set.leading,
			row.map((text, i) => (i === 0 ? { text, x: 0 } : { text, x: ends[i]!, align: "right" })),
		),
	);
}

/** Right ends of a grid's columns, what is left of the width shared among the gaps. */
export function gridEnds(
	{ letters, width }: Pick<Setting, "letters" | "width">,
	rows: readonly (readonly string[])[],
): number[] {
	const widths = gridWidths(letters, rows);
	const free = width - widths.reduce((a, b) => a + b, 0);
	const gap = widths.length > 1 ? free / (widths.length - 1) : 0;
	let end = -gap;
	return widths.map((w) => {
		end += gap + w;
		return end;
	});
}

/** A text of any height in as many lines as it needs: its width grows with its height. */
export function broken(letters: Lettering, text: string, room: number, height: number): string[] {
	return wrapped(letters, text, (room * TEXT) / height);
}

/** How high some lines are together, mm. */
export function heightOf(lines: readonly Line[]): number {
	return lines.reduce((sum, { size }) => sum + size, 0);
}

/** Lines under each other from an upper left corner. */
export function stacked(lines: readonly Line[], { x, y }: Point): Ink {
	let top = y;
	return inkOf(
		NOTHING,
		...lines.map(({ size, ink }) => {
			const drawn = ink({ x, y: top });
			top -= size;
			return drawn;
		}),
	);
}
