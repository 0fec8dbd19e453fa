import { readFileSync } from "node:fs";
import { Resvg } from "@resvg/resvg-js";
import opentype from "opentype.js";
import { beforeAll, describe, expect, it } from "vitest";
import {
	around,
	contains,
	extents,
	type Path,
	type Point,
	segments,
	signedArea,
	windingNumber,
} from "../../src/geometry/index.js";
import { type Lettering, loadLettering, outlineLettering } from "../../src/lettering/index.js";
import { cubicFont } from "./cubic-font.js";
import { distanceToPaths } from "./distance.js";

const FILE =
	"node_modules/@expo-google-fonts/barlow-condensed/500Medium/BarlowCondensed_500Medium.ttf";
const bytes = readFileSync(FILE);
const font = opentype.parse(new Uint8Array(bytes).buffer);
/** Height of the font's H, font units. */
const CAPITAL = 700;

let letters: Lettering;
beforeAll(async () => {
	letters = await outlineLettering(bytes, "barlow-condensed");
});

/** Points on the true outline of a sign, mm, by the Bernstein form. */
function truePoints(sign: string, height: number, count: number): Point[] {
	const k = height / CAPITAL;
	const result: Point[] = [];
	let pen: Point = { x: 0, y: 0 };
	for (const c of font.charToGlyph(sign).path.commands) {
		if (c.type === "Z") continue;
		const to = { x: c.x, y: c.y };
		for (let i = 0; i <= count && c.type !== "M"; i++) {
			const t = i / count;
			const s = 1 - t;
			const weigh = (a: number, b: number, e: number) =>
				c.type === "Q" ? s * s * a + 2 * s * t * b + t * t * e : s * a + t * e;
			const [x1, y1] = c.type === "Q" ? [c.x1, c.y1] : [0, 0];
			result.push({ x: weigh(pen.x, x1, to.x) * k, y: weigh(pen.y, y1, to.y) * k });
		}
		pen = to;
	}
	return result;
}

describe("outlineLettering", () => {
	it("draws closed contours, outer ones counter-clockwise, the hole of O clockwise", () => {
		const [outer, hole, ...more] = letters
			.paths("O", 10)
			.sort((a, b) => signedArea(b) - signedArea(a));
		expect(more).toEqual([]);
		expect(outer!.closed && hole!.closed).toBe(true);
		expect(signedArea(outer!)).toBeGreaterThan(20);
		expect(signedArea(hole!)).toBeLessThan(-10);
		expect(contains(outer!, hole!.points[0]!)).toBe(true);
		expect(letters.paths("B8%", 10).filter((p) => signedArea(p) < 0)).toHaveLength(6);
	});

	it("leaves material on the left of every contour of the printable signs", () => {
		for (const sign of printable("½¼¾°Ø±×é")) {
			const paths = letters.paths(sign, 10);
			expect(paths.length).toBeGreaterThan(0);
			const total = paths.reduce((sum, path) => sum + signedArea(path), 0);
			expect(total).toBeGreaterThan(0);
			expect(Math.max(...paths.map(signedArea))).toBe(
				Math.max(...paths.map((p) => Math.abs(signedArea(p)))),
			);
		}
	});

	it("stays within 0.5 µm of the font's own curves at any height", () => {
		for (const height of [2.5, 10, 40]) {
			let worst = 0;
			for (const sign of "OSae38g&@½°R") {
				const toPaths = distanceToPaths(letters.paths(sign, height));
				for (const p of truePoints(sign, height, 24)) {
					worst = Math.max(worst, toPaths(p));
				}
			}
			expect(worst).toBeGreaterThan(0);
			expect(worst).toBeLessThan(0.00051);
		}
	});

	it("makes the capital H exactly as high as asked, on the baseline", () => {
		for (const height of [1.8, 2.5, 5, 10]) {
			const box = around(letters.paths("H", height).map(extents));
			expect(box.minY).toBeCloseTo(0, 12);
			expect(box.maxY).toBeCloseTo(height, 12);
		}
		expect(font.tables.os2?.sCapHeight).toBe(CAPITAL);
	});

	it("takes advances and kerning from the font", () => {
		const unit = 10 / CAPITAL;
		const alone = letters.width("A", 10) + letters.width("V", 10);
		expect(alone).toBeCloseTo(893 * unit, 10);
		expect(letters.width("AV", 10)).toBeCloseTo(830 * unit, 10);
		const second = around(letters.paths("AV", 10).slice(2).map(extents));
		const plain = around(letters.paths("V", 10).map(extents));
		expect(second.minX - plain.minX).toBeCloseTo(
			letters.width("AV", 10) - letters.width("V", 10),
			10,
		);
	});

	it("fills the same picture as another reader of the font", () => {
		// resvg shapes and fills the text itself; 20 px/mm, so a shift of 0.01 mm would show
		for (const text of ["AVATAR 304.8 mm", "Ø1.5 ±½ (12″) & @ gjpq"]) {
			const size = (10 * font.unitsPerEm) / CAPITAL;
			const ours = picture(`<path d="${letters.paths(text, 10).map(pathData).join("")}"/>`);
			const theirs = picture(
				`<g transform="scale(1 -1)"><text font-family="Barlow Condensed" font-weight="500" font-size="${size}">${text.replace("&", "&amp;")}</text></g>`,
			);
			let ink = 0;
			let difference = 0;
			for (let i = 0; i < ours.length; i += 4) {
				ink += 255 - theirs[i]!;
				difference += Math.abs(ours[i]! - theirs[i]!);
			}
			expect(ink).toBeGreaterThan(255 * 20_000);
			expect(difference / ink).toBeLessThan(0.005);
		}
	});

	it("reports missing signs instead of drawing the box for unknown ones", () => {
		expect(font.charToGlyphIndex("→")).toBe(0);
		expect(letters.missing("a→b⌀→")).toEqual(["→", "⌀"]);
		expect(() => letters.paths("a→", 5)).toThrow('the lettering "barlow-condensed" lacks "→"');
		expect(letters.missing("12″ ½\n")).toEqual(["\n"]);
	});

	it("has no shape for control characters, though the font maps some to glyphs", () => {
		for (const character of ["\r", "\0", "\u00ad"]) {
			expect(font.charToGlyphIndex(character)).toBeGreaterThan(0);
			expect(letters.missing(character)).toEqual([character]);
		}
	});

	it("draws a stand-in only where the font lacks the sign", () => {
		expect(font.charToGlyphIndex("\u2011")).toBe(0);
		expect(letters.paths("\u2011", 5)).toEqual(letters.paths("-", 5));
		expect(letters.paths("″", 5)).not.toEqual(letters.paths('"', 5));
	});

	it("reads fonts whose curves are cubic and fill to the left (CFF)", async () => {
		const cff = await outlineLettering(cubicFont(), "cubic");
		const round = cff.paths("O", 10);
		expect(round.map((p) => Math.sign(signedArea(p))).sort()).toEqual([-1, 1]);
		// the cubic circle leaves the true one by at most 0.0273 % of the radius
		const areas = round.map((p) => Math.abs(signedArea(p))).sort((a, b) => b - a);
		expect(areas[0]! / (Math.PI * 25)).toBeCloseTo(1, 3);
		expect(areas[1]! / (Math.PI * 6.25)).toBeCloseTo(1, 3);
		expect(cff.missing("HOX")).toEqual(["X"]);
		expect(around(cff.paths("H", 10).map(extents)).maxY).toBeCloseTo(10, 12);
	});

	it.each([
		["nothing", new Uint8Array(0)],
		["zeros", new Uint8Array(200)],
		["text", new TextEncoder().encode("this is a letter, not a font file at all")],
		["a font cut off at its start", bytes.subarray(0, 2000)],
		["a font cut off later", bytes.subarray(0, bytes.length - 8)],
	])("refuses %s with the name of the font", async (_, bad) => {
		const loading = outlineLettering(bad, "broken.ttf");
		await expect(loading).rejects.toThrow(RangeError);
		await expect(loading).rejects.toThrow('the font "broken.ttf" cannot be read');
	});

	it("refuses a font without a capital H", async () => {
		const loading = outlineLettering(cubicFont("A"), "capless");
		await expect(loading).rejects.toThrow('the font "capless" has no capital H');
	});

	it("takes an ArrayBuffer as well, and does not touch the bytes", async () => {
		const copy = new Uint8Array(bytes);
		const again = await outlineLettering(copy.buffer, "barlow-condensed");
		expect(again.paths("Rg8", 5)).toEqual(letters.paths("Rg8", 5));
		expect(Buffer.from(copy).equals(bytes)).toBe(true);
	});

	it("has no overlapping contours in the text that labels use", () => {
		for (const sign of printable("½¼¾°Ø±×é")) {
			const paths = letters.paths(sign, 10);
			const all = paths.flatMap(segments);
			const most = Math.max(...paths.flatMap((p) => insides(p, all)));
			expect(most, sign).toBe(1);
		}
	});
});

describe("loadLettering", () => {
	it("gives single strokes without a font and outlines with one", async () => {
		expect((await loadLettering(undefined)).name).toBe("stroke");
		const loaded = await loadLettering({ bytes, name: "barlow" });
		expect(loaded.name).toBe("barlow");
		expect(loaded.paths("I", 5)[0]!.closed).toBe(true);
	});
});

function printable(more: string): string[] {
	return [...Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i)), ...more];
}

/** Winding numbers a little inside each corner of a contour. */
function insides(path: Path, all: ReturnType<typeof segments>): number[] {
	return path.points.flatMap((v) =>
		[-1, 1].flatMap((dx) =>
			[-1, 1].map((dy) => windingNumber(all, { x: v.x + dx * 0.003, y: v.y + dy * 0.003 })),
		),
	);
}

function pathData(path: Path): string {
	const { x, y } = path.points[0]!;
	const pieces = segments(path).map((s) =>
		s.kind === "line"
			? `L${s.end.x} ${s.end.y}`
			: `A${s.radius} ${s.radius} 0 0 ${s.sweep > 0 ? 1 : 0} ${s.end.x} ${s.end.y}`,
	);
	return `M${x} ${y}${pieces.join("")}Z`;
}

function picture(content: string): Uint8Array {
	const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="110" height="20" viewBox="-2 -14 110 20"><rect x="-2" y="-14" width="110" height="20" fill="#fff"/><g transform="scale(1 -1)">${content}</g></svg>`;
	return new Resvg(svg, {
		fitTo: { mode: "width", value: 2200 },
		font: { loadSystemFonts: false, fontFiles: [FILE] },
	}).render().pixels;
}
