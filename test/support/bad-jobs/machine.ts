import { jobText, withBlock } from "../job-text.js";
import { type BadJob, bad, strip } from "./bad-job.js";

const machine = (keys: string) => withBlock(`machine: {${keys}}`);

/** Machines that do not exist, or whose keys do not go together. */
export const MACHINE: readonly BadJob[] = [
	bad("a negative kerf", machine("kerf: -0.1 mm"), "length-range", "-0.1 mm", "0 to 2 mm"),
	bad(
		"a bed without width",
		machine("bed: 0 x 400 mm"),
		"length-range",
		"0 x 400 mm",
		"20 to 5000 mm",
	),
	bad("a bed with one side", machine("bed: 600 mm"), "bed", "600 mm", '"600 mm"', "600 x 400 mm"),
	bad("a bed of words", machine("bed: large"), "bed", "large", "24 x 16 in"),
	bad(
		"a margin that leaves nothing",
		machine("bed: 600 x 400 mm, margin: 200 mm"),
		"margin-leaves-nothing",
		"200 mm",
		"600 x 400 mm",
	),
	bad(
		"parts closer than two kerfs",
		machine("bed: 600 x 400 mm, kerf: 1.5 mm, spacing: 2.5 mm"),
		"length-range",
		"2.5 mm",
		"3 mm or more",
	),
	bad(
		"parts closer than two cutters",
		machine("kind: mill, cutter: 3 mm, bed: 600 x 400 mm, spacing: 4.5 mm"),
		"length-range",
		"4.5 mm",
		"6 mm or more",
	),
	bad("a cutter in a laser", machine("cutter: 3.05 mm"), "cutter-without-mill", "3.05 mm", "kind: mill"),
	bad(
		"relief for a laser",
		machine("relief: floor"),
		"relief-without-cutter",
		"floor",
		"relief: none",
	),
	bad(
		"relief without a cutter",
		machine("kind: mill, relief: floor"),
		"relief-without-cutter",
		"floor",
		"cutter: 3.175 mm",
	),
	bad(
		"tabs on paper",
		machine("kind: printer, tabs: {count: 2, width: 1 mm}"),
		"tabs-on-paper",
		"{count: 2, width: 1 mm}",
		"printer",
	),
	bad(
		"a speed without time",
		machine("speeds: {cut: 12 mm, score: 80 mm/h, travel: 300 mm/s}"),
		"speed",
		"80 mm/h",
		"12 mm/s",
	),
	bad(
		"a kerf for no sheet",
		machine("kerf: {acryl 3 mm: 0.16 mm}"),
		"kerf-sheet-key",
		"acryl 3 mm",
		"acrylic 3 mm: 0.16 mm",
	),
	bad("a list of no kerfs", machine("kerf: {}"), "kerf-list-empty", "{}", "acrylic 3 mm"),
	bad(
		"a sheet without its kerf",
		machine("kerf: {acrylic 4 mm: 0.16 mm, mdf 3 mm: 0.2 mm}"),
		["kerf-unknown", "kerf-unknown", "kerf-unknown"],
		"notched-straightedge",
		"acrylic 3 mm",
		"acrylic 4 mm, mdf 3 mm",
	),
	bad(
		"a stretch that is a misreading",
		machine("stretch: {x: 1.016}"),
		"number-range",
		"1.016",
		"0.988 to 1.012",
	),
	bad(
		"slots as single cuts on a mill",
		strip("{slots: line}").replace("make:", "machine: {kind: mill}\nmake:"),
		"line-slots-without-laser",
		"line",
		"slots: scored",
	),
	bad(
		"a slot narrower than the beam",
		strip("{slots: tang}").replace("make:", "machine: {kerf: 0.6 mm}\nmake:"),
		Array<string>(22).fill("narrower-than-kerf"),
		"{slots: tang}",
		"slot 1",
		"0.53 mm",
		"slots: line",
	),
	bad(
		"a grain across",
		jobText("thickness: 3 mm", "thickness: 3 mm, grain: across"),
		"not-one-of",
		"across",
		"x",
	),
];
