import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	fewestGroups,
	roomiestGroups,
	type Span,
} from "../../../src/tools/fret-rocker/stabbing.js";

const RUNS = { seed: 1_847, numRuns: 150 };

/** Few spans between whole numbers: ties and touching ends come often. */
const spans = fc.array(
	fc
		.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 12 }))
		.map(([from, size]): Span => ({ from, to: from + size })),
	{ minLength: 1, maxLength: 8 },
);

/** Every way to share things out to groups. */
function partitions<T>(things: readonly T[]): T[][][] {
	const [first, ...rest] = things;
	if (first === undefined) return [[]];
	return partitions(rest).flatMap((groups) => [
		[[first], ...groups],
		...groups.map((group, i) => groups.map((g, j) => (i === j ? [first, ...group] : g))),
	]);
}

const common = (group: readonly Span[]) =>
	Math.min(...group.map((s) => s.to)) - Math.max(...group.map((s) => s.from));

/** Of all ways to share out, those whose every group has a length in common. */
const sound = (list: readonly Span[]) =>
	partitions(list).filter((groups) => groups.every((g) => common(g) >= 0));

describe("fewestGroups", () => {
	it("needs as few lengths as any way to share the spans out, all of them tried", () => {
		fc.assert(
			fc.property(spans, (list) => {
				const least = Math.min(...sound(list).map((groups) => groups.length));
				const found = fewestGroups(list, 0);
				expect(found).toHaveLength(least);
				expect(found.flatMap((g) => g.spans)).toHaveLength(list.length);
				for (const { spans: own, from, to } of found) {
					expect(from).toBeLessThanOrEqual(to);
					expect(common(own)).toBe(to - from);
				}
			}),
			RUNS,
		);
	});
});

describe("roomiestGroups", () => {
	it("has as few groups, and the widest narrowest one of all ways to have so few", () => {
		fc.assert(
			fc.property(spans, (list) => {
				const ways = sound(list);
				const least = Math.min(...ways.map((groups) => groups.length));
				const narrowest = (groups: readonly (readonly Span[])[]) => Math.min(...groups.map(common));
				const widest = Math.max(...ways.filter((g) => g.length === least).map(narrowest));
				const found = roomiestGroups(list);
				expect(found).toHaveLength(least);
				expect(narrowest(found.map((g) => g.spans))).toBeCloseTo(widest, 9);
			}),
			RUNS,
		);
	});

	it("takes a span without end", () => {
		const endless = { from: 3, to: Number.POSITIVE_INFINITY };
		expect(roomiestGroups([endless])).toEqual([{ spans: [endless], from: 3, to: endless.to }]);
		expect(roomiestGroups([endless, { from: 1, to: 9 }])).toMatchObject([{ from: 3, to: 9 }]);
	});
});
