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
const HANG = 0.3;
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

/** Number of every window on the lower rail; those without room by their fret. */
export function numberLabels({ letters }: Bench, piece: MaskPiece, width: number) {
	const most = Math.min(LARGE, roomOn(piece.lower, piece.windows, width));
	const ends = piece.windows.map(({ bass, treble }) => (bass.y < treble.y ? bass : treble));
	const labels: Label[] = [];
	const unnumbered: number[] = [];
	piece.windows.forEach(({ fret }, i) => {
		const { x } = ends[i]!;
		const beside = [ends[i - 1], ends[i + 1]].flatMap((p) => (p ? [Math.abs(p.x - x)] : []));
		const [left, right] = [piece.lower[0]!.x, piece.lower.at(-1)!.x];
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
	const room = size([a, b]) - 2 * END;
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
	const at = { x: a.x + c * END + s * down, y: a.y + s * END - c * down };
	return label(letters, "title", text, { at, height, turn });
}
