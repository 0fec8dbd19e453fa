import { describe, expect, it } from "vitest";
import type { Part } from "../../../src/drawing/index.js";
import { fretAt, SIX_STRINGS } from "../../support/bars.js";
import { pathsOf } from "../../support/measure-part.js";
import { crossingsAtHeight, slotAtHeight } from "../../support/measure-path.js";
import { strip, stripCodes, stripLabels } from "../../support/strips.js";

describe("the lines of a strip", () => {
	const x = (part: Part, feature: string) =>
		pathsOf(part, feature).map((p) => crossingsAtHeight([p], 0)[0]!);

	it("show the theoretical nut and, where it was moved, its actual face", () => {
		const moved = strip({ "nut-shift": 0.6 });
		expect(x(moved, "theoretical nut")).toEqual([0]);
		expect(x(moved, "actual nut face")).toEqual([0.6]);
		expect(pathsOf(strip({}), "actual nut face")).toEqual([]);
		expect(pathsOf(strip({ "zero-fret": true }), "theoretical nut")).toEqual([]);
	});

	it("name each nut line on the side where the other is not", () => {
		const order = (shift: number) => {
			const all = stripLabels(strip({ "nut-shift": shift }));
			return [all.get("nut")!, all.get("nut-after")!].map((l) => [l.text, l.at[0].x] as const);
		};
		const [[first, a], [second, b]] = order(1) as [[string, number], [string, number]];
		expect([first, second]).toEqual(["THEOR. NUT", "ACTUAL NUT"]);
		expect(a).toBeLessThan(0);
		expect(b).toBeGreaterThan(1);
		expect(order(-1).map(([text]) => text)).toEqual(["ACTUAL NUT", "THEOR. NUT"]);
		expect(stripLabels(strip({ width: 60, "nut-shift": 1 })).get("nut")!.text).toBe(
			"THEORETICAL NUT",
		);
		expect(stripLabels(strip({ "zero-fret": true })).get("nut")!.text).toBe("ZERO FRET");
		expect(stripLabels(strip({})).get("nut")!.text).toBe("NUT");
	});

	it("show every string by a dash at nut and slots, if wanted", () => {
		expect(pathsOf(strip({ strings: SIX_STRINGS }), "string line 1")).toHaveLength(23);
		expect(pathsOf(strip({ strings: SIX_STRINGS }), "string line 6")).toHaveLength(23);
		expect(
			pathsOf(strip({ strings: SIX_STRINGS }, { "string-lines": false }), "string line 1"),
		).toEqual([]);
		expect(pathsOf(strip({}), "string line 1")).toEqual([]);
	});

	it("mark position markers midway between frets, double ones apart", () => {
		const part = strip({ markers: [3, { 12: "double" }], width: 50 });
		const centre = (feature: string) => {
			const ends = pathsOf(part, feature).flatMap((p) => p.points);
			const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
			return [middle(ends.map((p) => p.x)), middle(ends.map((p) => p.y))];
		};
		expect(centre("marker 3")).toEqual(
			[(fretAt(2) + fretAt(3)) / 2, 0].map((v) => expect.closeTo(v, 9)),
		);
		const x12 = (fretAt(11) + fretAt(12)) / 2;
		expect(centre("marker 12 bass")).toEqual([x12, -10].map((v) => expect.closeTo(v, 9)));
		expect(centre("marker 12 treble")).toEqual([x12, 10].map((v) => expect.closeTo(v, 9)));
	});

	it("mark each of a double marker midway at its own height where the frets slant", () => {
		const scale = { bass: "28 in", treble: "26 in", "square-fret": 7 };
		const part = strip({ scale, strings: SIX_STRINGS, markers: [{ 19: "double" }] });
		const centres = ["bass", "treble"].map((side) => {
			const ends = pathsOf(part, `marker 19 ${side}`).flatMap((p) => p.points);
			const sum = (values: number[]) => values.reduce((a, b) => a + b) / values.length;
			return { x: sum(ends.map((p) => p.x)), y: sum(ends.map((p) => p.y)) };
		});
		for (const { x, y } of centres) {
			const slots = [18, 19].map((n) => slotAtHeight(pathsOf(part, `slot ${n}`)[0]!, y));
			expect(x).toBeCloseTo((slots[0]! + slots[1]!) / 2, 9);
		}
		expect(Math.abs(centres[0]!.x - centres[1]!.x)).toBeGreaterThan(1);
	});

	it("refuse markers wider apart than the board", () => {
		const neck = { markers: [{ 12: "double" }], width: 50 };
		expect(stripCodes(neck, { "double-marker-spread": "46 mm" })).toEqual([]);
		expect(stripCodes(neck, { "double-marker-spread": "48 mm" })).toEqual(["length-range"]);
	});
});
