import { type Facts, mm, say, type Wording, w } from "./say.js";

function twoFrets({ before, fret }: Facts): string {
	return before === 0 ? `the nut and fret ${say(fret)}` : `frets ${say(before)} and ${say(fret)}`;
}

/** A neck. */
export const NECK: Wording = {
	"fanned-needs-strings": () =>
		w(
			"two scale lengths run along the outer strings, which are not given",
			"Add strings: {count: 6, at-nut: 36 mm, at-saddle: 52 mm}.",
		),
	"positions-fanned": () =>
		w(
			"measured positions need one scale length",
			"Give one scale, or another division for the fanned board.",
		),
	"position-beyond-saddle": (f) =>
		w(
			`fret ${say(f.fret)} at ${mm(f.position)} lies at or beyond the saddle (${mm(f.scale)})`,
			"Positions run from the nut; check the reading and the scale.",
		),
	"division-too-short": (f) =>
		w(
			`the division ends at fret ${say(f.highest)}, ${say(f.frets)} frets are wanted`,
			"List every fret, or end the list on the octave (1200 cents, ratio 2) so that it repeats.",
		),
	"square-fret-beyond": (f) =>
		w(
			`square-fret ${say(f.square)} is beyond the division's last fret`,
			`Give 0 to ${say(f.highest)}.`,
		),
	"no-such-fret": (f) =>
		w(
			`the division has no fret ${say(f.fret)}, it ends at ${say(f.highest)}`,
			"Give another station, or list more frets.",
		),
	"same-station": (f) => w(`two stations lie at ${mm(f.at)}`, "Keep one of the two."),
	"board-too-narrow": (f) =>
		w(
			`at ${say(f.at)} the board would be ${Number(f.width) > 0 ? mm(f.width) : "nothing"} wide${Number(f.binding) > 0 ? `, with ${mm(f.binding)} of binding on either side` : ""}`,
			`At least ${mm(f.least)} is needed: check the widths, their stations and the binding.`,
		),
	"radius-below-half-board": (f) =>
		w(
			`at ${say(f.at)} the radius ${mm(f.radius)} is smaller than half the board (${mm(f.width)} wide)`,
			`Check the radius and its unit: for inches write ${say(f.radius)} in.`,
		),
	"strings-beside-board": (f) =>
		w(
			`at ${say(f.at)} the outer strings are ${mm(f.spread)} apart, the board is ${mm(f.width)} wide`,
			"Give at-nut and at-saddle from outer string centre to outer string centre.",
		),
	"pair-gap-too-wide": (f) =>
		w(
			`the strings of a course are ${mm(f.gap)} apart, all of them ${mm(f.spread)}`,
			"Check pair-gap, at-nut and at-saddle.",
		),
	"taper-too-strong": (f) =>
		w(
			`the outer strings spread by ${mm(f.taper)} a side over a length of ${mm(f.scale)}`,
			"Check the scale, at-nut and at-saddle.",
		),
	"frets-cross": (f) =>
		w(
			Number(f.gap) < 0
				? `${twoFrets(f)} cross at the ${say(f.side)} edge`
				: `${twoFrets(f)} come within ${mm(f.gap)} of each other at the ${say(f.side)} edge`,
			`At least ${mm(f.least)} must remain: check both scales, the square fret and the width.`,
		),
	"fret-off-board": (f) =>
		w(
			`${f.fret === 0 ? "the nut's line" : `fret ${say(f.fret)}`} never meets the ${say(f.side)} edge of the board`,
			"Check both scales, the square fret and the width.",
		),
	"frets-too-close": (f) =>
		w(
			`${twoFrets(f)} are only ${mm(f.gap)} apart`,
			`At least ${mm(f.least)} must remain: check the number of frets and the division.`,
		),
	"nut-past-first-fret": (f) =>
		w(
			`a nut moved by ${mm(f.shift)} stands over half way to fret 1 (${mm(f.first)})`,
			"nut-shift is the way from the theoretical to the actual nut face.",
		),
};
