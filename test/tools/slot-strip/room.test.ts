import { describe, expect, it } from "vitest";
import type { FretLine } from "../../../src/neck/index.js";
import { placeIn, roomBetween, textCorners } from "../../../src/tools/slot-strip/room.js";

const at = (x: number, lean = 0): FretLine => ({ n: 1, x, lean });
const box = textCorners(4, 2, 0, { x: 0, y: 10 });

describe("roomBetween", () => {
	it("is what two straight frets leave beside a text", () => {
		const room = roomBetween(box, { line: at(20), air: 1 }, { line: at(30), air: 0.5 });
		expect(room).toEqual({ from: 21, to: 25.5 });
	});

	it("is measured square to slanted frets, at the corner that is nearest", () => {
		const lean = 3 / 4;
		// The line at y 10 to 12: x from 20 + 7.5 to 20 + 9; air of 1 is 1.25 along x.
		const room = roomBetween(box, { line: at(20, lean), air: 1 }, { line: at(40, lean), air: 1 });
		expect(room.from).toBeCloseTo(20 + 9 + 1.25, 12);
		expect(room.to).toBeCloseTo(40 + 7.5 - 1.25 - 4, 12);
	});

	it("is empty, from above to, where the text does not fit", () => {
		const { from, to } = roomBetween(box, { line: at(20), air: 1 }, { line: at(25), air: 1 });
		expect(from).toBeGreaterThan(to);
	});
});

describe("placeIn", () => {
	it("is a little before the room's far end, or its middle if that is nearer", () => {
		expect(placeIn({ from: 0, to: 20 }, 3)).toBe(17);
		expect(placeIn({ from: 0, to: 4 }, 3)).toBe(2);
	});
});

describe("textCorners", () => {
	it("turn about the left end of the baseline", () => {
		const turned = textCorners(4, 2, Math.PI / 2, { x: 1, y: 1 });
		const wanted = [
			[1, 1],
			[1, 5],
			[-1, 5],
			[-1, 1],
		];
		expect(turned).toEqual(
			wanted.map(([x, y]) => ({ x: expect.closeTo(x!, 12), y: expect.closeTo(y!, 12) })),
		);
	});
});
