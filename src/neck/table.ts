import {
	edgePoint,
	fretLength,
	fretLine,
	fretNumbers,
	isFanned,
	type Neck,
	radiusAt,
	widthAt,
} from "./neck.js";
import { crossingOf } from "./strings.js";

/** One fret of the neck, lengths in mm. */
export interface FretRow {
	readonly fret: number;
	/** From the theoretical nut along the centre line. */
	readonly fromNut: number;
	/** From the fret (or nut) before, along the centre line; 0 for a zero fret. */
	readonly gap: number;
	/** Along the outer strings, on a fanned neck. */
	readonly bass: number | null;
	readonly treble: number | null;
	/** Board width square to the centre line. */
	readonly width: number;
	/** Section square to the centre line; null where the board is flat. */
	readonly radius: number | null;
	/** Fret from edge to edge, along the fret. */
	readonly fretLength: number;
	/** Slot inside the binding, along the fret; equal to `fretLength` without binding. */
	readonly slotLength: number;
	/** Slant of the fret to the square of the centre line, radians, signed: treble end ahead is positive. */
	readonly slant: number;
}

/** Every fret of a neck, each position computed from the nut. */
export function fretTable(neck: Neck): FretRow[] {
	const fanned = isFanned(neck);
	return fretNumbers(neck).map((n) => {
		const fret = fretLine(neck, n);
		const outer = (side: "bass" | "treble") =>
			fanned ? crossingOf(neck, neck.guides[side], n).along : null;
		return {
			fret: n,
			fromNut: fret.x,
			gap: n === 0 ? 0 : fret.x - fretLine(neck, n - 1).x,
			bass: outer("bass"),
			treble: outer("treble"),
			width: widthAt(neck, fret.x),
			radius: radiusAt(neck, fret.x),
			fretLength: fretLength(neck, fret),
			slotLength: fretLength(neck, fret, neck.binding),
			slant: Math.atan(fret.lean * neck.trebleSide),
		};
	});
}

/** The frets' ends on the board's edges, bass first. */
export function fretEnds(neck: Neck, n: number, inset = 0) {
	const fret = fretLine(neck, n);
	return { bass: edgePoint(neck, fret, -1, inset), treble: edgePoint(neck, fret, 1, inset) };
}
