import { allowed, type Facts, LENGTH_FORMS, meant, mm, say, type Wording, w } from "./say.js";

/** How a length was understood: "25.5 means 25.5 mm here", "648 in is 16459.2 mm". */
function reading({ given, mm: value }: Facts): string {
	if (!/[a-z"'″”]/iu.test(say(given))) return `${say(given)} means ${mm(value)} here, which`;
	return /mm$/iu.test(say(given)) ? say(given) : `${say(given)} is ${mm(value)}, which`;
}

/** Lengths and other fields. */
export const FIELDS: Wording = {
	"decimal-comma": (f) =>
		w(
			`"${say(f.given)}" has a decimal comma`,
			`Write a decimal point: ${say(f.given).replace(",", ".")}.`,
		),
	"decimal-comma-key": (f) =>
		w(
			`"${say(f.key)}" stands like a key without a value; a decimal comma does that`,
			"Write a decimal point, 2.7 mm instead of 2,7 mm; or give the key its value.",
		),
	"unknown-unit": (f) =>
		w(
			`"${say(f.given)}" has the unit "${say(f.unit)}"`,
			`Lengths take mm, cm, m, in or ": ${LENGTH_FORMS}.`,
		),
	"not-a-length": (f) =>
		w(
			`"${say(f.given)}" is no length`,
			`Write it like ${LENGTH_FORMS}${f.words ? `, or ${say(f.words)}` : ""}.`,
		),
	"zero-denominator": (f) =>
		w(`"${say(f.given)}" divides by zero`, `Write it like ${LENGTH_FORMS}.`),
	"not-finite": (f) =>
		w(`${say(f.given)} is no number that can be measured`, "Give the number itself."),
	"length-range": (f) =>
		w(
			`${reading(f)} is out of range`,
			`${allowed(f.allowed)} ${f.slip ? `Do you mean ${say(f.slip)}?` : "Check the reading and its unit."}`,
		),
	station: (f) => w(`"${say(f.given)}" is no station`, `A station is ${say(f.allowed)}.`),
	"station-map-empty": () =>
		w("the map of stations is empty", "Give one station at least: {nut: 43 mm}."),
	"station-off-neck": (f) =>
		w(
			`${say(f.station)} is not on this neck`,
			`It runs from ${mm(f.from)} to the saddle at ${mm(f.saddle)}.`,
		),
	count: (f) => w(`${say(f.given)} is not allowed here`, `Give ${say(f.allowed)}.`),
	"number-range": (f) => w(`${say(f.given)} is out of range`, allowed(f.allowed)),
	"text-length": (f) =>
		w(
			f.given === "" ? "the text is empty" : `"${say(f.given)}" has ${say(f.size)} characters`,
			`Give 1 to ${say(f.most)} characters.`,
		),
	"name-unwritable": (f) =>
		w(
			`"${say(f.given)}" has nothing that file names can hold`,
			"Put a letter from a to z or a digit into it: files are named after it.",
		),
	"text-control": (f) =>
		w(`"${say(f.given)}" holds a line break or control character`, "Keep the text to one line."),
	kelvin: (f) =>
		w(
			`"${say(f.given)}" is no temperature difference within range`,
			`Give kelvin, ${say(f.allowed)}: 10 K.`,
		),
	colour: (f) =>
		w(`"${say(f.given)}" is no colour`, 'Write it as "#rrggbb", in quotes: "#0b7a75".'),
	"division-steps": (f) =>
		w(
			`${say(f.given)} steps to the octave are not allowed`,
			`Give a whole number from 5 to ${say(f.most)}.`,
		),
	"tang-wider-than-crown": (f) =>
		w(
			`a tang ${mm(f.tang)} thick is not narrower than its crown, ${mm(f.crown)}`,
			"Measure both again, and check their units.",
		),
	"division-list": () =>
		w("a division needs one list", "Give cents, ratios or positions, one of the three."),
	"division-order": (f) =>
		w(
			`entry ${say(f.entry)} (${say(f.given)}) is not above the one before it`,
			"List every fret from fret 1 up; cents and positions rise from 0, ratios from 1. A decimal comma makes two entries of one.",
		),
	"division-cents": (f) =>
		w(
			`entry ${say(f.entry)} (${say(f.given)}) is too many cents`,
			`List ${say(f.most)} octaves at most, 1200 cents each.`,
		),
	"division-ratio": (f) =>
		w(
			`entry ${say(f.entry)} (${say(f.given)}) is no ratio`,
			`Write 9/8 or 1.125; ${say(f.most)} octaves at most.`,
		),
	marker: (f) =>
		w(
			f.given === "" ? "a marker needs its fret" : `"${say(f.given)}" is no fret for a marker`,
			"Write 3, or {12: double}.",
		),
	"count-or-courses": () =>
		w("strings need count or courses, one of the two", "Give count: 6, or courses: 4."),
	"pair-gap": () =>
		w("courses and pair-gap go together", "Give courses: 4, pair-gap: 1.8 mm; or count alone."),
	"material-never": (f) =>
		w(`${say(f.given)} is refused: ${say(f.reason)}`, "Choose another material."),
	"material-unknown": (f) =>
		w(
			`"${say(f.given)}" is no material that camber knows`,
			`${meant(f.guess)}${allowed(f.allowed)} Never cut an unknown plastic.`,
		),
	kerf: (f) =>
		w(
			`a kerf of ${mm(f.kerf)} does not go with a ${say(f.kind)}`,
			"Write kerf: 0: a mill's program offsets for its cutter by itself, and a printer cuts nothing.",
		),
	"cutter-without-mill": (f) =>
		w(
			`a ${say(f.kind)} has no cutter of ${mm(f.cutter)}`,
			"Take the cutter out, or write kind: mill.",
		),
	"relief-without-cutter": (f) =>
		w(
			f.kind === "mill"
				? "a relieved floor needs to know the cutter"
				: `a ${say(f.kind)} leaves no round corners to relieve`,
			"Write kind: mill and cutter: 3.175 mm, or relief: none.",
		),
	"tabs-on-paper": () =>
		w("a printer cuts nothing that tabs could hold", "Take the tabs out, or name the machine."),
	"margin-leaves-nothing": (f) =>
		w(
			`a margin of ${mm(f.margin)} on every side leaves nothing of a bed of ${say(f.width)} x ${mm(f.height)}`,
			"Give a smaller margin; it is the strip along each edge that stays empty.",
		),
	bed: (f) =>
		w(`"${say(f.given)}" is no size of a bed`, "Write both sides: 600 x 400 mm, or 24 x 16 in."),
	speed: (f) =>
		w(
			`"${say(f.given)}" is no speed`,
			`Write it like 12 mm/s, 700 mm/min or 0.5 in/s; ${say(f.allowed)}.`,
		),
	"kerf-sheet-key": (f) =>
		w(
			`"${say(f.given)}" names no sheet`,
			`Write a material and its thickness: acrylic 3 mm: 0.16 mm. Materials: ${say(f.allowed)}.`,
		),
	"kerf-twice-key": (f) =>
		w(
			`"${say(f.given)}" is the same sheet as "${say(f.before)}"`,
			"Keep one of the two: the reading that holds now.",
		),
	"kerf-list-empty": () =>
		w("the list of kerfs is empty", "Give one sheet at least: {acrylic 3 mm: 0.16 mm}."),
	"kerf-unknown": (f) =>
		w(
			`the machine's list has no kerf for ${say(f.stock)}`,
			`It has ${say(f.known)}. Measure it with a kerf-coupon of that sheet and add it; a kerf is never guessed from another sheet's.`,
		),
	"sheets-without-bed": () =>
		w(
			"sheets need the bed that parts are laid out on",
			"Write its size under machine: bed: 600 x 400 mm.",
		),
};
