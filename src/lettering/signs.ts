/**
 * Signs that a font may lack and what is drawn in their place: only such as look the same.
 * Primes and straight quotation marks are both plain ticks; the two hyphens differ in line
 * breaking alone. All others (“ ” ‘ ’ – — −) are signs of their own and are drawn or missing.
 */
export const STAND_INS: Readonly<Record<string, string>> = {
	"″": '"',
	"′": "'",
	"\u2010": "-",
	"\u2011": "-",
};

/** Control and format characters have no shape, whatever a font says. */
const SHAPELESS = /^[\p{Cc}\p{Cf}]$/u;

/** The characters of a text, one per sign: accents are joined to their letters (NFC). */
export function characters(text: string): string[] {
	return [...text.normalize("NFC")];
}

/** The sign that a font draws for a character, or null if it has none. */
export function drawnSign(character: string, has: (sign: string) => boolean): string | null {
	if (SHAPELESS.test(character)) return null;
	if (has(character)) return character;
	const standIn = STAND_INS[character];
	return standIn !== undefined && has(standIn) ? standIn : null;
}

/** A character as a message shows it: `"→" (U+2192)`. */
export function named(character: string): string {
	const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0");
	return SHAPELESS.test(character) ? `U+${code}` : `"${character}" (U+${code})`;
}
