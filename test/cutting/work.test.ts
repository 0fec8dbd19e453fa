import { describe, expect, it } from "vitest";
import { homeOf, workOf } from "../../src/cutting/work.js";
import type { Mark, Operation, Part, Sheet } from "../../src/drawing/index.js";
import {
	circle,
	line,
	type Path,
	type Point,
	rectangle,
	STAY,
	shift,
} from "../../src/geometry/index.js";

const SPEEDS = { cut: 10, score: 50, engrave: 100, travel: 200 };

function mark(operation: Operation, path: Path): Mark {
	return { operation, path, feature: operation };
}

function partOf(...marks: Mark[]): Part {
	return {
		name: "plate",
		tool: "test",
		title: "Plate",
		stock: { material: "acrylic", thickness: 3 },
		marks,
		workingEdge: "none",
		working: [],
		claims: [],
		notes: [],
	};
}

function sheetOf(...parts: (readonly [Part, Point])[]): Sheet {
	return {
		name: "sheet",
		title: "Sheet",
		size: { minX: 0, minY: 0, maxX: 300, maxY: 200 },
		placed: parts.map(([part, { x, y }]) => ({ part, move: shift(x, y) })),
		marks: [],
		notes: [],
	};
}

const CORNER = { x: 0, y: 0 };

describe("a sheet's work", () => {
	it("is the lengths of its paths and no travel where each ends at the next", () => {
		const sheet = sheetOf([partOf(mark("cut", rectangle(0, 0, 10, 10))), CORNER]);
		expect(workOf(sheet, SPEEDS)).toEqual({ cut: 40, score: 0, engrave: 0, travel: 0, seconds: 4 });
	});

	it("is travelled in the order of the file: scores, engraving, cuts, each part by part", () => {
		const first = partOf(
			mark("cut", rectangle(0, 0, 30, 20)),
			mark("score", line({ x: 3, y: 4 }, { x: 13, y: 4 })),
			mark("engrave", line({ x: 13, y: 5 }, { x: 13, y: 10 })),
			mark("reference", line({ x: 0, y: -90 }, { x: 90, y: -90 })),
			mark("tab", line({ x: 1, y: 0 }, { x: 9, y: 0 })),
		);
		const second = partOf(mark("cut", rectangle(0, 0, 8, 6)));
		const sheet = sheetOf([first, CORNER], [second, { x: 40, y: 30 }]);
		const work = workOf(sheet, SPEEDS);
		expect(work).toMatchObject({ cut: 128, score: 10, engrave: 5 });
		// From the origin to (3, 4) 5, up to the engraving 1, from (13, 10) back to the outline √269,
		// from there to (40, 30) 50.
		expect(work.travel).toBeCloseTo(56 + Math.sqrt(269), 12);
		expect(work.seconds).toBeCloseTo(12.8 + 0.2 + 0.05 + (56 + Math.sqrt(269)) / 200, 12);
	});

	it("follows parts that are turned and mirrored", () => {
		const part = partOf(mark("cut", line({ x: 10, y: 0 }, { x: 10, y: 5 })));
		const move = { x: 20, y: 60, turn: Math.PI / 2, mirror: true };
		const sheet = { ...sheetOf(), placed: [{ part, move }] };
		// Mirrored to (10, −5) and turned to (5, 10): from (20, 70) to (25, 70).
		expect(workOf(sheet, null).travel).toBeCloseTo(Math.hypot(20, 70), 12);
		const again = { ...sheet, placed: [...sheet.placed, ...sheet.placed] };
		expect(workOf(again, null).travel).toBeCloseTo(Math.hypot(20, 70) + 5, 12);
	});

	it("has arcs at their lengths and what is cut besides the parts", () => {
		const sheet = sheetOf([partOf(mark("cut", circle({ x: 10, y: 0 }, 5))), CORNER]);
		const more = { ...sheet, marks: [mark("cut", line({ x: 15, y: 3 }, { x: 15, y: 9 }))] };
		const work = workOf(more, null);
		expect(work.cut).toBeCloseTo(10 * Math.PI + 6, 12);
		expect(work.travel).toBeCloseTo(18, 12);
		expect(work.seconds).toBeNull();
	});
});

describe("the head", () => {
	it("stands at the origin, or at the lower left of a sheet that does not hold it", () => {
		const part = partOf(mark("cut", line({ x: 8, y: 9 }, { x: 9, y: 9 })));
		const sheet = { ...sheetOf(), placed: [{ part, move: STAY }] };
		expect(homeOf(sheet)).toEqual({ x: 0, y: 0 });
		const beside = { ...sheet, size: { minX: 5, minY: 5, maxX: 20, maxY: 20 } };
		expect(homeOf(beside)).toEqual({ x: 5, y: 5 });
		expect(workOf(beside, null).travel).toBe(5);
	});
});
