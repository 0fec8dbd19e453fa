import { describe, expect, it } from "vitest";
import {
	circle,
	clipped,
	line,
	type Path,
	pathLength,
	rectangle,
	reversed,
	segments,
	startedAt,
} from "../../src/geometry/index.js";
import { joinedOverSeams, type SeamStroke } from "../../src/proof/print-joints.js";

const SEAM = 5;
const HALVES = [
	{ minX: -50, minY: -50, maxX: SEAM, maxY: 50 },
	{ minX: SEAM, minY: -50, maxX: 50, maxY: 50 },
] as const;

/** Paths cut at the seam, what is on the right a little beside its place along it. */
function cut(paths: readonly Path[], beside: number): SeamStroke[] {
	return HALVES.flatMap((box, page) =>
		paths.flatMap((path) =>
			clipped(path, box).map(({ closed, points }) => {
				const moved = points.map((p) => ({ ...p, y: p.y + page * beside }));
				return { operation: "cut", layer: "cut", page, path: { closed, points: moved } } as const;
			}),
		),
	);
}

function joined(paths: readonly Path[], beside = 1e-5): Path[] {
	const pieces = { boxes: HALVES, seams: { x: [SEAM], y: [] } };
	return joinedOverSeams(cut(paths, beside), pieces).map(({ path }) => path);
}

describe("joinedOverSeams", () => {
	it.each([
		["a circle", circle({ x: 4, y: 0 }, 3), 2],
		["a rectangle", rectangle(0, 0, 12, 8), 4],
		["a rectangle begun beyond the seam", startedAt(rectangle(0, 0, 12, 8), 1), 4],
		["a hole", reversed(rectangle(0, 0, 12, 8)), 4],
		["a line", line({ x: 0, y: 0 }, { x: 9, y: 5 }), 1],
	])("makes one of %s, without a corner at the seam", (_, path, count) => {
		const [whole, ...others] = joined([path]);
		expect(others).toEqual([]);
		expect(whole!.closed).toBe(path.closed);
		expect(segments(whole!)).toHaveLength(count);
		expect(Math.abs(pathLength(whole!) - pathLength(path))).toBeLessThan(1e-4);
	});

	it("goes straight on where two lines cross at the seam", () => {
		const paths = [line({ x: 0, y: -5 }, { x: 10, y: 5 }), line({ x: 0, y: 5 }, { x: 10, y: -5 })];
		for (const path of joined(paths)) {
			expect(segments(path)).toHaveLength(1);
			expect(pathLength(path)).toBeCloseTo(Math.hypot(10, 10), 3);
		}
	});

	it("leaves ends apart that are no joint", () => {
		expect(joined([line({ x: 0, y: 0 }, { x: 9, y: 0 })], 0.01)).toHaveLength(2);
	});

	it("joins only what is worked alike", () => {
		const [a, b] = cut([line({ x: 0, y: 0 }, { x: 9, y: 0 })], 0) as [SeamStroke, SeamStroke];
		const pieces = { boxes: HALVES, seams: { x: [SEAM], y: [] } };
		expect(joinedOverSeams([a, { ...b, operation: "score" }], pieces)).toHaveLength(2);
	});
});
