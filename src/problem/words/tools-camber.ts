import { mm, say, type Wording, w } from "./say.js";

/** What the tools of the board's camber refuse. */
export const TOOLS_CAMBER: Wording = {
	"flat-board-caul": () =>
		w(
			"a flat board needs no arched caul",
			"Leave it out: any straight bar as long as the frets presses them.",
		),
	"caul-gap-unreachable": (f) =>
		w(
			`over the middle of fret ${say(f.fret)} no caul stays within ${mm(f.given)}: it lies slanted on a board whose radius changes, and an arc that touches both ends leaves ${mm(f.least)} there`,
			`Give a most-gap of ${mm(f.least)} or more.`,
		),
	"caul-too-low": (f) =>
		w(
			`a caul ${mm(f.height)} high (${say(f.serves)}) has no room for its arc, its letters and its mount`,
			`Give a caul-height of ${mm(f.least)} or more, or leave it out.`,
		),
	"bend-not-of-this-board": (f) =>
		w(
			f.flat === "yes"
				? `${say(f.key)} says nothing on a flat board: its wire is bent by a rise`
				: `${say(f.key)} says nothing on an arched board: its wire is bent tighter than the board`,
			f.flat === "yes"
				? `Leave ${say(f.key)} out, or give rise: 0.3 mm.`
				: `Leave ${say(f.key)} out, or give over-bend: 15.`,
		),
	"bend-for-no-fret": (f) =>
		w(
			`bend-for names fret ${say(f.fret)}, the neck's frets are ${say(f.first)} to ${say(f.last)}`,
			"Take it out, or check the number of frets.",
		),
	"flat-board-arch": () =>
		w(
			"over a flat board the strings lie side by side in a plane: a straightedge is their gauge",
			"Leave it out.",
		),
	"arch-needs-strings": (f) =>
		w(
			Number(f.count) > 0
				? `${say(f.count)} strings make no arch`
				: "the strings are not given, and their arch follows from them",
			"Give three strings or more under neck: strings:, with their spread at nut and saddle, or leave it out.",
		),
	"action-beyond": (f) =>
		w(
			`action is measured over a crown, and there is no fret ${say(f.fret)}: the neck has ${say(f.frets)}`,
			`Give an action-fret of 1 to ${say(f.frets)}.`,
		),
	"arch-not-round": (f) =>
		w(
			f.hollow === "yes"
				? `at the ${say(f.place)} these strings would lie in a hollow, the middle ones lowest`
				: `at the ${say(f.place)} these strings would lie in a plane`,
			"Check the radii and their stations: a board that flattens faster than its strings spread does that. A gauge nearer the nut (arch-at) may still have an arch.",
		),
};
