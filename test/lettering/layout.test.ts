import { describe, expect, it } from "vitest";
import { around, extents } from "../../src/geometry/index.js";
import { placedText, strokeLettering } from "../../src/lettering/index.js";

const letters = strokeLettering();

describe("placedText", () => {
	it("sets the left end, the middle or the right end on the point", () => {
		const width = letters.width("fret 12", 2.5);
		const at = { x: 100, y: 20 };
		const left = placedText(letters, "fret 12", 2.5, at, 0, "left");
		expect(left.width).toBe(width);
		expect(left.at).toEqual(at);
		const centre = placedText(letters, "fret 12", 2.5, at, 0, "centre");
		expect(centre.at).toEqual({ x: 100 - width / 2, y: 20 });
		const right = placedText(letters, "fret 12", 2.5, at, 0, "right");
		expect(right.at).toEqual({ x: 100 - width, y: 20 });
	});

	it("moves the strokes along", () => {
		const plain = letters.paths("12", 5);
		const { paths } = placedText(letters, "12", 5, { x: 7, y: -3 }, 0, "left");
		expect(paths).toHaveLength(plain.length);
		paths.forEach((path, i) => {
			path.points.forEach((v, k) => {
				expect(v.x).toBeCloseTo(plain[i]!.points[k]!.x + 7, 12);
				expect(v.y).toBeCloseTo(plain[i]!.points[k]!.y - 3, 12);
			});
		});
	});

	it("reads upward after a quarter turn, the baseline on the right", () => {
		const at = { x: 50, y: 10 };
		const set = placedText(letters, "H", 5, at, Math.PI / 2, "right");
		expect(set.at.x).toBe(50);
		expect(set.at.y).toBeCloseTo(10 - set.width, 12);
		const box = around(set.paths.map(extents));
		expect(box.maxX).toBeCloseTo(50, 12);
		expect(box.minX).toBeCloseTo(45, 12);
		expect(box.maxY).toBeLessThan(10);
		expect(box.minY).toBeGreaterThan(set.at.y);
	});

	it("turns about the point at any angle", () => {
		const at = { x: 3, y: 4 };
		const set = placedText(letters, "ab", 5, at, 0.3, "centre");
		expect(set.at.x).toBeCloseTo(3 - (set.width / 2) * Math.cos(0.3), 12);
		expect(set.at.y).toBeCloseTo(4 - (set.width / 2) * Math.sin(0.3), 12);
	});

	it("refuses what the lettering lacks", () => {
		expect(() => placedText(letters, "→", 5, { x: 0, y: 0 }, 0, "left")).toThrow(RangeError);
	});
});
