import { isFanned } from "../../neck/index.js";
import { trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { Bend } from "./wanted.js";

/** What the person at the bench must know of this gauge. */
export function bendNotes({ neck, wire }: Bench, bend: Bend): string[] {
	const { board, radius, by } = bend;
	const size = `${trimmed(radius, 2)} mm`;
	const varies = neck.radius !== "flat" && (neck.radius.knots.length > 1 || isFanned(neck));
	const notes = [
		"Lay the hollow on the crown of the bent wire. Light under the middle: bend it more. Light under the ends: it is bent too much.",
		board === null
			? `For a flat board: ${by} over the length of the longest fret, an arc of ${size} over the crown, so that the ends press into their slots first.`
			: `Board ${trimmed(board, 2)} mm along the fret, ${by}, and ${trimmed(wire.crownHeight, 3)} mm of crown: ${size} over the crown, so that the ends press into their slots first.`,
		"Wire springs back: bend a piece of scrap and read it lying free, not in the bender.",
	];
	if (varies && bend.serves === "all frets") {
		notes.push(
			"By the roundest fret: wire bent to it serves the flatter ones too, a little tighter still. For gauges by fret give bend-for.",
		);
	}
	return notes;
}
