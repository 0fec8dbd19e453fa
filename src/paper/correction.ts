import type { Point } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { fixed, MM_PER_INCH, trimmed } from "../units/index.js";

/** A printer or a machine further off than this is a rule misread: one of 4 in taken for 100 mm is 1.6 %. */
export const FACTORS = { from: 0.988, to: 1.012 } as const;

/** A rule of 4 in over one of 100 mm (10 in over 250 mm), and how near to it is that slip. */
const RULES = (4 * MM_PER_INCH) / 100;
const NEAR = 0.001;

/** Decimals of a factor: half a unit of the last is 0.5 µm over a metre. */
const DIGITS = 6;
const ROUNDING = 0.5 * 10 ** -DIGITS;

/** Readings of a page's rules; x across and y along the feed, all mm. */
export interface PrinterReadings {
	/** Lengths of the rules that were read. */
	readonly nominal: Point;
	/** What they were read to be. */
	readonly measured: Point;
	/** Smallest step that was read. */
	readonly resolution: number;
	/** The longest part that is to be printed. */
	readonly longest: number;
}

/** What a printer makes of a millimetre in one direction, and how well that is known. */
export interface AxisCorrection {
	/** Measured over nominal, to six decimals; 1 where the reading does not tell it from 1. */
	readonly factor: number;
	/** Whether the reading tells the factor from 1. */
	readonly told: boolean;
	/** Most that the longest part may still be off once the factor is divided out, mm. */
	readonly left: number;
}

export interface PrinterCorrection {
	readonly across: AxisCorrection;
	readonly along: AxisCorrection;
}

/**
 * What a printer makes of a millimetre, from one reading in each direction, or what was misread.
 *
 * The rule's beginning is laid on a mark of the scale, its end read to the nearest step: the true
 * length lies within half a step of the reading, anywhere there alike. A part of length L, drawn
 * L/factor, is then off by at most L·(resolution/2 + rounding)/measured, where rounding is what
 * six decimals of the factor lose over the rule. A reading within half a step of nominal does not
 * tell the factor from 1, which is then given: left are L·(|measured − nominal| + resolution/2)/nominal.
 * What damp does to paper is not in it.
 *
 * Refused: a factor more than 1.2 % off 1.
 *
 * @throws RangeError unless all is finite, lengths above 0 and the resolution 0 or more
 * @example printerCorrection({ nominal: { x: 254, y: 254 }, measured: { x: 253, y: 254.5 }, resolution: 0.5, longest: 500 })
 *   // across 0.996063, left 0.494; along 1.001969, left 0.491
 */
export function printerCorrection(readings: PrinterReadings): PrinterCorrection | Problem[] {
	const { nominal, measured, resolution, longest } = readings;
	const lengths = [nominal.x, nominal.y, measured.x, measured.y, longest];
	if (!lengths.every((l) => Number.isFinite(l) && l > 0) || !(resolution >= 0 && resolution < 1e9))
		throw new RangeError("a correction needs lengths and a resolution");
	const problems = (["x", "y"] as const).flatMap((axis) => {
		const reading = `${trimmed(measured[axis], 3)} mm read of a rule of ${trimmed(nominal[axis], 3)} mm`;
		const path = [axis === "x" ? "--across" : "--along"];
		return factorProblem(measured[axis] / nominal[axis], path, reading) ?? [];
	});
	if (problems.length > 0)
		return isSwapped(readings) ? [problem("readings-swapped", ["--across"])] : problems;
	return {
		across: correction(nominal.x, measured.x, resolution, longest),
		along: correction(nominal.y, measured.y, resolution, longest),
	};
}

/** Whether each reading fits the other's rule. */
function isSwapped({ nominal, measured }: PrinterReadings): boolean {
	return isFactor(measured.x / nominal.y) && isFactor(measured.y / nominal.x);
}

/** Readings are given in decimals, their differences are not quite. */
const SLACK = 1e-9;

function correction(
	nominal: number,
	measured: number,
	resolution: number,
	longest: number,
): AxisCorrection {
	const off = Math.abs(measured - nominal);
	if (off <= resolution / 2 + SLACK) {
		return { factor: 1, told: false, left: (longest * (off + resolution / 2)) / nominal };
	}
	const factor = Number(fixed(measured / nominal, DIGITS));
	const half = resolution / 2 + ROUNDING * nominal;
	return { factor, told: true, left: (longest * half) / (factor * nominal) };
}

/**
 * Why a number cannot be what a printer makes of a millimetre; null if it can.
 *
 * @param reading - how it came about, in words; "" where the number itself was given
 */
export function factorProblem(
	factor: number,
	path: Problem["where"]["path"],
	reading = "",
): Problem | null {
	const given = reading === "" || factor >= 1e9 ? String(factor) : trimmed(factor, DIGITS);
	if (!(factor > 0)) return problem("printer-factor", path, { given });
	if (isFactor(factor)) return null;
	const slip = slipOfFactor(factor, reading !== "");
	const meant = slip === "percent" ? trimmed(factorOfPercent(factor), DIGITS) : "";
	return problem("printer-misread", path, { given, reading, slip, meant });
}

function isFactor(value: number): boolean {
	return value >= FACTORS.from && value <= FACTORS.to;
}

type Slip = "inch rule" | "metric rule" | "inches" | "percent" | "";

/** @param isRead - whether the factor comes of a reading: nobody wrote a percentage then */
function slipOfFactor(factor: number, isRead: boolean): Slip {
	const isNear = (value: number, share: number) => Math.abs(factor / value - 1) <= share;
	if (isNear(RULES, NEAR)) return "inch rule";
	if (isNear(1 / RULES, NEAR)) return "metric rule";
	if (isFactor(factor / MM_PER_INCH) || isFactor(factor * MM_PER_INCH)) return "inches";
	return isRead || Number.isNaN(factorOfPercent(factor)) ? "" : "percent";
}

/** What a percentage of nominal (99.7) or of what is too much (0.4) says; NaN if it is neither. */
function factorOfPercent(given: number): number {
	if (isFactor(given / 100)) return given / 100;
	return given >= 0.01 && given <= 0.9 ? 1 + given / 100 : Number.NaN;
}
