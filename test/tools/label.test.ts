import { describe, expect, it } from "vitest";
import { extents } from "../../src/geometry/index.js";
import { heightToFit, label } from "../../src/tools/label.js";
import { LETTERS } from "../support/made-parts.js";

describe("heightToFit", () => {
	it("is the largest height of ISO 3098 at which the text takes no more than the room", () => {
		const room = LETTERS.width("FRET 12", 3.5);
		expect(heightToFit(LETTERS, "FRET 12", room, 10)).toBe(3.5);
		expect(heightToFit(LETTERS, "FRET 12", room - 1e-6, 10)).toBe(2.5);
		expect(heightToFit(LETTERS, "FRET 12", room * 10, 5)).toBe(5);
	});

	it("is null where even 1.8 mm is too high or too long", () => {
		expect(heightToFit(LETTERS, "FRET 12", 2, 10)).toBeNull();
		expect(heightToFit(LETTERS, "FRET 12", 1000, 1.7)).toBeNull();
	});
});

describe("label", () => {
	it("claims what it draws: text, place, height and turn", () => {
		const at = { x: 30, y: 7 };
		const { claim, marks } = label(LETTERS, "scale", "H", { at, height: 5 });
		expect(claim).toMatchObject({ id: "label-scale", text: "H", height: 5, turn: 0, at: [at] });
		const box = marks.map((m) => extents(m.path));
		expect(Math.min(...box.map((b) => b.minY))).toBeCloseTo(7, 9);
		expect(Math.max(...box.map((b) => b.maxY))).toBeCloseTo(12, 9);
		expect(marks.every((m) => m.operation === "engrave" && m.feature === claim.feature)).toBe(true);
	});

	it("holds a text by its middle or its right end", () => {
		const place = (align: "centre" | "right") =>
			label(LETTERS, "x", "220.5", { at: { x: 0, y: 0 }, height: 2.5, align }).claim.at[0].x;
		const width = LETTERS.width("220.5", 2.5);
		expect(place("centre")).toBeCloseTo(-width / 2, 12);
		expect(place("right")).toBeCloseTo(-width, 12);
	});

	it("refuses a character that the lettering lacks", () => {
		expect(() => label(LETTERS, "x", "漢", { at: { x: 0, y: 0 }, height: 5 })).toThrow(RangeError);
	});
});
