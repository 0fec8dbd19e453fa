import { jobText, making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

const layout = (settings: string) => making(`nut-layout-strip: ${settings}`);
const heights = (settings: string) => making(`height-gauge: ${settings}`);
const reliefBar = (settings: string) => making(`relief-bar: ${settings}`);
const heldStem = (setting: string) =>
	reliefBar(
		`{body-joint: 14, reads-with: dial, dial-held-by: stem, dial-reach: 32 mm, ${setting}}`,
	);

export const TOOLS_SETUP: readonly BadJob[] = [
	bad(
		"layers of a bar that is made of sheets around a stem",
		reliefBar(
			"{body-joint: 14, reads-with: dial, dial-held-by: stem, dial-reach: 32 mm, layers: 2}",
		),
		"stem-bar-has-its-layers",
		"{body-joint",
		"layers: 2",
	),
	bad(
		"a dial held by a bar that reads with a feeler",
		reliefBar("{body-joint: 14, dial-held-by: stem}"),
		"dial-without-dial",
		"stem}",
		"reads-with: dial",
	),
	bad(
		"two ways to say where a relief bar stands",
		reliefBar("{body-joint: 14, stand-on: [1, 16]}"),
		"stands-twice",
		"14, stand-on",
		"[1, 16]",
	),
	bad(
		"steps that a beam does not leave",
		heights("{heights: [1 mm, 1.1 mm]}").replace("make:", "machine: {kerf: 0.25 mm}\nmake:"),
		"steps-below-beam",
		"[1 mm, 1.1 mm]",
		"0.125 mm",
	),
	bad(
		"a layout of strings that are not given",
		jobText(/ {2}strings.*\n/u, "").replace(/make:[\s\S]*/u, "make:\n  - nut-layout-strip\n"),
		"layout-needs-strings",
		"nut-layout-strip",
		"neck: strings:",
	),
	bad(
		"equal gaps of strings without diameters",
		layout("{string-spacing: gaps}"),
		"gaps-need-gauges",
		"gaps",
		"string-gauges",
		"string-spacing: centres",
	),
	bad(
		"too few string gauges",
		layout("{string-gauges: [0.010 in, 0.013 in]}"),
		"gauges-count",
		"[0.010",
		"2 string gauges",
		"6 strings",
	),
	bad(
		"strings thicker than their room",
		layout("{ends: [nut], bass-margin: 16, treble-margin: 16, string-gauges: [3, 3, 3, 3, 3, 3]}"),
		"strings-touch",
		"[3, 3",
		"at the nut",
		"0.8 mm",
	),
	bad(
		"margins that leave the strings no room",
		layout("{ends: [nut], bass-margin: 20, treble-margin: 20}"),
		"strings-too-near",
		"{ends: [nut], bass-margin: 20",
		"strings 6 and 5",
		"0.6 mm",
		"1.3 mm",
	),
	bad(
		"a string on the board's edge",
		layout("{bass-margin: 1 mm}"),
		"string-at-edge",
		"1 mm}",
		"bass",
		"1.3 mm",
	),
	bad(
		"two steps of one height",
		heights("{heights: [1 mm, 2 mm, 1.01 mm]}"),
		"steps-alike",
		"[1 mm, 2",
		"1 mm and 1.01 mm",
		"0.02 mm",
	),
	bad(
		"steps that a cutter cannot mill",
		heights("{heights: [1 mm, 1.2 mm]}").replace(
			"make:",
			"machine: {kind: mill, cutter: 2 mm}\nmake:",
		),
		"steps-below-cutter",
		"[1 mm, 1.2",
		"0.2 mm",
		"laser",
	),
	bad(
		"a relief bar without the body joint",
		making("relief-bar"),
		"body-joint-needed",
		"relief-bar",
		"body-joint: 14",
		"stand-on",
	),
	bad(
		"a relief bar beyond the last fret",
		reliefBar("{body-joint: 24}"),
		"no-wire-at-fret",
		"24",
		"fret 24",
		"1 to 22",
	),
	bad(
		"a relief bar on neighbouring frets",
		reliefBar("{stand-on: [5, 6]}"),
		"no-fret-between",
		"[5",
		"frets 5 and 6",
	),
	bad(
		"a relief bar on frets that are too near",
		reliefBar("{stand-on: [20, 22]}"),
		"relief-bar-too-short",
		"[20",
		"frets 20 and 22",
		"30 mm",
	),
	bad(
		"a dial of unknown reach",
		reliefBar("{body-joint: 14, reads-with: dial}"),
		"dial-reach-needed",
		"dial}",
		"dial-reach",
	),
	bad(
		"a dial of unknown reach whose stem is held",
		reliefBar("{body-joint: 14, reads-with: dial, dial-held-by: stem}"),
		"dial-reach-needed",
		"dial, dial-held-by",
		"the dial's body",
	),
	bad(
		"a stem that the sheets hold too loosely",
		heldStem("dial-stem: 7 mm"),
		"stem-in-thick-sheets",
		"7 mm}",
		"3 sheets of 3 mm",
		"2 mm of play",
		"2.333 mm to 2.833 mm, or 3.5 mm to 4.25 mm",
	),
	bad(
		"a stem with play and without a screw",
		heldStem("clamp-screw: none"),
		"clamp-screw-needed",
		"none}",
		"1 mm of play",
		"0.1 mm",
	),
];
