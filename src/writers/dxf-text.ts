import { oneLine } from "./one-line.js";

/**
 * A text as DXF TEXT holds it: printable ASCII, everything else as \U+XXXX.
 *
 * What readers interpret (`\P`, `^J`, the second sign of `%%d`) is written in its full-width
 * form (Unicode block FF00), which looks alike and is taken literally even when it is
 * interpreted twice. Line breaks and control characters become a space. Four digits reach
 * U+FFFF; characters beyond become U+FFFD.
 *
 * @example dxfText("7° %%d") // "7\\U+00B0 %\\U+FF05d"
 */
export function dxfText(text: string): string {
	const literal = oneLine(text).replace(/[\\^]|(?<=%)%/g, fullWidth);
	return Array.from(literal, encoded).join("");
}

function fullWidth(character: string): string {
	return String.fromCharCode(character.charCodeAt(0) + 0xfee0);
}

function encoded(character: string): string {
	if (/^[ -~]$/.test(character)) return character;
	const code = character.codePointAt(0)!;
	const hex = (code > 0xffff ? 0xfffd : code).toString(16).toUpperCase();
	return `\\U+${hex.padStart(4, "0")}`;
}
