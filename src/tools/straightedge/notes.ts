import { camberUnder } from "../../neck/index.js";
import { MATERIALS, sagOnEdge } from "../../shop/index.js";
import { fixed, trimmed } from "../../units/index.js";
import { scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { cutterNotes } from "./cutter.js";
import { landsOf, type Notches, USUAL_CLEARANCE } from "./edge.js";
import type { Laid } from "./lay.js";
import type { StraightedgeSettings } from "./settings.js";

/** Two supports this share of the length apart bend a bar least over its whole length. */
const BEST_SUPPORTS = 0.5535;
/** Board shape below this is not worth a word, mm. */
const FLAT_ENOUGH = 0.0005;

/** What the person at the bench must know of this straightedge. */
export function straightedgeNotes(
	bench: Bench,
	first: Laid,
	second: Laid | null,
	s: StraightedgeSettings,
): string[] {
	const { cut, edge, neck } = first;
	const size = edge.right - edge.left;
	const sag = sagOnEdge(MATERIALS[bench.stock.material], size, s.height);
	return [
		`Distances run from the theoretical nut${neck.nutShift === 0 ? "" : `; the nut's actual face is at ${fixed(neck.nutShift, 3)} mm`}.`,
		budgetNote(bench, cut),
		`Standing on edge on its two ends it sags ${fixed(sag, 3)} mm in the middle by its own weight; two supports ${fixed(size * BEST_SUPPORTS, 0)} mm apart bend it least. A gap read under it is too small by its sag.`,
		...camberNotes(first),
		...slantNote(bench, first),
		"Flip test before first use: draw a fine line along the working edge, roll the bar over that edge, so that it lies face down on the line's other side with its nut end where it was, and draw along it again. Twice the edge's error shows as the gap between the lines.",
		`Lapping: the notches are ${fixed(s["lapping-allowance"], 2)} mm deeper than they need be, so that the edge may be lapped true on a flat plate by as much.`,
		...cutterNotes(bench, edge),
		...landNotes(cut),
		...(second ? secondNotes(bench, second) : []),
	];
}

function budgetNote(bench: Bench, cut: Notches): string {
	const last = cut.notches.at(-1)!;
	const { thermal, moisture, cutting, scale, total } = cut.budget;
	return `Clearance budget at fret ${last.fret}: warmth ${fixed(thermal, 3)} (${trimmed(bench.temperatureSwing, 1)} K) + damp ${fixed(moisture, 3)} + cutting ${fixed(cutting, 3)} + scale ${fixed(scale, 3)} = ${fixed(total, 3)} mm a side; the notch has ${fixed(last.clearance, 3)}.`;
}

/** Why notches over slanted frets are wider than crown and clearance. */
function slantNote(bench: Bench, { cut }: Laid): string[] {
	const widest = Math.max(...cut.notches.map((n) => n.footprint));
	if (widest - bench.wire.crownWidth < 0.1) return [];
	return [
		"The frets stand slanted under this bar, so each notch is wider than the crown: by the slant of the crown and by the bar's thickness times the tangent of the slant.",
	];
}

/** What the board's own radius does under this line. */
function camberNotes({ cut, line, neck }: Laid): string[] {
	const { hump, hollow } = camberUnder(neck, line, 0, cut.notches.at(-1)!.centre);
	const notes: string[] = [];
	if (hump >= FLAT_ENOUGH) {
		notes.push(
			`This board's radius makes a hump of ${fixed(hump, 3)} mm under this line: the board's shape, no fault of the neck. A gap read there is too small by it.`,
		);
	}
	if (hollow >= FLAT_ENOUGH) {
		notes.push(
			`This board's radius grows unevenly and leaves a hollow of ${fixed(hollow, 3)} mm under this line: the board's shape, no fault of the neck. A gap read there is too large by it.`,
		);
	}
	if (notes.length > 0) return notes;
	return [
		"This board shows no hump under this line: light under the edge is the neck's own shape.",
	];
}

function landNotes(cut: Notches): string[] {
	const [first, ...rest] = landsOf(cut.notches);
	const notes: string[] = [];
	if (first) {
		const least = rest.reduce((a, b) => (b.land < a.land ? b : a), first);
		notes.push(
			`Least land: ${fixed(least.land, 3)} mm, between frets ${least.fret - 1} and ${least.fret}.`,
		);
	}
	if (cut.shrunk.length > 0) {
		notes.push(
			`To keep land between the notches, the side clearance went down from ${USUAL_CLEARANCE} mm to the budget at frets ${cut.shrunk.join(", ")}.`,
		);
	}
	return notes;
}

/** What the second edge needs to be told besides. */
function secondNotes(bench: Bench, { cut, edge, neck }: Laid): string[] {
	const own = [budgetNote(bench, cut), ...cutterNotes(bench, edge), ...landNotes(cut)];
	return [
		`The second edge serves a scale of ${scaleText(neck)} with ${neck.frets} frets, from the other end: turn the bar half round in its plane and lay it along the centre line.`,
		...own.map((note) => `Second edge: ${note.charAt(0).toLowerCase()}${note.slice(1)}`),
	];
}
