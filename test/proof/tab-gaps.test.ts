import { describe, expect, it } from "vitest";
import type { SizeClaim } from "../../src/drawing/index.js";
import {
	circle,
	type Path,
	type Point,
	pathBetween,
	pathLength,
	rectangle,
	reversed,
	signedArea,
} from "../../src/geometry/index.js";
import { gapOfTab, isTab, joinedOverTabs, type TabGap } from "../../src/proof/tab-gaps.js";

const GAP = 1.2;

function tab(n: number, at: readonly Point[]): SizeClaim {
	return {
		id: `tab-${n}`,
		kind: "width",
		feature: `tab ${n}`,
		datum: `tab ${n}`,
		operation: "cut",
		axis: "line",
		at,
		nominal: 1,
		bench: 0.05,
		file: 0.001,
	};
}

/** A contour in pieces between gaps of `GAP` that begin at these distances along it, and its tabs. */
function held(contour: Path, at: readonly number[]) {
	const around = pathLength(contour);
	const pieces = at.map((from, i) =>
		pathBetween(contour, from + GAP, at[i + 1] ?? at[0]! + around),
	);
	const tabs = at.map((from, i) => {
		const { points } = pathBetween(contour, from, from + GAP);
		return tab(i + 1, [points[0]!, points.at(-1)!]);
	});
	return { pieces, tabs };
}

function gapsOf(paths: readonly Path[], tabs: readonly SizeClaim[]): TabGap[] {
	return tabs.flatMap((claim) => gapOfTab(paths, claim) ?? []);
}

describe("an outline that tabs interrupt", () => {
	const outlines = [
		["a disc", circle({ x: 3, y: 4 }, 20)],
		["a plate", rectangle(0, 0, 60, 30)],
	] as const;

	it.each(outlines)("is whole again, arcs as arcs, whichever way its pieces run: %s", (_, path) => {
		for (const at of [[5], [5, 45], [5, 45, 66]]) {
			const { pieces, tabs } = held(path, at);
			const turned = pieces.map((piece, i) => (i === 1 ? reversed(piece) : piece));
			const gaps = gapsOf(turned, tabs);
			expect(gaps.length).toBe(at.length);
			const { closed, rest } = joinedOverTabs(turned, gaps);
			expect(rest).toEqual([]);
			expect(closed.length).toBe(1);
			expect(signedArea(closed[0]!)).toBeCloseTo(signedArea(path), 9);
			expect(pathLength(closed[0]!)).toBeCloseTo(pathLength(path), 9);
		}
	});

	it("stays open where a piece or a tab lacks", () => {
		const { pieces, tabs } = held(rectangle(0, 0, 60, 30), [5, 45, 66]);
		const two = pieces.slice(0, 2);
		expect(joinedOverTabs(two, gapsOf(two, tabs)).rest).toEqual(two);
		expect(joinedOverTabs(pieces, gapsOf(pieces, tabs.slice(1))).rest).toEqual(pieces);
	});

	it("has gaps as wide as the pieces' ends are apart", () => {
		const { pieces, tabs } = held(rectangle(0, 0, 60, 30), [5]);
		expect(gapOfTab(pieces, tabs[0]!)!.size).toBeCloseTo(GAP, 9);
		expect(
			gapOfTab(
				pieces,
				tab(1, [
					{ x: 30, y: 30 },
					{ x: 31, y: 30 },
				]),
			),
		).toBeNull();
	});

	it("has tabs by their own names only", () => {
		expect(isTab(tab(3, []))).toBe(true);
		expect(isTab({ ...tab(3, []), feature: "slot 3" })).toBe(false);
	});
});
