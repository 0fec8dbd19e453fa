import { isFanned } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { RockerEdge } from "./edges.js";

/** What the person at the bench must know of a plate. */
export function plateNotes(bench: Bench, edges: readonly RockerEdge[]): string[] {
	const { neck } = bench;
	const line = isFanned(neck) ? "along the outer string that it names" : "along the neck";
	const corner = Math.min(...edges.map(({ from, length }) => (length - from) / 2));
	return [
		`Stand an edge on three neighbouring frets that it serves, ${line}, clear of the next crowns and of the nut. If it rocks, the middle fret is higher than the line over the other two; mark it, and test its neighbours before anything is filed.`,
		"An edge that does not rock does not tell of a low fret: look for light over the middle one.",
		...edges.map(edgeNote),
		`The corners at the edges' ends are sharp: break them with one stroke of a fine file. Up to ${fixed(corner, 2)} mm may go at either end, and every edge still spans its frets.`,
		...(neck.zeroFret
			? [
					"The zero fret is one of the three at the nut; where the nut touches it, set the edge's end flush with the crown's back.",
				]
			: []),
	];
}

function edgeNote({ number, frets, length, from, to }: RockerEdge): string {
	const common = Number.isFinite(to)
		? `${trimmed(from, 1)} to ${trimmed(to, 1)} mm`
		: `${trimmed(from, 1)} mm or more`;
	return `Edge ${number}, ${fixed(length, 2)} mm, serves frets ${frets}, three at a time: lengths of ${common} would.`;
}
