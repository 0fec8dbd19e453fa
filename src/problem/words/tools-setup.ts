import { mm, say, type Wording, w } from "./say.js";

/** What the tools for setting up refuse. */
export const TOOLS_SETUP: Wording = {
	"layout-needs-strings": () =>
		w(
			"a nut layout strip needs the strings, which are not given",
			"Give their number and spread under neck: strings:.",
		),
	"gaps-need-gauges": () =>
		w(
			"equal gaps follow from the strings' diameters, which are not given",
			"List all of them from the treble side under string-gauges, or write string-spacing: centres.",
		),
	"gauges-count": (f) =>
		w(
			`${say(f.given)} string gauges are given, the neck has ${say(f.count)} strings`,
			"Give one for every string from the treble side on, both of every course.",
		),
	"strings-touch": (f) =>
		w(
			`at the ${say(f.end)} the strings would overlap by ${mm(f.overlap)} each`,
			"Check the gauges and their unit, the spread of the strings and the margins.",
		),
	"strings-too-near": (f) =>
		w(
			`at the ${say(f.end)} strings ${say(f.string)} and ${say(f.next)} would lie ${mm(f.step)} apart, middle to middle`,
			`Their lines need ${mm(f.least)}: check the spread of the strings, the pair gap and the margins.`,
		),
	"string-at-edge": (f) =>
		w(
			Number(f.margin) > 0
				? `the outer ${say(f.side)} string would lie only ${mm(f.margin)} from the board's edge`
				: `the outer ${say(f.side)} string would not lie on the board`,
			`At least ${mm(f.least)} are needed: check at-nut, the board's width and the margins.`,
		),
	"steps-alike": (f) =>
		w(
			`steps of ${mm(f.one)} and ${mm(f.other)} cannot be told apart`,
			`Heights must differ by ${mm(f.least)} or more: leave one of them out.`,
		),
	"steps-below-cutter": (f) =>
		w(
			`a cutter of ${mm(f.cutter)} cannot mill steps that rise by only ${mm(f.rise)}`,
			`They must rise by ${mm(f.least)} or more: take other heights or a smaller cutter, or have the gauge cut by laser.`,
		),
	"steps-below-beam": (f) =>
		w(
			`a beam that cuts ${mm(f.kerf)} wide leaves nothing of steps that rise by only ${mm(f.rise)}: its round fills their corners`,
			`They must rise by more than ${mm(f.least)}: take other heights, or a machine with a narrower kerf.`,
		),
	"body-joint-needed": () =>
		w(
			"a relief bar stands on fret 1 and the fret at the body joint, which is not given",
			"Write relief-bar: {body-joint: 14} with the fret at your neck's joint, or the two frets themselves: relief-bar: {stand-on: [1, 14]}.",
		),
	"no-wire-at-fret": (f) =>
		w(
			`the bar cannot stand on fret ${say(f.fret)}: the neck has wire at frets ${say(f.from)} to ${say(f.to)}`,
			"Give two of these frets.",
		),
	"no-fret-between": (f) =>
		w(
			`between frets ${say(f.first)} and ${say(f.last)} lies no fret to read at`,
			"Give the lower fret first, and one at least two frets higher.",
		),
	"relief-bar-too-short": (f) =>
		w(
			`frets ${say(f.first)} and ${say(f.last)} are only ${mm(f.span)} apart`,
			`A relief bar needs ${mm(f.least)} from foot to foot: stand it on frets farther apart.`,
		),
	"dial-reach-needed": (f) =>
		w(
			f.held === "stem"
				? "how high the bar may be follows from the dial, of which dial-reach is not given"
				: "where the dial's hole goes follows from the dial, of which dial-reach is not given",
			f.held === "stem"
				? "Press the plunger half way in, measure from where the stem leaves the dial's body to the tip, and give it as dial-reach."
				: "Press the plunger half way in, measure from the middle of the lug's hole to the tip, and give it as dial-reach.",
		),
	"stem-bar-has-its-layers": (f) =>
		w(
			`a bar around a dial's stem is made of as many sheets as the stem is thick; layers: ${say(f.layers)} would widen its channel`,
			"Leave layers out.",
		),
	"dial-without-dial": (f) =>
		w(
			`${say(f.key)} says nothing of a bar that is read with a feeler`,
			`Add reads-with: dial, or leave ${say(f.key)} out.`,
		),
	"stands-twice": (f) =>
		w(
			`body-joint: ${say(f.joint)} and stand-on: [${say(f.first)}, ${say(f.last)}] name different frets to stand on`,
			"Leave one of them out.",
		),
	"stem-in-thick-sheets": (f) => {
		const [stem, layers, most] = [Number(f.stem), Number(f.layers), Number(f.most)];
		const sheet = (n: number) => `${mm(stem / n)} to ${mm((stem + most) / n)}`;
		const thicker = layers > 1 ? `, or ${sheet(layers - 1)}` : "";
		return w(
			`between ${layers === 1 ? "cheeks with one sheet" : `cheeks with ${say(f.layers)} sheets`} of ${mm(f.thickness)} a stem of ${mm(f.stem)} would have ${mm(f.play)} of play`,
			`A screw takes up ${mm(f.most)} at most: give the bar a stock of ${sheet(layers)}${thicker}.`,
		);
	},
	"clamp-screw-needed": (f) =>
		w(
			`without a screw the stem would have ${mm(f.play)} of play across the bar`,
			`Leave clamp-screw out, or take a sheet of which some make up the stem to within ${mm(f.snug)}.`,
		),
};
