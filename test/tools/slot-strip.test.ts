import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Path } from "../../src/geometry/index.js";
import { fretAt, SIX_STRINGS } from "../support/bars.js";
import { madeParts } from "../support/made-parts.js";
import { outlineOf, pathsOf } from "../support/measure-part.js";
import {
	arcsOf,
	crossingsAtHeight,
	crossingsAtPlace,
	slotAtHeight,
	slotOf,
} from "../support/measure-path.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import { strip, stripCodes } from "../support/strips.js";

describe("the slots of a strip", () => {
	it("stand at L·u(n) on the centre line, scored or cut, on any neck of one scale", () => {
		const slots = fc.constantFrom("scored", "tang", "line");
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: false }), slots, ({ job, drawn }, kind) => {
				const make = [{ "slot-strip": { slots: kind } }];
				const [part] = madeParts({ ...job, make }).parts;
				const off = Array.from({ length: drawn.frets }, (_, i) => {
					const [path] = pathsOf(part!, `slot ${i + 1}`);
					const wanted = drawn.scale.bass * drawn.share(i + 1);
					return Math.abs(slotAtHeight(path!, 0) - wanted);
				});
				expect(Math.max(...off)).toBeLessThan(1e-9);
				expect(pathsOf(part!, "slot 0")).toHaveLength(drawn.zeroFret ? 1 : 0);
			}),
			RUNS,
		);
	});

	it("cross both outer strings at exactly fretAt(n) on any fanned neck, measured from its nut line", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), ({ job, drawn }) => {
				const make = [{ "slot-strip": { slots: "scored" } }];
				const part = madeParts({ ...job, make }).parts[0]!;
				const nut = pathsOf(part, drawn.zeroFret ? "slot 0" : "theoretical nut")[0]!;
				const count = new Set(part.marks.map((m) => m.feature)).size;
				const outer = Array.from({ length: count }, (_, i) => pathsOf(part, `string line ${i + 1}`))
					.filter((dashes) => dashes.length > 0)
					.filter((_, i, all) => i === 0 || i === all.length - 1);
				const off = outer.flatMap((dashes, side) => {
					const scale = side === 0 ? drawn.scale.bass : drawn.scale.treble;
					const line = { a: middleOf(dashes[0]!), b: middleOf(dashes.at(-1)!) };
					const from = meeting(line, nut);
					return Array.from({ length: drawn.frets }, (_, i) => {
						const at = meeting(line, pathsOf(part, `slot ${i + 1}`)[0]!);
						const way = Math.hypot(at.x - from.x, at.y - from.y);
						return Math.abs(way - scale * drawn.share(i + 1));
					});
				});
				expect(off).toHaveLength(2 * drawn.frets);
				expect(Math.max(...off)).toBeLessThan(1e-9);
			}),
			RUNS,
		);
	});

	it("are square at the square fret of a fanned neck", () => {
		const scale = { bass: "28 in", treble: "26 in", "square-fret": 7 };
		const part = strip({ scale, strings: SIX_STRINGS });
		const [a, b] = slotOf(pathsOf(part, "slot 7")[0]!).ends;
		expect(Math.abs(a.x - b.x)).toBeLessThan(1e-12);
		const slant = (n: number) => part.claims.find((c) => c.id === `slot-${n}-slant`)!.nominal;
		expect(slant(7)).toBeCloseTo(0, 12);
		expect(slant(1)).toBeGreaterThan(0.05);
		expect(slant(20)).toBeLessThan(-0.05);
	});

	it("are as wide as the tang where they are cut, and end blind inside the binding", () => {
		const part = strip({ binding: 1.5, width: 50 }, { slots: "tang" });
		for (const n of [1, 12, 22]) {
			const { length, width, ends } = slotOf(pathsOf(part, `slot ${n}`)[0]!);
			expect(width).toBeCloseTo(0.53, 12);
			expect(length).toBeCloseTo(47, 12);
			expect(ends.map((p) => Math.abs(p.y))).toEqual([23.5, 23.5]);
		}
		expect(part.notes.join(" ")).toContain("Slots end 1.500 mm inside the edge");
	});

	it("reach from edge to edge where they are scored on a board without binding", () => {
		const { ends } = slotOf(pathsOf(strip({ width: 50 }), "slot 5")[0]!);
		expect(ends.map((p) => Math.abs(p.y))).toEqual([25, 25]);
	});
});

function middleOf({ points }: Path) {
	const [a, b] = [points[0]!, points.at(-1)!];
	return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Where a line through two points meets a slot. */
function meeting(
	{ a, b }: { a: { x: number; y: number }; b: { x: number; y: number } },
	slot: Path,
) {
	const [p, q] = slotOf(slot).ends;
	const [dx, dy, ex, ey] = [b.x - a.x, b.y - a.y, q.x - p.x, q.y - p.y];
	const t = ((p.x - a.x) * ey - (p.y - a.y) * ex) / (dx * ey - dy * ex);
	return { x: a.x + t * dx, y: a.y + t * dy };
}

describe("the outline of a strip", () => {
	it("is the board, longer by the end margin at both ends", () => {
		const outline = [outlineOf(strip({}))];
		const ends = crossingsAtHeight(outline, 0.1);
		expect(ends).toEqual([-10, fretAt(22) + 10].map((x) => expect.closeTo(x, 9)));
		expect(crossingsAtPlace(outline, 0).map(Math.abs)).toEqual([21.5, 21.5]);
		expect(crossingsAtPlace(outline, fretAt(22))[1]).toBeCloseTo(28, 9);
	});

	it("is wider by the edge margin, 5 mm where slots are cut", () => {
		const half = (settings: object) => crossingsAtPlace([outlineOf(strip({}, settings))], 0)[1];
		expect(half({ "edge-margin": "3 mm" })).toBeCloseTo(24.5, 9);
		expect(half({ slots: "tang" })).toBeCloseTo(26.5, 9);
	});

	it("bends where the board's width does, even right beside its end", () => {
		const width = (x: string) => ({ nut: 43, [x]: 56 });
		for (const x of ["300 mm", "474 mm", "475.5 mm", "475.9 mm"]) {
			const outline = [outlineOf(strip({ width: width(x) }))];
			const rounded = arcsOf(outline[0]!).map((a) => a.radius);
			expect(rounded).toEqual(Array(4).fill(expect.closeTo(1.5, 9)));
			expect(crossingsAtPlace(outline, 200)[1]).toBeCloseTo(
				21.5 + (6.5 * 200) / Number.parseFloat(x),
				9,
			);
		}
	});

	it("reaches past the nut, moved or slanted", () => {
		const from = (neck: object) => crossingsAtHeight([outlineOf(strip(neck))], 0.1)[0]!;
		expect(from({ "nut-shift": -5 })).toBeCloseTo(-15, 9);
		expect(from({ "nut-shift": 5 })).toBeCloseTo(-10, 9);
		const fan = { scale: { bass: 711.2, treble: 660.4, "square-fret": 7 }, strings: SIX_STRINGS };
		expect(from(fan)).toBeLessThan(-15);
	});

	it("is refused where cut slots would leave it no edge", () => {
		expect(stripCodes({}, { slots: "tang", "edge-margin": "2.9 mm" })).toEqual([
			"strip-falls-apart",
		]);
		expect(stripCodes({ binding: 1.5 }, { slots: "tang", "edge-margin": "1.5 mm" })).toEqual([]);
	});
});
