import { describe, expect, it } from "vitest";
import { signedArea } from "../../src/geometry/index.js";
import { outlineOf } from "../../src/tools/outline.js";

const corners = [
	{ x: 0, y: 0 },
	{ x: 20, y: 0 },
	{ x: 20, y: 10 },
	{ x: 0, y: 10 },
];

describe("outlineOf", () => {
	it("joins corners in order", () => {
		expect(signedArea(outlineOf(corners))).toBe(200);
	});

	it("rounds the corners that ask for it and no other", () => {
		const rounded = outlineOf(corners.map((c, i) => (i % 2 ? { ...c, round: 1.5 } : c)));
		expect(signedArea(rounded)).toBeCloseTo(200 - 2 * (1 - Math.PI / 4) * 1.5 ** 2, 12);
		expect(rounded.points).toHaveLength(6);
	});

	it("keeps the arc that a corner begins", () => {
		const arched = outlineOf([{ x: 0, y: 0, bulge: -1 }, ...corners.slice(1)]);
		expect(signedArea(arched)).toBeCloseTo(200 - 50 * Math.PI, 9);
	});

	it("refuses a rounding that does not fit", () => {
		expect(() => outlineOf(corners.map((c) => ({ ...c, round: 6 })))).toThrow(RangeError);
	});
});
