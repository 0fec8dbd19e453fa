import type { Path, Point } from "../../geometry/index.js";
import { edgePoint, type FretLine, fretLine, type Neck, widthAt } from "../../neck/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { type Corner, outlineOf } from "../outline.js";
import type { Slot } from "../slot-strip/lay.js";
import { CORNER_RADIUS } from "../tool.js";
import type { MaskSettings } from "./settings.js";
import { beside, flattened, landBetween } from "./sheet.js";

/** Sheet between two windows, at least, mm: less tears. */
export const LEAST_LAND = 1.5;
/** Air between the mask's end and the nut, mm. */
const BESIDE_NUT = 0.5;
/** Sheet behind the window of a zero fret, mm. */
const BEHIND_ZERO = 4;
/** The rounded corners stay this far from a bend of the board's edge, mm. */
const OFF_BEND = 2 * CORNER_RADIUS;

/** One piece of the mask: some windows between two lines across the board. */
export interface MaskPiece {
	readonly windows: readonly Slot[];
	/** Its ends on the centre line. */
	readonly from: number;
	readonly to: number;
	/** Its long sides, from the nut's end on: below and above the centre line. */
	readonly lower: readonly Point[];
	readonly upper: readonly Point[];
}

/** The line that the mask begins at: beside the nut's face, or behind the zero fret. */
export function startLine(neck: Neck, width: number): FretLine {
	const nut = fretLine(neck, 0);
	if (neck.zeroFret) return beside(nut, -width / 2 - BEHIND_ZERO);
	return beside({ ...nut, x: nut.x + neck.nutShift }, BESIDE_NUT);
}

/** The mask in as many pieces as asked for, or why it cannot be. */
export function piecesOf(
	neck: Neck,
	windows: readonly Slot[],
	s: MaskSettings,
	width: number,
): MaskPiece[] | Problem {
	const first = startLine(neck, width);
	const last = beside(windows.at(-1)!.fret, width / 2 + s["end-margin"]);
	const seams = windows.slice(1).flatMap((after, i) => {
		const before = windows[i]!;
		const wide = landBetween(before, after, width) >= 2 * LEAST_LAND;
		return wide ? [{ after: i, line: midway(before.fret, after.fret) }] : [];
	});
	if (s.pieces - 1 > seams.length) {
		return problem("mask-seams", ["pieces"], { pieces: s.pieces, most: seams.length + 1 });
	}
	const chosen = chosenSeams(seams, s.pieces, first.x, last.x);
	const lines = [first, ...chosen.map((c) => c.line), last];
	const ends = [...chosen.map((c) => c.after + 1), windows.length];
	return ends.map((end, i) =>
		pieceOf(neck, windows.slice(ends[i - 1] ?? 0, end), lines[i]!, lines[i + 1]!, s.rail),
	);
}

function midway(a: FretLine, b: FretLine): FretLine {
	return { n: (a.n + b.n) / 2, x: (a.x + b.x) / 2, lean: (a.lean + b.lean) / 2 };
}

interface Seam {
	/** Place of the window before it. */
	readonly after: number;
	readonly line: FretLine;
}

/** The seams nearest to equal pieces, each beyond the one before, enough left for the rest. */
function chosenSeams(seams: readonly Seam[], pieces: number, from: number, to: number): Seam[] {
	const chosen: Seam[] = [];
	let next = 0;
	for (let k = 1; k < pieces; k++) {
		const wanted = from + ((to - from) * k) / pieces;
		const free = seams.slice(next, seams.length - (pieces - 1 - k));
		const off = ({ line }: Seam) => Math.abs(line.x - wanted);
		const best = free.reduce((a, b) => (off(b) < off(a) ? b : a));
		chosen.push(best);
		next = seams.indexOf(best) + 1;
	}
	return chosen;
}

function pieceOf(
	neck: Neck,
	windows: readonly Slot[],
	first: FretLine,
	last: FretLine,
	rail: number,
): MaskPiece {
	const [a, b] = ([-1, 1] as const).map((side) => sideOf(neck, first, last, side, rail));
	const [lower, upper] = a![0]!.y < b![0]!.y ? [a!, b!] : [b!, a!];
	const from = crossing(lower[0]!, upper[0]!);
	const to = crossing(lower.at(-1)!, upper.at(-1)!);
	return { windows, from, to, lower, upper };
}

/** Where a line between two points crosses the centre line. */
function crossing(a: Point, b: Point): number {
	return a.x + ((b.x - a.x) * -a.y) / (b.y - a.y);
}

/** A long side: beyond the board's edge by the rail, bent where the board is. */
function sideOf(neck: Neck, first: FretLine, last: FretLine, side: 1 | -1, rail: number): Point[] {
	const sign = side * neck.trebleSide;
	const out = ({ x, y }: Point) => {
		const edge = flattened(neck, { x, y: y - sign * rail });
		return { x, y: edge.y + sign * rail };
	};
	const [from, to] = [first, last].map((l) => out(edgePoint(neck, l, side, -rail)));
	const bends = neck.width.knots
		.filter(({ x }) => x > from!.x + OFF_BEND && x < to!.x - OFF_BEND)
		.map(({ x }) => out({ x, y: sign * (widthAt(neck, x) / 2 + rail) }));
	return [from!, ...bends, to!];
}

/** A piece's contour, counter-clockwise, its four corners rounded. */
export function pieceOutline({ lower, upper }: MaskPiece): Path {
	const rounded = (side: readonly Point[]): Corner[] =>
		side.map((p, i) => (i === 0 || i === side.length - 1 ? { ...p, round: CORNER_RADIUS } : p));
	return outlineOf([...rounded(lower), ...rounded(upper).reverse()]);
}

/** Height of a long side over a place, mm. @throws RangeError beyond its ends */
export function sideAt(side: readonly Point[], x: number): number {
	for (const [i, b] of side.slice(1).entries()) {
		const a = side[i]!;
		if (x >= a.x && x <= b.x) return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
	}
	throw new RangeError(`no side at ${x}`);
}
