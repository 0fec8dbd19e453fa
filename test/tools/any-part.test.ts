import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LabelClaim, Part, SizeClaim } from "../../src/drawing/index.js";
import { distanceTo, moved, type Path, segments } from "../../src/geometry/index.js";
import { LETTERS, madeParts } from "../support/made-parts.js";
import { measured, outlineOf } from "../support/measure-part.js";
import { contourFaults, crossed, labelFaults, labelRectangles } from "../support/part-faults.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import {
	anyGauge,
	anyStraightedge,
	anyStrip,
	anyToolJob,
	DRAWN_TOOLS,
} from "../support/random-tools.js";
import { faultsOf } from "../support/scale-tools.js";

/** A neck of any kind with one straightedge, one set of gauges and one strip, settings of any kind. */
const anyJob = fc
	.tuple(randomJob({ leastGap: 5 }), anyStraightedge, anyGauge, anyStrip)
	.map(([{ job }, ...make]) => ({ ...job, make }));

/** Every part of many necks and settings, of one tool or all, with something to say of each. */
function eachPart(faultsOf: (part: Part) => readonly string[], tool = "") {
	let seen = 0;
	fc.assert(
		fc.property(anyJob, (job) => {
			const parts = madeParts(job).parts.filter((part) => part.tool.startsWith(tool));
			seen += parts.length;
			const faults = parts.flatMap((part) => faultsOf(part).map((f) => `${part.name}: ${f}`));
			expect(faults).toEqual([]);
		}),
		RUNS,
	);
	expect(seen).toBeGreaterThan(RUNS.numRuns / 4);
}

function sizesOf(part: Part): SizeClaim[] {
	return part.claims.filter((c): c is SizeClaim => c.kind !== "label");
}

describe("every part of any neck", () => {
	it("has closed, simple contours: the outline left around, holes right around and inside", () => {
		eachPart(contourFaults);
	});

	it("has labels inside the outline, apart from each other and from every cut and score", () => {
		eachPart((part) => {
			const scores = part.marks.filter((m) => m.operation === "score");
			return [...labelFaults(part), ...crossed(labelRectangles(part), scores)];
		});
	});

	it("measures what its claims say", () => {
		eachPart((part) =>
			sizesOf(part).flatMap((claim) => {
				const found = measured(part, claim);
				const off = Math.abs(Math.abs(found) - Math.abs(claim.nominal));
				return off < 1e-9 ? [] : [`${claim.id} is ${found}, not ${claim.nominal}`];
			}),
		);
	});

	it("claims everything once, with tolerances that can be kept", () => {
		eachPart((part) => {
			const ids = part.claims.map((c) => c.id);
			const twice = ids.filter((id, i) => ids.indexOf(id) < i);
			const loose = part.claims.filter((c) => !(c.bench > 0 && c.file > 0 && c.file <= 0.002));
			return [...twice, ...loose.map((c) => c.id)];
		});
	});

	it("has letters that read as written: turned and shifted, never mirrored", () => {
		eachPart((part) =>
			part.claims
				.filter((c): c is LabelClaim => c.kind === "label")
				.flatMap((claim) => {
					const { text, height, at, turn, feature } = claim;
					const wanted = LETTERS.paths(text, height).map((path) =>
						moved(path, { x: at[0].x, y: at[0].y, turn, mirror: false }),
					);
					const drawn = part.marks.filter((m) => m.feature === feature).map((m) => m.path);
					return farthest(wanted, drawn) < 1e-9 ? [] : [`"${text}" is drawn otherwise`];
				}),
		);
	});
});

/** How far the points of two lists of paths are apart, in order. */
function farthest(a: readonly Path[], b: readonly Path[]): number {
	const [p, q] = [a, b].map((paths) => paths.flatMap((path) => path.points));
	if (p!.length !== q!.length || p!.length === 0) return Number.POSITIVE_INFINITY;
	return Math.max(...p!.map((v, i) => Math.hypot(v.x - q![i]!.x, v.y - q![i]!.y)));
}

describe("any part of any tool", () => {
	/** Its slots work, and its numbers stand beside them. */
	const BESIDE_SLOTS = "slot-strip";
	/** Single lines that blocks share are its purpose. */
	const NO_CONTOURS = "kerf-coupon";

	it("has sound contours and letters, measures what it claims, and keeps off its working edges", () => {
		const seen = new Map(DRAWN_TOOLS.map((tool) => [tool, 0]));
		fc.assert(
			fc.property(anyToolJob({ leastGap: 3 }), ({ job, tool, entry }) => {
				const { parts } = madeParts({ ...job, make: [entry] });
				if (parts.length > 0) seen.set(tool, seen.get(tool)! + 1);
				if (tool === NO_CONTOURS) return;
				const faults = parts.flatMap(faultsOf);
				const counted = faults.filter((f) => tool !== BESIDE_SLOTS || !f.includes("too near"));
				expect(counted).toEqual([]);
			}),
			{ ...RUNS, numRuns: 500 },
		);
		expect([...seen].filter(([, count]) => count < 8)).toEqual([]);
	});
});

describe("working edges", () => {
	/** Everything but the outline. */
	const others = (part: Part) => {
		const outline = outlineOf(part);
		return part.marks.filter((m) => m.path !== outline && m.operation !== "score");
	};

	it("of a straightedge keep 3 mm from letters and hole, at the nut end too", () => {
		eachPart((part) => {
			const both = part.claims.some((c) => c.id === "second-working-edge");
			const size = (id: string) => sizesOf(part).find((c) => c.id === id)!;
			const [left, right] = size("length").at.map((p) => p.x) as [number, number];
			const top = size("height").nominal;
			const butting = part.workingEdge.includes("nut end");
			return others(part)
				.filter(({ path }) =>
					path.points.some(({ x, y }) => {
						const r = path.closed ? Math.abs(path.points[0]!.x - path.points[1]!.x) / 2 : 0;
						const [low, high] = [path.closed ? path.points[0]!.y - r : y, path.closed ? y + r : y];
						return (
							low < 3 - 1e-9 ||
							(both && high > top - 3 + 1e-9) ||
							(butting && x < left + 3 - 1e-9) ||
							(butting && both && x > right - 3 + 1e-9)
						);
					}),
				)
				.map((m) => `${m.feature} is too near`);
		}, "notched-straightedge");
	});

	it("of a radius gauge keep 3 mm from letters and hole", () => {
		eachPart((part) => {
			const ends = sizesOf(part).find((c) => c.id === "radius")!.at;
			const arc = segments(outlineOf(part)).find(
				(s) =>
					s.kind === "arc" &&
					Math.abs(Math.abs(s.start.x - s.end.x) - Math.abs(ends[0]!.x - ends[2]!.x)) < 1e-9,
			)!;
			return others(part)
				.filter(({ path }) => path.points.some((p) => distanceTo(arc, p) < 3 - 1e-9))
				.map((m) => `${m.feature} is too near`);
		}, "radius-gauge");
	});
});

describe("a left-handed neck", () => {
	it("has the mirror image of the right-handed strip, its letters not mirrored", () => {
		fc.assert(
			fc.property(
				randomJob({ leastGap: 4, left: false, make: ["slot-strip"] }),
				fc.constantFrom("line", "tang"),
				({ job }, slots) => {
					const of = (handed: string) => {
						const neck = { ...(job.neck as object), handed };
						return madeParts({ ...job, neck, make: [{ "slot-strip": { slots } }] }).parts[0]!;
					};
					const [right, left] = [of("right"), of("left")];
					const geometry = (part: Part, flip: 1 | -1) =>
						part.marks
							.filter((m) => m.operation !== "engrave")
							.map((m) => ({ ...m, points: sorted(m.path, flip) }));
					const [own, mirrored] = [geometry(right, -1), geometry(left, 1)];
					expect(own.map((m) => m.feature).sort()).toEqual(mirrored.map((m) => m.feature).sort());
					expect(unmatched(own, mirrored)).toEqual([]);
					const words = (part: Part) => part.claims.filter((c) => c.kind === "label").map(textOf);
					expect(words(left).sort()).toEqual(words(right).sort());
				},
			),
			{ ...RUNS, numRuns: 20 },
		);
	});
});

function textOf(claim: { readonly id: string; readonly text?: string }): string {
	return `${claim.id}: ${claim.text}`;
}

/** A path's points in an order of their own, y turned by `flip`. */
function sorted(path: Path, flip: 1 | -1) {
	const near = (v: number) => Math.round(v * 1e4);
	return path.points
		.map(({ x, y }) => ({ x, y: flip * y }))
		.sort((a, b) => near(a.x) - near(b.x) || near(a.y) - near(b.y));
}

interface Drawn {
	readonly feature: string;
	readonly points: readonly { readonly x: number; readonly y: number }[];
}

/** Features of one list without a path at the same points in the other. */
function unmatched(own: readonly Drawn[], other: readonly Drawn[]): string[] {
	return own
		.filter(
			(m) =>
				!other.some(
					(o) =>
						o.feature === m.feature &&
						o.points.length === m.points.length &&
						o.points.every((p, i) => Math.hypot(p.x - m.points[i]!.x, p.y - m.points[i]!.y) < 1e-9),
				),
		)
		.map((m) => m.feature);
}
