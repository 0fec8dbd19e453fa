import { making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

const block = (settings: string) => making(`sanding-block: ${settings}`);
const rails = (settings: string) => making(`sled-rails: ${settings}`);
const COMPOUND = "radius: {nut: 10 in, last-fret: 16 in}";

export const TOOLS_BLOCK: readonly BadJob[] = [
	bad(
		"a cylindrical block for a compound board",
		block("{form: curved}").replace("radius: 12 in", COMPOUND),
		"cylinder-on-cone",
		"curved",
		"254 mm to 406.4 mm",
		"form: flat",
		"y/R",
	),
	bad(
		"a curved block for a flat board",
		block("{form: curved}").replace("radius: 12 in", "radius: flat"),
		"curve-on-flat",
		"curved",
		"flat",
	),
	bad(
		"a flat beam for a cylinder",
		block("{form: flat}"),
		"beam-planes-hump",
		"flat}",
		"the outer strings",
		"0.015 mm",
		"form: curved",
	),
	bad(
		"a block wider than its circle",
		block("{block-width: 300}").replace("radius: 12 in", "radius: 140 mm"),
		"block-wider-than-circle",
		"300",
		"300 mm",
		"141.1 mm",
	),
	bad(
		"a block too low for its joints",
		block("{block-height: 20}"),
		"block-too-low",
		"20}",
		"20 mm",
	),
	bad(
		"a stack of more ribs than a sheet of film allows",
		block("{skin: 0}").replace("thickness: 3 mm", "thickness: 0.2 mm"),
		"too-many-ribs",
		"sanding-block",
		"500",
		"400",
	),
	bad(
		"a rail that meets the board",
		rails("{before-nut: 2}"),
		"rail-meets-board",
		"2}",
		"2 mm",
		"2.5 mm",
	),
	bad(
		"a rail wider than its circle",
		rails("{rail-height: 2, past-end: 12}").replace(
			"radius: 12 in",
			"radius: {nut: 200 mm, last-fret: 34 mm}",
		),
		"rail-wider-than-circle",
		"12}",
		"the end rail",
	),
	bad(
		"rails for a radius of two rates",
		making("sled-rails").replace(
			"radius: 12 in",
			"radius: {nut: 10 in, 12: 11 in, last-fret: 14 in}",
		),
		"rails-need-one-cone",
		"sled-rails",
		"279.4 mm",
	),
	bad(
		"rails too low for their marks",
		rails("{foot-height: 5, rail-height: 5}"),
		"rail-too-low",
		"5, rail",
		"10 mm",
	),
];
