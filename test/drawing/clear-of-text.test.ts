import { describe, expect, it } from "vitest";
import { clearOfText } from "../../src/drawing/clear-of-text.js";
import { type Ink, stroke } from "../../src/drawing/ink.js";
import type { Note } from "../../src/drawing/part.js";

/** A text of 10 x 2.5 mm; g and p hang 0.625 below its baseline. */
const note = (x: number, y: number, turn = 0): Note => ({
	text: "37.500",
	at: { x, y },
	height: 2.5,
	turn,
	width: 10,
});

const from = (x1: number, y1: number, x2: number, y2: number, notes: readonly Note[]) => {
	const ink: Ink = { marks: stroke("line", { x: x1, y: y1 }, { x: x2, y: y2 }).marks, notes };
	return clearOfText(ink).marks.map(({ path }) =>
		path.points.map(({ x, y }) => [x, y].map((v) => Number(v.toFixed(9)))),
	);
};

describe("lines of the reference layer", () => {
	it("are interrupted where they would run through a text, 0.6 mm before and behind it", () => {
		expect(from(5, -20, 5, 20, [note(0, 0)])).toEqual([
			[
				[5, -20],
				[5, -1.225],
			],
			[
				[5, 3.1],
				[5, 20],
			],
		]);
		// Turned by a quarter the text takes x from −2.5 to 0.625 and y from 0 to 10.
		expect(from(-20, 5, 20, 5, [note(0, 0, Math.PI / 2)])).toEqual([
			[
				[-20, 5],
				[-3.1, 5],
			],
			[
				[1.225, 5],
				[20, 5],
			],
		]);
	});

	it("are interrupted once for texts that stand together, and for each of those apart", () => {
		expect(from(5, -20, 5, 20, [note(0, 0), note(2, 3)])).toHaveLength(2);
		expect(from(5, -20, 5, 20, [note(0, 10), note(2, -5)])).toHaveLength(3);
	});

	it("stay whole beside a text and close under it, and leave no crumbs", () => {
		const whole = [
			[-20, -0.7],
			[20, -0.7],
		];
		expect(from(-20, -0.7, 20, -0.7, [note(0, 0)])).toEqual([whole]);
		expect(from(-20, 0.5, 10.9, 0.5, [note(0, 0)])).toEqual([
			[
				[-20, 0.5],
				[-0.6, 0.5],
			],
		]);
		expect(from(1, 0.5, 9, 0.5, [note(0, 0)])).toEqual([]);
	});
});
