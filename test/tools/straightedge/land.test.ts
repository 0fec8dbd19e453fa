import { describe, expect, it } from "vitest";
import { bar, barCodes, fretAt, madeBar, notchesFrom } from "../../support/bars.js";

describe("the land between notches", () => {
	const many = { scale: 650, frets: 40, division: 31 };

	it("is refused where too little remains, naming the frets", () => {
		const { problems } = madeBar(many);
		expect(problems).toMatchObject([
			{ code: "land-too-narrow", facts: { before: 38, fret: 39, least: 2.5, more: 1 } },
		]);
		const land = Number(problems[0]!.facts.land);
		const budget = (x: number) => x * (76e-6 * 10 + 0.0005) + 0.05;
		const [a, b] = [fretAt(38, 650, 31), fretAt(39, 650, 31)];
		expect(land).toBeCloseTo(b - a - 2.7 - budget(a) - budget(b), 9);
	});

	it("is kept by shrinking the clearance to the budget, there only, and that is said", () => {
		const part = bar(many, { "least-land": "2 mm" });
		const found = notchesFrom(part);
		const budget = (x: number) => x * (76e-6 * 10 + 0.0005) + 0.05;
		const usual = found.filter((n) => Math.abs(n.width - 4.2) < 1e-9);
		const shrunk = found.filter((n) => Math.abs(n.width - 2.7 - 2 * budget(n.centre)) < 1e-9);
		expect(usual.length).toBeGreaterThan(10);
		expect(usual.length + shrunk.length).toBe(40);
		expect(shrunk.length).toBeGreaterThan(2);
		const frets = shrunk.map((n) => found.indexOf(n) + 1).join(", ");
		expect(part.notes.at(-1)).toContain(`at frets ${frets}.`);
	});

	it("before the first fret shrinks its clearance too, before it is refused", () => {
		// A list of cents whose first fret is near; the nut moved toward it.
		const near = { scale: 650, frets: 12, division: { cents: [22, 300, 1200] }, "nut-shift": 2.5 };
		const x = 650 * (1 - 2 ** (-22 / 1200));
		const budget = x * (76e-6 * 10 + 0.0005) + 0.05;
		const least = x - 2.5 - 1 - 1.35;
		const some = (land: number) => ({ "least-land": `${land} mm` });
		const wide = bar({ ...near, frets: 3 }, some(least - 0.75 - 0.01));
		expect(notchesFrom(wide)[0]!.width).toBeCloseTo(4.2, 9);
		const tight = bar({ ...near, frets: 3 }, some(least - budget - 0.01));
		expect(notchesFrom(tight)[0]!.width).toBeCloseTo(2.7 + 2 * budget, 9);
		expect(barCodes({ ...near, frets: 3 }, some(least - budget + 0.01))).toEqual([
			"first-land-too-narrow",
		]);
	});

	it("needs 2.5 mm by default, 1.5 mm on scales under 400 mm", () => {
		const land = (scale: number) =>
			Number(madeBar({ scale, frets: 34 }, {}).problems[0]?.facts.least ?? 0);
		expect(land(400)).toBe(2.5);
		expect(land(399)).toBe(1.5);
	});
});

describe("side clearance set outright", () => {
	it("is taken as given everywhere, over or under the budget", () => {
		for (const clearance of [0.1, 1.4]) {
			const part = bar({}, { "side-clearance": `${clearance} mm` });
			const off = notchesFrom(part).map((n) => Math.abs(n.width - 2.7 - 2 * clearance));
			expect(Math.max(...off)).toBeLessThan(1e-9);
		}
	});

	it("is never shrunk: too little land is refused", () => {
		const many = { scale: 650, frets: 40, division: 31 };
		const settings = { "side-clearance": "0.75 mm", "least-land": "2 mm" };
		expect(barCodes(many, settings)).toEqual(["land-too-narrow"]);
	});
});
