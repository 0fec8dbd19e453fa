import { withBlock } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

const paper = (value: string) => withBlock(`paper: ${value}`);
const printer = (keys: string) => withBlock(`printer: {${keys}}`);

/** Papers that do not exist or are too small, and printers that were misread. */
export const PAPER: readonly BadJob[] = [
	bad("a paper of no name", paper("A44"), "paper-unknown", "A44", '"A4"', "roll 610 mm"),
	bad("a roll without its width", paper("roll"), "paper-unknown", "roll", "roll 610 mm"),
	bad("an empty paper", paper('""'), "paper-unknown", '""', "no name", "Letter"),
	bad(
		"a paper that is told to turn",
		paper("A4 landscape"),
		"paper-words",
		"A4 landscape",
		"stay as they are fed",
		"297 x 210 mm",
	),
	bad("a paper by number", paper("4444"), "wrong-kind", "4444", "{width: 210 mm, height: 330 mm}"),
	bad("a paper of one side", paper("{width: 210 mm}"), "missing", "paper: {width", "height"),
	bad("a paper in inches of millimetres", paper("210 x 330 in"), "length-range", "210 x", "210 mm"),
	bad("a roll with a comma", paper("roll 61,5 cm"), "decimal-comma", "roll 61,5", "61.5 cm"),
	bad(
		"a paper that holds no rule",
		paper("100 x 150 mm"),
		"paper-too-small",
		"100 x 150 mm",
		" mm or more",
	),
	bad("a roll that holds no rule", paper("roll 100 mm"), "paper-too-small", "roll 100", "a roll "),
	bad(
		"margins that leave too little",
		printer("margin: 50 mm"),
		"paper-too-small",
		"50 mm",
		"margins of 50 mm",
	),
	bad(
		"an overlap of a whole page",
		printer("overlap: 190 mm"),
		"overlap-too-wide",
		"190 mm",
		"15 mm is usual",
	),
	bad("an overlap of nothing", printer("overlap: 0"), "length-range", "0}", "above 0"),
	bad("a printer that prints nothing", printer("across: 0"), "printer-factor", "0}", "0.996"),
	bad("a printer backwards", printer("along: -0.4"), "printer-factor", "-0.4", "0.996"),
	bad(
		"a printer 3 % off",
		printer("along: 1.03"),
		"printer-misread",
		"1.03",
		"Read the rule again",
	),
	bad(
		"a rule of 4 in read as 100 mm",
		printer("across: 1.0164"),
		"printer-misread",
		"1.0164",
		"rule in inches taken for one in millimetres",
	),
	bad(
		"a rule of 100 mm read as 4 in",
		printer("across: 0.984"),
		"printer-misread",
		"0.984",
		"rule in millimetres taken for one in inches",
	),
	bad(
		"a printer by per cent too long",
		printer("across: 0.4"),
		"printer-misread",
		"0.4",
		"1.004, not 0.4",
	),
	bad(
		"a printer by per cent of nominal",
		printer("along: 99.7"),
		"printer-misread",
		"99.7",
		"0.997, not 99.7",
	),
	bad("inches over millimetres", printer("along: 25.4"), "printer-misread", "25.4", "one unit"),
];
