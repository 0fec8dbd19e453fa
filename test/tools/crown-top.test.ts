import { describe, expect, it } from "vitest";
import { arcSagitta } from "../../src/geometry/index.js";
import { crownTop } from "../../src/tools/crown-top.js";
import { jobWith, madeParts } from "../support/made-parts.js";

function topOf(neck: object, n: number) {
	const made = madeParts(jobWith(neck, ["slot-strip"]));
	return crownTop(made.neck, made.bench.wire, n);
}

const fanned = {
	scale: { bass: 690, treble: 650, "square-fret": 0 },
	strings: { count: 6, "at-nut": 36, "at-saddle": 36 },
	width: 43,
};

describe("the top of a crown", () => {
	it("is a circle of the board's radius and the crown's height across a square fret", () => {
		const top = topOf({ width: 50 }, 7)!;
		expect(top.radius).toBeCloseTo(306.1, 9);
		expect(top.board).toBeCloseTo(304.8, 9);
		expect(top.length).toBeCloseTo(50, 9);
		expect(top.sagitta).toBeCloseTo(arcSagitta(306.1, 50), 9);
	});

	it("is flatter along a slant, R/cos²φ (Euler's theorem), and no flatter than the ellipse there", () => {
		// Fret 12 leads by 20 mm over 36: 1/cos²φ = 1 + tan²φ.
		const top = topOf(fanned, 12)!;
		const euler = 304.8 * (1 + (20 / 36) ** 2);
		expect(top.board).toBeCloseTo(euler, 6);
		// The ellipse of half axes R + h and (R + h)/cos φ, as high over this chord as its own drop.
		const half = 43 / 2;
		expect(top.sagitta).toBeCloseTo(306.1 - Math.sqrt(306.1 ** 2 - half ** 2), 9);
		expect(top.radius).toBeLessThanOrEqual(euler + 1.3);
		expect(top.radius).toBeGreaterThan(0.99 * euler);
	});

	it("goes by the roundest place under a slanted fret of a compound board", () => {
		const grown = { ...fanned, radius: { nut: 200, "last-fret": 400 } };
		const { board } = topOf(grown, 12)!;
		const last = ((650 + 690) / 2) * (1 - 2 ** (-22 / 12));
		const middle = 200 + (200 * 335) / last;
		const lead = ((20 / 36) * 43) / 2;
		const least = middle - (200 * lead) / last;
		expect(board).toBeCloseTo(least * (1 + (20 / 36) ** 2), 3);
	});

	it("is none on a flat board", () => {
		expect(topOf({ radius: "flat" }, 1)).toBeNull();
	});
});
