import { say, type Wording, w } from "./say.js";

/** Fonts and letters. */
export const LETTERING: Wording = {
	"font-not-loaded": (f) =>
		w(
			`the font ${say(f.file)} cannot be loaded here`,
			"Name no font, or run camber on a computer.",
		),
	"font-unusable": (f) =>
		w(
			`the font ${say(f.file)} cannot be used: ${say(f.reason)}`,
			"Name a TTF or OTF file, and check its path.",
		),
	"font-lacks-signs": (f) =>
		w(
			`the font ${say(f.file)} has no ${say(f.missing)}`,
			"Name a font that has all letters, figures and signs of a keyboard, and ± and °.",
		),
	"letters-missing": (f) =>
		w(
			`"${say(f.text)}" cannot be lettered: the lettering has no ${say(f.missing)}`,
			"Write it otherwise, or name a font that has them all: lettering: {font: my-font.ttf}.",
		),
};
