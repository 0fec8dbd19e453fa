import { type Group, roomiestGroups } from "./stabbing.js";
import type { Triple } from "./triples.js";

/** One working edge of a rocker. */
export interface RockerEdge {
	/** Counted from 1, the longest first. */
	readonly number: number;
	readonly length: number;
	/** The lengths that serve the same frets, mm. */
	readonly from: number;
	readonly to: number;
	/** Frets under it, three at a time: "1-12", or by string where these differ. */
	readonly frets: string;
}

/** How much longer than its three crowns an edge is that nothing else bounds, mm. */
const UNBOUND = 1;

/** The fewest edges that serve every three frets, each in the middle of what serves its own. */
export function edgesFor(triples: readonly Triple[]): RockerEdge[] {
	return roomiestGroups(triples)
		.map((group) => ({ group, length: lengthOf(group) }))
		.sort((a, b) => b.length - a.length)
		.map(({ group, length }, i) => ({
			number: i + 1,
			length,
			from: group.from,
			to: group.to,
			frets: servedText(triples.filter((t) => group.spans.includes(t) || holds(t, length))),
		}));
}

function lengthOf({ from, to }: Group<Triple>): number {
	return Number.isFinite(to) ? (from + to) / 2 : from + UNBOUND;
}

/** The last three frets, past which any edge may reach, are named at one edge only: their own. */
function holds({ from, to }: Triple, length: number): boolean {
	return Number.isFinite(to) && from <= length && length <= to;
}

/** Served frets as people read them; by string where bass and treble differ. */
function servedText(served: readonly Triple[]): string {
	const lines = [...new Set(served.map((t) => t.line))].map((line) => ({
		line,
		frets: runsText(served.filter((t) => t.line === line).map((t) => t.fret)),
	}));
	const same = lines.every(({ frets }) => frets === lines[0]!.frets);
	if (same && (lines.length > 1 || lines[0]!.line === "")) return lines[0]!.frets;
	return lines.map(({ line, frets }) => `${line} ${frets}`).join(", ");
}

/** Runs of first frets with the two beyond the last: [1, 2, 3, 7] is "1-5, 7-9". */
function runsText(firsts: readonly number[]): string {
	const starts = firsts.filter((n) => !firsts.includes(n - 1)).sort((a, b) => a - b);
	return starts
		.map((start) => {
			let end = start;
			while (firsts.includes(end + 1)) end++;
			return `${start}-${end + 2}`;
		})
		.join(", ");
}
