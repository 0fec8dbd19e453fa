import { dropAt, isFanned, type Neck, radiusAt } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import { fretList } from "../slot-strip/labels.js";
import type { GuideLabels } from "./labels.js";
import type { Guide, Hole } from "./lay.js";
import type { GuideSettings } from "./settings.js";

/** What the person at the bench must know of a guide. */
export function guideNotes(s: GuideSettings, guide: Guide, texts: GuideLabels): string[] {
	const { neck, diameter } = guide;
	return [
		"Use it with the frets out, the plate flat on the wood: on crowns it would stand off and tilt.",
		"The holes are midway between a marker's fret and the one before, along the neck. All distances run from the theoretical nut on the centre line; none is chained from fret to fret.",
		nutEndNote(neck),
		"Its long sides are the board's edges: feel with a finger along both that plate and board are flush, from end to end, before it is taped down.",
		...(s["slot-lines"]
			? [
					"The scored lines lie on the middles of the slots. Where all stand beside theirs by as much, the nut is not where the job has it: lay the plate by the slots. Where they drift off along the neck, the scale is another: drill nothing.",
				]
			: []),
		...(isFanned(neck)
			? ["Fanned frets: lay it letters up. Turned over it would fit the board of the other hand."]
			: []),
		`The holes are ${trimmed(diameter, 3)} mm wide for a drill of ${trimmed(s.drill, 3)} mm${s["drill-play"] > 0 ? `, which may stand ${trimmed(s["drill-play"] / 2, 3)} mm beside a hole's middle` : ""}. Hold the drill square to the plate, and drill to a stop.`,
		...camberNotes(guide),
		...(s["hanging-hole"] === "none"
			? []
			: ["The hole beyond the last slot is there to hang it by: drill nothing through that one."]),
		...(texts.unnumbered.length > 0
			? [`No room for the number at ${fretList(neck, texts.unnumbered)}.`]
			: []),
		...(texts.untold.length > 0 ? [`No room for ${texts.untold.join(", ")}.`] : []),
	];
}

/** What the nut end is laid against. */
function nutEndNote({ zeroFret, nutShift }: Neck): string {
	if (zeroFret) {
		return "The nut behind a zero fret is no datum: lay the nut end on the middle of the zero fret's slot.";
	}
	const off =
		nutShift === 0
			? "where the theoretical nut is"
			: `${fixed(Math.abs(nutShift), 3)} mm from the theoretical nut toward the ${nutShift > 0 ? "saddle" : "head"}`;
	return `The nut end is where the nut's actual face stands, ${off}: butt it against the nut, all glue scraped out of the corner. With the nut off, lay it flush with the line that face stood on: the end of the board, or the wall of the nut's slot.`;
}

/** How a flat plate stands over holes off the centre line of a cambered board. */
function camberNotes({ neck, holes }: Guide): string[] {
	const apart = holes.filter(({ at }) => at.y * neck.trebleSide > 0);
	if (neck.radius === "flat" || apart.length === 0) return [];
	const each = apart.map((hole) => overBoard(neck, hole));
	return [
		`A flat plate rests on the middle of a cambered board. Over the holes of a double marker the wood lies lower and leans away from the drill, which stands square to the plate: ${each.join("; ")}. Allow for that height in the drill's stop, and for the lean under wide flat dots.`,
	];
}

/** "fret 12: 0.164 mm, 1.88°". */
function overBoard(neck: Neck, { fret, at }: Hole): string {
	const radius = radiusAt(neck, at.x)!;
	const lean = (Math.asin(Math.abs(at.y) / radius) * 180) / Math.PI;
	return `fret ${fret}, ${trimmed(Math.abs(at.y), 2)} mm off the centre: ${fixed(dropAt(radius, at.y), 3)} mm lower, ${fixed(lean, 2)}° of lean`;
}
