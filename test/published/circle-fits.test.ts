import { describe, expect, it } from "vitest";
import { circleFitTaubin } from "../../src/readings/circle-fit-taubin.js";
import {
	circleFitGeometric,
	type RadiusEstimate,
	type RadiusReading,
	radiusFrom,
} from "../../src/readings/index.js";

function radiusOf(reading: RadiusReading): RadiusEstimate {
	const found = radiusFrom(reading);
	if (Array.isArray(found)) throw new Error(JSON.stringify(found));
	return found;
}

const STEPS = { resolution: 0.01, chordResolution: 0.1, on: "wood" } as const;

/** Gander, Golub and Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558-578. */
describe("the circle of Gander, Golub and Strebel", () => {
	const points = [
		{ x: 1, y: 7 },
		{ x: 2, y: 6 },
		{ x: 5, y: 8 },
		{ x: 7, y: 7 },
		{ x: 9, y: 5 },
		{ x: 3, y: 7 },
	];

	it("of least squared distances is found to every printed digit", () => {
		const { centre, radius } = circleFitGeometric(points);
		expect(centre!.x).toBeCloseTo(4.73978241, 8);
		expect(centre!.y).toBeCloseTo(2.9835327, 8);
		expect(radius).toBeCloseTo(4.71422604, 8);
	});

	it("turned, moved and mirrored stays the same circle", () => {
		const [cos, sin] = [Math.cos(2), Math.sin(2)];
		const turned = points.map(({ x, y }) => ({ x: 40 + x * cos + y * sin, y: x * sin - y * cos }));
		expect(circleFitGeometric(turned).radius).toBeCloseTo(4.71422604, 8);
	});

	it("starts from Taubin's circle of radius 4.8792128", () => {
		const middle = { x: 27 / 6, y: 40 / 6 };
		const { a } = circleFitTaubin(points.map((p) => ({ x: p.x - middle.x, y: p.y - middle.y })))!;
		expect(1 / (2 * a)).toBeCloseTo(4.8792128, 7);
	});
});

/** Machinery's Handbook, 31st ed., pp. 79 and 83: segments of a circle. */
describe("Machinery's Handbook, segments of a circle, read as chord and sagitta", () => {
	it("chord 59.8665 and height 8 give radius 60", () => {
		const { radius } = radiusOf({ ...STEPS, kind: "chord", chord: 59.8665, sagitta: 8 });
		expect(radius!.value).toBeCloseTo(60, 4);
	});

	it("chord 16 and height 6 give radius 8⅓", () => {
		const { radius } = radiusOf({ ...STEPS, kind: "chord", chord: 16, sagitta: 6 });
		expect(radius!.value).toBeCloseTo(8 + 1 / 3, 12);
	});
});

/** Segment manual of a maths program: chord 21, height 6. */
it("chord 21 and height 6 give radius 12.1875, by bar and by chord", () => {
	const chord = radiusOf({ ...STEPS, kind: "chord", chord: 21, sagitta: 6 });
	const bar = radiusOf({ ...STEPS, kind: "bar", chord: 21, dial: 6 });
	expect(chord.radius!.value).toBeCloseTo(12.1875, 12);
	expect(bar.radius).toEqual(chord.radius);
});

/**
 * Bar spherometer, R = c²/8h + h/2, at 10 in over 50 mm. (R − h)/h gives 2.0495 mm of radius for one
 * hundredth of sagitta; 2.0595 is R/h = c²/8h² + ½,
 * which adds the second term's ½ where its derivative takes it off.
 */
it("one hundredth of sagitta over 50 mm is 2.05 mm of a radius of 10 in", () => {
	const sagitta = 254 - Math.sqrt(254 ** 2 - 25 ** 2);
	const at = (h: number) => radiusOf({ ...STEPS, kind: "bar", chord: 50, dial: h }).radius!.value;
	const slope = (at(sagitta - 0.001) - at(sagitta + 0.001)) / 0.002;
	expect(at(sagitta)).toBeCloseTo(254, 9);
	expect(slope / 100).toBeCloseTo((254 - sagitta) / sagitta / 100, 4);
	expect(slope / 100).toBeCloseTo(2.0495, 4);
	expect(254 / sagitta / 100).toBeCloseTo(2.0595, 4);
});
