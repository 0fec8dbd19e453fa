import type { Measured } from "../proof/index.js";
import type { Remarked } from "../proof/measure.js";
import { figureText } from "../report/figures.js";
import { table } from "./console.js";

/** Longest line on the console. */
export const LINE = 100;

const NAMES = ["file", "part", "claim"];
const FIGURES = ["nominal", "measured", "deviation", "tolerance"];
const GAP = "  ";

/** Figures in a table that fits the console: names give way. */
export function figureLines(rows: readonly Measured[]): string[] {
	if (rows.length === 0) return [];
	const names = [NAMES, ...rows.map((m) => [m.file, m.part, m.claim.id].map(seen))];
	const figures = aligned([FIGURES, ...rows.map(figuresOf)]);
	const taken = figures[0]!.reduce((sum, cell) => sum + GAP.length + cell.length, 0);
	const rooms = roomsFor(names, LINE - taken - GAP.length * (NAMES.length - 1));
	const cells = names.map((row, i) => [
		...row.map((name, k) => shortened(name, rooms[k]!)),
		...figures[i]!,
	]);
	return table(cells, GAP).split("\n");
}

function figuresOf({ claim, value, deviation, tolerance, remark }: Remarked): string[] {
	if (claim.kind !== "label") {
		const off = Number.isNaN(deviation) ? "" : figureText(claim, deviation);
		return [
			figureText(claim, claim.nominal),
			figureText(claim, value),
			off,
			figureText(claim, tolerance),
		];
	}
	const isDrawn = Number.isFinite(value);
	const missing = remark?.kind === "font-not-given" ? "not compared" : "not as drawn";
	return [
		shortened(`"${seen(claim.text)}"`, 10),
		isDrawn ? "as drawn" : missing,
		isDrawn ? figureText(claim, deviation) : "",
		figureText(claim, tolerance),
	];
}

/** Cells of each column set to the right. */
function aligned(rows: readonly (readonly string[])[]): string[][] {
	const widths = widthsOf(rows);
	return rows.map((row) => row.map((cell, i) => cell.padStart(widths[i]!)));
}

function widthsOf(rows: readonly (readonly string[])[]): number[] {
	return rows[0]!.map((_, i) => rows.reduce((most, row) => Math.max(most, row[i]!.length), 0));
}

/** What each column of names gets of the room there is: the widest gives way first. */
function roomsFor(names: readonly (readonly string[])[], room: number): number[] {
	const rooms = widthsOf(names);
	while (rooms.reduce((sum, r) => sum + r, 0) > room) {
		rooms[rooms.indexOf(Math.max(...rooms))]! -= 1;
	}
	return rooms;
}

/**
 * A name that is too long, without its middle: more stays of its end, which tells names apart.
 *
 * @example shortened("heron-slot-strip.svg", 10) // "her…ip.svg"
 */
export function shortened(name: string, most: number): string {
	if (name.length <= most) return name;
	const front = Math.floor((most - 1) / 3);
	return `${name.slice(0, front)}…${name.slice(name.length - (most - 1 - front))}`;
}

/** A name with a sign for what a console would obey instead of showing it. */
export function seen(name: string): string {
	return name.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, "?");
}
