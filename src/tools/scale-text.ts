import { isFanned, type Neck } from "../neck/index.js";
import { inchLabel, MM_PER_INCH, sixtyFourth, trimmed } from "../units/index.js";

/**
 * A scale length as people name it: in inch where it is a usual fraction or has two decimals at
 * most, else in mm.
 *
 * @example lengthName(647.7) // "25 1/2 in"
 * @example lengthName(650) // "650 mm"
 */
export function lengthName(mm: number): string {
	const hundredths = (mm / MM_PER_INCH) * 100;
	const plain = Math.abs(hundredths - Math.round(hundredths)) < 1e-6;
	const usual = plain || Math.abs(sixtyFourth(mm).error) < 1e-6;
	return usual ? inchLabel(mm) : `${trimmed(mm, 2)} mm`;
}

/** A neck's scale length, or both of a fanned one, bass first. */
export function scaleText(neck: Neck): string {
	const { bass, treble } = neck.scale;
	return isFanned(neck) ? `${lengthName(bass)} / ${lengthName(treble)}` : lengthName(bass);
}
