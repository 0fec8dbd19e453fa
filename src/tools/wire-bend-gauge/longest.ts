import { fretLength, fretLine, fretNumbers, type Neck } from "../../neck/index.js";

/** Length of the longest fret from edge to edge of the board, mm. */
export function longestFret(neck: Neck): number {
	return Math.max(...fretNumbers(neck).map((n) => fretLength(neck, fretLine(neck, n))));
}
