import { type Facts, fine, mm, say, type Wording, w } from "./say.js";

function resolution(what: string) {
	return (f: Facts) =>
		w(
			`the step of ${what} is given as ${mm(f.given)}`,
			`Give the least step it shows, above 0 and up to ${mm(f.most)}.`,
		);
}

/** A fret that the neck does not have. */
function noFret(f: Facts): string {
	return `fret ${say(f.fret)} is not on this neck, which has ${say(f.frets)} frets`;
}

/** "fret 3" or "frets 3, 5". */
function fretsOf(f: Facts): string {
	const many = Array.isArray(f.frets) && f.frets.length > 1;
	return `fret${many ? "s" : ""} ${say(f.frets)}`;
}

/** Where a number lies between others, for a signed amount. */
function over(off: Facts[string] | undefined, more: string, less: string): string {
	return `${fine(Math.abs(Number(off)))} mm ${Number(off) < 0 ? less : more}`;
}

/** Readings of the board: gaps under a straightedge, fret heights, wire and width. */
export const READINGS_BOARD: Wording = {
	"gap-resolution": resolution("the gauge or the leaves"),
	"gap-line-unknown": (f) =>
		w(
			f.count === 0
				? `the straightedge lies along string ${say(f.given)}, but no strings are given`
				: `the straightedge lies along string ${say(f.given)}, the neck has ${say(f.count)}`,
			"Give centre, or the strings' spread and a string from 1, the outer treble string.",
		),
	"gap-fret-not-on-neck": (f) =>
		w(noFret(f), "Give a fret of this neck, or the distance from the nut."),
	"contacts-out-of-order": (f) =>
		w(
			`the straightedge touches at ${mm(f.from)} and at ${mm(f.to)} from the nut`,
			"Give the contact at the nut's end first, and the other farther on.",
		),
	"contact-off-board": (f) =>
		w(
			`a contact at ${mm(f.at)} from the nut lies off the board`,
			`The straightedge can touch from ${mm(f.from)} to ${mm(f.to)}.`,
		),
	"bar-without-size": (f) =>
		w(
			`the straightedge is given as ${mm(f.height)} high`,
			"Give its height above 0; for one that does not sag give no straightedge.",
		),
	"bar-too-short": (f) =>
		w(
			Number(f.overhang) > 0
				? `a straightedge of ${mm(f.length)}, ${mm(f.overhang)} of it before its first contact, does not reach over ${mm(f.span)}`
				: `a straightedge of ${mm(f.length)} does not reach over contacts ${mm(f.span)} apart${Number(f.overhang) < 0 ? `, and its overhang is ${mm(f.overhang)}` : ""}`,
			"Check its length and overhang, or give the contacts where it touched.",
		),
	"bar-tips": (f) =>
		w(
			`a straightedge of ${mm(f.length)} with ${mm(f.overhang)} before its first contact tips off contacts ${mm(f.span)} apart`,
			"Its middle must lie between its contacts: check the overhang.",
		),
	"gap-negative": (f) =>
		w(
			`a gap is given as ${mm(f.gap)}`,
			"A gap is 0 or more. A board that bends backwards lifts the straightedge off its ends, and no gap under its middle can be read: straighten the neck until it touches at both contacts, then read.",
		),
	"gap-too-large": (f) =>
		w(`a gap is given as ${mm(f.gap)}`, `Up to ${mm(f.most)} is read here: check the unit.`),
	"gap-beyond-contacts": (f) =>
		w(
			`a gap at ${mm(f.at)} from the nut lies beyond the contacts, ${mm(f.from)} and ${mm(f.to)}`,
			"Give the contacts where the straightedge touched, and gaps between them. A gap at an end shows a board that bends backwards: straighten it until both ends touch, then read.",
		),
	"gap-at-contact": (f) =>
		w(
			`a gap of ${mm(f.gap)} is read at ${mm(f.at)} from the nut, where the straightedge is said to touch`,
			"Give the contacts where it did touch. If it rocked on the middle, the board bends backwards: straighten it until both ends touch, then read.",
		),
	"too-few-gaps": (f) =>
		w(
			`gaps are read at ${say(f.places)} place${f.places === 1 ? "" : "s"} between the contacts`,
			"Two at least are needed, five or more tell the curve's shape.",
		),
	"gaps-all-zero": (f) =>
		w(
			`every gap reads 0: the relief is no more than the sag, the hump and a step of ${mm(f.resolution)}`,
			"This does not tell a straight board from one that bends backwards. See whether the straightedge rocks: if it does, it bends backwards.",
		),
	"gaps-all-equal": (f) =>
		w(
			`all ${say(f.count)} gaps read ${mm(f.gap)}`,
			"A board bent between two contacts shows smaller gaps near them: see whether the straightedge touched where it is said to, and not on a chip or a raised end.",
		),
	"relief-not-one-arch": (f) =>
		w(
			`the readings follow no single arch: at ${mm(f.at)} from the nut the board lies ${over(f.off, "lower", "higher")} than one, more than the step of ${mm(f.resolution)}`,
			"The curve goes through every reading instead. Read that place again, and two places beside it: they tell a slip from a hump or a hollow in the board.",
		),
	"height-resolution": resolution("the height gauge"),
	"relief-wanted-range": (f) =>
		w(`a relief of ${mm(f.given)} is wanted`, `Give 0 (a straight line of tops) to ${mm(f.most)}.`),
	"least-crown-range": (f) =>
		w(
			`the least crown is given as ${mm(f.given)}`,
			`Give more than 0 and less than ${mm(f.most)}.`,
		),
	"height-fret-not-on-neck": (f) =>
		w(
			Number(f.fret) === 0 ? "a height is read at fret 0 on a neck without a zero fret" : noFret(f),
			`Give frets ${say(f.first)} to ${say(f.frets)}.`,
		),
	"height-missing": (f) =>
		w(`fret ${say(f.fret)} has no height`, "Give one height or more, or leave the fret out."),
	"height-places-unequal": (f) =>
		w(
			`fret ${say(f.fret)} has heights: ${say(f.heights)}, places across: ${say(f.across)}`,
			"Give a place for each height, or none.",
		),
	"crown-height-range": (f) =>
		w(
			`the crown of fret ${say(f.fret)} is given as ${mm(f.height)} high`,
			`Above 0 and up to ${mm(f.most)} is read here, over the wood: check the unit.`,
		),
	"heights-on-crowns": () =>
		w(
			"the straightness was read on the crowns, so crown heights would count twice",
			"Read the straightness on the wood, with a notched straightedge, or give the heights without it.",
		),
	"height-beyond-straightness": (f) =>
		w(
			`fret ${say(f.fret)} lies beyond the straightness readings, which reach from ${mm(f.from)} to ${mm(f.to)}`,
			"Read the straightness over all frets, or leave this fret out.",
		),
	"too-few-frets": (f) =>
		w(
			`heights are read at ${say(f.count)} fret${f.count === 1 ? "" : "s"}`,
			"Three at least are needed: two tops always lie on a line.",
		),
	"wood-taken-straight": () =>
		w(
			"no straightness is read, so the wood under the frets is taken as straight",
			"Read the gaps under a notched straightedge: they tell whether a low top is a low crown or a dip in the board.",
		),
	"crowns-dipped": (f) =>
		w(
			`heights across differ by more than the step of ${mm(f.resolution)} at ${fretsOf(f)}, most at fret ${say(f.deepest)}: ${mm(f.dip)}`,
			"The least height decides the plan. A dip under a string is wear; a slope across is seating: press lightly and read again.",
		),
	"crowns-all-equal": (f) =>
		w(
			`all crowns read ${mm(f.height)}`,
			"Differences below the gauge's step do not show: a gauge with a finer step, or a straightedge over three frets, would show them.",
		),
	"crown-left-undecided": (f) =>
		w(
			`whether ${mm(f.least)} of crown can be left on every fret hangs on less than ${mm(f.margin)}, which the readings do not tell`,
			`Read ${fretsOf(f)} again with a finer gauge before choosing.`,
		),
	"one-low-fret": (f) =>
		w(
			`fret ${say(f.fret)} holds the others down: ${mm(f.total)} in all come off them with it, ${mm(f.without)} without it`,
			"See whether it is seated fully, or put in a new fret there before dressing the others.",
		),
	"wire-resolution": resolution("the caliper"),
	"wire-unread": (f) =>
		w(`${say(f.name)} has no reading`, "Give one reading or more, or leave it out."),
	"wire-size-range": (f) =>
		w(
			`${say(f.name)} is given as ${mm(f.given)}`,
			`${mm(f.least)} to ${mm(f.most)} is read here: check the unit.`,
		),
	"wire-uneven": (f) =>
		w(
			`readings of ${say(f.name)} run from ${mm(f.least)} to ${mm(f.greatest)}: ${mm(f.spread)} apart at a step of ${mm(f.resolution)}`,
			"See whether they are of one wire, and of one place of it: caliper square, no burr.",
		),
	"width-resolution": resolution("the caliper"),
	"width-unread": () => w("no width is read", "Give one width or more at each place."),
	"width-fret-not-on-neck": (f) =>
		w(noFret(f), "Give a fret of this neck, or the distance from the nut."),
	"width-range": (f) =>
		w(
			`a board width is given as ${mm(f.given)}`,
			`${mm(f.least)} to ${mm(f.most)} is read here: check the unit.`,
		),
	"width-places-too-near": (f) =>
		w(
			`the places of the widths lie only ${mm(f.apart)} apart`,
			`At least ${mm(f.least)} is needed to tell the taper: read at the nut and at the last fret.`,
		),
	"width-one-place": (f) =>
		w(
			`the width is read at one place, ${mm(f.at)} from the nut, and taken as constant`,
			"Read a second place far from it, such as the last fret: it tells the taper.",
		),
	"width-place-out": (f) =>
		w(
			`the width of ${mm(f.width)} at ${mm(f.at)} from the nut is ${over(f.off, "wider", "narrower")} than the others' straight edges, and left out`,
			"Read it again: a slip, or a board whose edges are not straight there.",
		),
	"width-not-straight": (f) =>
		w(
			`the widths at ${say(f.count)} places lie on no straight taper, by up to ${fine(f.off)} mm`,
			Number(f.count) === 3
				? "Three places do not tell which is out: read a fourth."
				: "They do not tell which is out: read them again, and more. Edges that are curved have no straight taper.",
		),
};
