import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { heightToFit, type Label, label } from "../label.js";
import { scaleText } from "../scale-text.js";
import { type Slot, slotHole } from "../slot-strip/lay.js";
import type { Bench } from "../tool.js";
import { type MaskPiece, sideAt } from "./pieces.js";

/** Heights of letters, mm. */
const LARGE = 2.5;
const SMALL = 1.8;
/** What g and p hang below the baseline, a part of the letters' height. */
const HANG = 0.36;
/** From the mask's side to letters, mm. */
const SIDE = 0.8;
/** From the mask's ends and bends to letters, mm. */
const END = 4;
/** Least air between two numbers, mm. */
const AIR = 0.6;

/** Least room on a rail between its side and what must stay off the windows, mm, along y. */
function roomOn(side: readonly Point[], windows: readonly Slot[], width: number): number {
	const corners = windows.flatMap((w) => slotHole(w, width).points);
	const ends = [side[0]!.x, side.at(-1)!.x];
	const beside = corners.filter(({ x }) => x > ends[0]! && x < ends[1]!);
	const rails = beside.map(({ x, y }) => Math.abs(sideAt(side, x) - y));
	return Math.min(...rails) - OFF_WORKING_EDGE - SIDE;
}

/** What a rail must be wider by than `rail` for its smallest letters, mm; 0 or less if it is not. */
export function lackOfRail({ lower, upper, windows }: MaskPiece, width: number): number {
	const title = (1 + HANG) * SMALL - roomOn(upper, windows, width);
	return Math.max(title, SMALL - roomOn(lower, windows, width));
}

/**
 * How far an end of the mask that slants with its frets comes in along a side at some depth from
 * that side, mm; 0 where it leans out.
 *
 * @param end - 0 for the nut's end, -1 for the other
 */
function leansIn(
	side: readonly Point[],
	other: readonly Point[],
	end: 0 | -1,
	depth: number,
): number {
	const [corner, next, far] = [side.at(end)!, side.at(end === 0 ? 1 : -2)!, other.at(end)!];
	const size = Math.hypot(next.x - corner.x, next.y - corner.y);
	const [tx, ty] = [(next.x - corner.x) / size, (next.y - corner.y) / size];
	const [vx, vy] = [far.x - corner.x, far.y - corner.y];
	return Math.max(0, (depth * (vx * tx + vy * ty)) / Math.abs(vx * ty - vy * tx));
}

/** Number of every window on the lower rail; those without room by their fret. */
export function numberLabels({ letters }: Bench, piece: MaskPiece, width: number) {
	const most = Math.min(LARGE, roomOn(piece.lower, piece.windows, width));
	const { lower, upper } = piece;
	const left = lower[0]!.x + leansIn(lower, upper, 0, SIDE + most);
	const right = lower.at(-1)!.x - leansIn(lower, upper, -1, SIDE + most);
	const ends = piece.windows.map(({ bass, treble }) => (bass.y < treble.y ? bass : treble));
	const labels: Label[] = [];
	const unnumbered: number[] = [];
	piece.windows.forEach(({ fret }, i) => {
		const { x } = ends[i]!;
		const beside = [ends[i - 1], ends[i + 1]].flatMap((p) => (p ? [Math.abs(p.x - x)] : []));
		const room = Math.min(...beside, 2 * (x - left) - SIDE, 2 * (right - x) - SIDE) - AIR;
		const text = String(fret.n);
		const height = heightToFit(letters, text, room, most);
		if (height === null) {
			unnumbered.push(fret.n);
			return;
		}
		const half = letters.width(text, height) / 2;
		const y = SIDE + Math.max(sideAt(piece.lower, x - half), sideAt(piece.lower, x + half));
		labels.push(label(letters, `number-${fret.n}`, text, { at: { x: x - half, y }, height }));
	});
	return { labels, unnumbered };
}

/** Job, scale and frets on the longest straight stretch of the upper rail. */
export function titleLabel(bench: Bench, piece: MaskPiece, width: number): Label | Problem {
	const { letters, job, neck } = bench;
	const most = Math.min(LARGE, roomOn(piece.upper, piece.windows, width) / (1 + HANG));
	const stretches = piece.upper.slice(1).map((b, i) => [piece.upper[i]!, b] as const);
	const size = ([a, b]: readonly [Point, Point]) => Math.hypot(b.x - a.x, b.y - a.y);
	const [a, b] = stretches.reduce((p, q) => (size(q) > size(p) ? q : p));
	const depth = SIDE + (1 + HANG) * most;
	const start = END + (a === piece.upper[0] ? leansIn(piece.upper, piece.lower, 0, depth) : 0);
	const end = END + (b === piece.upper.at(-1) ? leansIn(piece.upper, piece.lower, -1, depth) : 0);
	const room = size([a, b]) - start - end;
	const [first, last] = [piece.windows[0]!.fret.n, piece.windows.at(-1)!.fret.n];
	const frets = first === last ? `fret ${first}` : `frets ${first}-${last}`;
	const scale = scaleText(neck);
	const texts = [`${job}   ${scale}   ${frets}`, `${scale}   ${frets}`, frets];
	const text = texts.find((t) => letters.width(t, SMALL) <= room);
	if (text === undefined) {
		return problem("label-too-long", ["pieces"], { text: frets, room: Math.max(0, room) });
	}
	const height = heightToFit(letters, text, room, most)!;
	const turn = Math.atan2(b.y - a.y, b.x - a.x);
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const down = SIDE + height;
	const at = { x: a.x + c * start + s * down, y: a.y + s * start - c * down };
	return label(letters, "title", text, { at, height, turn });
}
