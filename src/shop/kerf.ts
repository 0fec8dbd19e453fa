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
	/** Expanded uncertainty: twice the standard one, about 95 %. */
	readonly expanded: number;
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
 * where resolution/(√12·N) is left. The caliper's own error is not in it.
 *
 * Refused: a reading that leaves no kerf, or one of more than half a block.
 *
 * @throws RangeError unless there are readings, all finite, a whole number of blocks from 1, a
 *   nominal length above 0 and a resolution of 0 or more
 * @example kerfFromBlocks({ blocks: 10, nominal: 100, measured: [98.42], resolution: 0.02 })
 *   // kerf 0.158, standard 0.000577, expanded 0.00115, spread 0
 */
export function kerfFromBlocks(readings: BlockReadings): Kerf | Problem {
	const { blocks, nominal, measured, resolution } = readings;
	checkReadings(readings);
	const kerfs = measured.map((length) => (nominal - length) / blocks);
	const most = nominal / blocks / 2;
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
	return {
		kerf,
		standard,
		expanded: 2 * standard,
		spread: Math.max(...kerfs) - Math.min(...kerfs),
	};
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
