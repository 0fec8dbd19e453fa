import { type Problem, problem } from "../problem/index.js";

/** Readings over blocks that were cut apart and pushed together. */
export interface BlockReadings {
	/** Number of blocks, a whole number from 1. */
	readonly blocks: number;
	/** Their whole length as drawn, mm. */
	readonly nominal: number;
	/** Their whole length as measured, mm; one reading or several. */
	readonly measured: readonly number[];
	/** Smallest step that the caliper shows, mm. */
	readonly resolution: number;
}

/** A measured width of cut, mm. */
export interface Kerf {
	readonly kerf: number;
	/** Standard uncertainty (one standard deviation). */
	readonly standard: number;
	/** Expanded uncertainty, about 95 %: the standard one times `factor`. */
	readonly expanded: number;
	/** Coverage factor: 2 of a caliper's step alone, more where few readings tell the scatter. */
	readonly factor: number;
	/** Largest kerf of a single reading less the smallest; 0 of one reading. */
	readonly spread: number;
}

/**
 * The width of the cut from blocks that shared their cuts, or why it cannot be.
 *
 * Each block loses half a kerf on either side, so kerf = (nominal − measured)/N, of several
 * readings their mean. Standard uncertainty: √(resolution²/12 + s²/n)/N. The first term is the
 * caliper's step as a rectangular distribution (JCGM 100:2008, F.2.2.1), which more readings do
 * not lessen; the second the scatter of the mean of n readings (4.2.3), none for one reading,
 * where resolution/(√12·N) is left. The caliper's own error is not in it. Few readings tell their
 * own scatter badly: the coverage factor is Student's t for the effective degrees of freedom
 * (Welch-Satterthwaite, JCGM 100:2008, G.4.1), and never below 2.
 *
 * Refused: a reading that leaves no kerf, or one of more than half a block or of more than 2 mm.
 *
 * @throws RangeError unless there are readings, all finite, a whole number of blocks from 1, a
 *   nominal length above 0 and a resolution of 0 or more
 * @example kerfFromBlocks({ blocks: 10, nominal: 100, measured: [98.42], resolution: 0.02 })
 *   // kerf 0.158, standard 0.000577, factor 2, expanded 0.00115, spread 0
 */
export function kerfFromBlocks(readings: BlockReadings): Kerf | Problem {
	const { blocks, nominal, measured, resolution } = readings;
	checkReadings(readings);
	const kerfs = measured.map((length) => (nominal - length) / blocks);
	const most = Math.min(MOST_KERF, nominal / blocks / 2);
	for (const [i, kerf] of kerfs.entries()) {
		const facts = { blocks, nominal, measured: measured[i]!, kerf, most };
		if (!(kerf > 0)) return problem("no-kerf", ["--measured"], facts);
		if (kerf > most) return problem("kerf-too-wide", ["--measured"], facts);
	}
	const n = kerfs.length;
	const kerf = kerfs.reduce((a, b) => a + b) / n;
	const squares = kerfs.reduce((sum, k) => sum + (k - kerf) ** 2, 0);
	const scatter = n > 1 ? squares / (n - 1) / n : 0;
	const standard = Math.sqrt(resolution ** 2 / 12 / blocks ** 2 + scatter);
	const effective =
		scatter > 0 ? ((n - 1) * standard ** 4) / scatter ** 2 : Number.POSITIVE_INFINITY;
	const factor = coverage(effective);
	return {
		kerf,
		standard,
		factor,
		expanded: factor * standard,
		spread: Math.max(...kerfs) - Math.min(...kerfs),
	};
}

/** Widest cut that a job takes, mm. */
export const MOST_KERF = 2;

/** Student's t for a level of confidence of 95 % by degrees of freedom (JCGM 100:2008, table G.2, from memory). */
const STUDENT: readonly (readonly [number, number])[] = [
	[1, 12.71],
	[2, 4.3],
	[3, 3.18],
	[4, 2.78],
	[5, 2.57],
	[6, 2.45],
	[7, 2.36],
	[8, 2.31],
	[9, 2.26],
	[10, 2.23],
	[15, 2.13],
	[20, 2.09],
	[30, 2.04],
];

/** The coverage factor for about 95 %; between the table's entries that of the fewer degrees. */
function coverage(degrees: number): number {
	const entries = STUDENT.filter(([least]) => least <= degrees);
	if (degrees > 50) return 2;
	return (entries.at(-1) ?? STUDENT[0]!)[1];
}

function checkReadings({ blocks, nominal, measured, resolution }: BlockReadings): void {
	const sound =
		Number.isInteger(blocks) &&
		blocks >= 1 &&
		measured.length > 0 &&
		[nominal, resolution, ...measured].every(Number.isFinite) &&
		nominal > 0 &&
		resolution >= 0;
	if (!sound) throw new RangeError("a kerf needs blocks, lengths and a resolution");
}
