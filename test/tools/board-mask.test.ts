import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { landBetween } from "../../src/tools/board-mask/sheet.js";
import type { Slot } from "../../src/tools/slot-strip/lay.js";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { outlineOf, pathsOf } from "../support/measure-part.js";
import {
	crossingsAtHeight,
	crossingsAtPlace,
	slotAtHeight,
	slotOf,
} from "../support/measure-path.js";
import {
	expectSound,
	faultsOf,
	foundAfter,
	lacking,
	runFindings,
	sizesOf,
	withPoints,
} from "../support/scale-tools.js";

const THIN = { material: "steel", thickness: 0.3 };
const NARROW = { "crown-width": 1.3, "crown-height": 0.9, "tang-width": 0.45, "tang-depth": 1.4 };
const FANNED = {
	scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
	strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 },
};

function mask(settings: object = {}, neck: object = {}, other: object = {}) {
	return madeParts(jobWith(neck, [{ "board-mask": settings }], { stock: THIN, ...other }));
}

const codes = (settings: object, neck: object = {}, other: object = {}) =>
	mask(settings, neck, other).problems.map((p) => p.code);

// d(n) = 647.7·(1 − 2^(−n/12)).
const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));

describe("the windows of a board mask", () => {
	it("stand over their frets, the crown's width and the clearance wide", () => {
		const part = mask({ "crown-clearance": "0.6 mm" }).parts[0]!;
		for (const n of [1, 12, 22]) {
			const [path] = pathsOf(part, `window ${n}`);
			expect(slotAtHeight(path!, 0)).toBeCloseTo(d(n), 9);
			expect(slotOf(path!).width).toBeCloseTo(2.7 + 0.6, 9);
		}
		expect(pathsOf(part, "window 0")).toHaveLength(0);
		expect(pathsOf(part, "window 23")).toHaveLength(0);
	});

	it("are 2 mm longer than their frets: straight on a flat board, over the crown on a round one", () => {
		const length = (neck: object) =>
			slotOf(pathsOf(mask({}, { width: 56, ...neck }).parts[0]!, "window 12")[0]!).length;
		expect(length({ radius: "flat" })).toBeCloseTo(58, 9);
		// 2R·asin(w/2R) of R = 184.15, w = 56, worked by hand: 56.2183.
		expect(length({ radius: 184.15 })).toBeCloseTo(2 * 184.15 * Math.asin(28 / 184.15) + 2, 9);
		expect(length({ radius: 184.15 })).toBeCloseTo(58.218, 3);
	});

	it("run over the binding, as the crowns do", () => {
		const part = mask({}, { width: 50, binding: 1.5, radius: "flat" }).parts[0]!;
		expect(slotOf(pathsOf(part, "window 5")[0]!).length).toBeCloseTo(52, 9);
	});

	it("lie slanted on a fanned neck and square at its square fret", () => {
		const part = mask({}, FANNED).parts[0]!;
		const lean = (n: number) => {
			const [a, b] = slotOf(pathsOf(part, `window ${n}`)[0]!).ends;
			return (b.x - a.x) / (b.y - a.y);
		};
		expect(lean(7)).toBeCloseTo(0, 9);
		expect(lean(1)).toBeGreaterThan(0.02);
		expect(lean(20)).toBeLessThan(-0.02);
	});

	it("are one more on a neck with a zero fret", () => {
		const part = mask({}, { "zero-fret": true }).parts[0]!;
		expect(slotAtHeight(pathsOf(part, "window 0")[0]!, 0)).toBeCloseTo(0, 9);
		expect(crossingsAtHeight([outlineOf(part)], 0)[0]).toBeCloseTo(-(2.7 + 0.4) / 2 - 4, 9);
	});
});

describe("the outline of a board mask", () => {
	it("is the board and a rail of 8 mm at either side, from the nut's face to past the last window", () => {
		const part = mask({}, { radius: "flat", "nut-shift": 1.2 }).parts[0]!;
		const [left, right] = crossingsAtHeight([outlineOf(part)], 0);
		expect(left).toBeCloseTo(1.2 + 0.5, 9);
		expect(right).toBeCloseTo(d(22) + 3.1 / 2 + 10, 9);
		const at = (x: number) => crossingsAtPlace([outlineOf(part)], x);
		expect(at(d(22) / 2)[1]).toBeCloseTo((43 + 56) / 4 + 8, 9);
	});

	it("is as wide as the way over a round board, the rails besides", () => {
		const part = mask({}, { width: 56, radius: 184.15 }).parts[0]!;
		const [low, high] = crossingsAtPlace([outlineOf(part)], 200);
		expect(high! - low!).toBeCloseTo(2 * 184.15 * Math.asin(28 / 184.15) + 16, 9);
	});

	it("comes in pieces that meet between frets and hold every window once", () => {
		for (const neck of [{}, FANNED]) {
			const { parts } = mask({ pieces: 3 }, neck);
			expect(parts.map((p) => p.name)).toEqual(["board-mask-1", "board-mask-2", "board-mask-3"]);
			const windows = parts.flatMap((p) =>
				p.marks.map((m) => m.feature).filter((f) => f.startsWith("window")),
			);
			expect(windows).toEqual(Array.from({ length: 22 }, (_, i) => `window ${i + 1}`));
			const ends = parts.map((p) => crossingsAtHeight([outlineOf(p)], 0));
			expect(ends[0]![1]).toBeCloseTo(ends[1]![0]!, 9);
			expect(ends[1]![1]).toBeCloseTo(ends[2]![0]!, 9);
			const sizes = parts.map((p) => sizesOf(p).find((c) => c.id === "length")!.nominal);
			expect(Math.max(...sizes) / Math.min(...sizes)).toBeLessThan(1.3);
		}
	});
});

describe("the land between two windows", () => {
	it("is what lies square between them, whichever way they slant", () => {
		// 10 along the neck, slanted by 45°: 10·cos 45° = 7.071 between middles, less the width of 2.
		for (const slant of [-1, 0, 1]) {
			const slot = (x: number) => ({
				fret: { n: 1, x } as Slot["fret"],
				bass: { x: x - 15 * slant, y: -15 },
				treble: { x: x + 15 * slant, y: 15 },
				length: 30 * Math.hypot(1, slant),
			});
			const land = 10 / Math.hypot(1, slant) - 2;
			expect(landBetween(slot(0), slot(10), 2)).toBeCloseTo(land, 9);
		}
	});
});

describe("a board mask is refused", () => {
	it("of a sheet that does not bend over a round board", () => {
		const thick = { stock: { material: "steel", thickness: 0.6 } };
		expect(codes({}, {}, thick)).toEqual(["mask-too-thick"]);
		expect(codes({}, { radius: "flat" }, thick)).toEqual([]);
	});

	it("of sheets between which no file reaches the crowns, layers counted", () => {
		// Half of a crown of 1.3 mm is 0.65.
		const of = (thickness: number, layers = 1) =>
			madeParts(
				jobWith({ radius: "flat" }, [
					{ "board-mask": { stock: { material: "card", thickness }, layers } },
				]),
			).problems.map((p) => [p.code, p.facts.why]);
		expect(of(0.65)).toEqual([]);
		expect(of(0.66)).toEqual([["mask-too-thick", "crown"]]);
		expect(of(0.4, 2)).toEqual([["mask-too-thick", "crown"]]);
	});

	it("where less than 1.5 mm of sheet remains, the narrowest named", () => {
		const { problems } = mask({ "crown-clearance": "3 mm" }, { frets: 30 });
		const land = d(30) - d(29) - 5.7;
		expect(problems).toMatchObject([
			{ code: "mask-land-too-narrow", facts: { fret: 30, before: 29 } },
		]);
		expect(problems[0]!.facts.land).toBeCloseTo(land, 9);
	});

	it("where fanned frets come too near to each other at one end only", () => {
		const steep = { ...FANNED, scale: { bass: "27 in", treble: "10 in", "square-fret": 7 } };
		const { problems } = mask({}, { ...steep, frets: 22 });
		expect(problems.map((p) => p.code)).toEqual(["mask-land-too-narrow"]);
	});

	it("where slanted windows leave its rails no room for letters", () => {
		const steep = { ...FANNED, scale: { bass: "27 in", treble: "20 in", "square-fret": 0 } };
		const wide = { "crown-clearance": "3 mm" };
		const { problems } = mask(wide, { ...steep, frets: 6 });
		expect(problems).toMatchObject([{ code: "length-range", where: { path: ["rail"] } }]);
		expect(codes({ ...wide, rail: "12 mm" }, { ...steep, frets: 6 })).toEqual([]);
	});

	it("in more pieces than there are lands for joints", () => {
		expect(codes({ pieces: 5 }, { frets: 3 })).toEqual(["mask-seams"]);
		expect(codes({ pieces: 3 }, { frets: 3 })).toEqual([]);
	});

	it("where its end lies past a board that narrows to nothing on its radius", () => {
		const neck = { width: { nut: 40, "last-fret": 59.9 }, radius: 30, frets: 5 };
		expect(codes({ "end-margin": "60 mm" }, neck)).toEqual(["radius-below-half-board"]);
	});
});

describe("the letters of a board mask", () => {
	it("stay off an end that comes in with slanted frets", () => {
		const steep = {
			scale: { bass: 559.94, treble: 503.946, "square-fret": 0 },
			radius: 184,
			frets: 15,
			width: 30,
			strings: { count: 4, "at-nut": 24.8, "at-saddle": 24.8 },
		};
		const settings = {
			pieces: 3,
			rail: "8.3 mm",
			"crown-clearance": 0,
			"end-margin": "24.4 mm",
		};
		const { parts, problems } = mask(settings, steep, { job: "Any neck", wire: NARROW });
		expect(problems).toEqual([]);
		expect(parts.flatMap(faultsOf)).toEqual([]);
	});

	it("stay 3 mm off the windows with what hangs below their line", () => {
		const neck = { scale: 477.29, frets: 12, radius: { nut: 184, "last-fret": 300 }, width: 30 };
		for (const rail of [8, 8.1, 8.2, 8.3, 8.4]) {
			const settings = { pieces: 3, rail: `${rail} mm`, "crown-clearance": 0 };
			const { parts, problems } = mask(settings, neck, { job: "Jaggy query", wire: NARROW });
			expect(problems).toEqual([]);
			expect(parts.flatMap(faultsOf)).toEqual([]);
		}
	});
});

describe("any board mask", () => {
	const settings = fc.record(
		{
			"crown-clearance": fc.constantFrom("0 mm", "0.8 mm"),
			rail: fc.constantFrom("8 mm", "15 mm"),
			"end-margin": fc.constantFrom("3 mm", "25 mm"),
			pieces: fc.constantFrom(1, 2, 3),
		},
		{ requiredKeys: [] },
	);

	it("is sound on any neck, its claims what is cut", () => {
		const thin = (job: object) => ({
			...job,
			stock: { material: "steel", thickness: "0.3 mm" },
		});
		expectSound("board-mask", settings, { leastGap: 7 }, thin);
	});
});

describe("a written board mask", () => {
	const own = "stock: {material: steel, thickness: 0.3 mm}";
	const kerf = (text: string) => text.replace("make:", "machine: {kerf: 0.16 mm}\nmake:");
	const text = kerf(making(`board-mask: {${own}}`));
	const fanned = kerf(
		making(`board-mask: {${own}, pieces: 2}`).replace(
			"scale: 648 mm",
			"scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}",
		),
	);

	it("is found as promised in every format", async () => {
		expect(await runFindings(text)).toEqual([]);
		expect(await runFindings(fanned)).toEqual([]);
	});

	const isWindow = (feature: string) => feature === "window 7";

	it.each([
		["undamaged", (p) => p, undefined],
		[
			"a window moved by 0.02 mm",
			(p) => withPoints(p, isWindow, (q) => ({ ...q, x: q.x + 0.02 })),
			"claim-failed",
		],
		[
			"a window shorter by 0.04 mm",
			(p) => withPoints(p, isWindow, (q) => ({ ...q, y: q.y * (1 - 0.04 / 50) })),
			"claim-failed",
		],
		["a window less", (p) => lacking(p, "window 7"), "feature-missing"],
	] as [string, Parameters<typeof foundAfter>[1], string | undefined][])(
		"is found out where it is damaged: %s",
		async (_, change, code) => {
			const found = await foundAfter(text, change);
			if (code === undefined) expect(found).toEqual([]);
			else expect(found).toContain(code);
		},
	);
});
