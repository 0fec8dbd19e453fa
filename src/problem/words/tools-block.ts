import { mm, say, type Wording, w } from "./say.js";

/** What the sanding block and the sled's rails refuse. */
export const TOOLS_BLOCK: Wording = {
	"cylinder-on-cone": (f) =>
		w(
			`the board's radius runs from ${mm(f.from)} to ${mm(f.to)}, and a block of one radius cannot make that: it fits at one place only`,
			"Write form: flat for a flat beam, which is used along lines on which y/R is constant; its notes say where they lie.",
		),
	"curve-on-flat": () =>
		w("a flat board has no radius for a curved block", "Write form: flat, or leave form out."),
	"beam-planes-hump": (f) =>
		w(
			`a flat beam on a board of one radius planes off its hump: along ${say(f.line)} the board itself stands ${mm(f.hump)} over the straight line from nut to last fret`,
			"Write form: curved, or leave form out.",
		),
	"block-wider-than-circle": (f) =>
		w(
			`a block ${mm(f.width)} wide does not fit on a circle of radius ${mm(f.radius)}`,
			"Give a smaller block-width, or check the radius and its unit.",
		),
	"block-too-low": (f) =>
		w(
			`a block ${mm(f.height)} high has no room for its arc, joints, dowels and letters`,
			`Give a block-height of ${mm(f.least)} or more.`,
		),
	"rail-meets-board": (f) =>
		w(
			`a rail ${mm(f.given)} from the end of the board would meet it`,
			`Its middle must stand ${mm(f.least)} or more from the board, half the sheet's thickness and a gap; the bit needs room to run out besides.`,
		),
	"rail-wider-than-circle": (f) =>
		w(
			`${say(f.place)} would have to be ${mm(f.width)} wide, on a circle of radius ${mm(f.radius)}`,
			"Set the rail nearer to the board, or check the radii and their stations.",
		),
	"rails-need-one-cone": (f) =>
		w(
			`the board's radius changes at more than one rate: a sled that rides from rail to rail would make ${mm(f.ridden)} of the ${mm(f.radius)} at ${mm(f.x)}`,
			"Give the radius at two stations, or leave the rails out and work each stretch by itself.",
		),
	"rail-too-low": (f) =>
		w(
			`a rail ${mm(f.height)} high has no room for its marks, letters and hole`,
			`Foot-height and rail-height must come to ${mm(f.least)} or more; or write rail-hole: none.`,
		),
	"too-many-ribs": (f) =>
		w(
			`a stack of ${say(f.ribs)} ribs is more than ${say(f.most)}`,
			"Give ribs, or take a thicker sheet.",
		),
};
