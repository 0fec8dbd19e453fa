import { describe, expect, it } from "vitest";
import { around, extents, pathLength, segments } from "../../src/geometry/index.js";
import { LETTER_HEIGHTS, strokeLettering } from "../../src/lettering/index.js";
import { STAND_INS } from "../../src/lettering/signs.js";

const letters = strokeLettering();
const ASCII = Array.from({ length: 94 }, (_, i) => String.fromCharCode(33 + i));
const REQUIRED = [...ASCII, ..."½¼¾°Ø±×−–—“”‘’éèäöüßçñ€£"];

describe("strokeLettering", () => {
	it.each(REQUIRED)("draws %s with strokes of a length, within its room", (sign) => {
		const paths = letters.paths(sign, 10);
		expect(paths.length).toBeGreaterThan(0);
		for (const path of paths) {
			expect(path.closed).toBe(false);
			expect(pathLength(path)).toBeGreaterThan(0.2);
		}
		const box = around(paths.map(extents));
		const width = letters.width(sign, 10);
		expect(box.minX).toBeGreaterThan(-0.5);
		expect(box.maxX).toBeLessThan(width + 0.5);
		expect(box.minY).toBeGreaterThan(-4);
		expect(box.maxY).toBeLessThan(13);
	});

	it("draws no two printable signs alike, but for × and x", () => {
		const drawn = new Map<string, string>();
		for (const sign of REQUIRED) {
			const key = JSON.stringify([letters.width(sign, 10), letters.paths(sign, 10)]);
			if (sign === "×") expect(drawn.get(key)).toBe("x");
			else expect(drawn.get(key)).toBeUndefined();
			drawn.set(key, sign);
		}
	});

	it.each(LETTER_HEIGHTS)("makes the capital H exactly %d mm high, from the baseline", (height) => {
		const box = around(letters.paths("H", height).map(extents));
		expect(box.minY).toBe(0);
		expect(box.maxY).toBe(height);
	});

	it("keeps capitals and digits within a twentieth of the height", () => {
		for (const sign of "ABCDEFGHIKLMNOPRSTUVWXYZ0123456789") {
			const box = around(letters.paths(sign, 10).map(extents));
			expect(Math.abs(box.minY)).toBeLessThan(0.5);
			expect(Math.abs(box.maxY - 10)).toBeLessThan(0.5);
		}
	});

	it("spaces a text by the sum of its advances, in proportion to the height", () => {
		const text = 'Fret 12 ±0.05 mm, 25½"';
		const sum = [...text].reduce((total, sign) => total + letters.width(sign, 2.5), 0);
		expect(letters.width(text, 2.5)).toBeCloseTo(sum, 10);
		expect(letters.width(text, 5)).toBeCloseTo(2 * sum, 10);
		expect(letters.width("", 5)).toBe(0);
	});

	it("takes advances from the font: H is 668 units wide and 629.9 high", () => {
		expect(letters.width("H", 6.299)).toBeCloseTo(6.68, 12);
		expect(letters.width("H", 5)).toBeCloseTo(5.3024, 4);
		expect(letters.width(" ", 6.299)).toBeCloseTo(3.78, 12);
		expect(letters.paths(" ", 5)).toEqual([]);
	});

	it("sets each sign after the advance of those before it", () => {
		const alone = letters.paths("7", 5)[0]!.points[0]!;
		const after = letters.paths("M7", 5).at(-1)!.points[0]!;
		expect(after.x - alone.x).toBeCloseTo(letters.width("M", 5), 12);
		expect(after.y).toBe(alone.y);
	});

	it("never lets the ink of two neighbours touch among figures, fractions and signs", () => {
		for (const pair of ['½"', "¼″", '¾"', "5½", "1¼", "0°", "°C", "±0", "±½", "²m", "°±"]) {
			const [first, second] = [...pair] as [string, string];
			const count = letters.paths(first, 10).length;
			const paths = letters.paths(first + second, 10);
			const left = around(paths.slice(0, count).map(extents));
			const right = around(paths.slice(count).map(extents));
			expect(right.minX - left.maxX).toBeGreaterThan(0.6);
		}
	});

	it("reports what it lacks, each once and in order, and refuses to draw it", () => {
		expect(letters.missing("nut → saddle ⌀ →")).toEqual(["→", "⌀"]);
		expect(letters.missing("plain")).toEqual([]);
		expect(() => letters.paths("a → b ⌀", 5)).toThrow('lacks "→" (U+2192), "⌀" (U+2300)');
		expect(() => letters.width("a → b", 5)).toThrow(RangeError);
	});

	it("has no shape for control characters and names them by code", () => {
		expect(letters.missing("a\nb\u200b")).toEqual(["\n", "\u200b"]);
		expect(() => letters.width("a\tb", 5)).toThrow("lacks U+0009");
	});

	it("takes a character beyond the basic plane as one", () => {
		expect(letters.missing("\u{1F3B8}")).toEqual(["\u{1F3B8}"]);
	});

	it("draws the stand-ins of the table, and only those, as another sign", () => {
		for (const [sign, drawn] of Object.entries(STAND_INS)) {
			expect(letters.paths(sign, 5)).toEqual(letters.paths(drawn, 5));
		}
		for (const [sign, plain] of ['“"', '”"', "‘'", "’'", "–-", "—-", "−-"].map((s) => [...s])) {
			expect(letters.missing(sign!)).toEqual([]);
			expect(letters.paths(sign!, 5)).not.toEqual(letters.paths(plain!, 5));
		}
	});

	it("reads a letter and its accent as one sign", () => {
		expect(letters.paths("e\u0301", 5)).toEqual(letters.paths("é", 5));
		expect(letters.width("e\u0301", 5)).toBe(letters.width("é", 5));
	});

	it("draws arcs only in ç ß £, whose curves the font has", () => {
		const curved = REQUIRED.filter((sign) =>
			letters.paths(sign, 10).some((path) => segments(path).some((s) => s.kind === "arc")),
		);
		expect(curved.join("")).toBe("ßç£");
	});

	it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses the height %d", (height) => {
		expect(() => letters.paths("H", height)).toThrow(RangeError);
		expect(() => letters.width("H", height)).toThrow(RangeError);
	});
});
