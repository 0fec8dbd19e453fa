import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { indexColour, nearestIndex } from "../../src/writers/dxf-colour.js";

/** The palette of the general-purpose library dxf-parser, 256 whole numbers 0xrrggbb. */
function publishedPalette(): number[] {
	const main = createRequire(import.meta.url).resolve("dxf-parser");
	const source = readFileSync(join(dirname(main), "AutoCadColorIndex.js"), "utf8");
	return Array.from(source.matchAll(/^\s+(\d+),?$/gm), (match) => Number(match[1]));
}

describe("the colour index", () => {
	it("agrees with a published palette within two steps of 255", () => {
		const palette = publishedPalette();
		expect(palette).toHaveLength(256);
		for (let index = 10; index < 250; index++) {
			const value = palette[index]!;
			const channels = [value >> 16, (value >> 8) & 255, value & 255];
			for (const [i, channel] of indexColour(index).entries()) {
				expect(Math.abs(channel - channels[i]!)).toBeLessThanOrEqual(2);
			}
		}
	});

	it.each([
		["#ff0000", 1],
		["#ffff00", 2],
		["#00ff00", 3],
		["#00ffff", 4],
		["#0000ff", 5],
		["#ff00ff", 6],
		["#ffffff", 7],
		["#000000", 7],
		["#808080", 8],
		["#c0c0c0", 9],
		["#FF7F00", 30],
		["#333333", 250],
	])("has %s as %i", (colour, index) => {
		expect(nearestIndex(colour)).toBe(index);
	});
});
