import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drawing/index.js";
import {
	bar,
	barCodes,
	fretAt,
	labelClaims,
	madeBar,
	notchesFrom,
	SIX_STRINGS,
	sizeClaim,
} from "../support/bars.js";
import { outlineOf } from "../support/measure-part.js";
import { crossingsAtHeight, crossingsAtPlace } from "../support/measure-path.js";
import { labelFaults } from "../support/part-faults.js";

describe("a notched straightedge", () => {
	const part = bar({});
	const outline = outlineOf(part);
	const ends = crossingsAtHeight([outline], 12);

	it("begins at the nut, a working edge too, its lower corner chamfered by 1 mm for glue", () => {
		expect(ends[0]).toBe(0);
		expect(crossingsAtHeight([outline], 0.25)[0]).toBeCloseTo(0.75, 12);
		expect(crossingsAtHeight([outline], 1)[0]).toBeCloseTo(0, 12);
		expect(part.workingEdge).toBe("lower edge, between the notches; and the nut end");
	});

	it("has a notch centred on every fret, as wide as the crown and 0.75 mm on either side", () => {
		const found = notchesFrom(part);
		expect(found.map((n) => n.centre)).toEqual(
			Array.from({ length: 22 }, (_, i) => expect.closeTo(fretAt(i + 1), 9)),
		);
		expect(new Set(found.map((n) => n.width.toFixed(9)))).toEqual(new Set(["4.200000000"]));
	});

	it("has notches as deep as the crown, 0.4 mm and the lapping allowance", () => {
		expect(notchesFrom(part).map((n) => n.depth)).toEqual(Array(22).fill(expect.closeTo(1.9, 9)));
		const own = bar({}, { "depth-clearance": "0.3 mm", "lapping-allowance": "0 mm" });
		expect(notchesFrom(own)[0]!.depth).toBeCloseTo(1.6, 9);
	});

	it("ends 12 mm beyond the last notch", () => {
		expect(ends.at(-1)).toBeCloseTo(fretAt(22) + 2.1 + 12, 9);
	});

	it("is high enough to sag by no more than 0.02 mm, in whole mm: acrylic 480 → 41, 650 → 74", () => {
		const height = (length: number, neck: object) => {
			const plain = sizeClaim(bar(neck), "length")!.nominal;
			const beyond = `${12 + length - plain} mm`;
			const own = bar(neck, { "beyond-last-fret": beyond });
			expect(sizeClaim(own, "length")!.nominal).toBeCloseTo(length, 9);
			return sizeClaim(own, "height")!.nominal;
		};
		expect(height(480, {})).toBe(41);
		expect(height(650, { scale: 850, frets: 24 })).toBe(74);
		expect(height(260, { scale: 352, frets: 20 })).toBe(25);
	});

	it("has a scoop to lift it by, unless told otherwise or short", () => {
		const middle = ends.at(-1)! / 2;
		const top = (p: Part, x: number) => crossingsAtPlace([outlineOf(p)], x).at(-1)!;
		expect(top(part, middle)).toBeCloseTo(41 - 4, 9);
		expect(top(bar({}, { "finger-relief": false }), middle)).toBe(41);
		expect(top(bar({ frets: 1, scale: 400 }), 20)).toBe(25);
	});

	it("says what it is: job, scale and frets, and the number of every fret", () => {
		const texts = labelClaims(part).map((l) => l.text);
		expect(texts[0]).toBe("Plain neck   25 1/2 in   22 frets");
		expect(texts).toEqual([texts[0], "NUT", ...Array.from({ length: 22 }, (_, i) => `${i + 1}`)]);
	});

	it("leaves NUT out where the first number stands in its way", () => {
		for (const scale of [345, 430]) {
			const near = bar({ scale, division: 31, frets: 6 }, { "least-land": "1 mm" });
			expect(labelClaims(near).map((l) => l.text)).not.toContain("NUT");
			expect(labelFaults(near)).toEqual([]);
		}
	});

	it("leaves out of its text what a short bar has no room for, and refuses when nothing fits", () => {
		const job = { job: "A job with quite a long name for its neck" };
		const first = (frets: number) => labelClaims(bar({ frets }, {}, job))[0]!.text;
		expect(first(22)).toContain("quite a long name");
		expect(first(1)).toBe("25 1/2 in   1 fret");
		const tiny = { frets: 1, division: 60, scale: 400 };
		const settings = { "beyond-last-fret": "3 mm", "least-land": "0.1 mm" };
		expect(barCodes(tiny, settings)).toEqual(["label-too-long"]);
	});

	it("tells sag, supports, hump, flip test, lapping and clearance budget", () => {
		const text = part.notes.join("\n");
		for (const word of ["sags 0.0", "supports 266 mm", "no hump", "Flip test", "Lapping", "0.2"]) {
			expect(text).toContain(word);
		}
		expect(text).toContain(
			"warmth 0.354 (10 K) + damp 0.233 + cutting 0.050 + scale 0.000 = 0.637",
		);
	});

	it("tells the hump under an outer string, and the hollow of an unevenly grown radius", () => {
		const side = bar({ strings: SIX_STRINGS, radius: 184.15 }, { along: "bass" });
		expect(side.notes.join("\n")).toMatch(/a hump of 0\.02\d mm under this line/u);
		const uneven = { nut: 254, "12": 267, "last-fret": 355 };
		const grown = bar({ strings: SIX_STRINGS, radius: uneven }, { along: "bass" });
		expect(grown.notes.join("\n")).toMatch(/a hollow of 0\.\d{3} mm under this line/u);
	});
});

describe("the nut end", () => {
	it("stands at the actual face of a moved nut, the frets stay where they are", () => {
		for (const shift of [0.6, -1.2]) {
			const part = bar({ "nut-shift": shift });
			expect(crossingsAtHeight([outlineOf(part)], 12)[0]).toBeCloseTo(shift, 12);
			expect(notchesFrom(part).map((n) => n.centre)).toEqual(
				Array.from({ length: 22 }, (_, i) => expect.closeTo(fretAt(i + 1), 9)),
			);
			expect(sizeClaim(part, "nut-face")).toMatchObject({
				nominal: shift,
				datum: "theoretical nut",
			});
		}
		expect(sizeClaim(bar({}), "nut-face")).toBeUndefined();
	});

	it("cleared arches over the nut and is no working edge", () => {
		const part = bar({ "nut-shift": 0.6 }, { "nut-end": "cleared" });
		const outline = outlineOf(part);
		expect(crossingsAtHeight([outline], 12)[0]).toBeCloseTo(0.6 - 12, 9);
		expect(crossingsAtHeight([outline], 1)[0]).toBeCloseTo(0.6 + 0.75, 9);
		expect(crossingsAtPlace([outline], -5)[0]).toBeCloseTo(8, 9);
		expect(sizeClaim(part, "arch-end")!.nominal).toBeCloseTo(1.35, 9);
		expect(part.workingEdge).toBe("lower edge, between the notches");
	});

	it("arches over a zero fret by default, whose notch it takes in", () => {
		const part = bar({ "zero-fret": true });
		const outline = outlineOf(part);
		expect(crossingsAtHeight([outline], 1)[0]).toBeCloseTo(1.35 + 0.75, 9);
		expect(notchesFrom(part)).toHaveLength(22);
		expect(sizeClaim(part, "notch-0-centre")).toBeUndefined();
		expect(labelClaims(part).some((l) => l.text === "0")).toBe(false);
	});

	it("never butts on a zero fret's neck, and its arch is no lower than a notch there", () => {
		expect(barCodes({ "zero-fret": true }, { "nut-end": "butting" })).toEqual([
			"butting-zero-fret",
		]);
		const low = { "arch-depth": "2 mm", "depth-clearance": "1 mm" };
		const { problems } = madeBar({ "zero-fret": true }, low);
		expect(problems).toMatchObject([
			{ code: "length-range", where: { path: ["arch-depth"] }, facts: { mm: 2 } },
		]);
		expect(barCodes({}, { ...low, "nut-end": "cleared" })).toEqual([]);
	});
});

describe("a bar's height", () => {
	it("is refused where notches, arch, letters or hole would be cut through", () => {
		expect(barCodes({}, { height: "15 mm" })).toEqual([]);
		expect(barCodes({}, { height: "15 mm", "depth-clearance": "5 mm" })).toEqual(["bar-too-low"]);
		const arch = { "nut-end": "cleared", "arch-depth": "20 mm" };
		expect(barCodes({}, { ...arch, height: "29.9 mm" })).toEqual(["bar-too-low"]);
		expect(barCodes({}, { ...arch, height: "30 mm" })).toEqual([]);
		expect(barCodes({}, { height: "15 mm", "hanging-hole": "8 mm" })).toEqual(["bar-too-low"]);
		expect(
			barCodes({}, { height: "15 mm", "second-edge": { scale: "600 mm", frets: 20 } }),
		).toEqual(["bar-too-low"]);
	});

	it("by default suits any arch, hole and second edge", () => {
		const all = {
			"nut-end": "cleared",
			"arch-depth": "30 mm",
			"hanging-hole": "15 mm",
			"second-edge": { scale: "14 in", frets: 12 },
		};
		expect(barCodes({ scale: 352, frets: 12 }, all)).toEqual([]);
	});
});
