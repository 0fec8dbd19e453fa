import type { Mark } from "../../drawing/index.js";
import { line, type Path, type Point } from "../../geometry/index.js";
import { fixed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import { outlineOf } from "../outline.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { Layout } from "./centres.js";

/** A string's line from the working edge on, mm: its label begins beyond. */
const TICK = 5;
const AIR = 1;
/** Height of numbers and distances, and of the title at most, mm. */
const SMALL = 1.8;
const TITLE = 2.5;
const LEADING = 2;
/** The centre line's mark at the far edge, mm. */
const CENTRE_MARK = 3;
/** How far the title stays from the strip's ends, mm. */
const SIDE = 2;
/** From one string's middle to the next: labels side by side need this, in two rows half of it. */
const SIDE_BY_SIDE = 2.6;
export const LEAST_STEP = SIDE_BY_SIDE / 2;
/** Least way from a string's middle to the strip's end, mm. */
export const LEAST_MARGIN = 1.3;

/** A strip in its own frame, seen from the front with the head up: x = 0 on the centre line. */
export interface Strip {
	readonly outline: Path;
	readonly edge: Path;
	readonly left: number;
	readonly right: number;
	readonly height: number;
	/** Where distances are counted from. */
	readonly datum: { readonly name: string; readonly at: Point };
	readonly strings: readonly StringMark[];
	readonly centre: { readonly mark: Mark; readonly at: Point };
	readonly labels: readonly Label[];
}

/** A string's line on the strip. */
export interface StringMark {
	readonly n: number;
	/** From the datum, mm. */
	readonly distance: number;
	/** On its line. */
	readonly at: Point;
	readonly mark: Mark;
}

/** A string's column: its line, and what is written at the line's end. */
interface Column {
	readonly n: number;
	readonly distance: number;
	readonly x: number;
	readonly text: string;
	readonly width: number;
	/** How far from the working edge its line ends. */
	readonly tick: number;
}

/** The strings' columns; their labels in two rows where they stand too near for one. */
function columnsOf({ letters, neck }: Bench, { end, from, strings }: Layout): Column[] {
	const datum = end === "nut" ? from : strings[0]!.at;
	const steps = strings.slice(1).map(({ at }, i) => at - strings[i]!.at);
	const staggered = Math.min(Number.POSITIVE_INFINITY, ...steps) < SIDE_BY_SIDE;
	const all = strings.map(({ n, at }) => {
		const distance = fixed(at - datum, 2);
		const text = end === "nut" ? `${distance}   ${n}` : `${n}   ${distance}`;
		const width = letters.width(text, SMALL);
		return { n, distance: at - datum, x: at * neck.trebleSide, text, width };
	});
	const row = Math.max(...all.map(({ width }) => width)) + 2 * AIR;
	return all.map((c, i) => ({ ...c, tick: TICK + (staggered && i % 2 === 1 ? row : 0) }));
}

/** Lays out a strip: its working edge is the upper one at the nut, the lower one at the saddle. */
export function stripOf(bench: Bench, layout: Layout, titles: readonly string[]): Strip {
	const { end } = layout;
	const side = bench.neck.trebleSide;
	const columns = columnsOf(bench, layout);
	const ends = [layout.from * side, layout.to * side];
	const [left, right] = [Math.min(...ends), Math.max(...ends)];
	const lines = titleLines(bench, titles, right - left - 2 * SIDE);
	const reach = Math.max(...columns.map(({ tick, width }) => tick + AIR + width)) + LEADING;
	const block = lines.reduce((sum, { height }) => sum + height + LEADING, 0);
	const height = Math.ceil(reach + block + CENTRE_MARK - 1e-9);
	const y = (depth: number) => (end === "nut" ? height - depth : depth);
	const middle = (left + right) / 2;
	const top = Math.max(y(reach), y(reach + block)) + (end === "nut" ? LEADING : 0);
	const datumX = end === "nut" ? layout.from * side : columns[0]!.x;
	return {
		outline: outlineAround(left, right, height, end === "nut"),
		edge: line({ x: left, y: y(0) }, { x: right, y: y(0) }),
		left,
		right,
		height,
		datum: {
			name: end === "nut" ? "bass edge of the board" : "outer bass string",
			at: { x: datumX, y: y(TICK / 2) },
		},
		strings: columns.map((c) => stringMark(c, y)),
		centre: {
			mark: scored(
				"centre line",
				line({ x: 0, y: y(height) }, { x: 0, y: y(height - CENTRE_MARK) }),
			),
			at: { x: 0, y: y(height - CENTRE_MARK / 2) },
		},
		labels: [
			...columns.map((c) => stringLabel(bench, c, y, end === "nut")),
			...titleLabels(bench, lines, { x: middle, y: top }),
		],
	};
}

const scored = (feature: string, path: Path): Mark => ({ operation: "score", path, feature });

function stringMark({ n, distance, x, tick }: Column, y: (depth: number) => number): StringMark {
	return {
		n,
		distance,
		at: { x, y: y(TICK / 2) },
		mark: scored(`string ${n}`, line({ x, y: y(0) }, { x, y: y(tick) })),
	};
}

/** Number and distance at the end of a string's line, the number next to it; turned to read from the right. */
function stringLabel(
	{ letters }: Bench,
	{ n, x, text, width, tick }: Column,
	y: (depth: number) => number,
	isDown: boolean,
): Label {
	const start = y(tick + AIR + (isDown ? width : 0));
	const at = { x: x + SMALL / 2, y: start };
	return label(letters, `string-${n}`, text, { at, height: SMALL, turn: Math.PI / 2 });
}

/** A plate with sharp corners at its working edge, which is flush with the board's edges. */
function outlineAround(left: number, right: number, height: number, isDown: boolean): Path {
	const round = CORNER_RADIUS;
	const low = isDown ? { round } : {};
	const high = isDown ? {} : { round };
	return outlineOf([
		{ x: left, y: 0, ...low },
		{ x: right, y: 0, ...low },
		{ x: right, y: height, ...high },
		{ x: left, y: height, ...high },
	]);
}

interface Line {
	readonly id: string;
	readonly text: string;
	readonly height: number;
}

/** The longest title that fits, and the job's name where it does. */
function titleLines({ letters, job }: Bench, titles: readonly string[], room: number): Line[] {
	const fitting = (id: string, text: string, most: number) => {
		const height = heightToFit(letters, text, room, most);
		return height === null ? [] : [{ id, text, height }];
	};
	const [title] = titles.flatMap((text) => fitting("title", text, TITLE));
	return [...(title ? [title] : []), ...fitting("job", job, title?.height ?? TITLE)];
}

/** Lines of letters from `top` down, `LEADING` under each. */
function titleLabels({ letters }: Bench, lines: readonly Line[], top: Point): Label[] {
	let y = top.y;
	return lines.map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(letters, id, text, { at: { x: top.x, y }, height, align: "centre" });
	});
}
