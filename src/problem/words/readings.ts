import { say, type Wording, w } from "./say.js";

/** Readings as a job or a file gives them. */
export const READINGS: Wording = {
	"no-readings": () =>
		w(
			"this job's neck has numbers alone, nothing to fit",
			"Write what you read under neck: readings:, for instance slots: {1: 36.4 mm, 12: 324 mm}.",
		),
	"readings-empty": () =>
		w("there are no readings here", "Write them by fret: {1: 35.5 mm, 12: [323.5 mm, 324 mm]}."),
	"reading-fret": (f) =>
		w(
			`"${say(f.given)}" is no fret`,
			"Write the number of the fret before each reading: 12: 323.5 mm.",
		),
	"readings-file": (f) =>
		w(
			`${say(f.file)}, row ${say(f.row)}: ${say(f.reason)}`,
			"Write a table with a head: fret,reading mm (and string: bass or treble on a fanned board), a row for each reading.",
		),
	"readings-not-loaded": (f) =>
		w(
			`the readings stand in ${say(f.file)}, which cannot be read${f.reason ? `: ${say(f.reason)}` : ""}`,
			"Give its path from the job file's folder, or write the readings into the job.",
		),
	"readings-not-all": (f) =>
		w(
			`slots can be taken as they were read only where all are read: ${say(f.missing)} are not`,
			"Read them too, or write use: law.",
		),
	"readings-and-positions": () =>
		w(
			"measured positions stand under division, and readings of the slots besides",
			"Leave one of them out: readings are fitted, positions are taken as they are.",
		),
	"slots-of-one-line": () =>
		w(
			"slots are read along the centre line, or along both outer strings",
			"Give slots, or bass-slots and treble-slots.",
		),
	"readings-fanned": () =>
		w(
			"slots as they were read are for a single scale: a fanned board takes its law",
			"Write use: law, or leave use out.",
		),
	"square-fret-unread": () =>
		w(
			"readings from each string's own nut end do not tell which fret lies square",
			"Read both strings from one line square to the centre line and write from: square-line; or give scale: {bass: …, treble: …, square-fret: 7} beside the readings.",
		),
	"radius-way": (f) =>
		w(
			f.given
				? `one reading mixes ways to read a radius: ${say(f.given)}`
				: "nothing here says how the radius was read",
			"Give chord and sagitta; or feet and dial; or heights; or gauge, gauge-width, gap and light. Another reading is another entry.",
		),
	"radius-keys": (f) =>
		w(
			`this way to read a radius needs ${say(f.keys)}; not given: ${say(f.missing)}`,
			"Add what is missing.",
		),
	"height-place": (f) =>
		w(
			`"${say(f.given)}" is no place across the board`,
			"Write the distance from the board's middle, below 0 on the bass side: -20 mm: 0.41 mm.",
		),
};
