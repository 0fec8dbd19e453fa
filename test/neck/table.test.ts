import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fretEnds, fretTable } from "../../src/neck/index.js";
import { neckOf, neckWith } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";

describe("fretTable", () => {
	it("gives every fret of a plain neck from the nut", () => {
		const rows = fretTable(neckWith({ binding: 1.5 }));
		expect(rows.map((r) => r.fret)).toEqual(Array.from({ length: 22 }, (_, i) => i + 1));
		const [first, last] = [rows[0]!, rows[21]!];
		expect(first.fromNut).toBeCloseTo(36.3526, 4);
		expect(first.gap).toBeCloseTo(36.3526, 4);
		expect(last.width).toBeCloseTo(56, 9);
		expect(last.fretLength).toBeCloseTo(56, 9);
		expect(last.slotLength).toBeCloseTo(53, 9);
		expect(last).toMatchObject({ radius: 304.8, bass: null, treble: null, slant: 0 });
	});

	it("has gaps that add up to the positions", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3 }), ({ job, drawn }) => {
				const rows = fretTable(neckOf(job));
				let sum = 0;
				const off = rows.map((row) => {
					sum += row.gap;
					return Math.abs(sum - row.fromNut);
				});
				expect(Math.max(...off)).toBeLessThan(1e-9);
				expect(rows).toHaveLength(drawn.frets + (drawn.zeroFret ? 1 : 0));
			}),
			RUNS,
		);
	});

	it("has both outer strings of a fanned neck, and the same slant for either hand", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), ({ job, drawn }) => {
				const rows = fretTable(neckOf(job));
				const hand = drawn.left ? "right" : "left";
				const other = fretTable(
					neckOf({ ...job, neck: { ...(job.neck as object), handed: hand } }),
				);
				const off = rows.flatMap((row, i) => {
					const u = drawn.share(row.fret);
					return [
						Math.abs(row.bass! - drawn.scale.bass * u),
						Math.abs(row.treble! - drawn.scale.treble * u),
						Math.abs(row.slant - other[i]!.slant),
					];
				});
				expect(Math.max(...off)).toBeLessThan(1e-9);
				// Beyond the square fret the longer string's end lies ahead, the treble end behind.
				const ahead = rows.filter((row) => row.fret !== drawn.squareFret);
				expect(ahead.map((row) => Math.sign(row.slant))).toEqual(
					ahead.map((row) => Math.sign(drawn.squareFret - row.fret)),
				);
			}),
			RUNS,
		);
	});

	it("keeps a zero fret's row at the nut", () => {
		expect(fretTable(neckWith({ "zero-fret": true }))[0]).toMatchObject({
			fret: 0,
			fromNut: 0,
			gap: 0,
			width: 43,
		});
	});
});

describe("fretEnds", () => {
	it("are the table's length apart, bass below on a right-handed neck", () => {
		const neck = neckWith({});
		const { bass, treble } = fretEnds(neck, 12);
		expect(Math.hypot(treble.x - bass.x, treble.y - bass.y)).toBeCloseTo(
			fretTable(neck)[11]!.fretLength,
			12,
		);
		expect(bass.y).toBeLessThan(0);
	});
});
