import { stationText } from "../../fields/index.js";
import { isFanned } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { ArchSettings } from "./settings.js";
import type { Arch } from "./undersides.js";

/** What the person at the bench must know of this gauge. */
export function archNotes({ neck }: Bench, s: ArchSettings, arch: Arch): string[] {
	const mm = (key: "action-bass" | "action-treble" | "nut-clearance") => `${trimmed(s[key], 3)} mm`;
	const place = stationText(s["arch-at"]);
	const along =
		isFanned(neck) && s["arch-at"].kind !== "distance"
			? "along its slant"
			: "square to the centre line";
	return [
		`Slide it under the strings at the ${place}, ${along}, and raise it: the arc meets every string at once where their heights are right.`,
		`For an action of ${mm("action-bass")} under the lowest and ${mm("action-treble")} under the highest string over the crown of fret ${s["action-fret"]}, and ${mm("nut-clearance")} over the crowns' level at the nut. The gauge shows the arch; the height itself is set at fret ${s["action-fret"]}.`,
		`The undersides lie within ${fixed(arch.beside, 3)} mm of the arc. Strings that spread toward the saddle lie on a flatter arch than the crowns.`,
		"It goes by the undersides: strings of different thickness do not change it, as they do an arch that is read over their tops.",
		"Reckoned without relief and without the strings' sideways bend at the nut.",
	];
}
