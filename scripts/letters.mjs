// Writes src/lettering/data/readability.ts from the single-stroke SVG font EMS Readability
// (package hersheytext). Run again after a change here; a test compares the committed bytes.
//   node scripts/letters.mjs           write the module
//   node scripts/letters.mjs --print   print it instead
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { XMLParser } from "fast-xml-parser";

const SOURCE = "hersheytext/svg_fonts/EMSReadability.svg";
const TARGET = new URL("../src/lettering/data/readability.ts", import.meta.url);

/** Whole numbers of 1/100 font unit hold the lines of the source exactly. */
const PER_UNIT = 100;

/**
 * Signs whose ink ends far beyond the advance that the source gives them, so that the next sign
 * would stand in it ("½" and "\""). They get BEARING on both sides instead.
 */
const RESPACED = "¢¦ª°²³¹º¼½¾";
/** As "(", ")" and "+" have it, font units. */
const BEARING = 60;

/**
 * Signs that the source lacks (− ‘ ’), made of strokes of its "+", “ and ”; and ±, whose bar the
 * source sets beside its cross: a cross of the width of "+" over a bar of the same width.
 */
const OWN = {
	"±": { advance: 501, d: "M 249 600 L 249 200 M 56.7 400 L 450 400 M 56.7 60 L 450 60" },
	"−": { advance: 501, d: "M 56.7 340 L 450 340" },
	"‘": { advance: 185, d: "M 128 695 L 169 584" },
	"’": { advance: 185, d: "M 126 695 L 85 584" },
};

/** All glyphs of the font: sign, advance, strokes of points `[x, y]` or `[x1, y1, x2, y2, x, y]`. */
function glyphsOf(svg) {
	const parser = new XMLParser({
		ignoreAttributes: false,
		attributeNamePrefix: "",
		trimValues: false,
		htmlEntities: true,
	});
	const { font } = parser.parse(svg).svg.defs;
	const read = font.glyph.map((g) => ({
		sign: g.unicode,
		advance: Number(g["horiz-adv-x"] ?? font["horiz-adv-x"]),
		strokes: strokesOf(g.d ?? ""),
	}));
	const own = Object.entries(OWN).map(([sign, { advance, d }]) => ({
		sign,
		advance,
		strokes: strokesOf(d),
	}));
	return [...read.filter((g) => !(g.sign in OWN)).map(respaced), ...own];
}

/** Path data of absolute M, L and C, one pair or triple of pairs per letter: all that the font uses. */
function strokesOf(d) {
	const strokes = [];
	for (const [, letter, rest] of d.matchAll(/([a-z])([^a-z]*)/gi)) {
		const numbers = rest
			.trim()
			.split(/[\s,]+/)
			.map(Number);
		const wanted = { M: 2, L: 2, C: 6 }[letter];
		if (numbers.length !== wanted || !numbers.every(Number.isFinite)) {
			throw new Error(`path data not understood: ${letter}${rest}`);
		}
		if (letter === "M") strokes.push([]);
		strokes.at(-1).push(numbers);
	}
	return strokes;
}

function respaced(glyph) {
	if (!RESPACED.includes(glyph.sign)) return glyph;
	const xs = glyph.strokes.flat().flatMap((p) => p.filter((_, i) => i % 2 === 0));
	const left = Math.min(...xs);
	const shift = (p) => p.map((v, i) => (i % 2 === 0 ? v - left + BEARING : v));
	return {
		...glyph,
		advance: Math.max(...xs) - left + 2 * BEARING,
		strokes: glyph.strokes.map((s) => s.map(shift)),
	};
}

/** Whole numbers, y from the foot of H. */
function whole(strokes, foot) {
	return strokes.map((s) =>
		s.map((p) => p.map((v, i) => Math.round((i % 2 === 0 ? v : v - foot) * PER_UNIT))),
	);
}

/**
 * The same ink with every line drawn once: the source retraces lines instead of lifting the
 * pen, which an engraver burns twice. Only exact retracing is found; whole numbers decide it.
 */
function drawnOnce(strokes) {
	const done = [];
	const result = [];
	for (const points of strokes) {
		let stroke = [points[0]];
		const lift = (at) => {
			if (stroke.length > 1) result.push(stroke);
			stroke = [at];
		};
		for (let i = 1; i < points.length; i++) {
			const from = points[i - 1].slice(-2);
			const to = points[i];
			if (to.length > 2) {
				stroke.push(to);
				continue;
			}
			for (const [a, b] of undrawn(from, to, done)) {
				if (!same(stroke.at(-1).slice(-2), a)) lift(a);
				stroke.push(b);
			}
			if (!same(stroke.at(-1).slice(-2), to)) lift(to);
			done.push([from, to]);
		}
		lift();
	}
	return result;
}

/** The pieces of a line that lie on none of the lines done, in order. */
function undrawn(from, to, done) {
	let pieces = same(from, to) ? [] : [[from, to]];
	for (const [a, b] of done) {
		pieces = pieces.flatMap(([p, q]) => {
			if (cross(p, q, a) !== 0 || cross(p, q, b) !== 0 || same(a, b)) return [[p, q]];
			const [near, far] = along(p, q, a) < along(p, q, b) ? [a, b] : [b, a];
			const size = along(p, q, q);
			if (along(p, q, far) <= 0 || along(p, q, near) >= size) return [[p, q]];
			return [
				...(along(p, q, near) > 0 ? [[p, near]] : []),
				...(along(p, q, far) < size ? [[far, q]] : []),
			];
		});
	}
	return pieces;
}

function same(a, b) {
	return a[0] === b[0] && a[1] === b[1];
}

function cross(p, q, a) {
	return (q[0] - p[0]) * (a[1] - p[1]) - (q[1] - p[1]) * (a[0] - p[0]);
}

function along(p, q, a) {
	return (q[0] - p[0]) * (a[0] - p[0]) + (q[1] - p[1]) * (a[1] - p[1]);
}

/** Foot and head of the capital H in font units. */
function capital(glyphs) {
	const ys = glyphs.find((g) => g.sign === "H").strokes.flatMap((s) => s.map((p) => p.at(-1)));
	return { foot: Math.min(...ys), head: Math.max(...ys) };
}

function moduleOf(svg) {
	const glyphs = glyphsOf(svg);
	const { foot, head } = capital(glyphs);
	const entries = glyphs
		.sort((a, b) => a.sign.codePointAt(0) - b.sign.codePointAt(0))
		.map(({ sign, advance, strokes }) => {
			const drawn = drawnOnce(whole(strokes, foot)).map((s) => s.map(String).join(" "));
			const text = [Math.round(advance * PER_UNIT), ...drawn].join("|");
			return `\t${JSON.stringify(sign)}: ${JSON.stringify(text)},`;
		});
	return `${HEADER}
/** Height of the capital H in the units below, hundredths of a font unit. */
export const CAPITAL = ${Math.round((head - foot) * PER_UNIT)};

/**
 * Per sign: advance, then its strokes, each after a bar. A stroke is a row of points \`x,y\` from
 * the foot of H, y up, joined by lines; \`x1,y1,x2,y2,x,y\` is reached by a cubic Bézier curve.
 */
export const GLYPHS: Readonly<Record<string, string>> = {
${entries.join("\n")}
};
`;
}

const HEADER = `/*!
 * @license OFL-1.1
 * Generated by scripts/letters.mjs from the single-stroke font EMS Readability; do not edit.
 *
 * EMS Readability was created by Sheldon B. Michaels and converted to SVG by Windell H. Oskay. It
 * derives from Source Sans Pro Light, designed by Paul D. Hunt: Copyright 2010 - 2018 Adobe Systems
 * Incorporated (http://www.adobe.com/), with Reserved Font Name 'Source'.
 * This data is licensed under the SIL Open Font License, Version 1.1, whose text stands in NOTICE.md.
 *
 * Changed from the original: another format; lines that were drawn twice are drawn once;
 * ${RESPACED} spaced anew; ± drawn anew; − ‘ ’ added.
 */`;

const text = moduleOf(readFileSync(createRequire(import.meta.url).resolve(SOURCE), "utf8"));
if (process.argv.includes("--print")) process.stdout.write(text);
else writeFileSync(TARGET, text);
