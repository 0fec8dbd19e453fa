import type { Fact } from "../problem.js";
import { type Facts, fine, mm, say, type Wording, w } from "./say.js";

/** How a board that seems hollow came about, by what was read. */
function hollowMend({ kind }: Facts): string {
	if (kind === "heights") {
		return "Heights count upwards: give depths below a bar as negative heights.";
	}
	if (kind === "light") {
		return "Check the gap, the gauge's radius and which of the two touches: light in the middle means that the gauge rides on its ends.";
	}
	return "Check the sign, and that the gauge was zeroed on a flat: over a board the middle stands above the ends.";
}

function form(name: Fact | undefined): string {
	return name === "flat" ? "a flat board" : `a ${say(name)}`;
}

const SAGITTA_MEND =
	"The sagitta is the height of the board's middle over the chord's ends, above 0";

/** Radii from readings: what is refused. */
const REFUSED: Wording = {
	"reading-not-above-zero": (f) =>
		w(`${say(f.key)} is ${say(f.given)}`, "Give a length above 0, as it was read."),
	"reading-not-a-length": (f) =>
		w(`${say(f.key)} is ${say(f.given)}`, "Give a length, as it was read."),
	"no-camber": (f) =>
		w(
			`${say(f.key)} shows no camber, so there is no radius`,
			`${SAGITTA_MEND}; if the board is flat, say radius: flat.`,
		),
	"board-hollow": (f) =>
		w(`the board would be hollow across, with a radius of ${mm(f.radius)}`, hollowMend(f)),
	"sagitta-beyond-half-chord": (f) =>
		w(
			`${say(f.key)} ${mm(f.height)} is more than half the chord of ${mm(f.chord)}`,
			"No board is rounder than a half circle: check both readings and their units (1.97 in is 50 mm).",
		),
	"chord-beyond-board": (f) =>
		w(
			`the reading spans ${mm(f.chord)}, the board is ${mm(f.board)} wide there`,
			"Both ends must stand on the board: check the chord and the board's width.",
		),
	"balls-overlap": (f) =>
		w(
			`ball feet of radius ${mm(f.ball)} do not fit beside each other on a chord of ${mm(f.chord)}`,
			"ball is their radius, not the diameter, and must be below half the chord from centre to centre.",
		),
	"heights-too-few": (f) =>
		w(
			`${say(f.count)} heights stand at ${say(f.places)} different places`,
			"A circle needs three places at least: near both edges and in the middle.",
		),
	"heights-on-one-side": (f) =>
		w(
			`all heights stand on one side of the centre line, from y ${say(f.least)} to ${mm(f.most)}`,
			"y runs from the centre line, the treble side above 0: read on both sides.",
		),
	"gap-too-wide": (f) =>
		w(
			`a gap of ${mm(f.gap)} under a gauge of ${mm(f.gauge)} is more than a contact chord of ${mm(f.chord)} allows`,
			"Check the gap, the gauge's radius and their units.",
		),
	"no-contact": (f) =>
		w(
			`edges rolled by ${mm(f.rolled)} leave nothing of a board ${mm(f.board)} wide`,
			"rolled is what each edge loses to its rounding, 0 or more and below half the board's width.",
		),
	"gauge-too-round": (f) =>
		w(
			`a gauge of radius ${mm(f.gauge)} does not span a contact chord of ${mm(f.chord)}`,
			"Check the gauge's radius and its unit.",
		),
	"gap-without-light": (f) =>
		w(
			`no light is seen, but the gap is ${mm(f.gap)}`,
			"Give gap: 0 with light: none, or say whether the light shows in the middle or at the edges.",
		),
	"light-without-gap": (f) =>
		w(
			`light shows (${say(f.where)}), but the gap is ${mm(f.gap)}`,
			"Give the gap above 0, as a feeler reads it, or light: none.",
		),
	"reading-below-half-board": (f) =>
		w(
			`the readings give a radius of ${mm(f.radius)}, less than half the board (${mm(f.board)} wide)`,
			"Check the readings and their units: no board is rounder than a half circle.",
		),
	"crown-height-missing": () =>
		w(
			"the radius was read on the crowns, whose height is not given",
			"Give crown-height, what the crowns stand over the wood, or read on the wood.",
		),
	"no-radius-readings": () =>
		w(
			"there is no reading of the radius",
			"Give one at least, best at the nut and at the last fret.",
		),
	"stations-coincide": (f) =>
		w(
			`${say(f.name)} and ${say(f.other)} both lie at ${mm(f.x)}`,
			"Put readings of one place under one station.",
		),
};

/** Radii from readings: what travels with the result. */
const NOTED: Wording = {
	"radius-unlikely": (f) =>
		w(
			`a radius of ${mm(f.radius)} is outside of ${say(f.least)} to ${mm(f.most)}, where boards lie`,
			"Check the units of both readings: an inch figure taken for mm is 25.4 times off.",
		),
	"heights-three": (f) =>
		w(
			"three heights always lie on a circle, so nothing tells how well they were read",
			`The uncertainty is that of steps of ${mm(f.resolution)} alone; more heights would show scatter.`,
		),
	"heights-by-step": (f) =>
		w(
			`the ${say(f.count)} heights scatter no more than their steps of ${mm(f.resolution)} allow`,
			"The uncertainty is that of the steps; finer steps would lessen it.",
		),
	"no-light": (f) =>
		w(
			`no light shows under the gauge, so the gap is below ${mm(f.smallest)} either way over ${mm(f.chord)}`,
			"The interval follows from that; a rounder and a flatter gauge with light under them would narrow it.",
		),
	"readings-disagree": (f) =>
		w(
			`readings at this station disagree beyond their uncertainties (chance ${fine(f.chance)}): ${say(f.readings)}`,
			`The standard error was raised ${say(f.spread)} times; repeat these readings.`,
		),
	"one-station": (f) =>
		w(
			`the radius was read at ${say(f.name)} alone, so the board is taken as ${f.form === "flat" ? "flat" : form(f.form)}`,
			"A cone cannot be seen from one station; a reading at the other end of the board would tell.",
		),
	"two-stations": (f) =>
		w(
			`a cone through ${say(f.names)} fits two stations whatever they are`,
			"A third reading midway would show whether the radius grows evenly.",
		),
	"stations-scatter": (f) =>
		w(
			`the stations lie ${say(f.scatter)} times farther from ${form(f.form)} than their readings allow, ${say(f.worst)} most`,
			"Standard errors were raised by as much; repeat that reading, or read between stations.",
		),
	"form-undecided": (f) =>
		w(
			`a ${say(f.rich)} would explain the stations better than ${form(f.form)}, but they scatter too much to decide`,
			"Repeat the readings, or read at further stations.",
		),
	"flat-leans-hollow": (f) =>
		w(
			`the board is taken as flat, though the readings lean to a hollow with a radius of ${mm(f.radius)}`,
			"Zero the gauge again on a flat, and repeat the readings.",
		),
	"flat-within": (f) =>
		w(
			`the board is flat as far as the readings tell: a radius above ${mm(f.least)} would read the same`,
			`A longer chord than ${mm(f.chord)} or a finer step would tell.`,
		),
	"cone-unseen": (f) =>
		w(
			`a cylinder explains the readings; from ${say(f.from)} to ${say(f.to)} the radius may still change by ${say(f.least)} to ${mm(f.most)}`,
			"Finer steps or longer chords at both ends would narrow this.",
		),
	"cone-narrows": () =>
		w(
			"the radius falls from the nut on, where boards usually grow flatter",
			"Check which reading belongs to which station.",
		),
	"usual-radius": (f) =>
		w(
			`of the usual radii only ${say(f.usual)} in lies within the interval, ${mm(f.off)} from ${mm(f.radius)}`,
			"This is said for information; the radius stays as it was read.",
		),
	"usual-radii-untold": (f) =>
		w(
			`the readings cannot tell these usual radii apart: ${say(f.held)} in`,
			`Over a chord of ${mm(f.chord)} the sagittas of ${say(f.tight)} and ${say(f.flat)} in differ by ${mm(f.difference)}: read to steps of ${mm(f.resolution)} or finer, or over a longer chord.`,
		),
};

/** Radii from readings. */
export const READINGS_RADIUS: Wording = { ...REFUSED, ...NOTED };
