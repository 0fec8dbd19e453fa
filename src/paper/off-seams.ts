import { type Ink, inkBoxes, type Note } from "../drawing/index.js";
import { type Move, movedExtents, movedPoint, undone } from "../geometry/index.js";
import type { Cuts } from "./seam-ink.js";

/** Between a seam and a text beside it, mm. */
const CLEAR = 1;
/** Farther than this a text is not moved: it would no longer stand where it belongs, mm. */
const FARTHEST = 40;

/** Texts that a seam would cut, each moved beside it the shorter way. */
export function offSeams(ink: Ink, turn: Move, cuts: Cuts): Ink {
	return { marks: ink.marks, notes: ink.notes.map((note) => offSeam(note, turn, cuts)) };
}

function offSeam(note: Note, turn: Move, cuts: Cuts): Note {
	const [box] = inkBoxes({ marks: [], notes: [note] });
	const seen = movedExtents(box!, turn);
	const x = stepOff(cuts.x, seen.minX, seen.maxX);
	const y = stepOff(cuts.y, seen.minY, seen.maxY);
	if (x === 0 && y === 0) return note;
	const back = movedPoint({ x, y }, undone(turn));
	return { ...note, at: { x: note.at.x + back.x, y: note.at.y + back.y } };
}

/** How far a stretch must go to lie clear of the seam that runs through it; 0 if none does. */
function stepOff(cuts: readonly number[], from: number, to: number): number {
	const cut = cuts.find((at) => at > from - CLEAR && at < to + CLEAR);
	if (cut === undefined) return 0;
	const [down, up] = [cut - CLEAR - to, cut + CLEAR - from];
	const step = -down < up ? down : up;
	return Math.abs(step) > FARTHEST ? 0 : step;
}
