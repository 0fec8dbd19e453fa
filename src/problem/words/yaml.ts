import { say, type Wording, w } from "./say.js";

/** The YAML of a job. */
export const YAML: Wording = {
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
};
