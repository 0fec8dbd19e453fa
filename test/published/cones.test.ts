import { describe, expect, it, test } from "vitest";
import { arcSagitta } from "../../src/geometry/index.js";
import {
	dropAt,
	fretLine,
	humpUnder,
	radiusAt,
	stationX,
	stringLines,
} from "../../src/neck/index.js";
import { neckWith } from "../support/made-parts.js";

const INCH = 25.4;
const strings = { count: 6, "at-nut": 35, "at-saddle": 52.5 };
const compound = neckWith({ radius: { nut: 10 * INCH, "last-fret": 16 * INCH }, strings });

/** Computed: R(x) = R0 + (R1 − R0)·x/x1, linear in distance along the centre line. */
describe("a board of 10 to 16 in from the nut to fret 22 of 647.7 mm", () => {
	const at12 = radiusAt(compound, stationX(compound, { kind: "fret", fret: 12 }))!;

	it("has 14.1702 in at fret 12", () => {
		expect(at12 / INCH).toBeCloseTo(14.1702, 4);
	});

	it("would have 13.2727 in by fret number, wrong by 0.064 mm at 26 mm from the centre", () => {
		const byNumber = (10 + (6 * 12) / 22) * INCH;
		expect(byNumber / INCH).toBeCloseTo(13.2727, 4);
		expect(dropAt(byNumber, 26) - dropAt(at12, 26)).toBeCloseTo(0.064, 3);
	});

	it("differs from the right circular cone by at most 1.6e-4 mm where it is 42 mm wide, t²y⁴/8R³", () => {
		const t = (6 * INCH) / fretLine(compound, 22).x;
		const [atNut, atEnd] = [rightConeOff(10 * INCH, t, 21), rightConeOff(16 * INCH, t, 28)];
		expect(atNut).toBeCloseTo(1.6e-4, 5);
		expect(atEnd).toBeLessThan(1.6e-4);
		expect(atNut / ((t * t * 21 ** 4) / (8 * (10 * INCH) ** 3))).toBeCloseTo(1, 1);
	});
});

/**
 * How far the circular section R − √(R² − y²) leaves the right circular cone with the same crown
 * line and the same curvature there, measured square to the crown.
 */
function rightConeOff(radius: number, slope: number, y: number): number {
	const angle = Math.atan(slope);
	// A cone of half angle a, at distance s along its crown line from the apex, has the normal
	// curvature 1/(s·tan a) across that line: s = R/tan a makes it 1/R.
	const s = radius / Math.tan(angle);
	const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
	// In the plane square to the crown line at s: points (y, depth d) with
	// y² + (s·sin − d·cos)² = ((s·cos + d·sin)·tan a)².
	const f = (d: number) => y * y + (s * sin - d * cos) ** 2 - ((s * cos + d * sin) * slope) ** 2;
	let [low, high] = [0, radius / 2];
	for (let i = 0; i < 200; i++) {
		const middle = (low + high) / 2;
		if (f(middle) > 0) low = middle;
		else high = middle;
	}
	return Math.abs(low - arcSagitta(radius, 2 * y));
}

/** Computed: R(x)/R(0) = w(x)/w(0), the radius that grows as the spread of the strings. */
describe("a board matched to a spread of 35 to 52.5 mm from 10 in at the nut", () => {
	const matched = neckWith({ radius: { nut: 10 * INCH, saddle: 15 * INCH }, strings });

	it("has 13.597 in at fret 22 and 15.000 in at the saddle", () => {
		expect(radiusAt(matched, fretLine(matched, 22).x)! / INCH).toBeCloseTo(13.597, 3);
		const grown = (10 * INCH * 52.5) / 35;
		expect(radiusAt(matched, 647.7)!).toBeCloseTo(grown, 9);
	});

	it("has no hump under any string", () => {
		for (const line of stringLines(matched)) {
			expect(humpUnder(matched, line, 0, fretLine(matched, 22).x)).toBeLessThan(1e-9);
		}
	});
});

/** Computed from the sections along the outer string, spread 35 to 52.5 mm, nut to fret 22. */
test.each([
	["7.25 in cylinder", 0.02741, 7.25 * INCH],
	["10 in cylinder", 0.01969, 10 * INCH],
	["board of 10 to 16 in", 0.00427, { nut: 10 * INCH, "last-fret": 16 * INCH }],
] as const)("the hump under the outer string of a %s is %d mm", (_name, hump, radius) => {
	const neck = neckWith({ radius, strings });
	const [outer] = stringLines(neck);
	expect(humpUnder(neck, outer!, 0, fretLine(neck, 22).x)).toBeCloseTo(hump, 5);
});
