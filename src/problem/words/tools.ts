import { type Facts, mm, say, type Wording, w } from "./say.js";

/** What is left of the land between two notches. */
function remains({ land }: Facts): string {
	return Number(land) > 0 ? `only ${mm(land)} of land would remain` : "no land would remain";
}

/** What tools refuse. */
export const TOOLS: Wording = {
	"land-too-narrow": (f) =>
		w(
			`between frets ${say(f.before)} and ${say(f.fret)} ${remains(f)}${Number(f.more) > 0 ? `, and too little at ${say(f.more)} more places` : ""}`,
			`The bar needs ${mm(f.least)} to stand on: set side-clearance or least-land smaller, take a material that grows less with warmth and damp, or leave this tool out.`,
		),
	"first-land-too-narrow": (f) =>
		w(
			`before fret ${say(f.fret)} ${remains(f)}`,
			`The bar needs ${mm(f.least)} to stand on: check nut-shift and nut-end, or set side-clearance or least-land smaller.`,
		),
	"crown-meets-cutter-round": (f) =>
		w(
			`at fret ${say(f.fret)} the rounds that a cutter of ${mm(f.cutter)} leaves come down to the crown: ${mm(f.clear)} are clear at its height once the edge is lapped, ${mm(f.needed)} are needed${Number(f.more) > 0 ? `; so it is at ${say(f.more)} more` : ""}`,
			"Write relief: floor under machine, take a smaller cutter, or set depth-clearance larger.",
		),
	"butting-slanted-nut": (f) =>
		w(
			`the nut stands slanted to this line: a square end would meet it with one corner and lie ${mm(f.pushed)} off`,
			"Write nut-end: cleared.",
		),
	"butting-zero-fret": () =>
		w("on a neck with a zero fret the nut is no datum to butt against", "Write nut-end: cleared."),
	"bar-too-low": (f) =>
		w(
			`a bar ${mm(f.height)} high is too weak over its notches or its arch`,
			`Give a height of ${mm(f.least)} or more.`,
		),
	"label-too-long": (f) =>
		w(
			`"${say(f.text)}" does not fit into ${mm(f.room)}`,
			"Shorten the job's name, make the part larger, or leave it out.",
		),
	"no-such-string": (f) =>
		w(
			Number(f.count) > 0
				? `this neck has no string "${say(f.given)}": its strings are 1 (treble) to ${say(f.count)}`
				: `along: ${say(f.given)} needs the strings, which are not given`,
			"Give a string of this neck, or centre; the strings stand under neck: strings:.",
		),
	"flat-board": (f) =>
		w(
			`a flat board needs no ${say(f.tool)}: a straightedge is its gauge`,
			"Leave it out, or give radii: [12 in] for gauges of your own.",
		),
	"at-or-radii": () =>
		w("at and radii exclude each other", "Give at for the neck's radii, or radii of your own."),
	"radius-vanishes": (f) =>
		w(
			`at ${say(f.place)} the radius would be ${mm(f.radius)}`,
			"Check the radii and their stations; between and beyond them the radius goes on in a straight line.",
		),
	"chord-wider-than-circle": (f) =>
		w(
			`a gauge ${mm(f.width)} wide does not fit on a circle of radius ${mm(f.radius)}`,
			"Give a smaller gauge-width, or check the radius and its unit.",
		),
	"gauge-too-low": (f) =>
		w(`a gauge ${mm(f.height)} high is too low for its arc`, `Give ${mm(f.least)} or more.`),
	"line-slots-without-laser": (f) =>
		w(
			`a ${say(f.kind)} cuts no slot as a single line`,
			"Write slots: scored, or slots: tang with a cutter that is no wider than the tang.",
		),
	"strip-falls-apart": (f) =>
		w(
			`cut slots would end ${mm(f.rim)} from the strip's edge, and it would fall apart`,
			`At least ${mm(f.least)} must remain: set edge-margin larger, or slots: line.`,
		),
	"marker-beyond": (f) =>
		w(
			`a marker stands at fret ${say(f.fret)}, the neck has ${say(f.frets)}`,
			"Take it out, or check the number of frets.",
		),
	"marker-twice": (f) => w(`fret ${say(f.fret)} has two markers`, "Keep one of the two."),
	"slot-too-short": (f) =>
		w(
			`the slot of fret ${say(f.fret)} would be shorter than it is wide`,
			"Check width, binding and tang-width.",
		),
	"block-too-narrow": (f) =>
		w(
			`blocks ${mm(f.pitch)} wide have no room for their numbers`,
			`Give a pitch of ${mm(f.least)} or more.`,
		),
	"fit-slot-too-narrow": (f) =>
		w(
			Number(f.width) > 0
				? `the narrowest slot would be only ${mm(f.width)} wide`
				: "the narrowest slots would have no width at all",
			`At least ${mm(f.least)} is needed: set fit-middle nearer to 0, step or fits smaller, or leave the slots out with fits: 0.`,
		),
	"page-too-narrow": (f) =>
		w(
			`the shop sheet's tables need ${mm(f.least)} across, a page of ${say(f.paper)} leaves them ${mm(f.room)}`,
			"Take wider paper, or a smaller margin if the printer reaches further.",
		),
	"page-too-low": (f) =>
		w(
			`a page ${mm(f.height)} high (${say(f.paper)}) has no room for the shop sheet's heading and picture`,
			"Take higher paper, or turn it.",
		),
};
