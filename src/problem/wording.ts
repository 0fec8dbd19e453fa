import { trimmed } from "../units/index.js";
import type { Fact, Problem } from "./problem.js";

type Facts = Readonly<Record<string, Fact>>;

/** What is wrong, and how to mend it. */
interface Words {
	readonly what: string;
	readonly mend: string;
}

/** Longest text that a message quotes. */
const MOST_QUOTED = 160;

/** Most entries of a list that a message names. */
const MOST_LISTED = 20;

/** A fact as text: numbers to the thousandth, lists with commas, unseen characters by their code. */
function say(fact: Fact | undefined): string {
	if (fact === undefined) return "";
	if (typeof fact === "number") return Math.abs(fact) < 1e15 ? trimmed(fact, 3) : String(fact);
	if (typeof fact === "string") return quoted(fact);
	const rest = fact.length - MOST_LISTED;
	const listed = fact.slice(0, MOST_LISTED).map(quoted).join(", ");
	return rest > 0 ? `${listed} and ${rest} more` : listed;
}

function quoted(text: string): string {
	const cut = text.length > MOST_QUOTED ? `${text.slice(0, MOST_QUOTED - 1)}…` : text;
	return cut.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/gu, (c) => {
		const code = c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0");
		return `[U+${code}]`;
	});
}

function mm(fact: Fact | undefined): string {
	return `${say(fact)} mm`;
}

function meant(guess: Fact | undefined): string {
	return guess ? `Did you mean "${say(guess)}"? ` : "";
}

const w = (what: string, mend: string): Words => ({ what, mend });

/** A list of what is allowed: "a" or "a, b". */
function allowed(fact: Fact | undefined): string {
	return `Allowed: ${say(fact)}.`;
}

/** How a length was understood: "25.5 means 25.5 mm here", "648 in is 16459.2 mm". */
function reading({ given, mm: value }: Facts): string {
	if (!/[a-z"'″”]/iu.test(say(given))) return `${say(given)} means ${mm(value)} here, which`;
	return /mm$/iu.test(say(given)) ? say(given) : `${say(given)} is ${mm(value)}, which`;
}

const LENGTH_FORMS = '648, 648 mm, 64.8 cm, 25.5 in, 25 1/2 in, 25-1/2", 1/64 in';

function twoFrets({ before, fret }: Facts): string {
	return before === 0 ? `the nut and fret ${say(fret)}` : `frets ${say(before)} and ${say(fret)}`;
}

/** Whether a problem speaks of a strip's slots. */
function isSlot({ feature }: Facts): boolean {
	return /^slot /u.test(say(feature));
}

/** What is left of the land between two notches. */
function remains({ land }: Facts): string {
	return Number(land) > 0 ? `only ${mm(land)} of land would remain` : "no land would remain";
}

/** How often a finding was made, if more than once. */
function times({ count }: Facts): string {
	return Number(count) > 1 ? `, ${say(count)} times in the file` : "";
}

/** A place in a file's own coordinates: " at x 12.5, y 3". */
function at({ x, y }: Facts): string {
	return ` at x ${say(x)}, y ${say(y)}`;
}

/** The part that a path lies on: " of radius-gauge". */
function of({ part }: Facts): string {
	return part ? ` of ${say(part)}` : "";
}

/** A figure that is judged to the micrometre, to a tenth of it. */
function fine(fact: Fact | undefined): string {
	return typeof fact === "number" ? trimmed(fact, 4) : say(fact);
}

/** A measured figure with its unit: angles in degrees, all else in millimetres. */
function figure({ kind }: Facts, fact: Fact | undefined): string {
	if (kind !== "angle") return `${fine(fact)} mm`;
	return `${fine((Number(fact) * 180) / Math.PI)}°`;
}

/** A factor, below a half as a share of one: "25.4", "1/25.4". */
function ratio(factor: Fact | undefined): string {
	return Number(factor) < 0.5 ? `1/${say(1 / Number(factor))}` : say(factor);
}

/** How a drawing may have come to be so many times as large. */
function slipCause(factor: Fact | undefined): string {
	if (factor === 10 || factor === 0.1)
		return "Centimetres and millimetres were taken for each other.";
	return factor === 96 / 72 || factor === 72 / 96
		? "72 and 96 dots to the inch were taken for each other."
		: "Inches and millimetres were taken for each other.";
}

/** Every code with its wording; nothing else in the project words a problem. */
const WORDING: Readonly<Record<string, (f: Facts) => Words>> = {
	// Lengths and other fields
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

	// Shape of the job
	"unknown-key": (f) =>
		w(`the key "${say(f.key)}" is not known here`, `${meant(f.guess)}${allowed(f.known)}`),
	missing: (f) =>
		w(
			`${say(f.key)} is missing`,
			f.allowed ? `Add it. ${allowed(f.allowed)}` : "Add it; `camber new FILE` shows every key.",
		),
	"no-value": (f) =>
		w(
			`${say(f.key)} has no value`,
			f.allowed
				? `Give one, or take the key out. ${allowed(f.allowed)}`
				: "Give one, or take it out.",
		),
	"wrong-kind": (f) =>
		w(
			`${say(f.given)} stands where ${say(f.expected)} belongs`,
			f.allowed ? allowed(f.allowed) : `Write ${say(f.expected)}.`,
		),
	"not-one-of": (f) =>
		w(`${say(f.given)} is not allowed here`, `${meant(f.guess)}${allowed(f.allowed)}`),
	"list-size": (f) =>
		w(
			Number(f.size) === 0 ? "the list is empty" : `the list has ${say(f.size)} entries`,
			`Give ${say(f.limit)}.`,
		),
	"make-empty": (f) => w("there is nothing to make", `List a tool: ${say(f.known)}.`),
	"make-entry": (f) =>
		w(
			`${say(f.given)} is no tool`,
			"Give a tool's name, or one tool with its settings: - radius-gauge: {at: [nut, 7]}.",
		),
	"unknown-tool": (f) =>
		w(`there is no tool "${say(f.given)}"`, `${meant(f.guess)}Tools: ${say(f.known)}.`),
	"same-name": (f) =>
		w(`two parts would be called "${say(f.name)}"`, "Give one of them a name: of its own."),
	"same-part": (f) =>
		w(`"${say(f.name)}" would be made twice`, "Take the station or radius out that stands twice."),
	"only-unknown": (f) =>
		w(
			`--only ${say(f.given)} names nothing in this job`,
			`${meant(f.guess)}The job makes ${say(f.names)}.`,
		),

	// YAML
	"text-too-large": (f) =>
		w(`the job is ${say(f.size)} characters long`, `A job has at most ${say(f.most)}.`),
	"too-deep": (f) =>
		w("blocks or brackets are nested too deep", `A job has at most ${say(f.most)} levels.`),
	"empty-job": () => w("the job is empty", "`camber new FILE` writes one to start from."),
	"not-a-job": (f) =>
		w(
			`a job is keys with values, not ${say(f.given)}`,
			"`camber new FILE` writes one to start from.",
		),
	"several-documents": () => w("a second job begins here", "Keep one job in a file."),
	"yaml-alias": () => w("& and * have no place in a job", "Write the value out."),
	"yaml-tag": () => w("! has no place in a job", "Write the plain value."),
	"yaml-directive": () => w("% has no place in a job", "Take the line out."),
	"yaml-key": () => w("a key must be a word or a number", "Write it like frets: 22."),
	"colour-unquoted": (f) =>
		w(
			`without quotes, # begins a comment: ${say(f.line)}`,
			'Put the colour in quotes: colour: "#0b7a75".',
		),
	"inch-in-quotes": (f) =>
		w(
			`an inch mark inside double quotes ends the text early: ${say(f.line)}`,
			"Write 25 1/2 in, or 25-1/2\" without quotes, or '25-1/2\"' in single quotes.",
		),
	"duplicate-key": (f) => w(`a key stands twice: ${say(f.line)}`, "Keep one of the two."),
	"yaml-syntax": (f) =>
		w(
			f.line ? `${say(f.reason)}: ${say(f.line)}` : say(f.reason),
			"Check the brackets, colons, quotation marks and leading spaces here and just above.",
		),

	// The neck
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

	// Tools
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

	// Cutting
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
			`Make it shorter or lower, give a smaller margin, or name a machine with a larger bed${f.grain ? "; without grain: x it may be turned" : ""}.`,
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

	// Lettering
	"font-not-loaded": (f) =>
		w(
			`the font ${say(f.file)} cannot be loaded here`,
			"Name no font, or run camber on a computer.",
		),
	"font-unusable": (f) =>
		w(
			`the font ${say(f.file)} cannot be used: ${say(f.reason)}`,
			"Name a TTF or OTF file, and check its path.",
		),
	"font-lacks-signs": (f) =>
		w(
			`the font ${say(f.file)} has no ${say(f.missing)}`,
			"Name a font that has all letters, figures and signs of a keyboard, and ± and °.",
		),
	"letters-missing": (f) =>
		w(
			`"${say(f.text)}" cannot be lettered: the lettering has no ${say(f.missing)}`,
			"Write it otherwise, or name a font that has them all: lettering: {font: my-font.ttf}.",
		),

	// Files
	"file-missing": (f) =>
		w(`there is no file ${say(f.file)}`, "Check the path; `camber new FILE` writes a job."),
	"machine-file-missing": (f) =>
		w(
			`there is no file ${say(f.file)}`,
			"Check the path; README shows what a machine's file holds, and examples/machines has one.",
		),
	"file-is-folder": (f) => w(`${say(f.file)} is a folder`, "Name a file in it."),
	"file-too-large": (f) =>
		w(
			`${say(f.file)} is ${say(f.size)} bytes long and was not read`,
			`At most ${say(f.limit)} bytes are read.`,
		),
	"file-unreadable": (f) =>
		w(`${say(f.file)} cannot be read: ${say(f.reason)}`, "Check its permissions."),
	"file-not-utf8": (f) => w(`${say(f.file)} is not UTF-8 text`, "Save it as UTF-8."),
	"file-exists": (f) => w(`${say(f.file)} exists already`, "Choose another name, or add --force."),
	"folder-is-file": (f) =>
		w(`${say(f.folder)} is a file, not a folder`, "Give another folder with -o."),
	"folder-under-file": (f) =>
		w(`${say(f.folder)} lies under a file`, "Give another folder with -o."),
	"folder-unusable": (f) =>
		w(`${say(f.folder)} cannot be used: ${say(f.reason)}`, "Give another folder with -o."),
	"folder-of-other-job": (f) =>
		w(
			`${say(f.folder)} holds the files of the job "${say(f.other)}", this one is "${say(f.job)}"`,
			"Give the job another name, give another folder with -o, or add --force.",
		),
	"target-is-folder": (f) => w(`${say(f.file)} is a folder in ${say(f.folder)}`, "Move it away."),
	"foreign-file": (f) =>
		w(
			`${say(f.file)} in ${say(f.folder)} would be overwritten, but camber did not write it as it is (${say(f.why)})`,
			"Move it away, give another folder with -o, or add --force.",
		),
	"disk-full": (f) => w(`no room on the disk for ${say(f.file)}`, "Make room and run it again."),
	"write-failed": (f) =>
		w(`${say(f.file)} could not be written: ${say(f.reason)}`, "Mend that and run it again."),
	"not-restored": (f) =>
		w(
			`${say(f.file)} could not be put back: ${say(f.reason)}`,
			`Its old bytes are in ${say(f.kept)}.`,
		),
	"left-behind": (f) =>
		w(`${say(f.file)} could not be removed: ${say(f.reason)}`, "It may be deleted."),

	// Proof
	"manifest-unreadable": (f) =>
		w(
			`${say(f.file)} is no manifest that a file can be measured against: ${say(f.reason)}`,
			"Name the manifest.json that camber wrote beside the files, or make them anew.",
		),
	"manifest-missing": (f) =>
		w(
			`there is no manifest ${say(f.file)}`,
			"Name it with --manifest, or name a job and a part with --job and --tool.",
		),
	"drawing-missing": (f) =>
		w(
			`there is no file or folder ${say(f.file)}`,
			"Check the path; a file that was removed comes back when the job is made again.",
		),
	"proof-flags": () =>
		w(
			"--tool and --machine go with --job, and --job goes without --manifest",
			"Measure against a manifest, or give --job with --tool.",
		),
	"file-not-promised": (f) =>
		w(
			`${say(f.manifest)} promises nothing of ${say(f.file)}`,
			`For a file under another name give --job and --tool. The manifest speaks of ${say(f.known)}.`,
		),
	"one-part-wanted": (f) =>
		w(
			`a file is measured against one part, and here are ${(f.names as readonly string[]).length}`,
			`Name one of them with --tool: ${say(f.names)}.`,
		),
	"part-not-found": (f) =>
		w(
			`${say(f.part)} was not found in the file`,
			`It may hold another part, be drawn in another unit or for another kerf than ${fine(f.kerf)} mm, or have lost its cut contours.`,
		),
	"file-changed": (f) =>
		w(
			`${say(f.file)} is no longer as camber wrote it`,
			"If you edited it, what was measured above tells whether it still holds.",
		),
	"outline-differs": (f) =>
		w(
			`${say(f.part)} leaves its outline at ${fine(f.x)}, ${fine(f.y)} mm from its own origin by ${fine(f.by)} mm, where ${fine(f.most)} mm are allowed`,
			"Do not cut it: write the file anew, or undo what was changed there.",
		),
	"line-differs": (f) =>
		w(
			`a ${f.operation === "score" ? "scored line" : "single cut"} of ${say(f.part)} is off by ${fine(f.by)} mm at ${fine(f.x)}, ${fine(f.y)} mm from the part's own origin`,
			"It was moved, turned, shortened or added. Do not cut it: write the file anew, or undo that.",
		),
	"moved-as-a-whole": (f) =>
		w(
			`${say(f.part)} lies ${fine(f.x)}, ${fine(f.y)} mm away and turned by ${fine(f.turn)} degrees: it was measured where it lies`,
			"That does no harm unless the place on the bed matters, or the axes are corrected for a stretch.",
		),
	"pieces-joined": (f) =>
		w(
			`the cuts are in ${say(f.pieces)} pieces, which were joined into ${say(f.joined)} paths to be measured`,
			"Some cutting programs start anew at every piece: join them there, or write the file anew.",
		),
	"outline-length": (f) =>
		w(
			`${say(f.part)} has contours ${fine(f.measured)} mm long where ${fine(f.nominal)} mm are promised`,
			"Do not cut it: something of its outline is missing or drawn twice. Write the file anew.",
		),
	"nothing-drawn": () =>
		w("no path could be read from the file", "It holds nothing to cut: write it anew."),
	"unit-slip": (f) =>
		w(
			`what is cut measures ${say(f.width)} x ${mm(f.height)} and should measure ${say(f.promisedWidth)} x ${mm(f.promisedHeight)}: ${ratio(f.factor)} times that`,
			`${slipCause(f.factor)} Save the drawing again in millimetres at 1:1, and do not cut this one.`,
		),
	mirrored: (f) =>
		w(
			`the drawing is mirrored along ${say(f.axis)}`,
			"Mirror it back, or write it anew: labels would read backwards and what is not symmetric would lie wrong.",
		),
	"layer-unknown": (f) =>
		w(
			f.layer
				? `paths on the layer "${say(f.layer)}", which no template has: ${say(f.count)}, the first${at(f)}`
				: `paths on no layer: ${say(f.count)}, the first${at(f)}`,
			"Move them to cut, score, engrave, tab or reference, or remove them.",
		),
	"count-differs": (f) =>
		w(
			`paths to ${say(f.operation)}: ${say(f.found)} instead of ${say(f.promised)}${
				(f.parts as readonly string[]).length > 0 ? `, on ${say(f.parts)}` : ""
			}${f.strays ? `; ${say(f.strays)} on no part` : ""}`,
			"Paths were added, removed, split or moved to another layer: write the file anew, or undo that.",
		),
	"contour-open": (f) =>
		w(
			`open cuts on ${say(f.part)}: ${say(f.found)} instead of ${say(f.promised)}; one ends${at(f)}, ${mm(f.gap)} from where it begins`,
			"Close it, or write the file anew: what is not cut all around stays in its sheet.",
		),
	"contour-joined": (f) =>
		w(
			`open cuts on ${say(f.part)}: ${say(f.found)} instead of ${say(f.promised)}`,
			"Tabs or single lines were closed or joined: write the file anew, or part them again.",
		),
	"contour-crosses-itself": (f) =>
		w(
			`a cut${of(f)} crosses itself${at(f)}${times(f)}`,
			"Mend its corners there: what lies inside of it is not clear.",
		),
	"cuts-cross": (f) =>
		w(
			`cuts${of(f)} cross each other${at(f)}${times(f)}`,
			"Move them apart, or write the file anew: they would cut into the part.",
		),
	doubled: (f) =>
		w(
			`a path to ${say(f.operation)}${of(f)} lies on another${at(f)}, along ${mm(f.length)}${times(f)}`,
			"It would be worked twice: remove one of them.",
		),
	"path-too-short": (f) =>
		w(
			`a path on ${f.layer ? say(f.layer) : "no layer"} is only ${mm(f.length)} long,${at(f)}${times(f)}`,
			"Some machines stop or burn at such a point: remove it.",
		),
	"outside-page": (f) =>
		w(
			`the drawing reaches ${mm(f.by)} out of its page${at(f)}${times(f)}`,
			"What lies outside is not shown and may not be cut: move it back, or make the page larger.",
		),
	"outside-bed": (f) =>
		w(
			`paths${of(f)} reach ${mm(f.by)} out of the bed or into its margin of ${mm(f.margin)}${at(f)}${times(f)}`,
			"Move them back to where the machine can go.",
		),
	"parts-too-near": (f) =>
		w(
			`${say(f.part)} and ${say(f.other)} are ${mm(f.apart)} apart${at(f)}`,
			`Move them apart: the bed asks for ${mm(f.spacing)} between parts.`,
		),
	"start-on-working-edge": (f) =>
		w(
			`a cut${of(f)} begins ${mm(f.clear)} from a working edge${at(f)}${times(f)}`,
			`A start leaves a mark: begin it ${mm(f.least)} away, or as far as the contour lets you.`,
		),
	"claim-failed": (f) =>
		w(
			`${say(f.part)}: the ${say(f.kind)} of ${say(f.feature)} (${say(f.claim)}) is ${figure(f, f.measured)} instead of ${figure(f, f.nominal)}: off by ${figure(f, f.deviation)}, where ${figure(f, f.tolerance)} is allowed`,
			"Do not cut it: write the file anew, or undo what was changed there.",
		),
	"feature-missing": (f) =>
		w(
			`${say(f.part)}: no ${say(f.feature)} is found near its place, so that its ${say(f.kind)} (${say(f.claim)}) cannot be measured`,
			"Write the file anew, or undo what was moved or removed.",
		),
	"label-wrong": (f) =>
		w(
			`${say(f.part)}: the letters "${say(f.text)}" are not at their place, or not they alone (${say(f.claim)})`,
			"A wrong number misleads like a wrong size: write the file anew.",
		),
	"not-round": (f) =>
		w(
			`${say(f.part)}: ${say(f.feature)} leaves its circle by ${fine(f.by)} mm (${say(f.claim)})`,
			"It was redrawn as chords or another curve: save it with arcs, or write the file anew.",
		),
	"off-place": (f) =>
		w(
			`${say(f.part)}: the middle of ${say(f.feature)} lies ${fine(f.by)} mm beside its place (${say(f.claim)})`,
			"Move it back, or write the file anew.",
		),
	"font-not-given": (f) =>
		w(
			`${say(f.part)}: labels in the lettering "${say(f.font)}" (${say(f.count)}) were not compared`,
			"Give the same font file, or read the labels yourself.",
		),
	"drawing-too-large": (f) =>
		w(
			`the drawing has more than ${say(f.limit)} ${say(f.of)} and was not read to its end`,
			"A drawing of templates has a small share of that: check that it is the right file.",
		),
	unreadable: (f) =>
		w(
			`the drawing cannot be read: ${say(f.reason)}`,
			"Save it again as plain SVG, or as DXF in text form.",
		),
	truncated: (f) =>
		w(
			`the drawing is cut short or damaged at ${say(f.place)}`,
			"Copy or save it again: the rest of it is missing.",
		),
	"not-a-number": (f) =>
		w(
			`"${say(f.given)}" in ${say(f.place)} is no number that a drawing can hold${times(f)}`,
			"What it belongs to was left out; mend it in the program that wrote the file.",
		),
	"no-length": (f) =>
		w(
			`${say(f.place)} has a piece without length${times(f)}`,
			"Some machines stop or burn at such a point: remove points that lie over each other.",
		),
	curve: (f) =>
		w(
			`${say(f.place)} is a curve that is no arc of a circle${times(f)}`,
			"camber draws lines and arcs only: the program that saved the file has changed them. It is measured as lines.",
		),
	"not-rigid": (f) =>
		w(
			`${say(f.place)} is scaled or slanted by a transform${times(f)}`,
			"It is measured as it is shown; move and turn templates only.",
		),
	"not-read": (f) =>
		w(
			`${say(f.kind)} is not read${times(f)}`,
			"What it shows was not measured: turn it into plain paths, or remove it.",
		),
	"not-shown": (f) =>
		w(
			`${say(f.place)} is hidden and was not measured${times(f)}`,
			"Some machines cut what is hidden: remove it.",
		),
	"text-lost": (f) =>
		w(
			`"${say(f.text)}" on ${say(f.layer)} is text, not paths${times(f)}`,
			"Cutting programs drop text: turn it into paths, or move it to the layer reference.",
		),
	"svg-size": (f) =>
		w(
			f.x === f.y
				? `one unit of the drawing is ${say(f.x)} mm`
				: `one unit of the drawing is ${say(f.x)} mm along x and ${say(f.y)} mm along y`,
			"Programs that take a unit for a millimetre cut it at another size: set width, height and viewBox to the same millimetres.",
		),
	"svg-no-size": (f) =>
		w(
			`the drawing does not say its size; a unit was taken for ${mm(f.factor)}, 96 to the inch`,
			"Give its svg element a width and a height in mm.",
		),
	"dxf-no-unit": () =>
		w(
			"the drawing does not say its unit; millimetres were taken",
			"Save it with millimetres for its unit ($INSUNITS 4), or choose them when it is opened.",
		),
	"dxf-inch": () =>
		w(
			"the drawing is in inches",
			"It was read as such; choose inches wherever it is opened, or save it in millimetres.",
		),
	"dxf-unit": (f) =>
		w(
			`one unit of the drawing is ${say(f.factor)} mm`,
			"It was read as such; save it in millimetres, which every program asks for first.",
		),
	"dxf-measurement": (f) =>
		w(
			`the drawing contradicts itself: $INSUNITS is ${say(f.units)}, $MEASUREMENT ${say(f.measurement)}`,
			"Programs go by the one or the other, 25.4 times apart: save it in millimetres (4 and 1).",
		),
	"dxf-count": (f) =>
		w(
			`${say(f.place)} says that it has ${say(f.given)} points, and has ${say(f.found)}${times(f)}`,
			"Some programs refuse the file: save it again.",
		),
	"dxf-unended": (f) =>
		w(
			`${say(f.place)} is not ended by SEQEND${times(f)}`,
			"Some programs hang or drop what follows: save it again.",
		),

	// Flags
	"flag-value": (f) =>
		w(
			f.given
				? `"${say(f.given)}" is not allowed for ${say(f.flag)}`
				: `${say(f.flag)} has no value`,
			`${meant(f.guess)}${allowed(f.allowed)}`,
		),
	"flag-yaml": (f) =>
		w(
			`the value of ${say(f.flag)} cannot be read: ${say(f.given)}`,
			"Write it as in a job file: '{nut: 10 in, last-fret: 14 in}'.",
		),
};

/** Whether a code has its wording. */
export function isWorded(code: string): boolean {
	return Object.hasOwn(WORDING, code);
}

/** All codes that have a wording. */
export function wordedCodes(): string[] {
	return Object.keys(WORDING);
}

/**
 * A problem in one line: what was given, what is allowed, how to mend it, without its place.
 *
 * @throws RangeError for a code without wording
 */
export function problemText({ code, facts }: Problem): string {
	const words = isWorded(code) && WORDING[code]?.(facts);
	if (!words) throw new RangeError(`no wording for ${code}`);
	return `${words.what}. ${words.mend}`;
}

/** Where a problem stands: "heron.yaml:5:10: neck.scale", as far as it is known. */
export function placeText({ where }: Problem, file: string): string {
	const { line, column } = where;
	const name = where.file ?? file;
	const at = line === undefined ? [name] : [name, line, column];
	return [at.filter((x) => x !== "").join(":"), pathText(where.path)].filter(Boolean).join(": ");
}

/** A path of keys as people write it: "make[1].radius-gauge.at". */
export function pathText(path: readonly (string | number)[]): string {
	return path.reduce<string>((text, key) => {
		if (typeof key === "number") return `${text}[${key + 1}]`;
		return text === "" ? key : `${text}.${key}`;
	}, "");
}
