import { making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

const bend = (settings: string) => making(`wire-bend-gauge: ${settings}`);
const arch = (settings: string) => making(`string-arch-gauge: ${settings}`);
const caul = (settings: string) => making(`pressing-caul: ${settings}`);

export const TOOLS_CAMBER: readonly BadJob[] = [
	bad(
		"a caul for a flat board",
		making("pressing-caul").replace("radius: 12 in", "radius: flat"),
		"flat-board-caul",
		"pressing-caul",
		"flat board",
		"straight bar",
	),
	bad(
		"a gap that no caul keeps on strongly fanned frets",
		caul("{most-gap: 0.01 mm}")
			.replace("scale: 648 mm", "scale: {bass: 27 in, treble: 25 in, square-fret: 7}")
			.replace("radius: 12 in", "radius: {nut: 7.25 in, last-fret: 20 in}"),
		"caul-gap-unreachable",
		"0.01 mm",
		"0.01 mm",
		"most-gap",
	),
	bad(
		"a caul too low for its mount",
		caul("{caul-height: 18 mm}"),
		"caul-too-low",
		"18 mm",
		"18 mm high",
		"frets 1-22",
	),
	bad(
		"a rise of wire for an arched board",
		bend("{rise: 0.4 mm}"),
		"bend-not-of-this-board",
		"0.4 mm",
		"rise",
		"over-bend: 15",
	),
	bad(
		"a wire bent for a fret that is not there",
		bend("{bend-for: [1, 23]}"),
		"bend-for-no-fret",
		"23]",
		"fret 23",
		"1 to 22",
	),
	bad(
		"an arch over a flat board",
		making("string-arch-gauge").replace("radius: 12 in", "radius: flat"),
		"flat-board-arch",
		"string-arch-gauge",
		"straightedge",
	),
	bad(
		"an arch of two strings",
		making("string-arch-gauge").replace("count: 6", "count: 2"),
		"arch-needs-strings",
		"string-arch-gauge",
		"2 strings",
		"three strings",
	),
	bad(
		"an action over a fret that is not there",
		arch("{action-fret: 23}"),
		"action-beyond",
		"23",
		"no fret 23",
		"1 to 22",
	),
	bad(
		"strings that would lie in a hollow",
		making("string-arch-gauge").replace(
			"radius: 12 in",
			"radius: {nut: 7.25 in, last-fret: 100 in}",
		),
		"arch-not-round",
		"string-arch-gauge",
		"hollow",
		"saddle",
	),
];
