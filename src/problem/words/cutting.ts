import { type Facts, mm, say, type Wording, w } from "./say.js";

/** Whether a problem speaks of a strip's slots. */
function isSlot({ feature }: Facts): boolean {
	return /^slot /u.test(say(feature));
}

/** What a machine cannot cut. */
export const CUTTING: Wording = {
	"narrower-than-kerf": (f) =>
		w(
			`${say(f.feature)} of ${say(f.part)}, ${mm(f.size)} wide, is not wider than the cut of ${mm(f.kerf)}`,
			`Take a machine with a narrower kerf, or make the feature wider${isSlot(f) ? "; slots can be single cuts (slots: line) or scored lines (slots: scored)" : ""}.`,
		),
	"radius-below-half-kerf": (f) =>
		w(
			`${say(f.feature)} of ${say(f.part)} has a radius of ${mm(f.size)}, not above half the cut of ${mm(f.kerf)}`,
			"Take a machine with a narrower kerf, or make the feature larger.",
		),
	"contours-merge": (f) =>
		w(
			`contours of ${say(f.part)} would run into each other at a cut of ${mm(f.kerf)}`,
			"Take a machine with a narrower kerf.",
		),
	"narrower-than-cutter": (f) =>
		w(
			`${say(f.feature)} of ${say(f.part)}, ${mm(f.size)} wide, is narrower than the cutter of ${mm(f.cutter)}`,
			`Take a smaller cutter or a laser, or make the feature wider${isSlot(f) ? "; slots can be scored lines (slots: scored)" : ""}.`,
		),
	"radius-below-cutter": (f) =>
		w(
			`${say(f.feature)} of ${say(f.part)} has an inside radius of ${mm(f.size)}, below that of the cutter of ${mm(f.cutter)}`,
			"Take a smaller cutter or a laser, or make the feature larger.",
		),
	"shallower-than-cutter": (f) =>
		w(
			`${say(f.feature)} of ${say(f.part)}, ${mm(f.size)} deep, is all corner to the cutter of ${mm(f.cutter)}: nothing straight would be left of its flanks`,
			"Take a smaller cutter, make it deeper (depth-clearance), or write relief: floor under machine.",
		),
	"throat-below-cutter": (f) =>
		w(
			`the cutter of ${mm(f.cutter)} cannot pass a throat in the contours of ${say(f.part)}`,
			"Take a smaller cutter or a laser.",
		),
	"no-room-for-tabs": (f) =>
		w(
			`${say(f.part)} has room for ${Number(f.fits) === 0 ? "none" : `only ${say(f.fits)}`} of ${say(f.count)} tabs ${mm(f.width)} wide`,
			`They stand 3 mm off the working edges, clear of corners and of each other: ${Number(f.fits) === 0 ? "make them narrower, or leave tabs out" : `ask for ${say(f.fits)} or fewer, or make them narrower`}.`,
		),
	"part-larger-than-bed": (f) =>
		w(
			`${say(f.part)}, ${say(f.width)} x ${mm(f.height)}, does not fit on the ${say(f.bedWidth)} x ${mm(f.bedHeight)} of the bed within its margin${f.grain ? ", and is not turned: its grain runs along x" : ", even turned"}`,
			`Make it smaller where its settings allow, give a smaller margin, or name a machine with a larger bed${f.grain ? "; without grain: x it may be turned" : ""}. --no-sheets draws it without the bed, --paper A4 prints it in tiles.`,
		),
	"no-kerf": (f) =>
		w(
			`${mm(f.measured)} over blocks drawn ${mm(f.nominal)} leave nothing for the cut`,
			"The measured length must be less than the nominal one: push the loose blocks together, and give --nominal as the part says it.",
		),
	"kerf-too-wide": (f) =>
		w(
			`${mm(f.measured)} over ${say(f.blocks)} blocks drawn ${mm(f.nominal)} make a kerf of ${mm(f.kerf)}, more than can be`,
			`A cut is at most ${mm(f.most)} wide here: check the number of blocks and both lengths.`,
		),
};
