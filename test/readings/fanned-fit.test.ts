import { describe, expect, it } from "vitest";
import {
	constant,
	crossingOf,
	fannedGuides,
	fretFraction,
	fretLine,
	lineLength,
	type Neck,
	pointOnFret,
	type Strings,
	TWELVE,
} from "../../src/neck/index.js";
import { type FannedOptions, type FannedReadings, fitFanned } from "../../src/readings/index.js";
import { fretsTo, percent, type ReadingError, sound, TWELVE_SHARE } from "../support/boards.js";
import { normal, seeded } from "../support/seeded.js";

const STRINGS: Strings = { count: 7, pairGap: 0, atNut: 48, atSaddle: 64 };
const SPREAD = { atNut: STRINGS.atNut, atSaddle: STRINGS.atSaddle };
const SCALE = { bass: 685.8, treble: 647.7, squareFret: 8.5 };
const TOLD: FannedOptions = { law: TWELVE, resolution: 0.02, nut: "true", frets: 24, from: "nut" };
const none: ReadingError = () => 0;

function fannedNeck(scale = SCALE): Neck {
	const known = { frets: 24, law: TWELVE, scale, trebleSide: 1, zeroFret: false } as const;
	const board = { radius: "flat", width: constant(60), binding: 0, markers: [] } as const;
	const numbers = { nutShift: 0, scaleUncertainty: 0, strings: STRINGS };
	const guides = fannedGuides(scale, TWELVE, STRINGS, 1);
	return { ...known, ...board, ...numbers, guides };
}

/** Slots read along both outer strings, from their nut ends or from a square line at x. */
function readings(
	neck: Neck,
	line: number | null,
	error: ReadingError = none,
	next = seeded(1),
): FannedReadings {
	const along = (side: "bass" | "treble") => {
		const guide = neck.guides[side];
		const cosine = (guide.saddle.x - guide.nut.x) / lineLength(guide);
		const before = line === null ? 0 : (guide.nut.x - line) / cosine;
		return fretsTo(22).map((fret) => ({
			fret,
			at: before + crossingOf(neck, guide, fret).along + error(next),
		}));
	};
	return { bass: along("bass"), treble: along("treble") };
}

describe("fitFanned on exact readings", () => {
	it.each([
		["with the line before the nut", -30],
		["with the line between the nut and the first frets", 3],
	])("finds both scales and the square fret from a square line, %s", (_, line) => {
		for (const squareFret of [0.25, 7, 8.5, 12, 20]) {
			const neck = fannedNeck({ ...SCALE, squareFret });
			const options = { ...TOLD, from: "square-line", spread: SPREAD } as const;
			const fit = sound(fitFanned(readings(neck, line), options));
			expect(fit.scale.bass.value).toBeCloseTo(SCALE.bass, 6);
			expect(fit.scale.treble.value).toBeCloseTo(SCALE.treble, 6);
			expect(fit.squareFret!.value).toBeCloseTo(squareFret, 6);
			// The fret found lies square on the neck itself, both its ends level.
			const found = fretLine(neck, fit.squareFret!.value);
			expect(pointOnFret(found, 30).x - pointOnFret(found, -30).x).toBeCloseTo(0, 6);
			expect(fit.kind).toBe("told");
		}
	});

	it("is a hair off the square fret where no spread is told", () => {
		const options = { ...TOLD, from: "square-line" } as const;
		const fit = sound(fitFanned(readings(fannedNeck(), -30), options));
		const off = Math.abs(fit.squareFret!.value - SCALE.squareFret);
		expect(off).toBeGreaterThan(1e-6);
		expect(off).toBeLessThan(0.02);
	});

	it("finds both scales from the nut ends, and says that they tell no square fret", () => {
		for (const nut of ["true", "filed", "unknown"] as const) {
			const fit = sound(fitFanned(readings(fannedNeck(), null), { ...TOLD, nut }));
			expect(fit.scale.bass.value).toBeCloseTo(SCALE.bass, 9);
			expect(fit.scale.treble.value).toBeCloseTo(SCALE.treble, 9);
			expect(fit.squareFret).toBeNull();
			expect(fit.offset === null).toBe(nut !== "filed");
			expect(fit.notes.map((n) => n.code)).toContain("square-fret-unknown");
		}
	});
});

describe("fitFanned on cases worked by hand", () => {
	it("two scales of 700 and 600 mm level at fret 12: the nuts are 50 mm apart", () => {
		// 10 + 700/2 = 60 + 600/2
		const line = (offset: number, scale: number) =>
			fretsTo(20).map((fret) => ({ fret, at: offset + scale * TWELVE_SHARE(fret) }));
		const read = { bass: line(10, 700), treble: line(60, 600) };
		const fit = sound(fitFanned(read, { ...TOLD, from: "square-line" }));
		expect(fit.squareFret!.value).toBeCloseTo(12, 9);
		expect(fit.offset!.bass.value).toBeCloseTo(10, 9);
		expect(fit.offset!.treble.value).toBeCloseTo(60, 9);
		// Var D = s²·2·h, h the leverage of fret 12 on one string; over dD/dp = 100·u′(12).
		const u = fretsTo(20).map(TWELVE_SHARE);
		const mean = u.reduce((a, b) => a + b) / 20;
		const spread = u.reduce((sum, x) => sum + (x - mean) ** 2, 0);
		const leverage = 1 / 20 + (0.5 - mean) ** 2 / spread;
		const slope = (100 * Math.LN2) / 12 / 2;
		const standard = ((0.02 / Math.sqrt(12)) * Math.sqrt(2 * leverage)) / slope;
		expect(fit.squareFret!.standard / standard).toBeCloseTo(1, 6);
	});

	it("two slots on each string from the nut ends", () => {
		// 1 − 2^(−12/12) = 1/2 and 1 − 2^(−24/12) = 3/4, so 340/0.5 = 510/0.75 = 680.
		const read = {
			bass: [
				{ fret: 12, at: 340 },
				{ fret: 24, at: 510 },
			],
			treble: [
				{ fret: 12, at: 320 },
				{ fret: 24, at: 480 },
			],
		};
		const fit = sound(fitFanned(read, TOLD));
		expect(fit.scale.bass.value).toBeCloseTo(680, 9);
		expect(fit.scale.treble.value).toBeCloseTo(640, 9);
		expect(fit.df).toBe(2);
	});

	it("an odd slot is said at its string", () => {
		const exact = readings(fannedNeck(), null);
		const treble = exact.treble.map((r) => (r.fret === 7 ? { ...r, at: r.at + 0.6 } : r));
		const fit = sound(fitFanned({ ...exact, treble }, TOLD));
		expect(fit.odd).toEqual({ bass: [], treble: [7] });
		const said = fit.notes.filter((n) => n.code === "slot-odd");
		expect(said.map((n) => n.where.path)).toEqual([["slots", "treble", "7"]]);
		expect(said[0]!.facts.off).toBeCloseTo(0.6, 9);
	});

	it("two slots of a string that disagree are refused, whatever the other string says", () => {
		const { bass } = readings(fannedNeck(), null);
		const treble = [
			{ fret: 5, at: 162.5 },
			{ fret: 12, at: 327 },
		];
		const found = fitFanned({ bass, treble }, TOLD);
		expect(Array.isArray(found) && found.map((p) => [p.code, p.where.path])).toEqual([
			["slots-disagree", ["slots", "treble"]],
		]);
		const swapped = fitFanned({ bass: treble, treble: bass }, TOLD);
		expect(Array.isArray(swapped) && swapped[0]!.where.path).toEqual(["slots", "bass"]);
	});

	it("two slots of a string with its nut free are taken, and called unchecked", () => {
		const { bass, treble } = readings(fannedNeck(), null);
		const two = treble.filter((r) => r.fret === 3 || r.fret === 20);
		const fit = sound(fitFanned({ bass, treble: two }, { ...TOLD, nut: "filed" }));
		expect(fit.scale.treble.value).toBeCloseTo(SCALE.treble, 9);
		const said = fit.notes.filter((n) => n.code === "string-unchecked");
		expect(said.map((n) => n.where.path)).toEqual([["slots", "treble"]]);
	});
});

describe("fitFanned on readings with errors", () => {
	it("holds scales and square fret within their 95 % intervals", () => {
		const next = seeded(8);
		const boards = 1000;
		const neck = fannedNeck();
		const options = { ...TOLD, from: "square-line", spread: SPREAD } as const;
		const held = { bass: 0, treble: 0, squareFret: 0 };
		const told = percent(boards, () => {
			const fit = sound(
				fitFanned(
					readings(neck, -30, (n) => 0.1 * normal(n), next),
					options,
				),
			);
			const found = { ...fit.scale, squareFret: fit.squareFret! };
			for (const key of ["bass", "treble", "squareFret"] as const)
				if (found[key].low <= SCALE[key] && SCALE[key] <= found[key].high) held[key]++;
			return fit.kind === "told";
		});
		const shares = Object.entries(held).map(([key, n]) => [key, (100 * n) / boards] as const);
		console.log(`fanned, within 95 %: ${JSON.stringify(shares)}; told law ${told} % of ${boards}`);
		expect(told).toBeGreaterThanOrEqual(95);
		for (const [key, share] of shares) {
			expect(share, key).toBeGreaterThanOrEqual(92.5);
			expect(share, key).toBeLessThanOrEqual(97.5);
		}
	});

	it("the fret's share of the string is the law's, on both strings", () => {
		const neck = fannedNeck();
		for (const side of ["bass", "treble"] as const)
			expect(crossingOf(neck, neck.guides[side], 5).along / SCALE[side]).toBeCloseTo(
				fretFraction(TWELVE, 5),
				12,
			);
	});
});
