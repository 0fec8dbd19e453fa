import {
	centreLine,
	crossingOf,
	fretNumbers,
	isFanned,
	type Neck,
	type StringLine,
} from "../../neck/index.js";
import type { Bench } from "../tool.js";
import type { Span } from "./stabbing.js";

/** Three neighbouring frets under one line along the neck, and the edges that span just these. */
export interface Triple extends Span {
	/** The first of the three. */
	readonly fret: number;
	readonly line: RockedLine["name"];
	/** Least way from the three crowns to what an edge must not touch on either side, mm. */
	readonly room: number;
}

/** A line along which the edges are laid. */
interface RockedLine {
	readonly name: "" | "bass" | "treble";
	readonly line: StringLine;
}

/** The centre line; both outer strings where the frets are fanned. */
function linesOf(neck: Neck): RockedLine[] {
	if (!isFanned(neck)) return [{ name: "", line: centreLine(neck) }];
	const { bass, treble } = neck.guides;
	return [
		{ name: "bass", line: bass },
		{ name: "treble", line: treble },
	];
}

/**
 * Every three neighbouring frets with the lengths of edges that lie on their crowns and nothing
 * else: d(n+2) − d(n) + w at least; at most from the crown, or the nut's face, before the three to
 * the crown beyond them, less the clearance at either end. Beyond the last fret nothing is met.
 *
 * Along a slanted line a crown takes w/cos φ + t·tan φ of an edge of thickness t.
 *
 * @param clearance - c at either end of an edge, mm
 */
export function triplesOf(bench: Bench, clearance: number): Triple[] {
	const { neck } = bench;
	return linesOf(neck).flatMap((rocked) => {
		const crowns = crownsOf(bench, rocked.line);
		return crowns.slice(2).map((last, i): Triple => {
			const first = crowns[i]!;
			const before = crowns[i - 1]?.to ?? nutFace(bench, rocked.line, first.from - clearance);
			const after = crowns[i + 3]?.from ?? Number.POSITIVE_INFINITY;
			return {
				fret: first.fret,
				line: rocked.name,
				from: last.to - first.from,
				to: after - before - 2 * clearance,
				room: Math.min(first.from - before, after - last.to),
			};
		});
	});
}

/** What each crown takes of a line, mm from its nut point. */
function crownsOf({ neck, wire, stock }: Bench, line: StringLine) {
	return fretNumbers(neck).map((fret) => {
		const { along, slant } = crossingOf(neck, line, fret);
		const half = (wire.crownWidth / Math.cos(slant) + stock.thickness * Math.tan(slant)) / 2;
		return { fret, from: along - half, to: along + half };
	});
}

/**
 * Where the nut's face stands on a line; slanted, it reaches into the edge's thickness. A nut
 * behind a zero fret may touch its crown: an edge then ends where the crown does, at `behind`.
 */
function nutFace({ neck, stock }: Bench, line: StringLine, behind: number): number {
	const { slant } = crossingOf(neck, line, 0);
	const face = neck.nutShift + (stock.thickness / 2) * Math.tan(slant);
	return neck.zeroFret ? Math.min(face, behind) : face;
}
