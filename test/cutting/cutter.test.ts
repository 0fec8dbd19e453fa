import { describe, expect, it } from "vitest";
import { compensated } from "../../src/cutting/compensate.js";
import { cutterProblems } from "../../src/cutting/cutter.js";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	filletedAt,
	type Path,
	rectangle,
	reversed,
	vertex,
} from "../../src/geometry/index.js";
import { partOf } from "../support/drawings.js";
import { jobWith, madeParts } from "../support/made-parts.js";

/** A comb of 60 × 20 mm with one notch from x = 10. */
function notched(width: number, depth: number): Path {
	return closed(
		vertex(0, 0),
		vertex(10, 0),
		vertex(10, depth),
		vertex(10 + width, depth),
		vertex(10 + width, 0),
		vertex(60, 0),
		vertex(60, 20),
		vertex(0, 20),
	);
}

function claim(kind: "width" | "depth" | "diameter", nominal: number, feature: string): SizeClaim {
	const at = kind === "width" ? [10, 10 + nominal].map((x) => ({ x, y: 1 })) : [{ x: 11, y: 0 }];
	const about = { datum: feature, operation: "cut", axis: "x", bench: 0.05, file: 0.001 } as const;
	return { id: `${feature}-${kind}`, kind, feature, at, nominal, ...about };
}

function plate(cuts: Readonly<Record<string, Path>>, claims: readonly SizeClaim[] = []): Part {
	const marks = Object.entries(cuts).map(([feature, path]) => ({
		operation: "cut" as const,
		path,
		feature,
	}));
	return { ...partOf("plate", marks), claims };
}

function comb(width: number, depth: number): Part {
	const claims = [claim("width", width, "notch 7"), claim("depth", depth, "notch 7")];
	return plate({ outline: notched(width, depth) }, claims);
}

const found = (part: Part, cutter: number) =>
	cutterProblems(part, cutter).map(({ code, facts }) => [code, facts.feature, facts.size]);

describe("cutterProblems", () => {
	it("names a notch narrower than the cutter, with its width; one as wide passes", () => {
		expect(found(comb(3, 5), 3.175)).toEqual([["narrower-than-cutter", "notch 7", 3]]);
		expect(found(comb(3.174, 5), 3.175)).toEqual([["narrower-than-cutter", "notch 7", 3.174]]);
		expect(found(comb(3.175, 5), 3.175)).toEqual([]);
		expect(found(comb(3.176, 5), 3.175)).toEqual([]);
	});

	it("names a notch that is all corner, with its depth; one as deep as the radius passes", () => {
		expect(found(comb(8, 1.5), 3.175)).toEqual([["shallower-than-cutter", "notch 7", 1.5]]);
		expect(found(comb(8, 1.5875), 3.175)).toEqual([]);
		expect(found(comb(8, 1.6), 3.175)).toEqual([]);
	});

	it("names holes and slots by themselves, each once", () => {
		const holes = {
			"dowel hole": reversed(circle({ x: 30, y: 10 }, 1.5)),
			"wide hole": reversed(circle({ x: 40, y: 10 }, 1.6)),
			"slot 3": reversed(rectangle(5, 2, 5.6, 18)),
			outline: rectangle(0, 0, 60, 20),
		};
		const claims = [claim("diameter", 3, "dowel hole"), claim("width", 0.6, "slot 3")];
		expect(found(plate(holes, claims), 3.175)).toEqual([
			["narrower-than-cutter", "dowel hole", 3],
			["narrower-than-cutter", "slot 3", 0.6],
		]);
		expect(found(plate(holes, claims), 0.5)).toEqual([]);
	});

	it("names an inside radius below the cutter's; sharp inside corners pass", () => {
		const rounded = (radius: number) =>
			plate({
				outline: filletedAt(notched(12, 6), [
					[2, radius],
					[3, radius],
				]),
			});
		expect(found(rounded(1.5), 3.175)).toEqual([
			["radius-below-cutter", "outline", expect.closeTo(1.5, 9)],
		]);
		expect(found(rounded(1.5875), 3.175)).toEqual([]);
		expect(found(plate({ outline: notched(12, 6) }), 3.175)).toEqual([]);
	});

	it("names a throat that lets no cutter into a wide place", () => {
		const pocket = [12, 0, 19.5, 4, 12, 8, 12, 14, 28, 14, 28, 8, 20.5, 4, 28, 0];
		const around = [0, 0, ...pocket, 40, 0, 40, 20, 0, 20];
		const points = around.flatMap((x, i) => (i % 2 === 0 ? [vertex(x, around[i + 1]!)] : []));
		const bottle = plate({ outline: closed(...points) });
		expect(cutterProblems(bottle, 2).map((p) => p.code)).toEqual(["throat-below-cutter"]);
		expect(cutterProblems(bottle, 0.8)).toEqual([]);
	});

	it("leaves parts alone that are meant to be nominal", () => {
		expect(cutterProblems({ ...comb(1, 5), nominal: true }, 3)).toEqual([]);
	});

	it("finds in every tool's parts what a beam of the same width finds, and no more", () => {
		const { parts } = madeParts(
			jobWith({}, ["notched-straightedge", "radius-gauge", { "slot-strip": { slots: "tang" } }]),
		);
		expect(parts).toHaveLength(3);
		for (const width of [0.3, 1, 2.5]) {
			for (const part of parts) {
				const beam = compensated(part, width);
				const names = beam.ok ? [] : beam.problems.map((p) => p.facts.feature);
				expect(found(part, width).map(([, feature]) => feature)).toEqual(names);
			}
		}
		const strip = parts.find((p) => p.tool === "slot-strip")!;
		expect(found(strip, 1).filter(([code]) => code === "narrower-than-cutter").length).toBe(22);
	});
});
