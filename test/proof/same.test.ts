import { describe, expect, it } from "vitest";
import {
	circle,
	closed,
	line,
	type Path,
	rectangle,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";
import { areSame } from "../../src/proof/same.js";
import type { ReadStroke } from "../../src/proof/types.js";

const NEAR = 3e-6;
const cut = (path: Path): ReadStroke => ({ operation: "cut", layer: "CUT", path });
const same = (a: Path, b: Path) => areSame([cut(a)], [cut(b)], NEAR);

describe("two files' strokes", () => {
	it("are the same however they are cut into segments and wherever they begin", () => {
		const quarter = Math.tan(Math.PI / 8);
		const quarters = closed(
			vertex(5, 0, quarter),
			vertex(0, 5, quarter),
			vertex(-5, 0, quarter),
			vertex(0, -5, quarter),
		);
		expect(same(circle({ x: 0, y: 0 }, 5), quarters)).toBe(true);
		const square = rectangle(0, 0, 10, 10);
		expect(same(square, startedAt(square, 2))).toBe(true);
		expect(same(line({ x: 0, y: 0 }, { x: 9, y: 0 }), line({ x: 9, y: 0 }, { x: 0, y: 0 }))).toBe(
			true,
		);
	});

	it("differ by a bulge, a vertex, a length, an operation, an order or their number", () => {
		const flat = closed(vertex(0, 0), vertex(10, 0, 0.1), vertex(10, 8), vertex(0, 8));
		const bent = closed(vertex(0, 0), vertex(10, 0, -0.1), vertex(10, 8), vertex(0, 8));
		expect(same(flat, bent)).toBe(false);
		expect(same(rectangle(0, 0, 10, 10), rectangle(0, 0, 10, 10.00001))).toBe(false);
		const notched = closed(
			vertex(0, 0),
			vertex(4, 0),
			vertex(5, 0.1),
			vertex(6, 0),
			vertex(10, 0),
			vertex(10, 9),
			vertex(0, 9),
		);
		const plain = closed(
			vertex(0, 0),
			vertex(4, 0),
			vertex(6, 0),
			vertex(10, 0),
			vertex(10, 9),
			vertex(0, 9),
		);
		expect(same(notched, plain)).toBe(false);
		const [a, b] = [cut(rectangle(0, 0, 1, 1)), cut(rectangle(5, 0, 6, 1))];
		expect(areSame([a, b], [b, a], NEAR)).toBe(false);
		expect(areSame([a], [a, b], NEAR)).toBe(false);
		expect(areSame([a], [{ ...a, operation: "score" }], NEAR)).toBe(false);
		const opened = { ...a, path: { ...a.path, closed: false } };
		expect(areSame([a], [opened], NEAR)).toBe(false);
	});
});
