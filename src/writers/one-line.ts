/**
 * A text as one line that every reader survives: line breaks and control characters become a
 * space each, halves of surrogate pairs and noncharacters U+FFFD.
 *
 * XML 1.0 allows no control characters but tab and line breaks (production 2, Char), and a
 * line break in a DXF string ends the group and lets the rest be read as records.
 *
 * @example oneLine("a\r\nb\u0000c") // "a b c"
 */
export function oneLine(text: string): string {
	return text
		.replace(/\r\n|[\p{Cc}\u2028\u2029]/gu, " ")
		.replace(/[\p{Cs}\uFFFE\uFFFF]/gu, "\uFFFD");
}
