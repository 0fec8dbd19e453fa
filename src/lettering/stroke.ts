import { type Path, type Point, type Vertex, vertex } from "../geometry/index.js";
import { arcsAlong, CURVE_TOLERANCE } from "./curve.js";
import { CAPITAL, GLYPHS } from "./data/readability.js";
import { letteringOf } from "./face.js";
import type { Lettering } from "./lettering.js";

/** A sign of the data: its advance and its strokes as lists of numbers, in font units. */
interface Glyph {
	readonly advance: number;
	/** Per stroke its points: `x y` after a line, `x1 y1 x2 y2 x y` after a cubic curve. */
	readonly strokes: readonly (readonly (readonly number[])[])[];
}

/**
 * Single-stroke lettering for engraving: open paths, nearly all of them of straight lines.
 *
 * 190 signs: ASCII, western accented letters, ½ ¼ ¾ ° Ø ± × − ‘ ’ “ ” – — and more. No kerning.
 * The data and their licence: data/readability.ts, NOTICE.md.
 *
 * @example strokeLettering().width("H", 5) // 5.3024…
 */
export function strokeLettering(): Lettering {
	const decoded = new Map<string, Glyph>();
	function glyph(sign: string): Glyph {
		const known = decoded.get(sign);
		if (known) return known;
		const read = glyphOf(GLYPHS[sign]!);
		decoded.set(sign, read);
		return read;
	}
	return letteringOf({
		name: "stroke",
		has: (sign) => Object.hasOwn(GLYPHS, sign),
		advance: (sign) => glyph(sign).advance / CAPITAL,
		kerning: () => 0,
		drawn: (sign, height) => glyph(sign).strokes.map((stroke) => strokeOf(stroke, height)),
	});
}

function glyphOf(text: string): Glyph {
	const [advance, ...strokes] = text.split("|");
	return {
		advance: Number(advance),
		strokes: strokes.map((stroke) => stroke.split(" ").map((p) => p.split(",").map(Number))),
	};
}

function strokeOf(stroke: readonly (readonly number[])[], height: number): Path {
	const points: Vertex[] = [];
	let from: Point | undefined;
	for (const numbers of stroke) {
		const [a, b, to] = pairs(numbers, height);
		if (from) {
			if (to) points.push(...arcsAlong([from, a!, b!, to], CURVE_TOLERANCE));
			else points.push(vertex(from.x, from.y));
		}
		from = to ?? a!;
	}
	points.push(vertex(from!.x, from!.y));
	return { points, closed: false };
}

function pairs(numbers: readonly number[], height: number): Point[] {
	const result: Point[] = [];
	for (let i = 0; i < numbers.length; i += 2) {
		// multiplied first, so that capitals come out at exactly the height
		result.push({ x: (numbers[i]! * height) / CAPITAL, y: (numbers[i + 1]! * height) / CAPITAL });
	}
	return result;
}
