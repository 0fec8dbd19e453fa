import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LabelClaim, Part } from "../../src/drawing/index.js";
import type { Path } from "../../src/geometry/index.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import {
	crossingsAtHeight,
	crossingsAtPlace,
	outlineOf,
	pathsOf,
	slotAtHeight,
	slotOf,
} from "../support/measure-part.js";
import { crossed, labelRectangles } from "../support/part-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";

const strings = { count: 6, "at-nut": 35.5, "at-saddle": 52 };
const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));

function made(neck: object, settings: object = {}) {
	return madeParts(jobWith(neck, [{ "slot-strip": settings }]));
}

function strip(neck: object, settings: object = {}): Part {
	const { parts, problems } = made(neck, settings);
	expect(problems).toEqual([]);
	return parts[0]!;
}

function texts(part: Part): Map<string, LabelClaim> {
	const labels = part.claims.filter((c): c is LabelClaim => c.kind === "label");
	return new Map(labels.map((l) => [l.id.replace("label-", ""), l]));
}

const codes = (neck: object, settings: object = {}) =>
	made(neck, settings).problems.map((p) => p.code);

describe("the slots of a strip", () => {
	it("stand at L·u(n) on the centre line, scored or cut, on any neck of one scale", () => {
		const slots = fc.constantFrom("line", "tang");
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

	it("cross both outer strings at exactly d(n) on any fanned neck, measured from its nut line", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 3, fanned: true }), ({ job, drawn }) => {
				const make = [{ "slot-strip": { slots: "line" } }];
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
		const part = strip({ scale, strings });
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
		expect(ends).toEqual([-10, d(22) + 10].map((x) => expect.closeTo(x, 9)));
		expect(crossingsAtPlace(outline, 0).map(Math.abs)).toEqual([21.5, 21.5]);
		expect(crossingsAtPlace(outline, d(22))[1]).toBeCloseTo(28, 9);
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
		const fan = { scale: { bass: 711.2, treble: 660.4, "square-fret": 7 }, strings };
		expect(from(fan)).toBeLessThan(-15);
	});

	it("is refused where cut slots would leave it no edge", () => {
		expect(codes({}, { slots: "tang", "edge-margin": "2.9 mm" })).toEqual(["strip-falls-apart"]);
		expect(codes({ binding: 1.5 }, { slots: "tang", "edge-margin": "1.5 mm" })).toEqual([]);
	});
});

describe("the lines of a strip", () => {
	const x = (part: Part, feature: string) =>
		pathsOf(part, feature).map((p) => crossingsAtHeight([p], 0)[0]!);

	it("show the theoretical nut and, where it was moved, its actual face", () => {
		const moved = strip({ "nut-shift": 0.6 });
		expect(x(moved, "theoretical nut")).toEqual([0]);
		expect(x(moved, "actual nut face")).toEqual([0.6]);
		expect(pathsOf(strip({}), "actual nut face")).toEqual([]);
		expect(pathsOf(strip({ "zero-fret": true }), "theoretical nut")).toEqual([]);
	});

	it("name each nut line on the side where the other is not", () => {
		const order = (shift: number) => {
			const all = texts(strip({ "nut-shift": shift }));
			return [all.get("nut")!, all.get("nut-after")!].map((l) => [l.text, l.at[0].x] as const);
		};
		const [[first, a], [second, b]] = order(1) as [[string, number], [string, number]];
		expect([first, second]).toEqual(["THEOR. NUT", "ACTUAL NUT"]);
		expect(a).toBeLessThan(0);
		expect(b).toBeGreaterThan(1);
		expect(order(-1).map(([text]) => text)).toEqual(["ACTUAL NUT", "THEOR. NUT"]);
		expect(texts(strip({ width: 60, "nut-shift": 1 })).get("nut")!.text).toBe("THEORETICAL NUT");
		expect(texts(strip({ "zero-fret": true })).get("nut")!.text).toBe("ZERO FRET");
		expect(texts(strip({})).get("nut")!.text).toBe("NUT");
	});

	it("show every string by a dash at nut and slots, if wanted", () => {
		expect(pathsOf(strip({ strings }), "string line 1")).toHaveLength(23);
		expect(pathsOf(strip({ strings }), "string line 6")).toHaveLength(23);
		expect(pathsOf(strip({ strings }, { "string-lines": false }), "string line 1")).toEqual([]);
		expect(pathsOf(strip({}), "string line 1")).toEqual([]);
	});

	it("mark position markers midway between frets, double ones apart", () => {
		const part = strip({ markers: [3, { 12: "double" }], width: 50 });
		const centre = (feature: string) => {
			const ends = pathsOf(part, feature).flatMap((p) => p.points);
			const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
			return [middle(ends.map((p) => p.x)), middle(ends.map((p) => p.y))];
		};
		expect(centre("marker 3")).toEqual([(d(2) + d(3)) / 2, 0].map((v) => expect.closeTo(v, 9)));
		const x12 = (d(11) + d(12)) / 2;
		expect(centre("marker 12 bass")).toEqual([x12, -10].map((v) => expect.closeTo(v, 9)));
		expect(centre("marker 12 treble")).toEqual([x12, 10].map((v) => expect.closeTo(v, 9)));
	});

	it("mark each of a double marker midway at its own height where the frets slant", () => {
		const scale = { bass: "28 in", treble: "26 in", "square-fret": 7 };
		const part = strip({ scale, strings, markers: [{ 19: "double" }] });
		const centres = ["bass", "treble"].map((side) => {
			const ends = pathsOf(part, `marker 19 ${side}`).flatMap((p) => p.points);
			const sum = (values: number[]) => values.reduce((a, b) => a + b) / values.length;
			return { x: sum(ends.map((p) => p.x)), y: sum(ends.map((p) => p.y)) };
		});
		for (const { x, y } of centres) {
			const slots = [18, 19].map((n) => slotAtHeight(pathsOf(part, `slot ${n}`)[0]!, y));
			expect(x).toBeCloseTo((slots[0]! + slots[1]!) / 2, 9);
		}
		expect(Math.abs(centres[0]!.x - centres[1]!.x)).toBeGreaterThan(1);
	});

	it("refuse markers wider apart than the board", () => {
		const neck = { markers: [{ 12: "double" }], width: 50 };
		expect(codes(neck, { "double-marker-spread": "46 mm" })).toEqual([]);
		expect(codes(neck, { "double-marker-spread": "48 mm" })).toEqual(["length-range"]);
	});
});

describe("the labels of a strip", () => {
	it("number every slot and give its distance from the theoretical nut", () => {
		const all = texts(strip({ "nut-shift": 0.6 }));
		for (let n = 1; n <= 22; n++) {
			expect(all.get(`number-${n}`)!.text).toBe(`${n}`);
			expect(all.get(`distance-${n}`)!.text).toBe(d(n).toFixed(3));
		}
	});

	it("stand before their slot, numbers on the bass half, distances on the treble half", () => {
		for (const handed of ["right", "left"]) {
			const all = texts(strip({ handed }));
			const treble = handed === "right" ? 1 : -1;
			for (let n = 2; n <= 22; n++) {
				const [number, distance] = [all.get(`number-${n}`)!, all.get(`distance-${n}`)!];
				expect(Math.sign(number.at[0].y)).toBe(-treble);
				expect(Math.sign(distance.at[0].y)).toBe(treble);
				for (const { at } of [number, distance]) {
					expect(at[0].x).toBeGreaterThan(d(n - 1));
					expect(at[0].x).toBeLessThan(d(n));
				}
			}
		}
	});

	it("are left out where frets stand too close, and the notes say so", () => {
		const part = strip({ scale: 400, frets: 60, division: 31 });
		const numbered = [...texts(part).keys()].filter((id) => id.startsWith("number-"));
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
			{ width: 45, markers: [{ 12: "double" }, { 15: "double" }] },
		];
		for (const neck of near) {
			const part = strip(neck, neck.width === 45 ? { "double-marker-spread": "38 mm" } : {});
			const scores = part.marks.filter((m) => m.operation === "score");
			expect(crossed(labelRectangles(part), scores)).toEqual([]);
		}
	});

	it("can do without distances", () => {
		const ids = [...texts(strip({}, { distances: false })).keys()];
		expect(ids.filter((id) => id.startsWith("distance"))).toEqual([]);
		expect(ids).toContain("number-22");
	});

	it("tell job and scale before the first fret, where the centre line makes way", () => {
		const part = strip({});
		expect(texts(part).get("job")!.text).toBe("Plain neck");
		expect(texts(part).get("scale")!.text).toBe("25 1/2 in, 22 frets");
		expect(pathsOf(part, "centre line")).toHaveLength(2);
		const short = strip({ scale: 200, frets: 12, division: 19, "nut-shift": 1 });
		expect(texts(short).has("job")).toBe(false);
		expect(pathsOf(short, "centre line")).toHaveLength(1);
	});
});
