import { arcSagitta } from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { MM_PER_INCH } from "../units/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import { type ReadingPath, reach95, stepSd } from "./radius-estimate.js";

/** Radii that boards are usually made to, inches (common practice, no source). */
export const USUAL_RADII_IN: readonly number[] = [7.25, 9.5, 10, 12, 14, 16, 20];

/** What tells two radii apart by their sagittas over a chord, mm. */
export interface Separation {
	/** Between the sagittas. */
	readonly difference: number;
	/** Coarsest step whose 95 % reach fits twice into the difference. */
	readonly resolution: number;
}

/**
 * How finely sagittas over a chord must be read to tell two radii apart by twice their uncertainty:
 * the 95 % reach of a reading to a step r is 1.96·r/√12.
 *
 * @throws RangeError if the chord does not fit the smaller radius
 * @example separation(254, 304.8, 50) // difference 0.2064, resolution 0.1824
 */
export function separation(one: number, other: number, chord: number): Separation {
	const difference = Math.abs(arcSagitta(one, chord) - arcSagitta(other, chord));
	return { difference, resolution: difference / (2 * reach95() * stepSd(1)) };
}

/**
 * What a radius says of the usual ones: the one that its interval holds, or two that it cannot
 * tell apart, with the reading that would. Information alone: nothing is moved to a usual radius.
 *
 * @param chord - longest chord that was read, mm
 */
export function usualRadiiNotes(radius: Estimate, chord: number, path: ReadingPath): Problem[] {
	const held = USUAL_RADII_IN.filter(
		(r) => r * MM_PER_INCH >= radius.low && r * MM_PER_INCH <= radius.high,
	);
	const [nearest, second] = held
		.map((r) => ({ r, off: Math.abs(1 / (r * MM_PER_INCH) - 1 / radius.value) }))
		.sort((a, b) => a.off - b.off)
		.map(({ r }) => r);
	if (nearest === undefined) return [];
	if (second === undefined) {
		const off = nearest * MM_PER_INCH - radius.value;
		return [note("usual-radius", path, { usual: nearest, off, radius: radius.value })];
	}
	const [tight, flat] = [Math.min(nearest, second), Math.max(nearest, second)];
	const { difference, resolution } = separation(tight * MM_PER_INCH, flat * MM_PER_INCH, chord);
	const facts = { held: held.map(String), tight, flat, chord, difference, resolution };
	return [note("usual-radii-untold", path, facts)];
}
