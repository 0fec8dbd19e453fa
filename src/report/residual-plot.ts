import type { Mark, Note, Sheet } from "../drawing/index.js";
import { circle, line, type Point } from "../geometry/index.js";
import { fixed, trimmed } from "../units/index.js";
import type { ReadLineSlots } from "./fit-block.js";

/** The plot's own size and its margins, mm. */
const WIDTH = 160;
const HEIGHT = 50;
const LEFT = 14;
const BELOW = 8;
const TEXT = 2.5;
/** A usual capital's share of a text's width: the page sets it in its own letters. */
const LETTER = 0.62;
const DOT = 0.7;

/** Least range that a plot shows, mm: a good board fills a part of it. */
const LEAST_RANGE = 0.1;

/**
 * Residuals of a line's slots by fret: a dot each, in a ring where the slot is out; the range is
 * the largest residual, at least 0.1 mm.
 */
export function residualPlot({ line: name, slots }: ReadLineSlots): Sheet {
	const range = rangeOf(slots.map(({ residual }) => residual));
	const frets = slots.map(({ fret }) => fret);
	const [first, last] = [Math.min(...frets, 1), Math.max(...frets, 2)];
	const x = (fret: number) => ((fret - first) / (last - first)) * WIDTH;
	const y = (residual: number) => (residual / range) * (HEIGHT / 2);
	const marks: Mark[] = [
		...[-range, 0, range].map((r) => stroke({ x: -2, y: y(r) }, { x: WIDTH + 2, y: y(r) })),
		...slots.map(({ fret, residual }) => dot({ x: x(fret), y: y(residual) }, DOT, "cut")),
		...slots.flatMap(({ fret, residual, isOdd }) =>
			isOdd ? [dot({ x: x(fret), y: y(residual) }, 3 * DOT, "tab")] : [],
		),
	];
	const notes = [
		...[-range, 0, range].map((r) =>
			note(`${r > 0 ? "+" : ""}${trimmed(r, 2)}`, -LEFT + 1, y(r) - TEXT / 2),
		),
		...[...new Set(frets)].map((fret) =>
			note(String(fret), x(fret) - widthOf(String(fret)) / 2, -HEIGHT / 2 - BELOW + 2),
		),
		note(`read less law, mm${name === "" ? "" : `, ${name} string`}`, 0, HEIGHT / 2 + 2),
	];
	const size = { minX: -LEFT, maxX: WIDTH + 5, minY: -HEIGHT / 2 - BELOW, maxY: HEIGHT / 2 + 7 };
	return { name: "residuals", title: "Residuals by fret", size, placed: [], marks, notes };
}

/** The least of 0.1, 0.2, 0.5, 1, 2, 5 … that holds all. */
export function rangeOf(residuals: readonly number[]): number {
	const most = Math.max(LEAST_RANGE, ...residuals.map(Math.abs));
	const power = 10 ** Math.floor(Math.log10(most) + 1e-9);
	return Number(fixed([1, 2, 5, 10].find((step) => step * power >= most - 1e-9)! * power, 6));
}

function stroke(a: Point, b: Point): Mark {
	return { operation: "reference", path: line(a, b), feature: "axis" };
}

function dot(at: Point, radius: number, operation: Mark["operation"]): Mark {
	return { operation, path: circle(at, radius), feature: "slot" };
}

function note(text: string, x: number, y: number): Note {
	return { text, at: { x, y }, height: TEXT, turn: 0, width: widthOf(text) };
}

function widthOf(text: string): number {
	return text.length * TEXT * LETTER;
}
