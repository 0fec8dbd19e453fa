import { making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

/** A job that makes one tool on a machine. */
const on = (machine: string, entry: string) =>
	making(entry).replace("make:", `machine: {${machine}}\nmake:`);

const MILL = "kind: mill, cutter: 3.175 mm";

/** Parts that the machine cannot cut, or cannot hold. */
export const CUTTING: readonly BadJob[] = [
	bad(
		"cut slots narrower than the cutter",
		on("kind: mill, cutter: 1 mm", "slot-strip: {slots: tang}").replace("frets: 22", "frets: 2"),
		"narrower-than-cutter",
		"{slots",
		"slot 1, slot 2",
		"0.53 mm",
		"cutter of 1 mm",
		"slots: scored",
	),
	bad(
		"an arch too low for the cutter's radius",
		on(MILL, "notched-straightedge: {nut-end: cleared, arch-depth: 2 mm, depth-clearance: 2 mm}"),
		"radius-below-cutter",
		"{nut-end",
		"inside radius of 1.5 mm",
		"3.175 mm",
	),
	bad(
		"notches that are all corner",
		on(
			"kind: mill, cutter: 6 mm",
			"notched-straightedge: {side-clearance: 1.8 mm, hanging-hole: none}",
		).replace("frets: 22", "frets: 1"),
		"shallower-than-cutter",
		"{side",
		"notch 1",
		"1.9 mm deep",
		"6 mm",
	),
	bad(
		"a crown that meets the cutter's round",
		on(MILL, "notched-straightedge: {side-clearance: 0.3 mm, depth-clearance: 0.5 mm}"),
		"crown-meets-cutter-round",
		"0.5 mm}",
		"cutter of 3.175 mm",
		"relief: floor",
		"depth-clearance",
	),
	bad(
		"more tabs than there is room for",
		on("tabs: {count: 20, width: 20 mm}", "radius-gauge: {at: [nut], faces: [concave]}"),
		"no-room-for-tabs",
		"{at",
		"20 tabs 20 mm wide",
		"3 mm off the working edges",
	),
];
