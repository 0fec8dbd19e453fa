import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { XMLParser } from "fast-xml-parser";
import { describe, expect, it } from "vitest";
import { jobWith, madeParts } from "../support/made-parts.js";

const PICTURE = readFileSync("docs/kerf.svg", "utf8");

interface Label {
	readonly words: string;
	readonly left: number;
	readonly right: number;
	readonly baseline: number;
}

/** Size of the text, and how wide a letter of a wide sans-serif is on average, in sizes. */
const SIZE = Number(/font-size="([\d.]+)"/u.exec(PICTURE)![1]);
const LETTER = 0.62;

/** The texts of the picture with the room that they take. */
function labels(): Label[] {
	const found = PICTURE.matchAll(
		/<text x="([-\d.]+)" y="([-\d.]+)"[^>]* text-anchor="(start|middle)">([^<]+)<\/text>/gu,
	);
	return [...found].map(([, x, y, anchor, words]) => {
		const width = words!.length * SIZE * LETTER;
		const left = Number(x) - (anchor === "middle" ? width / 2 : 0);
		return { words: words!, left, right: left + width, baseline: Number(y) };
	});
}

describe("docs/kerf.svg", () => {
	it("is what scripts/kerf-picture.mjs makes, byte for byte", () => {
		const made = execFileSync(process.execPath, ["scripts/kerf-picture.mjs", "--print"], {
			encoding: "utf8",
		});
		expect(made).toBe(PICTURE);
	});

	it("is well-formed and has colours of the usual pens and no others but white", () => {
		expect(new XMLParser().parse(PICTURE, true)).toHaveProperty("svg");
		const { pens } = madeParts(jobWith({}, ["slot-strip"])).bench.machine;
		const usual = [pens.cut, pens.score, pens.engrave, pens.reference].map((pen) => pen.colour);
		const used = new Set(PICTURE.match(/#[0-9a-f]{6}/gu));
		expect([...used].sort()).toEqual([...usual, "#ffffff"].sort());
	});

	it("keeps its labels apart and within the picture", () => {
		const [x, , width] = /viewBox="([^"]+)"/u.exec(PICTURE)![1]!.split(" ").map(Number);
		const all = labels();
		expect(all).toHaveLength(PICTURE.split("<text").length - 1);
		expect(all.length).toBeGreaterThan(5);
		for (const [i, a] of all.entries()) {
			expect(a.left, a.words).toBeGreaterThan(x!);
			expect(a.right, a.words).toBeLessThan(x! + width!);
			for (const b of all.slice(i + 1)) {
				const apart =
					a.right < b.left || b.right < a.left || Math.abs(a.baseline - b.baseline) > 1.2 * SIZE;
				expect(apart, `${a.words} / ${b.words}`).toBe(true);
			}
		}
	});
});
