import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compensated, inOrder, withTabs } from "../../src/cutting/index.js";
import type { Part } from "../../src/drawing/index.js";
import { line, type Path, reversed, STAY } from "../../src/geometry/index.js";
import { isWorded, problemText } from "../../src/problem/index.js";
import { inspect } from "../../src/proof/inspect.js";
import type { ReadStroke } from "../../src/proof/types.js";
import { LETTERS, madeParts } from "../support/made-parts.js";
import {
	BAR,
	COUPON,
	changed,
	DAMAGES,
	type Drawn,
	drawn,
	drawnBed,
	everyPath,
	GAUGE,
	STRIP,
	scaled,
} from "../support/proof-inspect-faults.js";
import { randomJob } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";
import { drawingOf, promisedFile, promisedPart, strokesOf } from "../support/read-drawings.js";

const KERF = 0.16;
const inspected = ({ drawing, promised }: Drawn) => inspect(drawing, promised, LETTERS);

/** A part as it is cut: moved for the kerf, held by tabs, in the order of work; null if it cannot be. */
function asCut(part: Part, count: number): Part | null {
	const result = compensated(part, KERF);
	if (!result.ok) return null;
	const cut = { kind: "laser", tolerance: 0.05, kerf: KERF } as const;
	const held = count > 0 ? withTabs(result.part, { count, width: 1 }, cut) : result.part;
	const placed = [{ part: "marks" in held ? held : result.part, move: STAY }];
	const size = { minX: 0, minY: 0, maxX: 1, maxY: 1 };
	return inOrder({ name: "", title: "", size, placed, marks: [], notes: [] }).placed[0]!.part;
}

/** The parts of a job one by one: neck and settings need not suit every tool. */
function partsOf(job: object, tools: readonly unknown[]): readonly Part[] {
	return tools.flatMap((tool) => {
		try {
			return madeParts({ ...job, make: [tool] }).parts;
		} catch {
			return [];
		}
	});
}

describe("inspect", () => {
	it("finds nothing on parts of any job as they are cut", () => {
		const tools = fc.tuple(anyStraightedge, anyGauge, anyStrip, fc.constant("kerf-coupon"));
		const seen = new Map<string, number>();
		fc.assert(
			fc.property(randomJob({ leastGap: 7 }), tools, fc.nat(4), ({ job }, make, tabs) => {
				for (const part of partsOf(job, make)) {
					const cut = asCut(part, tabs);
					if (!cut) continue;
					seen.set(part.tool, 1 + (seen.get(part.tool) ?? 0));
					const promised = promisedFile([{ part: promisedPart(part, cut, KERF), move: STAY }]);
					const found = inspect(drawingOf(strokesOf(cut)), promised, LETTERS);
					expect(found, part.name).toEqual([]);
				}
			}),
			{ seed: 271, numRuns: 20 },
		);
		expect(seen.size).toBe(4);
		expect([...seen.values()].every((count) => count >= 5)).toBe(true);
	});

	it("finds nothing on a bed, stretched or not", () => {
		expect(inspected(drawnBed())).toEqual([]);
		expect(inspected(drawnBed({ x: 1.002, y: 0.997 }))).toEqual([]);
	});

	it.each([BAR, GAUGE, STRIP, COUPON])("finds nothing on $name", (part) => {
		expect(inspected(drawn(part))).toEqual([]);
	});

	const damages = DAMAGES.map(([title, damage, ...codes]) => ({ title, damage, codes }));
	it.each(damages)("finds $title", ({ damage, codes }) => {
		const found = inspected(damage());
		expect(found.map(({ code }) => code)).toEqual(codes);
		for (const p of found) {
			expect(isWorded(p.code)).toBe(true);
			expect(problemText(p)).not.toMatch(/undefined|NaN/u);
		}
	});

	it("says by what a drawing is too large, and that first", () => {
		const inches = everyPath(drawn(BAR), (path) => scaled(path, 25.4));
		const lacking = changed(inches, (strokes) => strokes.slice(1));
		const found = inspected(lacking);
		expect(found.map(({ code }) => code)).toEqual(["unit-slip", "count-differs"]);
		expect(found[0]!.facts.factor).toBe(25.4);
		expect(found[1]!.facts).toMatchObject({ operation: "engrave", parts: [BAR.name] });
	});

	it("takes no other scale for a slip of units", () => {
		const larger = everyPath(drawn(BAR), (path) => scaled(path, 1.01));
		expect(inspected(larger).map(({ code }) => code)).not.toContain("unit-slip");
	});

	it("does not call a drawing mirrored that is symmetric, if no lettering tells", () => {
		const { drawing, promised } = everyPath(drawn(GAUGE), (p) => scaled(p, 1));
		expect(inspect(drawing, promised)).toEqual([]);
	});

	it("tells where a contour is open and how wide", () => {
		const [, damage] = DAMAGES[0]!;
		const { points } = BAR.marks.find((m) => m.feature === "outline")!.path;
		const [first, last] = [points[0]!, points.at(-1)!];
		const [{ facts }] = inspected(damage()) as [ReturnType<typeof inspect>[number]];
		expect(facts).toMatchObject({ part: BAR.name, found: 1, promised: 0 });
		expect(facts.gap).toBeCloseTo(Math.hypot(last.x - first.x, last.y - first.y), 5);
		expect(facts.x).toBeCloseTo(last.x, 5);
	});

	it("says how far apart two parts lie", () => {
		const damage = DAMAGES.find(([title]) => title === "a part nearer to another")![1];
		const [found] = inspected(damage());
		expect(found!.facts.apart).toBeCloseTo(2.5, 5);
	});

	it("finds any path that is missing, or there twice whichever way it runs", () => {
		const anyPart = fc.constantFrom(BAR, GAUGE, STRIP, COUPON);
		fc.assert(
			fc.property(anyPart, fc.nat(), fc.boolean(), (part, n, isBackward) => {
				const whole = drawn(part);
				const i = n % whole.drawing.strokes.length;
				const { path, ...stroke } = whole.drawing.strokes[i]!;
				const again = { ...stroke, path: isBackward ? reversed(path) : path };
				const missing = changed(whole, (strokes) => strokes.toSpliced(i, 1));
				const twice = changed(whole, (strokes) => [...strokes, again]);
				expect(inspected(missing).map(({ code }) => code)).toContain("count-differs");
				const codes = inspected(twice).map(({ code }) => code);
				expect(codes.slice(0, 1)).toEqual(["count-differs"]);
				expect(codes).toContain("doubled");
			}),
			{ seed: 273, numRuns: 60 },
		);
	});

	it("gives up on a file that heaps up more than any template", () => {
		const heap = Array.from({ length: 40_000 }, (_, i): ReadStroke => {
			const path = line({ x: 0, y: 0 }, { x: 200 * Math.cos(i), y: 200 * Math.sin(i) });
			return { operation: "cut", layer: "CUT", path };
		});
		const codes = inspected(changed(drawn(BAR), () => heap)).map(({ code }) => code);
		expect(codes[0]).toBe("drawing-too-large");
	});

	it("says nothing about a part that a drawing lacks but that its paths are missing", () => {
		const none = inspected(changed(drawn(BAR), () => []));
		expect(new Set(none.map(({ code }) => code))).toEqual(new Set(["count-differs"]));
	});

	it("takes strokes that a DXF of loose lines lets run together for what they are", () => {
		const joined = changed(drawn(STRIP), joinedOnce);
		expect(joined.drawing.strokes.length).toBe(STRIP.marks.length - 1);
		expect(inspected(joined)).toEqual([]);
		const { drawing, promised } = joined;
		expect(inspect(drawing, promised).map(({ code }) => code)).toEqual(["count-differs"]);
		const inSvg = inspect({ ...drawing, format: "svg" }, promised, LETTERS);
		expect(inSvg.map(({ code }) => code)).toEqual(["count-differs"]);
		const lacking = changed(joined, (strokes) => {
			return strokes.toSpliced(
				strokes.findIndex(({ operation }) => operation === "engrave"),
				1,
			);
		});
		expect(inspected(lacking).map(({ code }) => code)).toEqual(["count-differs"]);
	});
});

/** The same with two engraved strokes that meet at their ends made one. */
function joinedOnce(strokes: readonly ReadStroke[]): ReadStroke[] {
	const open = strokes.filter((s) => s.operation === "engrave" && !s.path.closed);
	for (const one of open) {
		for (const other of open) {
			for (const [a, b] of bothWays(one.path).flatMap((p) =>
				bothWays(other.path).map((q) => [p, q] as const),
			)) {
				const [end, start] = [a.points.at(-1)!, b.points[0]!];
				if (one === other || Math.hypot(end.x - start.x, end.y - start.y) > 1e-5) continue;
				const path = { points: [...a.points.slice(0, -1), ...b.points], closed: false };
				return strokes.filter((s) => s !== other).map((s) => (s === one ? { ...s, path } : s));
			}
		}
	}
	throw new Error("no two strokes meet");
}

function bothWays(path: Path): Path[] {
	return [path, reversed(path)];
}
