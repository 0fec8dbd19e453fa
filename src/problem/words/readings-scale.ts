import { type Facts, mm, say, type Wording, w } from "./say.js";

/** A fret as its reading's key says it, from what may be a fraction. */
const fret = (f: Facts) => `fret ${say(f.fret)}`;

/** Slot readings and the scale fitted to them. */
export const READINGS_SCALE: Wording = {
	"slots-none": () =>
		w(
			"no slot has been read",
			"Give the middle of one slot or more, in mm from the nut's end: {12: 323.9}.",
		),
	"slots-too-few": (f) =>
		w(
			`only ${say(f.given)} ${f.given === 1 ? "slot is" : "slots are"} read where ${say(f.needed)} are needed`,
			"Read more slots, far apart: the scale and the nut's end must both follow from them.",
		),
	"slots-equal": (f) =>
		w(
			`all ${say(f.count)} readings of different slots are ${mm(f.at)}`,
			"Give each slot's own distance from the nut's end.",
		),
	"slots-fall": (f) =>
		w(
			`fret ${say(f.before)} is read at ${mm(f.first)}, fret ${say(f.fret)} at ${mm(f.second)}: not further from the nut`,
			"Read both again; each distance runs from the nut's end, not from the fret before.",
		),
	"slots-unit": (f) =>
		w(
			`the readings give a scale of ${mm(f.scale)}, where ${say(f.from)} to ${mm(f.to)} is possible${said(f.guesses)}`,
			"Give readings in mm from the nut's end, or write the unit beside each.",
		),
	"slots-no-law": (f) =>
		w(
			`none of the laws tried fits two thirds of the ${say(f.read)} slots read`,
			"Read the slots again, check each fret's number, or give the positions as the division.",
		),
	"slots-disagree": (f) =>
		w(
			`of the slots read on this string (fret ${joined(f.frets)}) fewer than two agree with the law and the other string`,
			"Read three slots or more on this string, and these again: two alone cannot tell which of them is out.",
		),
	"string-unchecked": () =>
		w(
			"two slots give this string's scale and nut, and nothing checks either reading",
			"Read a third slot on this string, far from both.",
		),
	"slot-no-such-fret": (f) =>
		w(`a slot is read at ${fret(f)}`, `Frets are whole numbers from 1 to ${say(f.frets)}.`),
	"slot-not-a-number": (f) =>
		w(`the reading of ${fret(f)} is no number`, "Give its distance in mm."),
	"slot-before-nut": (f) =>
		w(
			`${fret(f)} is read at ${mm(f.at)}, at or before the nut's end`,
			"Give the distance from the nut's end to the slot's middle, more than 0.",
		),
	"slot-repeats-apart": (f) =>
		w(
			`readings of ${fret(f)} run from ${say(f.least)} to ${mm(f.most)}`,
			`Repeats of one slot may differ by ${mm(f.allowed)}, ten steps of the rule; read it again or correct the fret's number.`,
		),
	"scale-from-one-slot": (f) =>
		w(
			`the scale follows from ${fret(f)} alone, its interval from the rule's step of ${mm(f.resolution)}; nothing checks the reading`,
			"Read a second slot far from the first to check it, and six or more to check the division.",
		),
	"law-not-told": (f) =>
		w(
			`the slots do not follow the division told (${say(f.told)}), they follow ${say(f.found)}`,
			"Check the division told; the fitted one is used.",
		),
	"law-untested": (f) =>
		w(
			`${say(f.read)} slots are too few to test ${joined(f.laws)}`,
			"Read seven slots or more, spread over the board, to test every law.",
		),
	"laws-alike": (f) =>
		w(
			`the ${say(f.read)} slots read fit ${joined(f.laws)} alike`,
			f.from === f.to
				? `Read fret ${say(f.from)} to tell them apart.`
				: `Read frets ${say(f.from)} to ${say(f.to)} to tell them apart.`,
		),
	"laws-alike-finer": (f) =>
		w(
			`the ${say(f.read)} slots read fit ${joined(f.laws)} alike, and no other fret of this neck would tell them apart at this reading error`,
			"Read with a finer rule to tell them apart.",
		),
	"slot-odd": (f) =>
		w(
			`${fret(f)} lies ${mm(Math.abs(Number(f.off)))} too near the ${Number(f.off) > 0 ? "saddle" : "nut"} (${say(Math.round(Number(f.cents) * 10) / 10)} cents); it was left out of the fit`,
			"Read it again: if the reading stands, the slot is out.",
		),
	"nut-end-off": (f) =>
		w(
			`the nut's end was told to be true, but the slots put the theoretical nut ${mm(Math.abs(Number(f.offset)))} ${Number(f.offset) > 0 ? "nearer the saddle than it" : "behind it, away from the saddle"}; the scale is fitted through its end as told`,
			`If the nut may have been filed or replaced, say so: with its end free the scale is ${mm(f.scale)}.`,
		),
	"nut-undecided": (f) =>
		w(
			`these readings do not tell whether the nut's end is where the scale begins: with a free nut it may lie from ${mm(f.low)} to ${mm(f.high)} beside it, the scale from ${mm(f.from)} to ${mm(f.to)}; notches are made that much wider`,
			"Read frets 1 to 3 and more of the others, with a finer rule; or write nut-end: intact or filed where you know.",
		),
	"nut-untested": (f) =>
		w(
			`${say(f.read)} slots are too few to tell whether the nut's end is true; it was taken to be`,
			"Read three slots or more, far apart.",
		),
	"scatter-below-step": (f) =>
		w(
			`the readings scatter less than the rule's step of ${mm(f.resolution)} allows`,
			`The step decides the interval: a standard deviation of ${mm(f.s)} a reading.`,
		),
	"square-fret-unknown": () =>
		w(
			"readings from each string's own nut end cannot tell which fret lies square",
			"Lay a square across the board near the nut, and read one fret on both outer strings from it.",
		),
	"square-fret-scales-alike": () =>
		w(
			"both strings have the same scale length within the reading error, so that no fret is the square one",
			"Give one scale, or read more slots on both strings.",
		),
	"square-fret-off-neck": () =>
		w(
			"the two strings' frets are level nowhere between the nut and the last fret",
			"Check that both strings were read from the same line, square to the centre line.",
		),
	"scales-beyond-spread": (f) =>
		w(
			`strings that spread by ${mm(f.taper)} a side cannot have a scale of ${mm(f.scale)}`,
			"Check the spread at the nut and at the saddle.",
		),
};

function said(guesses: Facts[string] | undefined): string {
	return Array.isArray(guesses) && guesses.length > 0
		? `; they look like ${guesses.map((g) => say(g)).join(" or ")}`
		: "";
}

function joined(laws: Facts[string] | undefined): string {
	return Array.isArray(laws) ? laws.map((l) => say(l)).join(" and ") : say(laws);
}
