import { describe, expect, it } from "vitest";
import { extents } from "../../src/geometry/index.js";
import { type Stack, stackLabels, stackOf } from "../../src/tools/label-stack.js";
import { LETTERS } from "../support/made-parts.js";

const JOB = {
	id: "job",
	pieces: ["A", "long", "name", "of", "many", "words"],
	between: " ",
	most: 3.5,
};
const stack = (room: number) => stackOf(LETTERS, [JOB], room) as Stack;

describe("a stack of labels", () => {
	it("takes the largest letters that go on one line", () => {
		expect(stack(80).lines.map((l) => [l.text, l.height])).toEqual([
			["A long name of many words", 3.5],
		]);
		const [line] = stack(LETTERS.width("A long name of many words", 2.5)).lines;
		expect(line!.height).toBe(2.5);
	});

	it("breaks between its pieces before the letters become small", () => {
		const { lines } = stack(LETTERS.width("A long name of many words", 2.5) - 1);
		expect(lines.map((l) => l.id)).toEqual(["job", "job-2"]);
		expect(lines[0]!.height).toBeGreaterThan(2);
		expect(lines.map((l) => l.text).join(" ")).toBe("A long name of many words");
	});

	it("keeps every line within its room, and names a text of which a piece does not fit", () => {
		for (let room = 10; room < 70; room += 3) {
			const made = stack(room);
			for (const { text, height } of made.lines) {
				expect(LETTERS.width(text, height)).toBeLessThanOrEqual(room);
			}
		}
		expect(stackOf(LETTERS, [JOB], 4)).toBe("A long name of many words");
	});

	it("stands between its bottom and its height, whatever the letters", () => {
		const made = stackOf(
			LETTERS,
			[JOB, { ...JOB, id: "sum", pieces: ["R 305.68 mm"] }],
			70,
		) as Stack;
		const boxes = stackLabels(LETTERS, made, 10).flatMap((l) =>
			l.marks.map((m) => extents(m.path)),
		);
		expect(Math.min(...boxes.map((b) => b.minY))).toBeGreaterThanOrEqual(10);
		// Ascenders reach over capitals by an eighth.
		expect(Math.max(...boxes.map((b) => b.maxY))).toBeLessThanOrEqual(10 + made.height + 3.5 / 8);
	});
});
