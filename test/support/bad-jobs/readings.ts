import { JOB } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

/** The ordinary job with readings instead of its scale. */
function reading(lines: string, more = ""): string {
	return JOB.replace("  scale: 648 mm\n", `${more}  readings:\n    ${lines}\n`);
}

const RADIUS = (entry: string) =>
	JOB.replace("  radius: 12 in\n", `  readings:\n    radius: [${entry}]\n`);
const BOTH = "bass-slots: {1: 38 mm, 12: 355.6 mm}\n    treble-slots: {1: 36 mm, 12: 330.2 mm}";

/** Jobs whose readings are wrong before anything is fitted. */
export const READINGS: readonly BadJob[] = [
	bad(
		"readings without any",
		reading("slots: {}"),
		"readings-empty",
		"{}",
		"slots",
		"12: [323.5 mm, 324 mm]",
	),
	bad(
		"a reading at no fret",
		reading("slots: {nut: 3 mm}"),
		"reading-fret",
		"{nut: 3 mm}",
		'"nut"',
		"12: 323.5 mm",
	),
	bad(
		"readings in a file that is not there",
		reading("slots: none.csv"),
		"readings-not-loaded",
		undefined,
		"none.csv",
		"none.csv",
	),
	bad(
		"readings in a file that is no table",
		reading("slots: neck.yaml"),
		"readings-file",
		"neck.yaml",
		"neck.yaml, row 1",
		"fret,reading mm",
	),
	bad(
		"slots as read, not all of them",
		reading("use: readings\n    slots: {1: 36.4 mm, 2: 70.7 mm, 12: 324 mm}"),
		"readings-not-all",
		{ line: 5, column: 10 },
		"3, 4, 5",
		"use: law",
	),
	bad(
		"readings beside measured positions",
		reading("slots: {1: 36.4 mm, 12: 324 mm}", "  division: {positions: [36 mm, 70 mm]}\n").replace(
			"frets: 22",
			"frets: 2",
		),
		"readings-and-positions",
		"{positions:",
		"division",
	),
	bad(
		"slots along three lines",
		reading(`slots: {1: 36.4 mm}\n    ${BOTH}`),
		"slots-of-one-line",
		"slots: {1: 36.4 mm}",
		"bass-slots and treble-slots",
	),
	bad(
		"fanned slots as they were read",
		reading(`use: readings\n    ${BOTH}`),
		"readings-fanned",
		{ line: 5, column: 10 },
		"use: law",
	),
	bad(
		"a square fret that nobody read",
		reading(BOTH),
		"square-fret-unread",
		"readings:",
		"square-line",
	),
	bad(
		"a radius read in no way",
		RADIUS("{at: nut}"),
		"radius-way",
		"{at: nut}",
		"chord and sagitta",
	),
	bad(
		"a radius read in two ways at once",
		RADIUS("{at: nut, chord: 50 mm, sagitta: 1 mm, feet: 40 mm, dial: 1 mm}"),
		"radius-way",
		"{at: nut, chord: 50 mm, sagitta",
		"chord, bar",
	),
	bad(
		"a chord without its sagitta",
		RADIUS("{at: nut, chord: 50 mm}"),
		"radius-keys",
		"{at: nut, chord: 50 mm}",
		"not given: sagitta",
	),
	bad(
		"a height at no place",
		RADIUS("{at: nut, heights: {middle: 1 mm}}"),
		"height-place",
		"{middle: 1 mm}",
		'"middle"',
	),
];
