import { isFanned } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import { fretRanges, type Served } from "./fewest.js";
import type { CaulSettings } from "./settings.js";

/** Thickness at which a caul presses without denting crowns or tipping, mm (common practice, no source). */
const STOUT = 12;

/** A gap that nobody can feel, mm. */
const NOTHING = 0.001;

/** What the person at the bench must know of this caul. */
export function caulNotes(bench: Bench, s: CaulSettings, served: Served, count: number): string[] {
	const { neck, stock } = bench;
	const numbers = served.frets.map(({ n }) => n);
	const tops = served.frets.map(({ radius }) => radius);
	const [least, most] = [Math.min(...tops), Math.max(...tops)].map((r) => trimmed(r, 2));
	const under = least === most ? `${least} mm` : `${least} to ${most} mm`;
	const notes = [
		`For ${fretRanges(numbers)}: the arc is ${trimmed(served.radius, 2)} mm, the crown tops under it are ${under}. It is never flatter than they are, so that no end of a fret lifts.`,
		isFanned(neck)
			? "The frets are fanned: lay it along the fret, not square to the centre line."
			: "Lay it along the fret, its middle over the centre line.",
	];
	if (served.gap > NOTHING) {
		notes.push(
			`Once the ends are down, at most ${fixed(served.gap, 3)} mm stay open over the middle of a fret; the next stroke, or a tap over the middle, takes it down.`,
		);
	}
	if (count > 1) {
		notes.push(
			`One of ${count}: the fewest that keep the gap over the middle within the limit. Change the caul where its frets end.`,
		);
	}
	if (s.mount === "holes") {
		notes.push(
			`The mounting holes are ${trimmed(s["hole-spacing"], 3)} mm apart, centre to centre.`,
		);
	}
	const layers = Math.ceil(STOUT / stock.thickness - 1e-9);
	notes.push(
		layers > 1
			? `A caul wants to be about ${STOUT} mm thick: glue up ${layers} pieces of this sheet (layers: ${layers}), working edges flush, and ease the edges of the arc.`
			: "Ease the edges of the arc, so that they mark neither crowns nor wood.",
	);
	return notes;
}
