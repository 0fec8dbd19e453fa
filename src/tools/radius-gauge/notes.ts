import { isExtrapolated, isFanned } from "../../neck/index.js";
import { trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { Face } from "./settings.js";
import type { Wanted } from "./wanted.js";

/** What the person at the bench must know of this gauge. */
export function gaugeNotes(bench: Bench, { place, radius, x }: Wanted, face: Face): string[] {
	const { neck } = bench;
	const notes = [
		face === "concave"
			? "Hold it square to the centre line and look for light between arc and board."
			: "Hold it square in the hollow of a block or caul and look for light under the arc.",
		`The arc is a true arc of ${trimmed(radius, 3)} mm over the whole width; nothing is faceted.`,
	];
	if (isFanned(neck)) {
		notes.push(
			"The frets are fanned: along a slanted fret the board is flatter than this radius. Hold the gauge square to the centre line, not along the fret.",
		);
	}
	if (x !== null && neck.radius !== "flat" && isExtrapolated(neck.radius, x)) {
		notes.push(`The radius at ${place} is extrapolated beyond the measured stations.`);
	}
	return notes;
}
