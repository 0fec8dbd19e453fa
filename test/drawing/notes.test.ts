import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Part, Sheet } from "../../src/drawing/index.js";
import { madeParts } from "../support/made-parts.js";
import { crossed } from "../support/part-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";
import { noteRectangle, overlaps } from "../support/rectangles.js";
import { sheetFor } from "../support/sheets.js";

/** Notes over each other, off the sheet, or run through by a line or by the part's edges. */
function noteFaults(part: Part, { notes, marks, size }: Sheet): string[] {
	const rectangles = notes.map(noteRectangle);
	const off = rectangles
		.filter(({ corners }) =>
			corners.some(({ x, y }) => x < size.minX || x > size.maxX || y < size.minY || y > size.maxY),
		)
		.map(({ text }) => `"${text}" runs off the sheet`);
	const cuts = part.marks.filter((m) => m.operation === "cut" || m.operation === "score");
	return [
		...overlaps(rectangles),
		...off,
		...crossed(rectangles, marks),
		...crossed(rectangles, cuts),
	];
}

const EXAMPLES = readdirSync("examples").filter((name) => name.endsWith(".yaml"));

describe("the notes of a drawing", () => {
	it.each(EXAMPLES)("of %s stand on the sheet, clear of each other, of lines and part", (name) => {
		const { parts } = madeParts(readFileSync(`examples/${name}`, "utf8"));
		expect(parts.length).toBeGreaterThan(0);
		const faults = parts.flatMap((part) =>
			noteFaults(part, sheetFor(part)).map((f) => `${part.name}: ${f}`),
		);
		expect(faults).toEqual([]);
	});

	it("of any part of any neck stand clear as well", () => {
		const settings = fc.tuple(anyStraightedge, anyGauge, anyStrip);
		fc.assert(
			fc.property(randomJob({ leastGap: 5 }), settings, ({ job }, make) => {
				const { parts } = madeParts({ ...job, make });
				expect(parts.flatMap((part) => noteFaults(part, sheetFor(part)))).toEqual([]);
			}),
			{ ...RUNS, numRuns: 25 },
		);
	});
});
