import { fixed, inches, MM_PER_INCH, sixtyFourth, trimmed } from "../units/index.js";
import { isFanned, type Neck } from "./neck.js";
import type { FretRow } from "./table.js";

/** A column of the fret table as people read it: its head and how a row fills it. */
export interface FretColumn {
	readonly head: string;
	/** Unit of its figures where neither the head says it nor it goes without saying. */
	readonly unit?: "mm";
	readonly cell: (row: FretRow) => string;
}

/** The columns that a neck's fret table has: a bound board and fanned frets have more. */
export function fretColumns(neck: Neck): FretColumn[] {
	const mm = (value: number | null) => (value === null ? "" : fixed(value, 3));
	const bound = neck.binding > 0;
	const fanned = isFanned(neck);
	return [
		{ head: "fret", cell: (r) => String(r.fret) },
		{ head: "from nut", unit: "mm", cell: (r) => mm(r.fromNut) },
		{ head: "inch", cell: (r) => inches(r.fromNut) },
		{ head: "1/64 in", cell: (r) => sixtyFourth(r.fromNut).text },
		{ head: "off by", unit: "mm", cell: (r) => fixed(sixtyFourth(r.fromNut).error, 3) },
		{ head: "gap", unit: "mm", cell: (r) => mm(r.gap) },
		...(fanned
			? [
					{ head: "bass string", unit: "mm" as const, cell: (r: FretRow) => mm(r.bass) },
					{ head: "treble string", unit: "mm" as const, cell: (r: FretRow) => mm(r.treble) },
					{ head: "slant deg", cell: (r: FretRow) => fixed((r.slant * 180) / Math.PI, 3) },
				]
			: []),
		{ head: "width", unit: "mm", cell: (r) => mm(r.width) },
		...(bound || fanned
			? [{ head: "fret length", unit: "mm" as const, cell: (r: FretRow) => mm(r.fretLength) }]
			: []),
		...(bound
			? [{ head: "slot length", unit: "mm" as const, cell: (r: FretRow) => mm(r.slotLength) }]
			: []),
		{ head: "radius", unit: "mm", cell: (r) => (r.radius === null ? "flat" : mm(r.radius)) },
		{
			head: "radius in",
			cell: (r) => (r.radius === null ? "flat" : trimmed(r.radius / MM_PER_INCH, 3)),
		},
	];
}
