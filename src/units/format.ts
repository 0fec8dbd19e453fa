/** Millimetres in one international inch (exact by definition, 1959). */
export const MM_PER_INCH = 25.4;

/**
 * Decimal text of a number: fixed digits, no exponent, no negative zero.
 *
 * The only place in the project where a number is rounded.
 *
 * @param value - finite, |value| < 1e15
 * @param digits - 0 to 15
 * @throws RangeError on NaN, infinities and values that would print an exponent
 * @example fixed(-0.0000001, 6) // "0.000000"
 */
export function fixed(value: number, digits: number): string {
	if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`);
	if (Math.abs(value) >= 1e15) throw new RangeError(`too large to write: ${value}`);
	const text = value.toFixed(digits);
	if (value > 0 || !text.startsWith("-")) return text;
	return Number(text) === 0 ? text.slice(1) : text;
}

/**
 * As `fixed`, without trailing zeros.
 *
 * @example trimmed(40.5, 3) // "40.5"
 */
export function trimmed(value: number, digits: number): string {
	const text = fixed(value, digits);
	return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** A number as manifests and reports hold it: at most nine decimals, equal on every engine. */
export function stable(value: number): number {
	return Number(fixed(value, 9));
}

/** A length in decimal inch, four digits. `inches(25.4)` is `"1.0000"`. */
export function inches(mm: number, digits = 4): string {
	return fixed(mm / MM_PER_INCH, digits);
}

/** Nearest 1/64 in of a length and what it is off by, in mm (fraction − length). */
export interface SixtyFourth {
	readonly text: string;
	readonly error: number;
}

/**
 * Nearest 1/64 in, reduced: 41.275 mm is "1 5/8".
 *
 * @param mm - any finite length
 * @throws RangeError on NaN and infinities
 * @example sixtyFourth(36.3526) // { text: "1 7/16", error: 0.1599 }
 */
export function sixtyFourth(mm: number): SixtyFourth {
	if (!Number.isFinite(mm)) throw new RangeError(`not a finite number: ${mm}`);
	const units = Math.round((mm / MM_PER_INCH) * 64);
	const error = (units / 64) * MM_PER_INCH - mm;
	const sign = units < 0 ? "-" : "";
	const size = Math.abs(units);
	const whole = Math.floor(size / 64);
	let top = size % 64;
	let bottom = 64;
	while (top > 0 && top % 2 === 0) {
		top /= 2;
		bottom /= 2;
	}
	const fraction = top === 0 ? "" : `${top}/${bottom}`;
	const text = [whole > 0 || top === 0 ? String(whole) : "", fraction].filter(Boolean).join(" ");
	return { text: sign + text, error };
}

/** A usual inch size as people write it ("7 1/4 in", "10 in"), else decimal ("9.873 in"). */
export function inchLabel(mm: number): string {
	const near = sixtyFourth(mm);
	return Math.abs(near.error) < 1e-6 ? `${near.text} in` : `${trimmed(mm / MM_PER_INCH, 3)} in`;
}
