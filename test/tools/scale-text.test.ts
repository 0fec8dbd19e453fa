import { describe, expect, it } from "vitest";
import { lengthName, scaleText } from "../../src/tools/scale-text.js";
import { neckWith } from "../support/made-parts.js";

describe("lengthName", () => {
	it.each([
		[647.7, "25 1/2 in"],
		[25.4 * (13 + 7 / 8), "13 7/8 in"],
		[25.4 * 28.6, "28.6 in"],
		[650, "650 mm"],
		[640, "640 mm"],
		[628.5, "628.5 mm"],
		[610.123, "610.12 mm"],
	])("of %d mm is %s", (mm, name) => {
		expect(lengthName(mm)).toBe(name);
	});
});

describe("scaleText", () => {
	it("names one scale, or bass and treble", () => {
		expect(scaleText(neckWith({}))).toBe("25 1/2 in");
		const fanned = neckWith({
			scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
			strings: { count: 6, "at-nut": 36, "at-saddle": 52 },
		});
		expect(scaleText(fanned)).toBe("27 in / 25 1/2 in");
	});
});
