import { describe, expect, it } from "vitest";
import { stationX } from "../../src/neck/index.js";
import { neckWith } from "../support/made-parts.js";

const neck = neckWith({});

describe("stationX", () => {
	it("names places on the centre line", () => {
		expect(stationX(neck, { kind: "nut" })).toBe(0);
		expect(stationX(neck, { kind: "saddle" })).toBeCloseTo(647.7, 9);
		expect(stationX(neck, { kind: "last-fret" })).toBeCloseTo(465.9453, 4);
		expect(stationX(neck, { kind: "fret", fret: 12 })).toBeCloseTo(323.85, 9);
		expect(stationX(neck, { kind: "fret", fret: 0.5 })).toBeCloseTo(
			647.7 * (1 - 2 ** (-1 / 24)),
			9,
		);
		expect(stationX(neck, { kind: "distance", mm: 120 })).toBe(120);
	});

	it("counts from the theoretical nut, wherever the nut was moved to", () => {
		const moved = neckWith({ "nut-shift": 0.6 });
		expect(stationX(moved, { kind: "nut" })).toBe(0);
		expect(stationX(moved, { kind: "fret", fret: 12 })).toBeCloseTo(323.85, 9);
	});

	it("has no fret beyond a list that does not repeat", () => {
		const listed = neckWith({ division: { cents: [100, 200, 300] }, frets: 3 });
		expect(() => stationX(listed, { kind: "fret", fret: 4 })).toThrow(RangeError);
	});
});
