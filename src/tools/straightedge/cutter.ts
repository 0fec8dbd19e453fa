import { type Problem, problem } from "../../problem/index.js";
import { fixed, trimmed } from "../../units/index.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { Notch } from "./edge.js";
import type { Edge } from "./outline.js";

/** Radius of a mill's cutter, mm; 0 where nothing round cuts the notches, or it is not known. */
export function cutterRadius({ machine }: Pick<Bench, "machine">): number {
	return machine.kind === "mill" && machine.cutter !== null ? machine.cutter / 2 : 0;
}

/**
 * Clear width of a notch at a height over its mouth, with both corners of its floor rounded.
 *
 * A round of radius r has its centre r in from the flank and at h − r over the mouth. At a
 * height y above that its edge stands √(r² − (y − h + r)²) from the centre, so that
 * w − 2r + 2√(r² − (y − h + r)²) remain; below it all of w.
 *
 * @param notch - width w and depth h, mm
 * @param radius - of the rounds, mm, 0 to w/2
 * @param height - y, mm, 0 to h
 * @throws RangeError beyond these ranges
 * @example clearWidth({ width: 4.2, depth: 1.9 }, 1.5875, 1.3) // 3.51096…
 */
export function clearWidth(
	{ width, depth }: { readonly width: number; readonly depth: number },
	radius: number,
	height: number,
): number {
	if (!(radius >= 0 && 2 * radius <= width) || !(height >= 0 && height <= depth)) {
		throw new RangeError(`no round of ${radius} in ${width} x ${depth} at ${height}`);
	}
	const over = height - (depth - radius);
	if (over <= 0) return width;
	return width - 2 * radius + 2 * Math.sqrt((radius - over) * (radius + over));
}

/** Least floor between the two pockets of a relieved notch, mm: less would be a splinter. */
const LEAST_FLOOR = 0.2;

/**
 * How a notch's floor is relieved for a cutter of some radius: by a half round pocket in either
 * corner, or, where these would meet, by lying deeper as a whole.
 */
export function hasPockets(width: number, radius: number): boolean {
	return radius > 0 && width - 4 * radius >= LEAST_FLOOR;
}

/** How deep a notch's floor lies in its middle, mm. */
export function floorDepth({ depth, relief }: Edge, { width }: Notch): number {
	return hasPockets(width, relief) ? depth : depth + relief;
}

/** How deep an edge's notches reach, relief included, mm. */
export function deepest({ depth, relief }: Pick<Edge, "depth" | "relief">): number {
	return depth + relief;
}

/** From the inside corner's round to the mouth of a cleared end, at least, mm. */
const LEAST_FLANK = 0.5;

/**
 * Radius of a cleared end's inside corner, which does no work: as large as the cutter where there
 * is room for it. Where there is none the cutter's own check names the corner.
 */
export function archRound(radius: number, depth: number, length: number): number {
	const fits = radius + LEAST_FLANK <= depth && radius + CORNER_RADIUS <= length;
	return fits ? Math.max(CORNER_RADIUS, radius) : CORNER_RADIUS;
}

/** A crown in its notch, as the cutter leaves it. */
interface Crown {
	readonly fret: number;
	/** Clear width at the crown's height, mm. */
	readonly clear: number;
	/** What the crown and its clearance budget take, mm. */
	readonly needed: number;
	/** Whether the crown reaches up to the rounds. */
	readonly met: boolean;
}

/**
 * Every crown that stands under an edge once that is lapped as far as it may be; those of notches
 * too narrow for the cutter left out. Lapping lets the crowns stand higher in their notches.
 */
function crowns(bench: Bench, edge: Edge): Crown[] {
	const height = bench.wire.crownHeight + edge.lapping;
	const cutter = cutterRadius(bench);
	return edge.notches
		.filter(({ width }) => width >= 2 * cutter)
		.map(({ fret, width, footprint, clearance, budget }) => {
			const inArch = edge.zeroInArch && fret === 0;
			const depth = inArch ? edge.archDepth : edge.depth;
			const radius = inArch ? edge.archRound : edge.relief > 0 ? 0 : cutter;
			const round = Math.min(radius, width / 2);
			return {
				fret,
				clear: height > depth ? 0 : clearWidth({ width, depth }, round, height),
				needed: footprint + 2 * Math.min(clearance, budget),
				met: height > depth - round,
			};
		});
}

/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

/** The fret whose crown a cutter's rounds leave too little room for: the worst, or none. */
export function cutterProblemsOf(bench: Bench, edge: Edge, path: string[]): Problem[] {
	const cutter = 2 * cutterRadius(bench);
	if (cutter === 0) return [];
	const lacking = ({ clear, needed }: Crown) => needed - clear;
	const tight = crowns(bench, edge).filter((c) => c.met && lacking(c) > ROUNDING);
	const [first] = tight;
	if (!first) return [];
	const worst = tight.reduce((a, b) => (lacking(b) > lacking(a) + ROUNDING ? b : a), first);
	const { fret, clear, needed } = worst;
	const facts = { fret, cutter, clear, needed, more: tight.length - 1 };
	return [problem("crown-meets-cutter-round", path, facts)];
}

/** What a cutter leaves at the crown's height, and how the floors are relieved for it. */
export function cutterNotes(bench: Bench, edge: Edge): string[] {
	const cutter = 2 * cutterRadius(bench);
	const all = cutter === 0 ? [] : crowns(bench, edge);
	if (all.length === 0) return [];
	const clear = Math.min(...all.map((c) => c.clear));
	return [
		`Cutter ${trimmed(cutter, 3)}: ${fixed(clear, 3)} mm clear at the crown's height in the narrowest notch, the edge lapped by all of its allowance.`,
		...reliefNotes(edge),
	];
}

function reliefNotes({ notches, relief, depth }: Edge): string[] {
	if (relief === 0) return [];
	const pockets = notches.filter(({ width }) => hasPockets(width, relief)).length;
	const deeper = `${trimmed(relief, 4)} mm deeper`;
	const why = `so that the cutter leaves their full width down to ${trimmed(depth, 3)} mm`;
	if (pockets === 0) return [`Relief: the floors of the notches lie ${deeper}, ${why}.`];
	const some = pockets < notches.length ? "; narrower notches lie as much deeper as a whole" : "";
	return [
		`Relief: the floors of the notches have a half round pocket ${deeper} in either corner, ${why}${some}.`,
	];
}
