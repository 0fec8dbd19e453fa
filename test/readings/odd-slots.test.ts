import { describe, expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitScale, type ScaleFit, type SlotReading } from "../../src/readings/index.js";
import {
	fretsTo,
	GAUSS,
	percent,
	type ReadingError,
	readBoard,
	sound,
	TWELVE_SHARE,
	UNIFORM,
} from "../support/boards.js";
import { seeded } from "../support/seeded.js";

const TOLD = { law: TWELVE, resolution: 0.1 } as const;
const BOARDS = 2000;

describe("an odd slot", () => {
	/** A board with a slot out by some mm, either way, on a fret drawn by lot. */
	function spoilt(next: () => number, error: ReadingError, size: number) {
		const fret = 1 + Math.floor(next() * 22);
		const off = next() < 0.5 ? -size : size;
		const readings = readBoard(next, TWELVE_SHARE, error).map((r) =>
			r.fret === fret ? { fret, at: r.at + off } : r,
		);
		return { fret, readings };
	}
	const fitted = (readings: readonly SlotReading[], nut: "true" | "filed"): ScaleFit =>
		sound(fitScale(readings, { ...TOLD, nut }));

	it.each(["true", "filed"] as const)(
		"of 0.4 mm among errors of ±0.1 mm is found on 99 of 100 boards, nut %s",
		(nut) => {
			const next = seeded(2);
			const share = percent(BOARDS / 2, () => {
				const { fret, readings } = spoilt(next, UNIFORM, 0.4);
				return fitted(readings, nut).odd.includes(fret);
			});
			console.log(`odd slot of 0.4 mm found, nut ${nut}: ${share} % of ${BOARDS / 2}`);
			expect(share).toBeGreaterThanOrEqual(99);
		},
	);

	it.each([
		{ name: "±0.1 mm", error: UNIFORM, boards: BOARDS },
		{ name: "of sd 0.1 mm", error: GAUSS, boards: BOARDS / 2 },
	])("is called on at most 2 of 100 clean boards with errors $name", ({ name, error, boards }) => {
		const next = seeded(3);
		const share = percent(
			boards,
			() => fitted(readBoard(next, TWELVE_SHARE, error), "true").odd.length > 0,
		);
		console.log(`slot called odd on clean boards, errors ${name}: ${share} % of ${boards}`);
		expect(share).toBeLessThanOrEqual(2);
	});

	it("is found the more often the further it is out", () => {
		const sizes = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];
		const shares = sizes.map((size) => {
			const next = seeded(4);
			return percent(200, () => {
				const { fret, readings } = spoilt(next, GAUSS, size);
				return fitted(readings, "true").odd.includes(fret);
			});
		});
		console.log(
			`found among errors of sd 0.1 mm: ${sizes.map((s, i) => `${s} mm ${shares[i]!.toFixed(1)} %`).join(", ")}`,
		);
		for (const [i, share] of shares.entries())
			if (i > 0) expect(share).toBeGreaterThanOrEqual(shares[i - 1]!);
		expect(shares[0]).toBeLessThan(10);
		expect(shares.at(-1)).toBeGreaterThan(97);
	});

	it("is left out of the fit, and its size is said", () => {
		const exact = fretsTo(22).map((fret) => ({ fret, at: 650 * TWELVE_SHARE(fret) }));
		const readings = exact.map((r) => (r.fret === 9 ? { ...r, at: r.at - 0.5 } : r));
		const fit = fitted(readings, "true");
		expect(fit.odd).toEqual([9]);
		expect(fit.scale.value).toBeCloseTo(650, 9);
		expect(fit.rows[8]!.residual).toBeCloseTo(-0.5, 9);
		expect(fit.notes.find((n) => n.code === "slot-odd")!.facts).toMatchObject({ fret: 9 });
	});
});
