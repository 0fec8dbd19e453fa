import { type LengthRange, parseSheet } from "../../fields/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { type Kerf, kerfFromBlocks, MATERIAL_NAMES } from "../../shop/index.js";
import { fixed, trimmed } from "../../units/index.js";
import { type Console, EXIT, reportProblems, wrapText } from "../console.js";
import { isProblem, lengthOfFlag } from "../flag-length.js";

/** Flags as the command line gives them. */
export interface KerfFlags {
	readonly blocks: string;
	readonly nominal: string;
	readonly measured: readonly string[];
	readonly resolution: string;
	readonly sheet?: string;
}

const MOST_BLOCKS = 1000;
const LENGTH: LengthRange = { above: 0, to: 10_000 };
const RESOLUTION: LengthRange = { from: 0, to: 1 };

/** `camber kerf`: the width of the cut from a coupon's blocks. */
export function kerfCommand(flags: KerfFlags, console: Console): number {
	const blocks = blocksOf(flags.blocks);
	const nominal = lengthOfFlag("--nominal", flags.nominal, LENGTH);
	const measured = flags.measured.map((given) => lengthOfFlag("--measured", given, LENGTH));
	const resolution = lengthOfFlag("--resolution", flags.resolution, RESOLUTION);
	const sheet = sheetOf(flags.sheet);
	const problems = [blocks, nominal, ...measured, resolution, sheet].filter(isProblem);
	if (isProblem(blocks) || isProblem(nominal) || isProblem(resolution) || isProblem(sheet)) {
		reportProblems(console, problems, "");
		return EXIT.refused;
	}
	if (problems.length > 0) {
		reportProblems(console, problems, "");
		return EXIT.refused;
	}
	const lengths = measured.filter((m) => typeof m === "number");
	const found = kerfFromBlocks({ blocks, nominal, measured: lengths, resolution });
	if (isProblem(found)) {
		reportProblems(console, [found], "");
		return EXIT.refused;
	}
	console.out(report(found, { blocks, nominal, count: lengths.length, resolution, sheet }));
	return EXIT.ok;
}

/** The sheet's name as a machine's list writes it; "" if none is given. */
function sheetOf(given: string | undefined): string | Problem {
	if (given === undefined) return "";
	const sheet = parseSheet(given, "mm", MATERIAL_NAMES);
	if (sheet) return `${sheet.material} ${trimmed(sheet.thickness, 3)} mm`;
	return problem("kerf-sheet-key", ["--sheet"], { given, allowed: MATERIAL_NAMES.join(", ") });
}

function blocksOf(given: string): number | Problem {
	const blocks = /^\s*\d+\s*$/u.test(given) ? Number(given) : Number.NaN;
	if (blocks >= 1 && blocks <= MOST_BLOCKS) return blocks;
	return problem("count", ["--blocks"], { given, allowed: `a whole number, 1 to ${MOST_BLOCKS}` });
}

/** Readings' spread over this many steps of the caliper is a slip rather than scatter. */
const MOST_STEPS = 10;

/** What should be looked at before the figure is used. */
function doubts({ kerf, expanded, spread }: Kerf, blocks: number, resolution: number): string[] {
	const apart = spread * blocks;
	return [
		...(apart > MOST_STEPS * Math.max(resolution, 0.01)
			? [
					`The readings lie ${trimmed(apart, 2)} mm apart: one of them may be a slip. Measure again.`,
				]
			: []),
		...(kerf <= expanded
			? [
					"That is no more than its own uncertainty: was the coupon cut as drawn, and pushed together?",
				]
			: []),
	];
}

function report(
	found: Kerf,
	given: {
		readonly blocks: number;
		readonly nominal: number;
		readonly count: number;
		readonly resolution: number;
		readonly sheet: string;
	},
): string {
	const { kerf, standard, factor, expanded, spread } = found;
	const { blocks, nominal, count, resolution, sheet } = given;
	const readings =
		count === 1 ? "one reading" : `the mean of ${count} readings, spread ${fixed(spread, 4)} mm`;
	const caliper = `caliper steps of ${trimmed(resolution, 3)} mm`;
	const sources = count === 1 ? caliper : `${caliper} and the readings' scatter`;
	return [
		`Kerf ${fixed(kerf, 3)} ± ${fixed(expanded, 4)} mm, from ${blocks} blocks drawn ${trimmed(nominal, 3)} mm, ${readings}.`,
		wrapText(
			`The ± is the expanded uncertainty, ${factor === 2 ? "twice" : `${trimmed(factor, 2)} times`} the standard one of ${fixed(standard, 5)} mm (about 95 %), from ${sources}; the caliper's own error and burrs are not in it.`,
		),
		...doubts(found, blocks, resolution),
		"Under machine: in the job file:",
		"",
		`kerf: ${trimmed(kerf, 3)} mm`,
		"",
		...(sheet === ""
			? []
			: [
					"Or, in a machine's own file, under kerf: in its list:",
					"",
					`${sheet}: ${trimmed(kerf, 3)} mm`,
					"",
				]),
	].join("\n");
}
