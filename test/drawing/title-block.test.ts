import { describe, expect, it } from "vitest";
import type { Note } from "../../src/drawing/index.js";
import { type TitleFacts, titleBlock } from "../../src/drawing/title-block.js";
import { CAUTION_LAST } from "../../src/shop/index.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import { noteRectangle, overlaps } from "../support/rectangles.js";

const COLUMN = 118;
const [bar] = madeParts(
	jobWith({}, [{ "notched-straightedge": { "second-edge": { scale: "600 mm", frets: 17 } } }]),
).parts;
const cautions = ["Laser: stay with it.", CAUTION_LAST];
const facts: TitleFacts = { job: "Heron", date: null, cautions, kerf: 0 };

function block(width: number, change: Partial<TitleFacts> = {}) {
	return titleBlock(bar!, { ...facts, ...change }, LETTERS, { x: 0, y: 0 }, width).notes;
}

const texts = (notes: readonly Note[]) => notes.map((n) => n.text);

describe("titleBlock", () => {
	it("names job, part, stock, scale of the drawing and working edge", () => {
		const [job, title, stock, scale, edge] = texts(block(500));
		expect([job, title, stock, scale]).toEqual([
			"Heron",
			"Notched straightedge",
			"acrylic, 3 mm",
			"SCALE 1:1",
		]);
		expect(edge).toContain("Working edge: both long edges");
	});

	it("prints the date if there is one, apart from the scale", () => {
		expect(texts(block(500))).not.toContain("12 March");
		const notes = block(500, { date: "12 March" });
		const date = notes.find((n) => n.text === "12 March")!;
		expect(date.at.x + date.width).toBeCloseTo(COLUMN, 9);
		expect(date.at.y).toBe(notes.find((n) => n.text === "SCALE 1:1")!.at.y);
	});

	it("tells the kerf that the paths make up for, if any", () => {
		expect(texts(block(500)).join(" ")).not.toContain("waste");
		expect(texts(block(500, { kerf: 0.18 })).join(" ")).toContain("Paths lie 0.090 in the waste");
	});

	it("ends with the standing caution", () => {
		const all = texts(block(500)).join(" ").replace(/ - /gu, " ");
		expect(all.endsWith(CAUTION_LAST)).toBe(true);
	});

	it("has a row for every series and every single size, with its tolerance", () => {
		const notes = block(500);
		const row = (name: string) => {
			const y = notes.find((n) => n.text === name)!.at.y;
			return notes.find((n) => n.at.y === y && n.at.x > COLUMN + 60 && n.at.x < 2 * COLUMN + 8)!
				.text;
		};
		expect(row("22x notch width")).toBe("4.200 (0.1654 in) ±0.05");
		expect(row("22x position from theoretical nut")).toBe("36.353 to 465.945 ±0.05");
		expect(row("working edge: straightness")).toBe("straight to 0.05");
	});

	it("keeps every line within its column, whatever is in it", () => {
		const long = "W".repeat(60);
		for (const job of [long, "a b ".repeat(15).trim(), "Heron"]) {
			for (const width of [60, 118, 300, 500, 900]) {
				const notes = block(width, { job, date: "the thirtieth of September, ’99" });
				const wide = notes.filter(({ at, width: w }) => (at.x % (COLUMN + 8)) + w > COLUMN + 0.001);
				expect(texts(wide)).toEqual([]);
				expect(overlaps(notes.map(noteRectangle))).toEqual([]);
			}
		}
	});

	it("takes one column under a narrow part and at most four under a wide one", () => {
		const columns = (width: number) =>
			new Set(block(width).map((n) => Math.floor(n.at.x / (COLUMN + 8)))).size;
		expect([60, 118, 243, 244, 496, 2000].map(columns)).toEqual([1, 1, 1, 2, 4, 4]);
	});
});
