import { trimmed } from "../units/index.js";
import type { Fact, Problem } from "./problem.js";

type Facts = Readonly<Record<string, Fact>>;

/** What is wrong, and how to mend it. */
interface Words {
	readonly what: string;
	readonly mend: string;
}

/** A fact as text: numbers to the thousandth, lists with commas. */
function say(fact: Fact | undefined): string {
	if (fact === undefined) return "";
	if (typeof fact === "number") return trimmed(fact, 3);
	return typeof fact === "string" ? fact : fact.join(", ");
}

function mm(fact: Fact | undefined): string {
	return `${say(fact)} mm`;
}

function meant(guess: Fact | undefined): string {
	return guess ? `Did you mean "${say(guess)}"? ` : "";
}

const w = (what: string, mend: string): Words => ({ what, mend });

const LENGTH_FORMS = '648, 648 mm, 64.8 cm, 25.5 in, 25 1/2 in, 25-1/2", 1/64 in';

/** Every code with its wording; nothing else in the project words a problem. */
const WORDING: Readonly<Record<string, (f: Facts) => Words>> = {
	// Lengths and other fields
	"decimal-comma": (f) =>
		w(`"${say(f.given)}" has a decimal comma`, "Write a decimal point: 25.5 in, 1.3 mm."),
	"decimal-comma-key": (f) =>
		w(
			`"${say(f.key)}" stands where a key should: a decimal comma ends the value before it`,
			"Write a decimal point: {crown-width: 2.7 mm, …}.",
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
		w(`${say(f.given)} is no number that can be measured`, "Give the length itself."),
	"length-range": (f) =>
		w(
			`${say(f.given)} is ${say(f.mm)}; allowed is ${say(f.allowed)}`,
			f.slip
				? `If you mean ${say(f.slip)}, write the unit: ${say(f.slip)}.`
				: "Measure again, or check the unit.",
		),
	station: (f) => w(`"${say(f.given)}" is no station`, `A station is ${say(f.allowed)}.`),
	"station-map-empty": () =>
		w("the map of stations is empty", "Give one station at least: {nut: 43 mm}."),
	count: (f) => w(`${say(f.given)} is not allowed here`, `Give ${say(f.allowed)}.`),
	"number-range": (f) => w(`${say(f.given)} is out of range`, `Give a number ${say(f.allowed)}.`),
	"text-length": (f) =>
		w(`"${say(f.given)}" is empty or too long`, `Give 1 to ${say(f.most)} characters.`),
	"text-control": (f) =>
		w(`"${say(f.given)}" holds a line break or control character`, "Keep the text to one line."),
	kelvin: (f) =>
		w(`"${say(f.given)}" is no temperature difference`, `Give kelvin, ${say(f.allowed)}: 10 K.`),
	colour: (f) =>
		w(`"${say(f.given)}" is no colour`, 'Write it as "#rrggbb", in quotes: "#0b7a75".'),
	"division-steps": (f) =>
		w(
			`${say(f.given)} steps to the octave are not allowed`,
			`Give a whole number from 5 to ${say(f.most)}.`,
		),
	"division-list": () =>
		w("a listed division has one list", "Give either cents, ratios or positions."),
	"division-order": (f) =>
		w(
			`entry ${say(f.entry)} (${say(f.given)}) is not above the one before it`,
			"List every fret from fret 1 up; cents rise from 0, ratios from 1.",
		),
	"count-or-courses": () =>
		w("strings need either count or courses", "Give count: 6, or courses: 4 with pair-gap."),
	"pair-gap": () =>
		w("courses and pair-gap go together", "Give courses: 4, pair-gap: 1.8 mm; or count alone."),
	"material-never": (f) =>
		w(`${say(f.given)} is refused: ${say(f.reason)}`, "Choose another material."),
	"material-unknown": (f) =>
		w(
			`"${say(f.given)}" is no known material`,
			`Known are ${say(f.allowed)}. Never cut an unknown plastic.`,
		),
	kerf: (f) =>
		w(
			`a kerf of ${mm(f.kerf)} cannot be compensated yet`,
			"Write kerf: 0; the files are nominal, so set the offset in your cutting program.",
		),

	// Shape of the job
	"unknown-key": (f) =>
		w(`the key "${say(f.key)}" is not known here`, `${meant(f.guess)}Known are ${say(f.known)}.`),
	missing: (f) =>
		w(
			"is missing",
			f.allowed ? `Give ${say(f.allowed)}.` : "Add it; `camber new` shows every key.",
		),
	"wrong-kind": (f) => w(`${say(f.given)} is not what belongs here`, `Give ${say(f.expected)}.`),
	"not-one-of": (f) =>
		w(`"${say(f.given)}" is not allowed here`, `${meant(f.guess)}Allowed are ${say(f.allowed)}.`),
	"list-size": (f) => w(`${say(f.given)} has the wrong number of entries`, `Give ${say(f.limit)}.`),
	"make-empty": (f) => w("there is nothing to make", `List a tool: ${say(f.known)}.`),
	"make-entry": (f) =>
		w(
			`${say(f.given)} is no tool`,
			"Give a tool's name, or one tool with its settings: - radius-gauge: {at: [nut, 7]}.",
		),
	"unknown-tool": (f) =>
		w(`there is no tool "${say(f.given)}"`, `${meant(f.guess)}Tools are ${say(f.known)}.`),
	"same-name": (f) =>
		w(`two parts would be called "${say(f.name)}"`, "Give one of them a name: of its own."),
	"only-unknown": (f) =>
		w(`--only ${say(f.given)} names nothing in this job`, `The job makes ${say(f.names)}.`),

	// YAML
	"text-too-large": (f) =>
		w(`the job is ${say(f.size)} characters long`, `A job has at most ${say(f.most)}.`),
	"too-deep": (f) =>
		w("brackets are nested too deep", `A job needs fewer than ${say(f.most)} levels.`),
	"empty-job": () => w("the job is empty", "`camber new FILE` writes one to start from."),
	"several-documents": () =>
		w("a second document begins here", "Keep one job in a file: take the --- out."),
	"yaml-alias": () =>
		w("anchors and aliases (&, *) have no place in a job", "Write the value out."),
	"yaml-tag": () => w("tags (!) have no place in a job", "Write the plain value."),
	"inch-in-quotes": (f) =>
		w(
			`an inch mark inside double quotes ends the text early: ${say(f.line)}`,
			"Write in: 25 1/2 in; or leave the quotes off: scale: 25-1/2\"; or use single quotes: '25 1/2\"'.",
		),
	"duplicate-key": (f) => w(`a key stands twice: ${say(f.line)}`, "Keep one of the two."),
	"yaml-syntax": (f) =>
		w(`${say(f.reason)}: ${say(f.line)}`, "Check brackets, colons, quotes and indentation."),

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
			`the division ends at fret ${say(f.highest)}, the neck has ${say(f.frets)}`,
			"List every fret, or end the list on the octave (1200 cents, ratio 2) so that it repeats.",
		),
	"square-fret-beyond": (f) =>
		w(
			`square-fret ${say(f.square)} is beyond the division's last fret`,
			`Give 0 to ${say(f.highest)}.`,
		),
	"no-such-fret": (f) =>
		w(`the division has no fret ${say(f.fret)}`, "Give a station on the board."),
	"same-station": (f) => w(`two stations lie at ${mm(f.at)}`, "Keep one of the two."),
	"board-too-narrow": (f) =>
		w(
			`at the ${say(f.at)} the board would be ${mm(f.width)} wide${f.binding ? `, binding ${mm(f.binding)} a side` : ""}`,
			"Check the widths and their stations.",
		),
	"radius-below-half-board": (f) =>
		w(
			`at the ${say(f.at)} the radius ${mm(f.radius)} is smaller than half the board (${mm(f.width)} wide)`,
			"Check the unit: a radius of 10 means 10 mm, write 10 in.",
		),
	"strings-beside-board": (f) =>
		w(
			`the outer strings are ${mm(f.spread)} apart at the nut, the board is ${mm(f.width)} wide there`,
			"Give at-nut from outer string centre to outer string centre.",
		),
	"pair-gap-too-wide": (f) =>
		w(`a pair gap of ${mm(f.gap)} is wider than the strings' spread`, "Check both."),
	"frets-cross": (f) =>
		w(
			`frets ${say(f.before)} and ${say(f.fret)} come within ${mm(f.gap)} of each other at the ${say(f.side)} edge`,
			`At least ${mm(f.least)} must remain: check both scales, the square fret and the width.`,
		),
	"frets-too-close": (f) =>
		w(
			`frets ${say(f.before)} and ${say(f.fret)} are only ${mm(f.gap)} apart`,
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
			`between frets ${say(f.before)} and ${say(f.fret)} only ${mm(f.land)} of land would remain${Number(f.more) > 0 ? `, and less than ${mm(f.least)} at ${say(f.more)} more places` : ""}`,
			`At least ${mm(f.least)} is needed to stand on: set side-clearance or least-land smaller, take a stiffer material that moves less, or leave the tool out.`,
		),
	"first-land-too-narrow": (f) =>
		w(
			`before fret ${say(f.fret)} only ${mm(f.land)} of land would remain`,
			`At least ${mm(f.least)} is needed: check nut-shift and the nut end.`,
		),
	"butting-zero-fret": () =>
		w("on a neck with a zero fret the nut is no datum to butt against", "Write nut-end: cleared."),
	"bar-too-low": (f) =>
		w(`a bar ${mm(f.height)} high is cut through`, `Give a height of ${mm(f.least)} or more.`),
	"label-too-long": (f) =>
		w(
			`"${say(f.text)}" does not fit into ${mm(f.room)}`,
			"Shorten the job's name, or make the part larger.",
		),
	"no-such-string": (f) =>
		w(
			`string ${say(f.given)} is not on this neck (${say(f.count)} strings)`,
			"Give centre, or add strings: to the neck and choose from 1 (treble) up.",
		),
	"flat-board": (f) =>
		w(
			`a flat board needs no ${say(f.tool)}: a straightedge is its gauge`,
			"Leave it out, or give radii: [12 in] for gauges of your own.",
		),
	"radius-vanishes": (f) =>
		w(
			`at ${say(f.place)} the radius would be ${mm(f.radius)}`,
			"The stations' radii do not reach that far.",
		),
	"chord-wider-than-circle": (f) =>
		w(
			`a gauge ${mm(f.width)} wide does not fit a circle of radius ${mm(f.radius)}`,
			"Give a smaller gauge-width or a larger radius; check the radius's unit.",
		),
	"gauge-too-low": (f) =>
		w(`a gauge ${mm(f.height)} high is too low for its arc`, `Give ${mm(f.least)} or more.`),
	"strip-falls-apart": (f) =>
		w(
			`cut slots would end ${mm(f.rim)} from the strip's edge`,
			`At least ${mm(f.least)} must hold it together: set edge-margin, or slots: line.`,
		),
	"marker-beyond": (f) =>
		w(
			`a marker stands at fret ${say(f.fret)}, the neck has ${say(f.frets)}`,
			"Take it out of markers.",
		),
	"slot-too-short": (f) =>
		w(`slot ${say(f.fret)} is shorter than it is wide`, "Check width, binding and tang-width."),

	// Lettering
	"font-not-loaded": (f) =>
		w(`the font ${say(f.file)} cannot be loaded here`, "Pass load: to make, or name no font."),
	"font-unusable": (f) =>
		w(`the font ${say(f.file)} cannot be used: ${say(f.reason)}`, "Name a TTF or OTF file."),
	"letters-missing": (f) =>
		w(
			`"${say(f.text)}" has characters that the lettering "${say(f.font)}" lacks: ${say(f.missing)}`,
			"Write it otherwise, or name a font that has them: lettering: {font: my.ttf}.",
		),

	// Files
	"file-missing": (f) =>
		w(`there is no file ${say(f.file)}`, "Check the path; `camber new FILE` writes a job."),
	"file-is-folder": (f) => w(`${say(f.file)} is a folder`, "Give the job file in it."),
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
		w(`${say(f.folder)} is a file, no folder`, "Give another folder with -o."),
	"folder-under-file": (f) =>
		w(`${say(f.folder)} lies under a file`, "Give another folder with -o."),
	"folder-unusable": (f) =>
		w(`${say(f.folder)} cannot be used: ${say(f.reason)}`, "Give another folder with -o."),
	"target-is-folder": (f) => w(`${say(f.file)} is a folder in ${say(f.folder)}`, "Move it away."),
	"foreign-file": (f) =>
		w(
			`${say(f.file)} in ${say(f.folder)} would be overwritten, but camber did not write it as it is (${say(f.why)})`,
			"Move it away, give another folder with -o, or add --force.",
		),
	"disk-full": (f) =>
		w(`no room on the disk for ${say(f.file)}`, "Nothing was changed; make room and run it again."),
	"write-failed": (f) =>
		w(
			`${say(f.file)} could not be written: ${say(f.reason)}`,
			"Nothing was changed; mend that and run it again.",
		),
	"not-restored": (f) =>
		w(
			`${say(f.file)} could not be put back: ${say(f.reason)}`,
			`Its old bytes are in ${say(f.kept)}.`,
		),
	"left-behind": (f) =>
		w(`${say(f.file)} could not be removed: ${say(f.reason)}`, "It may be deleted."),

	// Flags
	"flag-value": (f) =>
		w(
			`${say(f.given)} is not allowed for ${say(f.flag)}`,
			`${meant(f.guess)}Give ${say(f.allowed)}.`,
		),
	"flag-yaml": (f) =>
		w(
			`the value of ${say(f.flag)} cannot be read: ${say(f.given)}`,
			"Write it as in a job file: '{nut: 10 in, last-fret: 14 in}'.",
		),
};

/** Whether a code has its wording. */
export function isWorded(code: string): boolean {
	return code in WORDING;
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
	const words = WORDING[code]?.(facts);
	if (!words) throw new RangeError(`no wording for ${code}`);
	return `${words.what}. ${words.mend}`;
}

/** Where a problem stands: "heron.yaml:5:10: neck.scale", as far as it is known. */
export function placeText({ where }: Problem, file: string): string {
	const { line, column } = where;
	const at = line === undefined ? [file] : [file, line, column];
	return [at.filter((x) => x !== "").join(":"), pathText(where.path)].filter(Boolean).join(": ");
}

/** A path of keys as people write it: "make[1].radius-gauge.at". */
export function pathText(path: readonly (string | number)[]): string {
	return path.reduce<string>((text, key) => {
		if (typeof key === "number") return `${text}[${key + 1}]`;
		return text === "" ? key : `${text}.${key}`;
	}, "");
}
