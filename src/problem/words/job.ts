import { allowed, meant, say, type Wording, w } from "./say.js";

/** The shape of a job. */
export const JOB: Wording = {
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
};
