import { inkOf, NOTHING, stroke, TEXT } from "../../drawing/index.js";
import type { Lettering } from "../../lettering/index.js";
import { type FretRow, fretTable, isFanned, type Neck } from "../../neck/index.js";
import { fixed, inches, sixtyFourth } from "../../units/index.js";
import { gridEnds, gridWidth, HANG, type Line, type Setting, textsLine } from "./lines.js";
import type { WireList } from "./wire.js";

/** A stroke under every so many frets keeps the eye in its line. */
const RULED = 3;

/** The fret table as texts: two rows of heads, and a row for every fret. */
export interface TableTexts {
	readonly heads: readonly (readonly string[])[];
	readonly rows: readonly (readonly string[])[];
}

interface Column {
	readonly heads: readonly [string, string];
	readonly cell: (row: FretRow) => string;
}

/** The columns that a neck's table has: bound boards and fanned frets have more. */
function columnsOf(neck: Neck, wire: WireList): Column[] {
	const mm = (head: string, value: (row: FretRow) => number): Column => ({
		heads: [head, "mm"],
		cell: (row) => fixed(value(row), 3),
	});
	const fanned = isFanned(neck);
	const pieceOf = new Map(wire.pieces.map(({ fret, length }) => [fret, length]));
	return [
		{ heads: ["fret", ""], cell: (r) => String(r.fret) },
		mm("from nut", (r) => r.fromNut),
		{ heads: ["from nut", "inch"], cell: (r) => inches(r.fromNut) },
		{ heads: ["nearest", "1/64 in"], cell: (r) => sixtyFourth(r.fromNut).text },
		mm("gap", (r) => r.gap),
		...(fanned ? [mm("bass string", (r) => r.bass!), mm("treble string", (r) => r.treble!)] : []),
		mm("width", (r) => r.width),
		{
			heads: ["radius", "mm"],
			cell: (r) => (r.radius === null ? "flat" : fixed(r.radius, 3)),
		},
		...(neck.binding > 0 ? [mm("slot", (r) => r.slotLength)] : []),
		mm("wire", (r) => pieceOf.get(r.fret)!),
	];
}

/** The table's texts, every fret a row. */
export function tableTexts(neck: Neck, wire: WireList): TableTexts {
	const columns = columnsOf(neck, wire);
	return {
		heads: ([0, 1] as const).map((i) => columns.map(({ heads }) => heads[i])),
		rows: fretTable(neck).map((row) => columns.map(({ cell }) => cell(row))),
	};
}

/** Least width of the table, mm. */
export function tableWidth(letters: Lettering, { heads, rows }: TableTexts): number {
	return gridWidth(letters, [...heads, ...rows]);
}

/** The table's heads, repeated on every page that it goes on to, and its rows; all one grid. */
export function tableLines(set: Setting, { heads, rows }: TableTexts) {
	const ends = gridEnds(set, [...heads, ...rows]);
	const lineOf = (row: readonly string[], ruled: boolean): Line => {
		const texts = row.map((text, i) => ({ text, x: ends[i]!, align: "right" as const }));
		const line = textsLine(set, set.leading, texts);
		return {
			size: line.size,
			ink: ({ x, y }) => {
				// Midway between these figures and the next row's: figures have nothing that hangs.
				const foot = y - line.size + (HANG * TEXT) / 2;
				const rule = stroke("table rule", { x, y: foot }, { x: x + set.width, y: foot });
				return inkOf(line.ink({ x, y }), ruled ? rule : NOTHING);
			},
		};
	};
	return {
		heads: heads.map((row, i) => lineOf(row, i === heads.length - 1)),
		rows: rows.map((row, i) => lineOf(row, (i + 1) % RULED === 0 && i < rows.length - 1)),
	};
}
