import { describe, expect, it } from "vitest";
import { fretAt } from "../../support/bars.js";
import { pathsOf } from "../../support/measure-part.js";
import { crossed, labelRectangles } from "../../support/part-faults.js";
import { strip, stripLabels } from "../../support/strips.js";

describe("the labels of a strip", () => {
	it("number every slot and give its distance from the theoretical nut", () => {
		const all = stripLabels(strip({ "nut-shift": 0.6 }));
		for (let n = 1; n <= 22; n++) {
			expect(all.get(`number-${n}`)!.text).toBe(`${n}`);
			expect(all.get(`distance-${n}`)!.text).toBe(fretAt(n).toFixed(3));
		}
	});

	it("stand before their slot, numbers on the bass half, distances on the treble half", () => {
		for (const handed of ["right", "left"]) {
			const all = stripLabels(strip({ handed }));
			const treble = handed === "right" ? 1 : -1;
			for (let n = 2; n <= 22; n++) {
				const [number, distance] = [all.get(`number-${n}`)!, all.get(`distance-${n}`)!];
				expect(Math.sign(number.at[0].y)).toBe(-treble);
				expect(Math.sign(distance.at[0].y)).toBe(treble);
				for (const { at } of [number, distance]) {
					expect(at[0].x).toBeGreaterThan(fretAt(n - 1));
					expect(at[0].x).toBeLessThan(fretAt(n));
				}
			}
		}
	});

	it("are left out where frets stand too close, and the notes say so", () => {
		const part = strip({ scale: 400, frets: 60, division: 31 });
		const numbered = [...stripLabels(part).keys()].filter((id) => id.startsWith("number-"));
		expect(numbered.length).toBeGreaterThan(20);
		expect(numbered.length).toBeLessThan(60);
		const note = part.notes.find((n) => n.startsWith("No room for the number at"))!;
		const listed = note.match(/\d+/gu)!.map(Number);
		expect(listed).toHaveLength(60 - numbered.length);
		expect(listed.some((n) => numbered.includes(`number-${n}`))).toBe(false);
	});

	it("keep clear of markers and of a moved nut, or are left out", () => {
		const near = [
			{ scale: 352, frets: 20, width: { nut: 29, "last-fret": 39 }, markers: [{ 12: "double" }] },
			{ scale: 345, frets: 20, division: 31, "nut-shift": 3.5, width: 40 },
		];
		for (const neck of near) {
			const part = strip(neck, { "double-marker-spread": "20 mm" });
			const scores = part.marks.filter((m) => m.operation === "score");
			expect(crossed(labelRectangles(part), scores)).toEqual([]);
		}
	});

	it("can do without distances", () => {
		const ids = [...stripLabels(strip({}, { distances: false })).keys()];
		expect(ids.filter((id) => id.startsWith("distance"))).toEqual([]);
		expect(ids).toContain("number-22");
	});

	it("tell job and scale before the first fret, where the centre line makes way", () => {
		const part = strip({});
		expect(stripLabels(part).get("job")!.text).toBe("Plain neck");
		expect(stripLabels(part).get("scale")!.text).toBe("25 1/2 in, 22 frets");
		expect(pathsOf(part, "centre line")).toHaveLength(2);
		const short = strip({ scale: 200, frets: 12, division: 19, "nut-shift": 1 });
		expect(stripLabels(short).has("job")).toBe(false);
		expect(pathsOf(short, "centre line")).toHaveLength(1);
	});
});
