import { humpUnder } from "../../neck/index.js";
import { MATERIALS, sagOnEdge } from "../../shop/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import { landsOf, USUAL_CLEARANCE } from "./edge.js";
import type { Laid } from "./lay.js";
import type { StraightedgeSettings } from "./settings.js";

/** Two supports this share of the length apart bend a bar least over its whole length. */
const BEST_SUPPORTS = 0.5535;

/** What the person at the bench must know of this straightedge. */
export function straightedgeNotes(
	bench: Bench,
	{ cut, edge, line, neck }: Laid,
	s: StraightedgeSettings,
): string[] {
	const size = edge.right - edge.left;
	const sag = sagOnEdge(MATERIALS[bench.stock.material], size, s.height);
	const last = cut.notches.at(-1)!;
	const hump = humpUnder(neck, line, 0, last.centre);
	const { thermal, moisture, cutting, scale, total } = cut.budget;
	const least = landsOf(cut.notches).reduce((a, b) => (b.land < a.land ? b : a), {
		fret: 1,
		land: Number.POSITIVE_INFINITY,
	});
	const notes = [
		`Distances run from the theoretical nut${neck.nutShift === 0 ? "" : `; the nut's actual face is at ${fixed(neck.nutShift, 3)} mm`}.`,
		`Clearance budget at fret ${last.fret}: warmth ${fixed(thermal, 3)} (${trimmed(bench.temperatureSwing, 1)} K) + damp ${fixed(moisture, 3)} + cutting ${fixed(cutting, 3)} + scale ${fixed(scale, 3)} = ${fixed(total, 3)} mm a side; the notch has ${fixed(last.clearance, 3)}.`,
		`Standing on edge on its two ends it sags ${fixed(sag, 3)} mm in the middle by its own weight; two supports ${fixed(size * BEST_SUPPORTS, 0)} mm apart bend it least. A gap read under it is too small by its sag.`,
		hump < 0.0005
			? "This board shows no hump under this line: light under the edge is the neck's own shape."
			: `This board's radius makes a hump of ${fixed(hump, 3)} mm under this line: the board's shape, no fault of the neck. A gap read there is too small by it.`,
		"Flip test before first use: draw a fine line along the working edge, turn the bar over end for end face down, draw again along the same line. Twice the edge's error shows as the gap between the lines.",
		`Lapping: the notches are ${fixed(s["lapping-allowance"], 2)} mm deeper than they need be, so that the edge may be lapped true on a flat plate by as much.`,
	];
	if (Number.isFinite(least.land)) {
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
