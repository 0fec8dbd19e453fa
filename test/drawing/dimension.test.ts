import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensions, dimensionText, partExtents } from "../../src/drawing/dimension.js";
import type { Claim, Part, SizeClaim } from "../../src/drawing/index.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";

const strings = { count: 6, "at-nut": 35.5, "at-saddle": 52 };

function sizesOf(part: Part): SizeClaim[] {
	return part.claims.filter((c): c is SizeClaim => c.kind !== "label");
}

/** Lengths in mm that a drawing gives: with three decimals, as nothing else has. */
function lengthsIn(texts: readonly string[]): string[] {
	return texts.flatMap((text) => text.match(/-?\d+\.\d{3}(?!\d)/gu) ?? []);
}

function drawnLengths(part: Part): string[] {
	return lengthsIn(dimensions(part, LETTERS).notes.map((n) => n.text));
}

function anyPart(check: (part: Part) => void) {
	const settings = fc.tuple(anyStraightedge, anyGauge, anyStrip);
	fc.assert(
		fc.property(randomJob({ leastGap: 5 }), settings, ({ job }, make) => {
			for (const part of madeParts({ ...job, make }).parts) check(part);
		}),
		{ ...RUNS, numRuns: 25 },
	);
}

describe("dimensions", () => {
	it("give no length that is not a claim's", () => {
		anyPart((part) => {
			const claimed = new Set(sizesOf(part).map((c) => c.nominal.toFixed(3)));
			const strange = drawnLengths(part).filter((l) => !claimed.has(l));
			expect(strange).toEqual([]);
		});
	});

	it("belong by their lines to a claim or a datum", () => {
		anyPart((part) => {
			const ids = new Set([...part.claims.map((c) => c.id), "datum"]);
			const { marks } = dimensions(part, LETTERS);
			expect(marks.filter((m) => !ids.has(m.feature)).map((m) => m.feature)).toEqual([]);
			expect(new Set(marks.map((m) => m.operation))).toEqual(new Set(["reference"]));
		});
	});

	it("give every position from its datum, once", () => {
		anyPart((part) => {
			const texts = dimensions(part, LETTERS).notes.map((n) => n.text);
			const running = sizesOf(part).filter((c) => c.kind === "position" && c.axis === "x");
			const places = new Set(running.map((c) => `${c.datum} ${c.at[1]!.x.toFixed(6)}`));
			expect(texts.filter((t) => /^[^0][^:]*: /u.test(t))).toHaveLength(places.size);
			for (const { feature, nominal } of running) {
				const name = feature.replace(/ (bass|treble)$/u, "");
				expect(texts.some((t) => t.startsWith(name) && t.includes(nominal.toFixed(3)))).toBe(true);
			}
		});
	});

	const plain = madeParts(
		jobWith({ strings, markers: [3, { 12: "double" }] }, [
			"notched-straightedge",
			{ "radius-gauge": { faces: ["concave", "convex"] } },
			"slot-strip",
		]),
	).parts;

	it("vanish with the claims", () => {
		for (const part of plain) {
			expect(dimensions({ ...part, claims: [] }, LETTERS)).toEqual({ marks: [], notes: [] });
		}
	});

	it("follow the claim, not the drawing, where the two differ", () => {
		for (const part of plain) {
			const told = (claim: Claim): Claim =>
				claim.kind === "length" ? { ...claim, nominal: claim.nominal + 1000 } : claim;
			const changed = { ...part, claims: part.claims.map(told) };
			const lengths = sizesOf(part).filter((c) => c.kind === "length");
			expect(lengths.length).toBeGreaterThan(0);
			for (const { nominal } of lengths) {
				expect(drawnLengths(changed)).toContain((nominal + 1000).toFixed(3));
				expect(drawnLengths(part)).toContain(nominal.toFixed(3));
			}
		}
	});

	it("say once what the notches of a bar share", () => {
		const texts = dimensions(plain[0]!, LETTERS).notes.map((n) => n.text);
		expect(texts.filter((t) => t.startsWith("22x"))).toEqual(["22x 4.200", "22x 1.900"]);
	});

	it("give radius, sagitta, width, height and hole of a gauge", () => {
		const texts = dimensions(plain[1]!, LETTERS).notes.map((n) => n.text);
		expect(texts.sort()).toEqual(
			[
				"1.289 (0.0507 in)",
				"28.000 (1.1024 in)",
				"56.000 (2.2047 in)",
				"R 304.800 (12.0000 in)",
				"dia 5.000",
			].sort(),
		);
	});

	it("name a double marker once where its two centres share their place", () => {
		const texts = dimensions(plain[3]!, LETTERS).notes.map((n) => n.text);
		expect(texts.filter((t) => t.startsWith("marker 12"))).toEqual([
			"marker 12: 314.221 (12.3709 in)",
		]);
	});

	it("leave the part itself untouched: everything is drawn beside it", () => {
		for (const part of plain) {
			const box = partExtents(part);
			const inside = dimensions(part, LETTERS).notes.filter(
				({ at }) =>
					at.x > box.minX && at.x < box.maxX && at.y > box.minY + 0.1 && at.y < box.maxY - 0.1,
			);
			expect(inside.map((n) => n.text)).toEqual([]);
		}
	});
});

describe("dimensionText", () => {
	it("is mm to the thousandth and inch to the ten-thousandth", () => {
		expect(dimensionText(221.22)).toBe("221.220 (8.7094 in)");
		expect(dimensionText(25.4)).toBe("25.400 (1.0000 in)");
	});
});
