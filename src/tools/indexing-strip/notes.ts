import { fixed, trimmed } from "../../units/index.js";
import { lengthName } from "../scale-text.js";
import { fretList } from "../slot-strip/labels.js";
import type { Bench } from "../tool.js";
import type { IndexingSettings } from "./settings.js";

/** What the person at the bench must know of the strip. */
export function stripNotes(
	{ neck }: Bench,
	s: IndexingSettings,
	unnumbered: readonly number[],
): string[] {
	const c = s["pin-to-blade"];
	const side = c > 0 ? "the saddle's" : "the nut's";
	return [
		"Fix the strip to the board, the line NUT on the board's theoretical nut and the edge along the fence. Set notch after notch on the pin and saw.",
		`Always push the board toward its saddle's end, so that the pin lies against the flank on the nut's side: the play of ${trimmed(s["pin-play"], 3)} mm is all on the other side.`,
		c === 0
			? "The pin's middle lies in line with the blade's: check it on scrap."
			: `The pin's middle stands ${trimmed(Math.abs(c), 3)} mm from the blade's, on ${side} side: check it on scrap, as an error in it moves every cut by as much.`,
		neck.zeroFret
			? "Notch 0 is the zero fret's slot; the nut behind it is no datum and has no notch."
			: `Notch 0 is the nut's cut${neck.nutShift === 0 ? "" : `, at the nut's actual face, ${fixed(neck.nutShift, 3)} mm from the theoretical nut`}: the blade's middle goes on the line, so that half of its cut is lost from the board.`,
		"All distances run from the theoretical nut; none is chained from fret to fret.",
		...(s["second-edge"] === "plain"
			? []
			: [
					`The second edge serves a scale of ${lengthName(s["second-edge"].scale)} with ${s["second-edge"].frets} frets, from the other end: turn the strip half round in its plane. The pin and its flank are the same.`,
				]),
		...(unnumbered.length > 0 ? [`No room for the number at ${fretList(neck, unnumbered)}.`] : []),
	];
}
