import { type Facts, meant, mm, say, type Wording, w } from "./say.js";

/** How a factor that no printer has most likely came about. */
function mend({ slip, meant: factor, given }: Facts): string {
	switch (slip) {
		case "inch rule":
			return "It is what comes of a rule in inches taken for one in millimetres, 4 in for 100 mm or 10 in for 250 mm. Give the length of the rule that was read.";
		case "metric rule":
			return "It is what comes of a rule in millimetres taken for one in inches, 100 mm for 4 in or 250 mm for 10 in. Give the length of the rule that was read.";
		case "inches":
			return "It is what comes of an inch divided by a millimetre. Take both lengths in one unit.";
		case "percent":
			return `Write the factor, not a percentage: ${say(factor)}, not ${say(given)}.`;
		default:
			return "Read the rule again, and which rule it is: the factor is measured divided by nominal.";
	}
}

/** Papers and printers. */
export const PAPER: Wording = {
	"paper-unknown": (f) =>
		w(
			f.given === "" ? "the paper has no name" : `"${say(f.given)}" is no paper that camber knows`,
			`${meant(f.guess)}Write it like one of these: ${say(f.allowed)}.`,
		),
	"paper-words": (f) =>
		w(
			`"${say(f.given)}" says more than the paper's name`,
			`Write ${say(f.name)}: pages stay as they are fed, and what is drawn on them turns. Paper fed by its other edge is ${say(f.turned)}.`,
		),
	"paper-too-small": (f) =>
		w(
			`${say(f.name)} with margins of ${mm(f.margin)} has no room for a page's rules, texts and drawing`,
			`Take ${f.height === "" ? `a roll ${mm(f.width)} wide` : `paper of ${say(f.width)} x ${mm(f.height)}`} or more, or a smaller margin if the printer reaches further.`,
		),
	"overlap-too-wide": (f) =>
		w(
			`an overlap of ${mm(f.overlap)} is too much for a page of ${say(f.name)}`,
			`Give ${mm(f.most)} or less, half of what a page shows; 15 mm is usual.`,
		),
	"printer-factor": (f) =>
		w(
			`${say(f.given)} is nothing that a printer makes of a millimetre`,
			"Give the measured length divided by the nominal one: 0.996 for a printer that prints 0.4 % short, 1.004 for one that prints 0.4 % long.",
		),
	"readings-swapped": () =>
		w(
			"each reading fits the other direction's rule: across and along are swapped",
			"Across is the rule over the page's width, along the one up its height: swap the two.",
		),
	"printer-misread": (f) =>
		w(
			`${f.reading ? `${say(f.reading)} makes ${say(f.given)}, which` : say(f.given)} is more than 1.2 % off 1, further than a printer is`,
			mend(f),
		),
};
