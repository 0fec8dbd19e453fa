import { describe, expect, it } from "vitest";
import { compensated } from "../../src/cutting/index.js";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	extents,
	line,
	type Path,
	pathLength,
	rectangle,
	reversed,
	segments,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { deviations, leftAfterCut } from "../support/cut-with-beam.js";

const KERF = 0.16;

/** A comb of 40 × 10 mm with one notch of the given width, 2 mm deep, from x = 10. */
function notched(width: number): Path {
	return closed(
		vertex(0, 0),
		vertex(10, 0),
		vertex(10, 2),
		vertex(10 + width, 2),
		vertex(10 + width, 0),
		vertex(40, 0),
		vertex(40, 10),
		vertex(0, 10),
	);
}

function widthClaim(width: number): SizeClaim {
	return {
		id: "notch-7-width",
		kind: "width",
		feature: "notch 7",
		datum: "notch 7",
		operation: "cut",
		axis: "x",
		at: [
			{ x: 10, y: 1 },
			{ x: 10 + width, y: 1 },
		],
		nominal: width,
		bench: 0.05,
		file: 0.001,
	};
}

function partOf(cuts: Readonly<Record<string, Path>>, claims: readonly SizeClaim[] = []): Part {
	return {
		name: "plate",
		tool: "test",
		title: "Plate",
		stock: { material: "acrylic", thickness: 3 },
		marks: [
			{ operation: "score", path: line({ x: 1, y: 5 }, { x: 9, y: 5 }), feature: "line" },
			...Object.entries(cuts).map(([feature, path]) => ({
				operation: "cut" as const,
				path,
				feature,
			})),
		],
		workingEdge: "lower edge",
		working: [],
		claims,
		notes: [],
	};
}

function cut(part: Part, kerf: number): Part {
	const result = compensated(part, kerf);
	if (!result.ok) throw new Error(JSON.stringify(result.problems));
	return result.part;
}

function pathOf(part: Part, feature: string): Path {
	return part.marks.find((m) => m.feature === feature)!.path;
}

describe("compensated", () => {
	it("moves outer contours out and holes in by half the kerf", () => {
		const hole = reversed(circle({ x: 30, y: 5 }, 2.5));
		const part = cut(partOf({ hole, outline: rectangle(0, 0, 40, 10) }), KERF);
		expect(extents(pathOf(part, "outline"))).toEqual({
			minX: expect.closeTo(-0.08, 9),
			minY: expect.closeTo(-0.08, 9),
			maxX: expect.closeTo(40.08, 9),
			maxY: expect.closeTo(10.08, 9),
		});
		expect(pathLength(pathOf(part, "hole"))).toBeCloseTo(2 * Math.PI * 2.42, 9);
		expect(signedArea(pathOf(part, "hole"))).toBeLessThan(0);
		expect(segments(pathOf(part, "hole")).every((s) => s.kind === "arc")).toBe(true);
	});

	it("leaves scores, claims and, without kerf, everything where it is", () => {
		const part = partOf({ outline: notched(4) }, [widthClaim(4)]);
		expect(cut(part, 0)).toBe(part);
		const moved = cut(part, KERF);
		expect(pathOf(moved, "line")).toEqual(pathOf(part, "line"));
		expect(moved.claims).toEqual(part.claims);
		expect(moved.marks.map((m) => m.feature)).toEqual(part.marks.map((m) => m.feature));
	});

	it("draws an open cut in by half the kerf at both ends, so that the cut is as long as meant", () => {
		const slot = line({ x: 20, y: 2 }, { x: 20, y: 8 });
		const part = cut(partOf({ "slot 1": slot, outline: rectangle(0, 0, 40, 10) }), KERF);
		const { points } = pathOf(part, "slot 1");
		expect(points.map(({ x, y }) => [x, y])).toEqual([
			[20, expect.closeTo(2.08, 12)],
			[20, expect.closeTo(7.92, 12)],
		]);
		const short = line({ x: 20, y: 2 }, { x: 20, y: 2.16 });
		const refused = compensated(
			partOf({ "slot 1": short, outline: rectangle(0, 0, 40, 10) }),
			KERF,
		);
		expect(refused.ok ? [] : refused.problems.map((p) => [p.code, p.facts.feature])).toEqual([
			["narrower-than-kerf", "slot 1"],
		]);
	});

	it("leaves the nominal part when a beam is swept along the path", () => {
		const nominal = [notched(4), reversed(circle({ x: 30, y: 6 }, 2.5))];
		const part = cut(partOf({ outline: nominal[0]!, hole: nominal[1]! }), KERF);
		const left = leftAfterCut([pathOf(part, "outline"), pathOf(part, "hole")], KERF);
		expect(deviations(left, nominal, KERF, 0.002)).toEqual({ over: 0, missing: 0 });
	});

	it("and the same check sees a path that was not moved, and one moved too far", () => {
		const nominal = [notched(4)];
		const missing = deviations(leftAfterCut(nominal, KERF), nominal, KERF, 0.002).missing;
		expect(missing).toBeGreaterThan(1);
		const grown = pathOf(cut(partOf({ outline: notched(4) }), 2 * KERF), "outline");
		expect(deviations(leftAfterCut([grown], KERF), nominal, KERF, 0.002).over).toBeGreaterThan(1);
	});

	it("refuses a notch that is not wider than the beam, by its name and with both figures", () => {
		for (const width of [0.1, KERF]) {
			const result = compensated(partOf({ outline: notched(width) }, [widthClaim(width)]), KERF);
			expect(result).toEqual({
				ok: false,
				problems: [
					expect.objectContaining({
						code: "narrower-than-kerf",
						facts: { part: "plate", feature: "notch 7", size: width, kerf: KERF },
					}),
				],
			});
		}
	});

	it("refuses a slot and a hole that are too narrow, each by its name", () => {
		const slot = reversed(rectangle(5, 2, 5.1, 8));
		const hole = reversed(circle({ x: 30, y: 5 }, 0.05));
		const result = compensated(
			partOf({ "slot 3": slot, "dowel hole": hole, outline: rectangle(0, 0, 40, 10) }),
			KERF,
		);
		const found = result.ok ? [] : result.problems.map((p) => [p.code, p.facts.feature]);
		expect(found).toEqual([
			["narrower-than-kerf", "slot 3"],
			["radius-below-half-kerf", "dowel hole"],
		]);
	});

	it("begins each path where the contour begins", () => {
		const part = cut(partOf({ outline: notched(4) }), KERF);
		const { x, y } = pathOf(part, "outline").points[0]!;
		expect(Math.hypot(x, y)).toBeLessThan(KERF);
	});
});
