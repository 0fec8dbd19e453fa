import { type Facts, mm, say, type Wording, w } from "./say.js";

/** At how many more places it is so. */
function alsoAt({ more }: Facts): string {
	return Number(more) > 0 ? `; so it is at ${say(more)} more` : "";
}

/** What the tools that follow from the scale refuse: rocker, crown gauge, indexing strip and mask. */
export const TOOLS_SCALE: Wording = {
	"too-few-frets-to-rock": (f) =>
		w(
			`a neck of ${say(f.frets)} fret${f.frets === 1 ? "" : "s"} has no three to lay an edge on`,
			`A rocker is for ${say(f.least)} frets or more: leave it out, or check the number of frets.`,
		),
	"three-frets-too-close": (f) =>
		w(
			`beside frets ${say(f.fret)} to ${say(f.last)}${f.line ? `, along the outer ${say(f.line)} string,` : ""} ${Number(f.room) > 0 ? `only ${mm(f.room)} are clear` : "nothing is clear"} up to the next crown or the nut${Number(f.more) > 0 ? `; so it is at ${say(f.more)} more` : ""}`,
			`An edge that spans just these needs ${mm(f.least)} at either end: set end-clearance smaller, or check crown-width, nut-shift and the number of frets.`,
		),
	"no-room-for-feet": (f) =>
		w(
			`between ${f.beside === "nut" ? `the nut and fret ${say(f.fret)}` : `frets ${say(Math.min(Number(f.fret), Number(f.beside)))} and ${say(Math.max(Number(f.fret), Number(f.beside)))}`} ${Number(f.wood) > 0 ? `only ${mm(f.wood)} of wood are clear` : "no wood is clear"} for a foot of the gauge`,
			`A foot and the air beside it need ${mm(f.least)}: check crown-width, nut-shift and the number of frets, or leave this tool out.`,
		),
	"notch-above-wire": (f) =>
		w(
			`a notch for crowns ${mm(f.height)} high is too high for a wire of ${mm(f.wire)}`,
			`Give at most ${mm(f.most)}, or check crown-height and the units.`,
		),
	"notches-alike": (f) =>
		w(
			`notches for crowns of ${mm(f.one)} and ${mm(f.other)} cannot be told apart`,
			`Heights must differ by ${mm(f.least)} or more: leave one of them out.`,
		),
	"fanned-in-a-mitre-box": () =>
		w(
			"the frets are fanned: each would need the box or sled at an angle of its own",
			"Leave this tool out and make a slot-strip, whose slots stand at their slants.",
		),
	"index-land-too-narrow": (f) =>
		w(
			`between ${f.before === 0 ? "the nut's cut" : `fret ${say(f.before)}`} and fret ${say(f.fret)} ${Number(f.land) > 0 ? `only ${mm(f.land)} would remain` : "nothing would remain"} beside two notches${Number(f.more) > 0 ? `, and too little at ${say(f.more)} more places` : ""}`,
			`At least ${mm(f.least)} must remain: take a thinner pin or less pin-play.`,
		),
	"index-strip-too-low": (f) =>
		w(
			`a strip ${mm(f.height)} high has no room for notches, letters and hole`,
			`Give a strip-height of ${mm(f.least)} or more.`,
		),
	"notch-below-pin": (f) =>
		w(
			`notches ${mm(f.depth)} deep do not reach the pin's middle`,
			`Give a notch-depth of ${mm(f.least)} or more, so that the pin lies against the flank.`,
		),
	"mask-too-thick": (f) =>
		w(
			f.why === "bend"
				? `a sheet of ${mm(f.thickness)} does not bend over this board's radius`
				: `between sheets of ${mm(f.thickness)} no file reaches crowns that stand ${mm(f.crown)} high`,
			`Give the mask stock of its own, at most ${mm(f.most)} thick: board-mask: {stock: {material: card, thickness: 0.3 mm}}; pieces: 2 halves it where it is too long.`,
		),
	"mask-land-too-narrow": (f) =>
		w(
			`between ${f.before === 0 ? "the nut" : `fret ${say(f.before)}`} and fret ${say(f.fret)} ${Number(f.land) > 0 ? `only ${mm(f.land)} of the sheet would remain` : "nothing of the sheet would remain"}${Number(f.more) > 0 ? `, and too little at ${say(f.more)} more places` : ""}`,
			`At least ${mm(f.least)} must remain, or it tears: set crown-clearance smaller, or check crown-width and the number of frets.`,
		),
	"mask-seams": (f) =>
		w(
			`${say(f.pieces)} pieces need more lands that are wide enough for a joint than there are`,
			`Write pieces: ${say(f.most)} or fewer.`,
		),
	"guide-needs-markers": () =>
		w(
			"a drill guide for markers needs the markers, which are not given",
			"Say at which frets they are under neck: markers: [3, 5, 7, 9, {12: double}], or leave this tool out.",
		),
	"no-marker-at-fret": (f) =>
		w(
			`fret ${say(f.fret)} has no marker: they are at ${say(f.markers)}`,
			"Take it out of markers-at, or add it under neck: markers:.",
		),
	"drill-meets-crown": (f) =>
		w(
			`at ${say(f.feature)} a drill of ${mm(f.drill)} comes nearer than ${mm(f.beside)} to a crown beside it${alsoAt(f)}`,
			Number(f.most) >= 1
				? `Give a drill of ${mm(f.most)} at most, or name the frets to guide under markers-at without this one.`
				: "No drill fits between these crowns: name the frets to guide under markers-at without this one.",
		),
	"guide-hole-at-edge": (f) =>
		w(
			`at ${say(f.feature)} ${Number(f.room) > 0 ? `only ${mm(f.room)} of the plate would remain` : "nothing of the plate would remain"} between the hole and its ${say(f.edge)}${alsoAt(f)}`,
			`At least ${mm(f.least)} must remain: take a smaller drill or another double-marker-spread, or name the frets to guide under markers-at without this one.`,
		),
	"guide-holes-too-near": (f) =>
		w(
			`between ${say(f.feature)} and ${say(f.other)} ${Number(f.room) > 0 ? `only ${mm(f.room)} of the plate would remain` : "nothing of the plate would remain"}${alsoAt(f)}`,
			`At least ${mm(f.least)} must remain: take a smaller drill or a larger double-marker-spread, or guide the two at different plates under markers-at.`,
		),
};
