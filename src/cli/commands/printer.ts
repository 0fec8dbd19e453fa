import { partExtents } from "../../drawing/index.js";
import type { LengthRange } from "../../fields/index.js";
import { make } from "../../make.js";
import {
	type AxisCorrection,
	type PrinterCorrection,
	type PrinterReadings,
	printerCorrection,
} from "../../paper/index.js";
import { type Problem, placeText } from "../../problem/index.js";
import { fixed, trimmed } from "../../units/index.js";
import { type Console, EXIT, reportProblems, wrapText } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { isProblem, lengthOfFlag } from "../flag-length.js";
import { readJobFile } from "../job-file.js";

/** Flags as the command line gives them. */
export interface PrinterFlags {
	readonly nominal: string;
	readonly nominalAlong?: string;
	readonly across: string;
	readonly along: string;
	/** Left out: the step that the readings are written to. */
	readonly resolution?: string;
	readonly longest?: string;
	readonly job?: string;
}

const RULE: LengthRange = { from: 20, to: 10_000 };
const RESOLUTION: LengthRange = { from: 0, to: 2 };
const PART: LengthRange = { above: 0, to: 10_000 };

/** What the error is told for where neither a length nor a job is given, mm. */
const USUAL_LONGEST = 500;

/** With more than this left over the longest part a better reading is asked for, mm. */
const ENOUGH = 0.2;

/** A length of part, and where it comes from. */
interface Longest {
	readonly mm: number;
	readonly source: string;
}

/** `camber printer`: what the printer makes of a millimetre, from the rules of a check page. */
export async function printerCommand(
	flags: PrinterFlags,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const read = await readingsOf(flags, disk);
	const found = Array.isArray(read) ? read : printerCorrection(read.readings);
	if (Array.isArray(read) || Array.isArray(found)) {
		const problems = Array.isArray(found) ? found : [];
		reportProblems(console, problems, flags.job ?? "", placeOf, false);
		return EXIT.refused;
	}
	console.out(report(found, read.readings, read.longest));
	return EXIT.ok;
}

/** A flag's problem stands at the flag, a job's in its file. */
function placeOf(p: Problem, file: string): string {
	const [first] = p.where.path;
	return placeText(p, String(first).startsWith("--") ? "" : file);
}

async function readingsOf(
	flags: PrinterFlags,
	disk: Disk,
): Promise<{ readings: PrinterReadings; longest: Longest } | Problem[]> {
	const nominal = lengthOfFlag("--nominal", flags.nominal, RULE);
	const { nominalAlong } = flags;
	const second =
		nominalAlong === undefined ? nominal : lengthOfFlag("--nominal-along", nominalAlong, RULE);
	const across = lengthOfFlag("--across", flags.across, RULE);
	const along = lengthOfFlag("--along", flags.along, RULE);
	const resolution =
		flags.resolution === undefined
			? stepOf([across, along].filter((read) => typeof read === "number"))
			: lengthOfFlag("--resolution", flags.resolution, RESOLUTION);
	const longest = await longestOf(flags, disk);
	if (
		isProblem(nominal) ||
		isProblem(second) ||
		isProblem(across) ||
		isProblem(along) ||
		isProblem(resolution) ||
		Array.isArray(longest)
	) {
		const all = [nominal, second, across, along, resolution].filter(isProblem);
		return [...new Set(all), ...(Array.isArray(longest) ? longest : [])];
	}
	const readings = {
		nominal: { x: nominal, y: second },
		measured: { x: across, y: along },
		resolution,
		longest: longest.mm,
	};
	return { readings, longest };
}

/** The step that readings are written to: half millimetres, tenths or hundredths. */
function stepOf(readings: readonly number[]): number {
	const isOn = (step: number) =>
		readings.every((mm) => Math.abs(mm / step - Math.round(mm / step)) < 1e-6);
	return WRITTEN_STEPS.find(isOn) ?? WRITTEN_STEPS.at(-1)!;
}

/** Steps that a reading may be written to, mm. */
const WRITTEN_STEPS = [0.5, 0.1, 0.01] as const;

/** The length that the error is told for: a flag's, that of the job's longest part, or a usual one. */
async function longestOf(flags: PrinterFlags, disk: Disk): Promise<Longest | Problem[]> {
	if (flags.longest !== undefined) {
		const mm = lengthOfFlag("--longest", flags.longest, PART);
		return isProblem(mm) ? [mm] : { mm, source: "" };
	}
	if (flags.job === undefined) {
		return { mm: USUAL_LONGEST, source: "taken here; --longest or --job says another" };
	}
	const file = await readJobFile(flags.job, disk);
	if ("code" in file) return [file];
	const made = await make(file.text, { load: file.load, sheets: false, proof: false });
	if (!made.ok) return [...made.problems];
	const parts = made.tools.flatMap((tool) => tool.parts);
	const sizes = parts.map((part) => {
		const { minX, maxX, minY, maxY } = partExtents(part);
		return { mm: Math.max(maxX - minX, maxY - minY), source: part.name };
	});
	return sizes.reduce((a, b) => (b.mm > a.mm ? b : a));
}

function report(found: PrinterCorrection, readings: PrinterReadings, longest: Longest): string {
	const { across, along } = found;
	const { nominal, measured } = readings;
	return [
		`Across the feed a millimetre ${axisText(across, nominal.x, measured.x)}.`,
		`Along the feed a millimetre ${axisText(along, nominal.y, measured.y)}.`,
		...(across.told || along.told
			? [
					"In the job file:",
					"",
					"printer:",
					`  across: ${trimmed(across.factor, 6)}`,
					`  along: ${trimmed(along.factor, 6)}`,
					"",
				]
			: [
					"No correction is needed that these readings could tell: leave across and along out of printer:.",
				]),
		...leftLines(found, readings, longest).map((line) => wrapText(line)),
		"",
	].join("\n");
}

function axisText({ factor, told }: AxisCorrection, nominal: number, measured: number): string {
	const reading = `${trimmed(measured, 3)} mm read of ${trimmed(nominal, 3)} mm`;
	if (!told) return `stays one as far as the reading tells (${reading})`;
	return `becomes ${trimmed(factor, 6)} mm (${reading})`;
}

/** What is left over the longest part, what it comes from, and how it would be less. */
function leftLines(
	{ across, along }: PrinterCorrection,
	readings: PrinterReadings,
	{ mm, source }: Longest,
): string[] {
	const { resolution } = readings;
	const part = `${trimmed(mm, 2)} mm${source === "" ? "" : ` (${source})`}`;
	const left = `${upToHundredth(across.left)} mm across, ${upToHundredth(along.left)} mm along`;
	return [
		`Left over the longest part, ${part}: at most ${left}.`,
		`That is from a reading to ${trimmed(resolution, 3)} mm, good to half of it; how damp stretches paper is not in it.`,
		...hint(readings, Math.max(across.left, along.left)),
	];
}

/** A bound rounds up. */
function upToHundredth(mm: number): string {
	return fixed(Math.ceil(mm * 100 - 1e-6) / 100, 2);
}

/** Steps of rules and calipers, mm. */
const STEPS = [1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

/** Readings that leave enough, where these do not. */
function hint(readings: PrinterReadings, left: number): string[] {
	if (left <= ENOUGH) return [];
	const { measured, resolution, longest } = readings;
	// A printer may be short by 1.2 %, and the factor's decimals take a little: 2 % to spare.
	const rule = 10 * Math.ceil((longest * resolution) / (2 * 0.98 * ENOUGH) / 10);
	const isLonger = rule > Math.min(measured.x, measured.y);
	const step = STEPS.find((s) => s < resolution && leftAt(s, readings) <= ENOUGH);
	const ways = [
		...(step === undefined ? [] : [`these rules to ${step} mm`]),
		...(isLonger ? [`rules of ${rule} mm or more, if you have paper for them`] : []),
	];
	return ways.length === 0 ? [] : [`To get to ${ENOUGH} mm or less, read ${ways.join(", or ")}.`];
}

function leftAt(resolution: number, readings: PrinterReadings): number {
	const found = printerCorrection({ ...readings, resolution });
	return Array.isArray(found) ? Number.NaN : Math.max(found.across.left, found.along.left);
}
