import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import type { Path, Point } from "../../src/geometry/index.js";
import { type Cubic, pointOnCubic } from "../../src/lettering/curve.js";
import { CAPITAL, GLYPHS } from "../../src/lettering/data/readability.js";
import { strokeLettering } from "../../src/lettering/index.js";
import { distanceToPaths, distanceToPolylines, pointsAlong } from "./distance.js";

/** Spaced anew or drawn here: not to be held against the source. */
const CHANGED = "¢¦ª°²³¹º¼½¾±−‘’";

const HEIGHT = 10;
const FOOT = 22.1;
const SCALE = HEIGHT / (652 - FOOT);

const source = readFileSync(
	createRequire(import.meta.url).resolve("hersheytext/svg_fonts/EMSReadability.svg"),
	"utf8",
);

/** The source read without the script: per sign its advance and path data. */
const original = new Map(
	[
		...source.matchAll(/<glyph unicode="([^"]+)"[^>]*? horiz-adv-x="([^"]+)"(?: d="([^"]+)")?/g),
	].map(([, sign, advance, d = ""]) => [entity(sign!), { advance: Number(advance), d }]),
);

function entity(text: string): string {
	const names: Record<string, string> = { "&amp;": "&", "&apos;": "'" };
	return text
		.replace(/&#x([0-9a-f]+);/gi, (_, code) => String.fromCodePoint(Number.parseInt(code, 16)))
		.replace(/&(amp|apos);/g, (name) => names[name]!);
}

/** Path data as dense polylines, mm. */
function polylines(d: string): Point[][] {
	const result: Point[][] = [];
	for (const [, letter, rest] of d.matchAll(/([MLC])([^MLC]*)/g)) {
		const n = rest!.trim().split(/[ ,]+/).map(Number);
		const points = [0, 2, 4]
			.filter((i) => i < n.length)
			.map((i) => ({ x: n[i]! * SCALE, y: (n[i + 1]! - FOOT) * SCALE }));
		const stroke = result.at(-1);
		if (letter === "M") result.push([points[0]!]);
		else if (letter === "L") stroke!.push(points[0]!);
		else {
			const cubic = [stroke!.at(-1)!, ...points] as unknown as Cubic;
			for (let i = 1; i <= 500; i++) stroke!.push(pointOnCubic(cubic, i / 500));
		}
	}
	return result;
}

describe("the generated letters", () => {
	it("are what the script makes of the font, byte for byte", () => {
		const printed = execFileSync("node", ["scripts/letters.mjs", "--print"], { encoding: "utf8" });
		expect(readFileSync("src/lettering/data/readability.ts", "utf8")).toBe(printed);
	});

	it("hold every sign of the font and three more", () => {
		expect(original.size).toBe(187);
		const added = Object.keys(GLYPHS).filter((sign) => !original.has(sign));
		expect(added.join("")).toBe("‘’−");
		expect(Object.keys(GLYPHS)).toHaveLength(190);
	});

	it("keep the advances of the font and the height of its H", () => {
		expect(CAPITAL).toBe(62990);
		const letters = strokeLettering();
		for (const [sign, { advance }] of original) {
			if (CHANGED.includes(sign)) continue;
			expect(letters.width(sign, HEIGHT)).toBeCloseTo(advance * SCALE, 9);
		}
	});

	it("draw the ink of the font to within 0.7 µm at 10 mm, and nothing else", () => {
		const letters = strokeLettering();
		let worst = 0;
		for (const [sign, { d }] of original) {
			if (CHANGED.includes(sign) || d === "") continue;
			const paths = letters.paths(sign, HEIGHT);
			const lines = polylines(d);
			const toPaths = distanceToPaths(paths);
			const toLines = distanceToPolylines(lines);
			for (const p of lines.flatMap(withMiddles)) {
				worst = Math.max(worst, toPaths(p));
			}
			for (const p of paths.flatMap((path) => pointsAlong(path, 3))) {
				worst = Math.max(worst, toLines(p));
			}
		}
		expect(worst).toBeGreaterThan(0);
		expect(worst).toBeLessThan(0.0007);
	});

	it("keep lines to within 1 nm where a sign has no curve", () => {
		const letters = strokeLettering();
		for (const sign of 'AHRg8&@#?"') {
			const toPaths = distanceToPaths(letters.paths(sign, HEIGHT));
			for (const p of polylines(original.get(sign)!.d).flatMap(withMiddles)) {
				expect(toPaths(p)).toBeLessThan(1e-6);
			}
		}
	});

	it("draw no line twice", () => {
		const letters = strokeLettering();
		for (const sign of Object.keys(GLYPHS)) {
			const lines = letters.paths(sign, HEIGHT).flatMap(linesOf);
			for (let i = 0; i < lines.length; i++) {
				for (let j = 0; j < i; j++) expect(shared(lines[i]!, lines[j]!)).toBeLessThan(1e-9);
			}
		}
	});
});

function withMiddles(points: readonly Point[]): Point[] {
	return points.flatMap((p, i) => {
		const next = points[i + 1];
		return next ? [p, { x: (p.x + next.x) / 2, y: (p.y + next.y) / 2 }] : [p];
	});
}

function linesOf(path: Path): (readonly [Point, Point])[] {
	return path.points
		.slice(1)
		.flatMap((to, i) => (path.points[i]!.bulge === 0 ? ([[path.points[i]!, to]] as const) : []));
}

/** Length that two lines have in common, 0 unless one lies along the other. */
function shared([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): number {
	const size = Math.hypot(b.x - a.x, b.y - a.y);
	const ux = (b.x - a.x) / size;
	const uy = (b.y - a.y) / size;
	const off = (p: Point) => Math.abs(ux * (p.y - a.y) - uy * (p.x - a.x));
	if (off(c) > 1e-9 || off(d) > 1e-9) return 0;
	const along = (p: Point) => ux * (p.x - a.x) + uy * (p.y - a.y);
	const [low, high] = [Math.min(along(c), along(d)), Math.max(along(c), along(d))];
	return Math.max(0, Math.min(size, high) - Math.max(0, low));
}
