import { readdirSync, readFileSync } from "node:fs";
import { XMLParser } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import { gallery } from "../../scripts/gallery.js";
import { TOOLS } from "../../src/tools/index.js";

const FOLDER = "docs/gallery";

describe("the gallery", () => {
	it("shows every tool once, as scripts/gallery.mjs draws it from the tool's own file", async () => {
		const pictures = await gallery();
		expect(pictures.map(({ name }) => name)).toEqual(TOOLS.map(({ id }) => `${id}.svg`));
		expect(readdirSync(FOLDER).sort()).toEqual(pictures.map(({ name }) => name).sort());
		for (const { name, svg } of pictures) {
			const committed = readFileSync(`${FOLDER}/${name}`, "utf8");
			expect(committed === svg, `${name} differs: run node scripts/gallery.mjs, look, commit`).toBe(
				true,
			);
		}
	});

	it("stands in the README, each picture once, with words for those who cannot see it", () => {
		const shown = [
			...readFileSync("README.md", "utf8").matchAll(/!\[([^\]]+)\]\(docs\/gallery\/([^)]+)\)/gu),
		];
		expect(shown.map(([, , name]) => name).sort()).toEqual(
			TOOLS.map(({ id }) => `${id}.svg`).sort(),
		);
		for (const [, words] of shown) expect(words!.length).toBeGreaterThan(15);
	});

	it("keeps every drawing within its picture", () => {
		for (const { id } of TOOLS) {
			const text = readFileSync(`${FOLDER}/${id}.svg`, "utf8");
			expect(new XMLParser().parse(text, true)).toHaveProperty("svg");
			const [, , width, height] = /viewBox="([^"]+)"/u.exec(text)![1]!.split(" ").map(Number);
			const starts = [...text.matchAll(/M(-?\d+) (-?\d+)/gu)];
			expect(starts.length, id).toBeGreaterThan(1);
			for (const [, x, y] of starts) {
				expect(Number(x) > 0 && Number(x) < width!, id).toBe(true);
				expect(Number(y) > 0 && Number(y) < height!, id).toBe(true);
			}
		}
	});
});
