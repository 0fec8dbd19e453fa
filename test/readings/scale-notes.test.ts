import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Law, TWELVE } from "../../src/neck/index.js";
import { problemText } from "../../src/problem/index.js";
import { READINGS_SCALE } from "../../src/problem/words/readings-scale.js";
import {
	fitFanned,
	fitScale,
	type ScaleFit,
	type ScaleOptions,
	type SlotReading,
} from "../../src/readings/index.js";
import {
	EIGHTEEN_SHARE,
	fretsTo,
	percent,
	readBoard,
	type Share,
	sound,
	TWELVE_SHARE,
	UNIFORM,
} from "../support/boards.js";
import { readingFaultsScale } from "../support/reading-faults-scale.js";
import { seeded } from "../support/seeded.js";

const TOLD: ScaleOptions = { law: TWELVE, resolution: 0.1, nut: "true", frets: 22 };

function exact(frets: readonly number[], scale = 650, share: Share = TWELVE_SHARE, behind = 0) {
	return frets.map((fret) => ({ fret, at: behind + scale * share(fret) }));
}

function fitted(readings: readonly SlotReading[], options: Partial<ScaleOptions> = {}): ScaleFit {
	return sound(fitScale(readings, { ...TOLD, ...options }));
}

describe("a nut told to be true that is not", () => {
	it.each([-0.7, 0.7])("is said, and no other law or odd slot taken for it: %d mm", (behind) => {
		const fit = fitted(exact(fretsTo(22), 650, TWELVE_SHARE, behind));
		expect(fit.kind).toBe("told");
		expect(fit.odd).toEqual([]);
		expect(fit.offset).toBeNull();
		// Through the nut L = Σ x·u / Σ u², so it is out by behind·Σ u / Σ u².
		const sum = (of: (u: number) => number) =>
			fretsTo(22).reduce((total, n) => total + of(TWELVE_SHARE(n)), 0);
		const through = 650 + (behind * sum((u) => u)) / sum((u) => u * u);
		expect(fit.scale.value).toBeCloseTo(through, 9);
		const said = fit.notes.filter((n) => n.code === "nut-end-off");
		expect(said).toHaveLength(1);
		expect(said[0]!.facts.offset).toBeCloseTo(behind, 9);
		expect(said[0]!.facts.scale).toBeCloseTo(650, 9);
		expect(problemText(said[0]!)).toMatch(/0\.7 mm .*as told\. .*650 mm\.$/u);
	});

	it("is found on 95 % of boards with reading errors, and on few where the nut is true", () => {
		const found = (behind: number) => {
			const next = seeded(6);
			return percent(300, () => {
				const fit = fitted(readBoard(next, TWELVE_SHARE, UNIFORM, behind));
				return fit.kind === "told" && fit.notes.some((n) => n.code === "nut-end-off");
			});
		};
		const [off, clean] = [found(-0.7), found(0)];
		console.log(`nut out by 0.7 mm found: ${off} %; a true one called out: ${clean} %`);
		expect(off).toBeGreaterThanOrEqual(95);
		expect(clean).toBeLessThanOrEqual(3);
	});

	it("is said of each string of a fanned board", () => {
		const fit = sound(
			fitFanned(
				{
					bass: exact(fretsTo(20), 690, TWELVE_SHARE, -0.7),
					treble: exact(fretsTo(20), 650, TWELVE_SHARE, 0.4),
				},
				{ ...TOLD, from: "nut" },
			),
		);
		const said = fit.notes.filter((n) => n.code === "nut-end-off");
		expect(fit.kind).toBe("told");
		expect(said.map((n) => n.facts.offset as number)).toEqual([
			expect.closeTo(-0.7, 9),
			expect.closeTo(0.4, 9),
		]);
	});
});

describe("laws that the slots fit alike", () => {
	it("are named, with a range of frets that tells them apart", () => {
		const fit = fitted(exact([1, 2, 3, 4]), { nut: "unknown" });
		expect(fit.undecided!.laws).toEqual(["told", "rule-of-18"]);
		// 18 unread, a quarter of them is 5.
		expect(fit.undecided!.read).toEqual({ from: 18, to: 22 });
		const read = [1, 2, 3, 4, 18, 19, 20, 21, 22];
		for (const [share, kind] of [
			[TWELVE_SHARE, "told"],
			[EIGHTEEN_SHARE, "rule-of-18"],
		] as const) {
			const again = fitted(exact(read, 650, share), { nut: "unknown" });
			expect(again.kind).toBe(kind);
			expect(again.undecided).toBeNull();
		}
	});

	it("are said of a fanned board too", () => {
		const bass = exact([1, 2, 3, 4], 690);
		const treble = exact([1, 2, 3, 4]);
		const fit = sound(fitFanned({ bass, treble }, { ...TOLD, nut: "filed", from: "nut" }));
		const codes = fit.notes.map((n) => n.code);
		expect(codes).toContain("laws-alike");
		expect(codes).toContain("scatter-below-step");
		expect(fit.undecided!.read!.to).toBe(22);
	});
});

describe("readings of every kind", () => {
	const LISTED: Law = {
		kind: "listed",
		ratios: fretsTo(24).map((n) => 2 ** (n / 12)),
	};
	const frets = fc.uniqueArray(fc.integer({ min: 1, max: 22 }), { maxLength: 9 });
	const slots = fc
		.tuple(frets, fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 9 }))
		.map(([all, off]) =>
			all.map((fret, i) => ({ fret, at: 650 * TWELVE_SHARE(fret) + Math.round(off[i]!) })),
		);
	const nut = fc.constantFrom("true", "filed", "unknown") as fc.Arbitrary<ScaleOptions["nut"]>;
	const law = fc.constantFrom<Law>(TWELVE, { kind: "rule-of-18" }, LISTED);

	it("are fitted or refused in words, and never throw", () => {
		let fits = 0;
		fc.assert(
			fc.property(slots, slots, nut, law, fc.boolean(), (bass, treble, end, told, isSquare) => {
				const options = { ...TOLD, law: told, nut: end };
				const from = isSquare ? "square-line" : "nut";
				for (const fit of [
					fitScale(bass, options),
					fitFanned({ bass, treble }, { ...options, from }),
				]) {
					const said = Array.isArray(fit) ? fit : fit.notes;
					for (const p of said) expect(problemText(p).length).toBeGreaterThan(20);
					if (!Array.isArray(fit)) fits++;
				}
			}),
			{ seed: 7, numRuns: 300 },
		);
		expect(fits).toBeGreaterThan(100);
	});

	it("meet every code that has words", () => {
		const met = new Set(readingFaultsScale().map((p) => p.code));
		expect(Object.keys(READINGS_SCALE).filter((code) => !met.has(code))).toEqual([]);
	});
});
