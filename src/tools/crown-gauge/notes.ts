import { isFanned } from "../../neck/index.js";
import { inches, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { Notch } from "./notch.js";

/** What the person at the bench must know of the gauge. */
export function gaugeNotes({ neck, wire }: Bench, notches: readonly Notch[]): string[] {
	const across = isFanned(neck)
		? "The frets are fanned: stand it square to the fret under it, not along the strings."
		: "Stand it along the strings, square to the fret.";
	return [
		`${across} Both feet of a tongue belong on the wood on either side of the fret, its notch over the crown; look for light in the notch. Begin with the highest.`,
		"Light under the feet and over the middle: the crown is still flat and holds the notch up by its two edges. File these round, not the top, until both feet come down.",
		"Feet down and light over the top: the crown is lower than this notch; try the next. The notch that shows no light says how high the crown still stands.",
		`The section is taken as a circle's arc over ${trimmed(wire.crownWidth, 3)} mm, the crown's width at its foot, which it keeps when it is dressed (common practice, no source).`,
		...notches.map(notchNote),
		"Take burrs off feet and notches with one light stroke of a fine file and leave the corners between them sharp. The outer corners of the feet do no work: break them.",
		...(neck.zeroFret
			? ["A nut close behind the zero fret leaves no foot room there: gauge it with the nut out."]
			: []),
	];
}

function notchNote({ number, section }: Notch): string {
	const { height, radius, flank } = section;
	const form =
		flank > 0
			? `a half circle of ${trimmed(radius, 3)} mm radius on straight flanks of ${trimmed(flank, 3)} mm; no crown that is wider than the wire goes in`
			: `an arc of ${trimmed(radius, 3)} mm radius`;
	return `Notch ${number}, ${trimmed(height, 3)} mm (${inches(height)} in): ${form}.`;
}
