import { allowed, meant, say, type Wording, w } from "./say.js";

/** Flags of the command. */
export const FLAGS: Wording = {
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
	"dxf-on-paper": () =>
		w(
			"a DXF file has no pages of paper",
			"Leave --paper out for DXF, or write --format pdf or svg with it.",
		),
};
