import {
	edgePoint,
	type FretLine,
	fretLine,
	fretNumbers,
	isFanned,
	type Neck,
} from "../../neck/index.js";
import type { Bench } from "../tool.js";

/** Wood beside a fret's crown up to what stands next to it. */
export interface Room {
	readonly fret: number;
	/** The neighbouring fret, or null for the nut. */
	readonly beside: number | null;
	/** Square to the fret, mm; not above 0 where nothing is clear. */
	readonly wood: number;
}

/** What stands beside a fret: a line, and how wide it is on the side of the fret. */
interface Neighbour {
	readonly beside: number | null;
	readonly line: FretLine;
	/** From the line to its side, mm: half a crown; 0 for the nut's face. */
	readonly half: number;
}

/**
 * The least wood on either side of any fret's crown, for a plate that stands square to the fret
 * wherever on it: up to the next crowns, or up to the nut's face. Behind a zero fret nothing is
 * looked at.
 *
 * Fanned frets are nearest to each other at an edge of the board. A neighbour that leans by δ
 * against the fret takes w/2cos δ + t/2·tan δ of a plate of thickness t.
 *
 * @returns null on a neck whose only fret has no neighbour
 */
export function tightestRoom(bench: Bench): Room | null {
	const { neck } = bench;
	const sides = isFanned(neck) ? ([-1, 1] as const) : ([1] as const);
	const rooms = fretNumbers(neck).flatMap((n) => {
		const fret = fretLine(neck, n);
		return neighboursOf(bench, n).flatMap((neighbour) =>
			sides.map((side): Room => {
				const wood = woodBetween(bench, fret, neighbour, side);
				return { fret: n, beside: neighbour.beside, wood };
			}),
		);
	});
	return rooms.reduce<Room | null>((a, b) => (a === null || b.wood < a.wood ? b : a), null);
}

function neighboursOf({ neck, wire }: Bench, n: number): Neighbour[] {
	const crowns = [n - 1, n + 1]
		.filter((m) => fretNumbers(neck).includes(m))
		.map((m) => ({ beside: m, line: fretLine(neck, m), half: wire.crownWidth / 2 }));
	return n === 1 && !neck.zeroFret
		? [{ beside: null, line: nutFace(neck), half: 0 }, ...crowns]
		: crowns;
}

function nutFace(neck: Neck): FretLine {
	const nut = fretLine(neck, 0);
	return { ...nut, x: nut.x + neck.nutShift };
}

/** From a fret's crown to its neighbour, square to the fret from where that meets an edge, mm. */
function woodBetween(
	{ neck, wire, stock }: Bench,
	fret: FretLine,
	{ line, half }: Neighbour,
	side: 1 | -1,
): number {
	const { x, y } = edgePoint(neck, fret, side);
	// A line square to the fret goes on by (1, −lean); it meets the neighbour after t of these.
	const t = (line.x + y * line.lean - x) / (1 + fret.lean * line.lean);
	const apart = Math.abs(t) * Math.hypot(1, fret.lean);
	const lean = Math.abs(Math.atan(line.lean) - Math.atan(fret.lean));
	const taken = half / Math.cos(lean) + (stock.thickness / 2) * Math.tan(lean);
	return apart - wire.crownWidth / 2 - taken;
}
