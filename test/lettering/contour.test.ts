import { describe, expect, it } from "vitest";
import { signedArea } from "../../src/geometry/index.js";
import { contours, type OutlineCommand } from "../../src/lettering/contour.js";

/** A square as font commands, counter-clockwise or clockwise. */
function square(x: number, y: number, size: number, turn: 1 | -1): OutlineCommand[] {
	const corners = [
		[x, y],
		[x + size, y],
		[x + size, y + size],
		[x, y + size],
	] as const;
	const ordered = turn > 0 ? corners : [...corners].reverse();
	return [
		...ordered.map(([cx, cy], i) => ({ type: i === 0 ? "M" : "L", x: cx, y: cy }) as const),
		{ type: "Z" },
	];
}

const areas = (commands: OutlineCommand[]) => contours(commands, 1).map(signedArea);

describe("contours", () => {
	it("runs outer contours counter-clockwise and holes clockwise, whichever way the font fills", () => {
		for (const turn of [1, -1] as const) {
			const back = turn > 0 ? -1 : 1;
			expect(areas([...square(0, 0, 10, turn), ...square(3, 3, 4, back)])).toEqual([100, -16]);
			expect(areas([...square(3, 3, 4, back), ...square(0, 0, 10, turn)])).toEqual([-16, 100]);
			const island = square(4, 4, 2, turn);
			expect(areas([...square(0, 0, 10, turn), ...square(3, 3, 4, back), ...island])).toEqual([
				100, -16, 4,
			]);
		}
	});

	it("sets right a font that mixes directions", () => {
		expect(areas([...square(0, 0, 10, -1), ...square(20, 0, 5, 1)])).toEqual([100, 25]);
	});

	it("keeps overlapping contours apart, each counter-clockwise", () => {
		expect(areas([...square(0, 0, 10, -1), ...square(5, 5, 10, -1)])).toEqual([100, 100]);
		expect(areas([...square(0, 0, 10, -1), ...square(2, 2, 3, -1)])).toEqual([100, 9]);
	});

	it("drops contours of one point and closes those left open", () => {
		const dot: OutlineCommand[] = [{ type: "M", x: 50, y: 50 }, { type: "Z" }];
		const bare = square(0, 0, 10, 1).filter((c) => c.type !== "Z");
		expect(areas([...dot, ...bare])).toEqual([100]);
		const led = [...square(0, 0, 10, 1)];
		led.splice(4, 0, { type: "L", x: 0, y: 0 });
		const [path] = contours(led, 1);
		expect(path!.points).toHaveLength(4);
	});

	it("scales to millimetres and refuses coordinates that are not finite", () => {
		expect(contours(square(0, 0, 10, 1), 0.1).map(signedArea)[0]).toBeCloseTo(1, 12);
		const broken: OutlineCommand[] = [
			{ type: "M", x: 0, y: 0 },
			{ type: "L", x: Number.NaN, y: 1 },
		];
		expect(() => contours(broken, 1)).toThrow(RangeError);
	});
});
