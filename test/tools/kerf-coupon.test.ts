import { Clipper, EndType, FillRule, JoinType, type PathsD } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Mark, Part, SizeClaim } from "../../src/drawing/index.js";
import { problemText } from "../../src/problem/index.js";
import { kerfFromBlocks } from "../../src/shop/index.js";
import { offTexts } from "../../src/tools/kerf-coupon/labels.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { measured, outlineOf } from "../support/measure-part.js";
import { notchesOf } from "../support/measure-path.js";
import { labelFaults } from "../support/part-faults.js";

const made = (settings: object = {}, other: object = {}) =>
	madeParts(jobWith({}, [{ "kerf-coupon": settings }], other));

function coupon(settings: object = {}, other: object = {}): Part {
	const { parts, problems } = made(settings, other);
	expect(problems).toEqual([]);
	return parts[0]!;
}

const cutsOf = (part: Part) => part.marks.filter(({ operation }) => operation === "cut");
const sizesOf = (part: Part) => part.claims.filter((c): c is SizeClaim => c.kind !== "label");
const textsOf = (part: Part) => part.claims.flatMap((c) => (c.kind === "label" ? [c.text] : []));

/** Decimals that the clipper keeps. */
const DECIMALS = 6;

/** Pieces that a round beam along the first cuts of a part leaves of its plate, arcs as chords. */
function piecesAfter(part: Part, cuts: readonly Mark[], kerf: number) {
	const paths = (marks: readonly Mark[]) => marks.map(({ path }) => path.points.map((p) => p));
	const sweep = (marks: readonly Mark[], end: EndType) =>
		Clipper.inflatePathsD(paths(marks), kerf / 2, JoinType.Round, end, 2, DECIMALS);
	const swept = [
		...sweep(
			cuts.filter(({ path }) => !path.closed),
			EndType.Round,
		),
		...sweep(
			cuts.filter(({ path }) => path.closed),
			EndType.Joined,
		),
	];
	const plate: PathsD = [outlineOf(part).points.map((p) => p)];
	const left = Clipper.differenceD(plate, swept, FillRule.NonZero, DECIMALS);
	return left
		.filter((path) => Clipper.areaD(path) > 0)
		.map((path) => {
			const [xs, ys] = [path.map((p) => p.x), path.map((p) => p.y)];
			const wide = Math.max(...xs) - Math.min(...xs);
			const high = Math.max(...ys) - Math.min(...ys);
			return { wide, high, area: Clipper.areaD(path) };
		})
		.sort((a, b) => b.area - a.area);
}

describe("the kerf coupon", () => {
	it.each([
		[10, 10, 0.16],
		[5, 4, 0.08],
		[20, 6, 0.31],
		[7, 30, 1.9],
	])(
		"of %i blocks at %d mm lets just those fall, a kerf of %d smaller each",
		(blocks, pitch, kerf) => {
			const part = coupon({ blocks, pitch });
			const [plate, ...pieces] = piecesAfter(part, cutsOf(part), kerf);
			expect(plate!.wide).toBeGreaterThan(blocks * pitch + 10);
			expect(pieces).toHaveLength(blocks);
			for (const { wide, high, area } of pieces) {
				expect(wide).toBeCloseTo(pitch - kerf, 5);
				expect(high).toBeCloseTo(20 - kerf, 5);
				expect(area).toBeCloseTo((pitch - kerf) * (20 - kerf), 3);
			}
			const over = pieces.reduce((sum, { wide }) => sum + wide, 0);
			const nominal = blocks * pitch;
			const found = kerfFromBlocks({ blocks, nominal, measured: [over], resolution: 0.02 });
			expect(found).toMatchObject({ kerf: expect.closeTo(kerf, 5) });
		},
	);

	it("keeps every block on the plate until the second frame line is cut", () => {
		const part = coupon();
		const cuts = cutsOf(part);
		expect(cuts.map(({ feature }) => feature)).toEqual([
			...Array.from({ length: 11 }, (_, i) => `line ${i}`),
			"lower frame line",
			"upper frame line",
			"outline",
		]);
		for (const upTo of [11, 12])
			expect(piecesAfter(part, cuts.slice(0, upTo), 0.16)).toHaveLength(1);
		expect(piecesAfter(part, cuts.slice(0, 13), 0.16)).toHaveLength(11);
	});

	it("cuts between two blocks once, on one line with both ends past the blocks", () => {
		const lines = cutsOf(coupon()).filter(({ feature }) => /^line \d/u.test(feature));
		expect(lines.map(({ path }) => path.points.map(({ x, y }) => [x, y]))).toEqual(
			Array.from({ length: 11 }, (_, i) => [
				[10 * i, -1.5],
				[10 * i, 21.5],
			]),
		);
	});

	it("says how the kerf follows from a caliper's reading", () => {
		const texts = textsOf(coupon());
		expect(texts).toContain("KERF COUPON");
		expect(texts).toContain("100 mm nominal, acrylic 3 mm");
		expect(texts).toContain("k = (100 - measured) / 10");
		expect(texts).toEqual(expect.arrayContaining(["1", "5", "10"]));
		expect(textsOf(coupon({ blocks: 8, pitch: "0.5 in" }))).toContain("k = (101.6 - measured) / 8");
	});

	it("has slots around the sheet's thickness, each with what it is off", () => {
		// By hand: 3 mm - 0.16 mm in the middle, four steps of 0.02 mm either way.
		const part = coupon();
		const widths = notchesOf(outlineOf(part)).map(({ width }) => width);
		const wanted = [2.76, 2.78, 2.8, 2.82, 2.84, 2.86, 2.88, 2.9, 2.92];
		expect(widths).toHaveLength(wanted.length);
		for (const [i, width] of wanted.entries()) expect(widths[i]).toBeCloseTo(width, 9);
		const offs = ["-0.24", "-0.22", "-0.20", "-0.18", "-0.16", "-0.14", "-0.12", "-0.10", "-0.08"];
		expect(textsOf(part).slice(-9)).toEqual(offs);
		const about = textsOf(coupon({ "fit-middle": 0, fits: 5 }));
		expect(about.slice(-5)).toEqual(["-0.04", "-0.02", "0.00", "+0.02", "+0.04"]);
	});

	it("writes every offset under its own slot", () => {
		const part = coupon({ fits: 7, step: 0.05 });
		const notches = notchesOf(outlineOf(part));
		const labels = part.claims.filter((c) => /^label-slot-\d/u.test(c.id));
		expect(labels).toHaveLength(7);
		for (const [i, { id, feature }] of labels.entries()) {
			const xs = part.marks
				.filter((m) => m.feature === feature)
				.flatMap(({ path }) => path.points.map(({ x }) => x));
			const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
			expect(Math.abs(middle - notches[i]!.centre), id).toBeLessThan(0.5);
		}
	});

	it("has no slots for a cutter wider than they are, unless they are asked for", () => {
		const mill = { machine: { kind: "mill" } };
		expect(notchesOf(outlineOf(coupon({}, mill)))).toEqual([]);
		expect(notchesOf(outlineOf(coupon({ fits: 3 }, mill)))).toHaveLength(3);
		expect(notchesOf(outlineOf(coupon({ fits: 0 })))).toEqual([]);
	});

	it("is meant as drawn, and says so", () => {
		const part = coupon();
		expect(part.nominal).toBe(true);
		expect(part.notes.join("\n")).toContain("no offset set in the cutting program");
		expect(part.workingEdge).toContain("10 blocks");
	});

	it("keeps what it claims and its letters clear, whatever is asked for", () => {
		const settings = fc.record({
			blocks: fc.integer({ min: 5, max: 20 }),
			pitch: fc.double({ min: 5, max: 30, noNaN: true }),
			fits: fc.integer({ min: 0, max: 15 }),
			step: fc.double({ min: 0.005, max: 0.1, noNaN: true }),
			"fit-middle": fc.double({ min: -0.3, max: 1, noNaN: true }),
		});
		const thickness = fc.double({ min: 1.5, max: 12, noNaN: true });
		fc.assert(
			fc.property(settings, thickness, (given, thick) => {
				const part = coupon(given, { stock: { material: "plywood", thickness: thick } });
				expect(labelFaults(part)).toEqual([]);
				const ids = part.claims.map(({ id }) => id);
				expect(new Set(ids).size).toBe(ids.length);
				for (const claim of sizesOf(part)) {
					expect(measured(part, claim), claim.id).toBeCloseTo(claim.nominal, 6);
				}
			}),
			{ numRuns: 20, seed: 7 },
		);
	});

	it("claims the width of every slot and the place of every line", () => {
		const ids = sizesOf(coupon()).map(({ id }) => id);
		expect(ids.filter((id) => /^line-\d+$/u.test(id))).toHaveLength(10);
		expect(ids.filter((id) => /^slot-\d+-width$/u.test(id))).toHaveLength(9);
		expect(ids).toEqual(expect.arrayContaining(["block-height", "length", "height"]));
	});

	it.each([
		[{ pitch: 3, blocks: 20 }, {}, "block-too-narrow", "blocks 3 mm wide"],
		[{ "fit-middle": -1, step: 0.5 }, {}, "fit-slot-too-narrow", "no width at all"],
		[{}, { stock: { material: "card", thickness: 0.4 } }, "fit-slot-too-narrow", "0.16 mm wide"],
	])("refuses %j with %j", (settings, other, code, says) => {
		const { parts, problems } = made(settings, other);
		expect(parts).toEqual([]);
		expect(problems.map((p) => p.code)).toEqual([code]);
		expect(problemText(problems[0]!)).toContain(says);
	});

	it("takes the pitch that it names when it refuses one", () => {
		const [refused] = made({ pitch: 3, blocks: 20 }).problems;
		const { least } = refused!.facts as { least: number };
		expect(labelFaults(coupon({ pitch: least, blocks: 20 }))).toEqual([]);
		expect(made({ pitch: least - 0.2, blocks: 20 }).parts).toEqual([]);
	});
});

describe("offTexts", () => {
	it("tells offsets with their sign and to the same decimals", () => {
		expect(offTexts([-0.1, 0, 0.02])).toEqual(["-0.10", "0.00", "+0.02"]);
		expect(offTexts([-0.015, -1e-17, 0.005])).toEqual(["-0.015", "0.000", "+0.005"]);
		expect(offTexts([])).toEqual([]);
	});
});
