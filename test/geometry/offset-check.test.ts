import { describe, expect, test } from "vitest";
import {
	circle,
	closed,
	OffsetError,
	type OffsetFault,
	offset,
	open,
	type Path,
	rectangle,
	reversed,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";
import { hole } from "../support/offset-cases.js";

function errorOf(contours: readonly Path[], distance = 0.1): OffsetError {
	try {
		offset(contours, distance);
	} catch (thrown) {
		if (thrown instanceof OffsetError) return thrown;
		throw thrown;
	}
	throw new Error("no error");
}

const SQUARE = rectangle(0, 0, 5, 5);
const BOW_TIE = closed(vertex(0, 0), vertex(4, 4), vertex(4, 0), vertex(0, 4));

describe("contours are refused", () => {
	test.each<[string, OffsetFault, number, readonly Path[]]>([
		["that are open", "not-a-contour", 0, [open(vertex(0, 0), vertex(1, 0), vertex(1, 1))]],
		["of one point", "not-a-contour", 1, [SQUARE, { points: [vertex(0, 0)], closed: true }]],
		["of no point", "not-a-contour", 0, [{ points: [], closed: true }]],
		["with a vertex twice", "not-a-contour", 0, [closed(...SQUARE.points, vertex(0, 5))]],
		["with NaN", "not-a-contour", 0, [closed(...SQUARE.points, vertex(0, Number.NaN))]],
		[
			"with an infinite bulge",
			"not-a-contour",
			0,
			[closed(vertex(0, 0, Number.POSITIVE_INFINITY), vertex(1, 1))],
		],
		["that cross themselves", "crossing", 0, [BOW_TIE]],
		["that cross each other", "crossing", 0, [SQUARE, rectangle(4, 4, 9, 9)]],
		["that are one twice", "crossing", 0, [SQUARE, SQUARE]],
		["that share an edge", "crossing", 0, [SQUARE, rectangle(5, 0, 9, 5)]],
		["whose hole comes through the edge", "crossing", 0, [SQUARE, hole(4.5, 2, 1)]],
		["that run back on themselves", "wrong-side", 0, [closed(vertex(0, 0), vertex(1, 0))]],
		[
			"with a spike",
			"crossing",
			0,
			[
				closed(
					...[vertex(0, 0), vertex(5, 0), vertex(5, 2), vertex(9, 2), vertex(5, 2 + 1e-9)],
					vertex(5, 5),
				),
			],
		],
		["that run clockwise alone", "wrong-side", 0, [reversed(SQUARE)]],
		["with material within material", "wrong-side", 1, [SQUARE, rectangle(1, 1, 2, 2)]],
		["with a hole beside the material", "wrong-side", 1, [SQUARE, hole(9, 9, 1)]],
		[
			"with a hole within a hole",
			"wrong-side",
			1,
			[rectangle(0, 0, 9, 9), hole(4, 4, 3), hole(4, 4, 1)],
		],
	])("%s", (_, fault, contour, contours) => {
		for (const distance of [0.1, -0.1, 0]) {
			const error = errorOf(contours, distance);
			expect(error.fault).toBe(fault);
			expect(error).toBeInstanceOf(RangeError);
			expect(error.message.length).toBeGreaterThan(10);
			if (fault !== "crossing" && contours.length < 3) expect(error.contour).toBe(contour);
		}
	});

	test("whichever of their vertices comes first", () => {
		for (let i = 0; i < 4; i++) {
			for (const path of [BOW_TIE, reversed(BOW_TIE)]) {
				const error = errorOf([startedAt(path, i)]);
				expect(error.fault).toBe("crossing");
				expect(error.at).toEqual({ x: 2, y: 2 });
			}
		}
	});

	test("that cross only where an arc bulges over", () => {
		const bulging = closed(vertex(0, 0), vertex(6, 0), vertex(6, 2, 1), vertex(0, 2));
		expect(offset([bulging], 0.1).paths).toHaveLength(1);
		const through = closed(vertex(0, 0), vertex(6, 0), vertex(6, 2, -1), vertex(0, 2));
		expect(errorOf([through]).fault).toBe("crossing");
	});
});

describe("a distance is refused", () => {
	test.each([Number.NaN, Number.POSITIVE_INFINITY, 1e-5, -1e-5])("of %d", (distance) => {
		const error = errorOf([SQUARE], distance);
		expect(error.fault).toBe("distance");
		expect(error.contour).toBeNull();
	});
});

describe("contours are not refused", () => {
	test.each<[string, readonly Path[]]>([
		["that touch at a corner", [SQUARE, rectangle(5, 5, 9, 9)]],
		["whose corner touches an edge", [SQUARE, closed(vertex(5, 2), vertex(8, 0), vertex(8, 4))]],
		["that touch as circles", [circle({ x: 0, y: 0 }, 2), circle({ x: 5, y: 0 }, 3)]],
		["whose hole touches the edge from within", [SQUARE, hole(3, 3, 2)]],
		["with material in a hole", [rectangle(0, 0, 9, 9), hole(4, 4, 3), circle({ x: 4, y: 4 }, 1)]],
	])("%s", (_, contours) => {
		for (const distance of [0.1, -0.1]) {
			expect(offset(contours, distance).paths.length).toBeGreaterThan(0);
		}
	});
});
