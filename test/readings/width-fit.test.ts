import { describe, expect, it } from "vitest";
import { fretLine, valueAt } from "../../src/neck/index.js";
import { type BoardWidth, fitWidth, type WidthReading } from "../../src/readings/index.js";
import { neckWith } from "../support/made-parts.js";
import { normal, seeded } from "../support/seeded.js";

const neck = neckWith({});
const distance = (mm: number) => ({ kind: "distance", mm }) as const;
const width = (places: WidthReading["places"], resolution = 0.05): BoardWidth => {
	const fit = fitWidth({ places, resolution }, neck);
	if (Array.isArray(fit)) throw new Error(JSON.stringify(fit));
	return fit;
};
const along = (...read: [number, number][]) =>
	read.map(([x, value]) => ({ at: distance(x), values: [value] }));
const codes = ({ notes }: BoardWidth) => notes.map(({ code }) => code);

describe("fitWidth", () => {
	it("joins two places exactly, their step in the interval, worked by hand", () => {
		const found = width([
			{ at: { kind: "nut" }, values: [43] },
			{ at: { kind: "last-fret" }, values: [56] },
		]);
		const last = fretLine(neck, 22).x;
		expect(found.law).toBe("taper");
		expect(found.atNut.value).toBeCloseTo(43, 9);
		expect(found.slope!.value).toBeCloseTo(13 / last, 12);
		expect(found.atNut.standard).toBeCloseTo(0.05 / Math.sqrt(12), 9);
		expect(found.at(last / 2).value).toBeCloseTo(49.5, 9);
		expect(found.at(last / 2).standard).toBeCloseTo(0.05 / Math.sqrt(24), 9);
		expect(valueAt(found.profile, last / 4)).toBeCloseTo(46.25, 9);
		expect(found.notes).toEqual([]);
	});

	it("finds residuals of three places, worked by hand", () => {
		// 43, 46.03, 49 at 0, 150, 300: residuals a third, two thirds, a third of 0.03.
		const found = width(along([0, 43], [150, 46.03], [300, 49]));
		expect(found.places.map(({ residual }) => Number(residual.toFixed(9)))).toEqual([
			-0.01, 0.02, -0.01,
		]);
		expect(found.slope!.value).toBeCloseTo(0.02, 12);
	});

	it("takes one place as constant, and says so", () => {
		const found = width(along([100, 50]));
		expect(found.law).toBe("constant");
		expect(found.slope).toBeNull();
		expect(found.at(300).value).toBe(50);
		expect(codes(found)).toEqual(["width-one-place"]);
	});

	it("names the one place of five that is out, and fits the others", () => {
		for (const wrong of [0, 1, 2, 3, 4]) {
			const read = [0, 1, 2, 3, 4].map((i): [number, number] => [
				i * 100,
				43 + 2 * i + (i === wrong ? 0.6 : 0),
			]);
			const found = width(along(...read));
			expect(found.places.map(({ out }) => out)).toEqual([0, 1, 2, 3, 4].map((i) => i === wrong));
			expect(found.atNut.value).toBeCloseTo(43, 9);
			expect(found.places[wrong]!.residual).toBeCloseTo(0.6, 9);
			expect(codes(found)).toEqual(["width-place-out"]);
		}
	});

	it("does not say which of three is out, nor of five along a curve", () => {
		const three = width(along([0, 43], [150, 47], [300, 49]));
		expect(three.places.some(({ out }) => out)).toBe(false);
		expect(codes(three)).toEqual(["width-not-straight"]);
		const curved = [0, 100, 200, 300, 400].map((x): [number, number] => [
			x,
			43 + 10 * (x / 400) ** 0.5,
		]);
		const found = width(along(...curved));
		expect(found.places.some(({ out }) => out)).toBe(false);
		expect(codes(found)).toEqual(["width-not-straight"]);
	});

	it("names none of four where leaving out either of two would mend the line", () => {
		// 100 and 200 lie 0.11 to either side of the ends' line: each alone is within two steps of the rest.
		const found = width(along([0, 43], [100, 45.11], [200, 46.89], [300, 49]));
		expect(found.places.some(({ out }) => out)).toBe(false);
		expect(codes(found)).toEqual(["width-not-straight"]);
	});

	it("seldom names a place of a straight board, and holds its width about 95 times in 100", () => {
		const next = seeded(9);
		const [trials, spread] = [400, 0.04];
		let [named, held] = [0, 0];
		for (let i = 0; i < trials; i++) {
			const places = [0, 90, 210, 330, 460].map((x) => ({
				at: distance(x),
				values: [0, 0].map(
					() => Math.round((43 + 0.028 * x + spread * normal(next)) / 0.05) * 0.05,
				),
			}));
			const found = width(places);
			if (found.notes.length > 0) named++;
			const { low, high } = found.at(230);
			if (low <= 43 + 0.028 * 230 && 43 + 0.028 * 230 <= high) held++;
		}
		expect(named / trials).toBeLessThan(0.05);
		expect(held / trials).toBeGreaterThan(0.92);
		expect(held / trials).toBeLessThan(0.98);
	});

	it("takes a place read twice as one place", () => {
		const found = width(along([0, 43], [0, 43.1], [300, 49]));
		expect(found.places.map(({ count }) => count)).toEqual([2, 1]);
		expect(found.atNut.value).toBeCloseTo(43.05, 9);
	});

	it("refuses what is no board's width, with its place", () => {
		const fit = fitWidth({ places: along([0, 43], [300, 5.6]), resolution: 0.05 }, neck);
		expect(Array.isArray(fit) && fit[0]!.where.path).toEqual(["width", 1, 0]);
	});
});
