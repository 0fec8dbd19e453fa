import { fixed } from "../units/index.js";

/** One or more groups of a DXF file as text: code and value on lines of their own, CRLF. */
export type Tag = string;

function group(code: number, value: string): Tag {
	return `${code}\r\n${value}\r\n`;
}

/** Decimals of lengths and angles: a millionth of the micrometre that is promised. */
const DECIMALS = 9;
/** A bulge has no unit and works through the chord: as many as a double holds. */
const BULGE_DECIMALS = 15;

/** @throws RangeError on anything but printable ASCII: nothing may end the group early */
export function tag(code: number, value: string): Tag {
	if (!/^[ -~]*$/.test(value)) throw new RangeError(`not printable ASCII: ${value}`);
	return group(code, value);
}

/** @throws RangeError on NaN and infinities */
export function real(code: number, value: number): Tag {
	return group(code, fixed(value, DECIMALS));
}

export function bulge(value: number): Tag {
	return group(42, fixed(value, BULGE_DECIMALS));
}

/** A flag, count or index. */
export function whole(code: number, value: number): Tag {
	return group(code, fixed(value, 0));
}

/** x, y and, from two codes given, z = 0: codes are `first`, first + 10, first + 20. */
export function point(first: number, x: number, y: number, z: 0 | 1 | null = 0): Tag[] {
	const plane = [real(first, x), real(first + 10, y)];
	return z === null ? plane : [...plane, real(first + 20, z)];
}

/** An angle in degrees from radians, from 0 to under 360. */
export function degrees(code: number, angle: number): Tag {
	const turned = ((angle * 180) / Math.PI) % 360;
	const text = fixed(turned < 0 ? turned + 360 : turned, DECIMALS);
	return group(code, text === fixed(360, DECIMALS) ? fixed(0, DECIMALS) : text);
}

/** A section with its ends. */
export function section(name: string, tags: readonly Tag[]): Tag[] {
	return [tag(0, "SECTION"), tag(2, name), ...tags, tag(0, "ENDSEC")];
}

/** The file's text. */
export function textOf(tags: readonly Tag[]): string {
	return tags.join("");
}
