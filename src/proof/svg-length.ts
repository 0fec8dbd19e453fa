import { MM_PER_INCH } from "../units/index.js";

/** Millimetres of a CSS pixel, 96 to the inch (CSS Values 3, 6.2): what one unit is by itself. */
export const MM_PER_PX = MM_PER_INCH / 96;

const MM_PER: Readonly<Record<string, number>> = {
	"": MM_PER_PX,
	px: MM_PER_PX,
	mm: 1,
	cm: 10,
	q: 0.25,
	in: MM_PER_INCH,
	pt: MM_PER_INCH / 72,
	pc: MM_PER_INCH / 6,
};

const LENGTH = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(mm|cm|q|in|px|pt|pc|)\s*$/iu;

/** An SVG length in millimetres; NaN for a share of something and for what is no length. */
export function svgLength(text: string): number {
	const match = LENGTH.exec(text);
	return match ? Number(match[1]) * MM_PER[match[2]!.toLowerCase()]! : Number.NaN;
}

/** An SVG length in the units of its drawing. */
export function svgUnits(text: string): number {
	const match = LENGTH.exec(text);
	if (!match) return Number.NaN;
	return match[2] === "" ? Number(match[1]) : svgLength(text) / MM_PER_PX;
}
