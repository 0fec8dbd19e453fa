import { describe, expect, it } from "vitest";
import {
	circle,
	pathLength,
	reversed,
	signedArea,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";
import { fullCircle, inPieces } from "../../src/writers/pieces.js";

describe("inPieces", () => {
	it("leaves lines and arcs up to the limit as they are", () => {
		const path = { closed: true, points: [vertex(0, 0, 1), vertex(2, 0), vertex(2, 5, -0.3)] };
		expect(inPieces(path, Math.PI)).toEqual(path);
	});

	it("cuts a half circle into two quarters that meet at its crown", () => {
		const half = { closed: false, points: [vertex(0, 0, 1), vertex(2, 0)] };
		const [first, crown, last] = inPieces(half, Math.PI / 2).points;
		expect([first!.x, first!.y, last!.x, last!.y]).toEqual([0, 0, 2, 0]);
		expect(crown!.x).toBeCloseTo(1, 12);
		expect(crown!.y).toBeCloseTo(-1, 12);
		expect(first!.bulge).toBeCloseTo(Math.tan(Math.PI / 8), 12);
		expect(last!.bulge).toBe(0);
	});

	it("keeps length and area", () => {
		const path = { closed: true, points: [vertex(0, 0, -20), vertex(0.4, 0)] };
		expect(pathLength(inPieces(path, 1))).toBeCloseTo(pathLength(path), 9);
		expect(signedArea(inPieces(path, 1))).toBeCloseTo(signedArea(path), 9);
	});
});

describe("fullCircle", () => {
	const ring = circle({ x: 3, y: -2 }, 1.5);

	it("knows a circle whichever way it runs, wherever it starts, in however many pieces", () => {
		for (const path of [ring, reversed(ring), startedAt(ring, 1), inPieces(ring, 1)]) {
			const found = fullCircle(path)!;
			expect(found.radius).toBeCloseTo(1.5, 12);
			expect(found.centre.x).toBeCloseTo(3, 12);
			expect(found.centre.y).toBeCloseTo(-2, 12);
		}
	});

	it("takes nothing else for one", () => {
		const quarter = Math.tan(Math.PI / 8);
		const others = [
			{ closed: false, points: ring.points },
			{ closed: true, points: [vertex(1, 0, quarter), vertex(0, 1, -quarter)] },
			{ closed: true, points: [...ring.points, ...ring.points] },
			{ closed: true, points: [vertex(0, 0, 1), vertex(2, 0, 1.0001)] },
			{ closed: true, points: [vertex(0, 0, 1), vertex(2, 0)] },
		];
		expect(others.map(fullCircle)).toEqual([null, null, null, null, null]);
	});
});
