import { describe, expect, it } from "vitest";
import { bar, fretAt, labelClaims, madeBar, notchesFrom, sizeClaim } from "../../support/bars.js";
import { jobWith, madeParts } from "../../support/made-parts.js";
import { outlineOf } from "../../support/measure-part.js";
import { crossingsAtHeight } from "../../support/measure-path.js";
import { faultsOf } from "../../support/scale-tools.js";

describe("a second edge", () => {
	const second = { "second-edge": { scale: "24 3/4 in", frets: 20 } };
	const part = bar({}, second);
	const [left, right] = crossingsAtHeight([outlineOf(part)], 12) as [number, number];
	const height = sizeClaim(part, "height")!.nominal;

	it("has its own scale, from the other end", () => {
		expect(notchesFrom(part, "upper").map((n) => right - n.centre)).toEqual(
			Array.from({ length: 20 }, (_, i) => expect.closeTo(fretAt(i + 1, 628.65), 9)),
		);
		expect(notchesFrom(part)).toHaveLength(22);
		expect(left).toBe(0);
	});

	it("reads upright after half a turn: numbers, NUT and what the bar says of it", () => {
		const turned = labelClaims(part).filter((l) => l.turn === Math.PI);
		expect(turned.map((l) => l.text)).toEqual([
			"Plain neck   24 3/4 in   20 frets",
			"NUT",
			...Array.from({ length: 20 }, (_, i) => `${i + 1}`),
		]);
		// In the turned bar each number stands over its own notch.
		for (const [i, notch] of notchesFrom(part, "upper").entries()) {
			const number = turned.find((l) => l.text === `${i + 1}`)!;
			expect(right - number.at[0].x).toBeLessThan(right - notch.centre);
			expect(Math.abs(notch.centre - number.at[0].x)).toBeLessThan(3);
			expect(height - number.at[0].y).toBeGreaterThanOrEqual(3);
		}
	});

	it("has letters apart from each other on a low bar, with what hangs below their line", () => {
		for (const height of [18, 18.4, 18.8, 19.2, 19.6, 20]) {
			const settings = {
				...second,
				height: `${height} mm`,
				"depth-clearance": "0.1 mm",
				"lapping-allowance": "0.1 mm",
				"hanging-hole": "1 mm",
			};
			const entry = { "notched-straightedge": settings };
			const { parts } = madeParts(jobWith({}, [entry], { job: "Jaggy query" }));
			expect(parts.flatMap(faultsOf)).toEqual([]);
		}
	});

	it("butts at both ends, each with a chamfer of its own", () => {
		const outline = outlineOf(part);
		expect(right - crossingsAtHeight([outline], height - 0.25).at(-1)!).toBeCloseTo(0.75, 9);
		expect(crossingsAtHeight([outline], 0.25)[0]).toBeCloseTo(0.75, 9);
		expect(part.workingEdge).toBe("both long edges, between the notches; and both nut ends");
	});

	it("knows nothing of the first neck's moved nut, zero fret and uncertain scale", () => {
		const other = bar({ "nut-shift": 0.6, "scale-uncertainty": 0.8 }, second);
		const end = crossingsAtHeight([outlineOf(other)], 12).at(-1)!;
		expect(notchesFrom(other, "upper").map((n) => end - n.centre)).toEqual(
			Array.from({ length: 20 }, (_, i) => expect.closeTo(fretAt(i + 1, 628.65), 9)),
		);
		expect(Math.max(...notchesFrom(other, "upper").map((n) => n.width))).toBeCloseTo(4.2, 9);
		expect(Math.max(...notchesFrom(other).map((n) => n.width))).toBeGreaterThan(4.3);
	});

	it("stays without zero fret on a neck that has one", () => {
		const other = bar({ "zero-fret": true }, second);
		expect(sizeClaim(other, "arch-end")!.nominal).toBeCloseTo(2.1, 9);
		expect(sizeClaim(other, "second-arch-end")!.nominal).toBeCloseTo(0.75, 9);
		expect(notchesFrom(other, "upper")).toHaveLength(20);
	});

	it("is refused where a last number would stand beside the other edge's nut end", () => {
		const codes = (beyond: string) =>
			madeBar({}, { ...second, "finger-relief": false, "beyond-last-fret": beyond }).problems;
		expect(codes("3 mm")).toMatchObject([
			{ code: "length-range", where: { path: ["beyond-last-fret"] }, facts: { given: "3 mm" } },
		]);
		expect(codes("5 mm")).toEqual([]);
	});

	it("can have a division of its own", () => {
		const own = bar({}, { "second-edge": { scale: "700 mm", frets: 19, division: 19 } });
		const end = crossingsAtHeight([outlineOf(own)], 12).at(-1)!;
		expect(notchesFrom(own, "upper").map((n) => end - n.centre)).toEqual(
			Array.from({ length: 19 }, (_, i) => expect.closeTo(fretAt(i + 1, 700, 19), 9)),
		);
	});

	it("is as long as the longer scale asks, whichever that is", () => {
		const longer = bar({}, { "second-edge": { scale: "34 in", frets: 20 } });
		expect(sizeClaim(longer, "length")!.nominal).toBeGreaterThan(
			sizeClaim(part, "length")!.nominal + 100,
		);
		expect(notchesFrom(longer)).toHaveLength(22);
		expect(notchesFrom(longer).map((n) => n.centre)[21]).toBeCloseTo(fretAt(22), 9);
	});

	it("is told in the notes: its scale, its budget, its least land", () => {
		const text = part.notes.join("\n");
		expect(text).toContain("The second edge serves a scale of 24 3/4 in with 20 frets");
		expect(text).toContain("Second edge: clearance budget at fret 20");
		expect(text).toContain("Second edge: least land");
	});

	it("is refused with its own key: too little land, a division that ends early, readings beyond", () => {
		const of = (settings: object, neck: object = {}) =>
			madeBar(neck, { "second-edge": settings }).problems.map((p) => [p.code, p.where.path]);
		expect(of({ scale: "330 mm", frets: 36 })).toEqual([["land-too-narrow", ["second-edge"]]]);
		const short = { scale: "600 mm", frets: 5, division: { cents: [100, 200, 300] } };
		expect(of(short)).toEqual([["division-too-short", ["second-edge", "division"]]]);
		const beyond = { scale: "300 mm", frets: 2, division: { positions: [20, 310] } };
		expect(of(beyond)).toMatchObject([["position-beyond-saddle", expect.anything()]]);
		const listed = { division: { cents: [100, 200, 300] }, frets: 3 };
		expect(of({ scale: "600 mm", frets: 4 }, listed)).toEqual([
			["division-too-short", ["second-edge"]],
		]);
	});
});
