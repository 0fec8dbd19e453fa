import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutterProblems } from "../../../src/cutting/cutter.js";
import type { Part } from "../../../src/drawing/index.js";
import { closed, segments, vertex } from "../../../src/geometry/index.js";
import { clearWidth, hasPockets } from "../../../src/tools/straightedge/cutter.js";
import { bar, madeBar, notchesFrom, SIX_STRINGS, sizeClaim } from "../../support/bars.js";
import { madeParts } from "../../support/made-parts.js";
import { outlineOf } from "../../support/measure-part.js";
import { crossingsAtHeight, crossingsAtPlace } from "../../support/measure-path.js";
import { milled, milledWidth } from "../../support/mill.js";
import { contourFaults, labelFaults } from "../../support/part-faults.js";
import { RUNS, randomJob } from "../../support/random-neck.js";
import { anyStraightedge } from "../../support/random-tools.js";

const mill = (cutter: number, relief: "none" | "floor" = "none") => ({
	machine: { kind: "mill", cutter: `${cutter} mm`, relief },
});

/** A plate with one notch about x = 0. */
function notched(width: number, depth: number) {
	const half = width / 2;
	return closed(
		vertex(-20, 0),
		vertex(-half, 0),
		vertex(-half, depth),
		vertex(half, depth),
		vertex(half, 0),
		vertex(20, 0),
		vertex(20, 12),
		vertex(-20, 12),
	);
}

describe("clearWidth", () => {
	it("is the formula's by hand: 4.2 wide, 1.9 deep, a cutter of 1/8 in, a crown of 1.3", () => {
		// over = 1.3 − (1.9 − 1.5875) = 0.9875; √(1.5875² − 0.9875²) = √(0.6 × 2.575) = 1.242980…
		const clear = clearWidth({ width: 4.2, depth: 1.9 }, 1.5875, 1.3);
		expect(clear).toBeCloseTo(4.2 - 3.175 + 2 * Math.sqrt(1.545), 12);
		expect(clear).toBeCloseTo(3.5109606, 6);
	});

	it("is all of the width below the rounds, and what lies between them at the floor", () => {
		const notch = { width: 5, depth: 3 };
		for (const height of [0, 1, 2]) expect(clearWidth(notch, 1, height)).toBe(5);
		expect(clearWidth(notch, 1, 3)).toBe(3);
		expect(clearWidth(notch, 0, 3)).toBe(5);
	});

	it("is what a cutter swept through the notch leaves open, at every height", () => {
		for (const [width, depth, cutter] of [
			[4.2, 1.9, 3.175],
			[3.6, 2.5, 3],
			[6, 2.1, 1.5],
		] as const) {
			const open = milled([notched(width, depth)], cutter);
			for (const share of [0.05, 0.3, 0.55, 0.8, 0.95]) {
				const y = share * depth;
				const swept = milledWidth(open, 0, y);
				expect(Math.abs(swept - clearWidth({ width, depth }, cutter / 2, y))).toBeLessThan(0.002);
			}
		}
	});

	it("refuses a round that does not fit and heights beyond the notch", () => {
		expect(() => clearWidth({ width: 3, depth: 2 }, 1.6, 1)).toThrow(RangeError);
		expect(() => clearWidth({ width: 3, depth: 2 }, 1, 2.1)).toThrow(RangeError);
		expect(() => clearWidth({ width: 3, depth: 2 }, 1, -0.1)).toThrow(RangeError);
	});
});

describe("a straightedge for a mill", () => {
	it("is refused, naming the fret and its figures, where the rounds come down to a crown", () => {
		const { problems } = madeBar({}, { "side-clearance": 0.3 }, mill(3.175));
		expect(problems.map((p) => p.code)).toEqual(["crown-meets-cutter-round"]);
		const [problem] = problems;
		// 3.3 wide, 1.9 deep; lapped by 0.2 the crown stands 1.5 up: over = 1.5 − 0.3125 = 1.1875;
		// √(1.5875² − 1.1875²) = √(0.4 × 2.775) = √1.11. Needed are the crown and twice the least of
		// the set clearance and the budget.
		expect(problem!.facts.clear).toBeCloseTo(3.3 - 3.175 + 2 * Math.sqrt(1.11), 6);
		expect(problem!.facts.needed).toBeGreaterThan(2.7);
		expect(problem!.facts.needed).toBeLessThanOrEqual(3.3 + 1e-9);
		expect(problem!.facts.more).toBeGreaterThan(0);
		expect(problem!.where.path).toEqual(["depth-clearance"]);
	});

	it("is made as before where no crown reaches the rounds, and says what is clear", () => {
		const settings = { "side-clearance": 0.3, "depth-clearance": 1.6 };
		const part = bar({}, settings, mill(3.175));
		// 3.1 deep: rounds begin at 1.5125, over the crown of 1.3 and 0.2 to be lapped off.
		expect(part.notes).toContain(
			"Cutter 3.175: 3.300 mm clear at the crown's height in the narrowest notch, the edge lapped by all of its allowance.",
		);
		expect(outlineOf(part)).toEqual(outlineOf(bar({}, settings)));
	});

	it("and the same one, a hair shallower, asks; the figure in the notes is the swept one", () => {
		const part = bar({}, { "side-clearance": 1.3 }, mill(3.175));
		const said = part.notes.find((n) => n.startsWith("Cutter"))!;
		const clear = Number(/: ([\d.]+) mm/u.exec(said)![1]);
		const narrow = notchesFrom(part).reduce((a, b) => (b.width < a.width ? b : a));
		const open = milled([notched(narrow.width, narrow.depth)], 3.175);
		expect(Math.abs(milledWidth(open, 0, 1.5) - clear)).toBeLessThan(0.002);
		expect(clear).toBeLessThan(narrow.width - 0.5);
	});

	it("counts on the lapping that the drawing invites: a deep allowance brings the crown to the rounds", () => {
		const settings = { "side-clearance": 1, "depth-clearance": 1.2, "lapping-allowance": 0 };
		expect(madeBar({}, settings, mill(4)).problems).toEqual([]);
		const lapped = { ...settings, "depth-clearance": 0.2, "lapping-allowance": 1 };
		const { problems } = madeBar({}, lapped, mill(4));
		expect(problems.map((p) => p.code)).toEqual(["crown-meets-cutter-round"]);
	});

	it("says nothing of a cutter that is not known, nor with a laser", () => {
		for (const machine of [{ kind: "mill" }, { kind: "laser" }]) {
			expect(bar({}, {}, { machine }).notes.join()).not.toMatch(/Cutter|Relief/u);
		}
	});

	it("rounds the corner of a cleared nut end as large as the cutter, and passes its check", () => {
		const part = bar({}, { "nut-end": "cleared", "depth-clearance": 2 }, mill(3.175));
		expect(cutterProblems(part, 3.175)).toEqual([]);
		const outline = outlineOf(part);
		const inside = segments(outline).filter((s) => s.kind === "arc" && s.sweep < 0 && s.radius < 5);
		expect(inside.map((s) => s.kind === "arc" && s.radius)).toEqual([expect.closeTo(1.5875, 9)]);
		const end = sizeClaim(part, "arch-end")!;
		expect(
			crossingsAtHeight([outline], end.at[1]!.y).some((x) => Math.abs(x - end.nominal) < 1e-9),
		).toBe(true);
	});
});

describe("a relieved floor", () => {
	it.each([
		["deeper as a whole under a cutter of 1/8 in", 3.175, {}],
		["with pockets under a cutter of 0.8 mm", 0.8, {}],
		["on both edges, deeper", 3, { "second-edge": { scale: "640 mm", frets: 20 } }],
		["on both edges, with pockets", 0.8, { "second-edge": { scale: "640 mm", frets: 20 } }],
	])("leaves the full width down to the depth: %s", (_, cutter, settings) => {
		const part = bar({ strings: SIX_STRINGS }, settings, mill(cutter, "floor"));
		const outline = outlineOf(part);
		const open = milled([outline], cutter);
		const widths = part.claims.filter((c) => c.kind === "width");
		expect(widths.length).toBeGreaterThan(20);
		const depth = 1.3 + 0.4 + 0.2;
		const up = (y: number) =>
			y < 12 ? [0, 1] : [part.claims.find((c) => c.id === "height")!.nominal, -1];
		for (const claim of widths) {
			const x = (claim.at[0]!.x + claim.at[1]!.x) / 2;
			const [edge, way] = up(claim.at[0]!.y) as [number, number];
			for (const y of [0.1, 1.3, depth - 0.001]) {
				const width = milledWidth(open, x, edge + way * y);
				expect(Math.abs(width - claim.nominal), `${claim.id} at ${y}`).toBeLessThan(0.002);
			}
		}
		expect(cutterProblems(part, cutter)).toEqual([]);
		expect(contourFaults(part)).toEqual([]);
		expect(labelFaults(part)).toEqual([]);
	});

	it("would not leave it without the relief", () => {
		const part = bar({}, { "side-clearance": 1.3 }, mill(3.175));
		const [first] = notchesFrom(part);
		const width = milledWidth(milled([outlineOf(part)], 3.175), first!.centre, 1.89);
		expect(width).toBeLessThan(first!.width - 2);
	});

	it("is claimed as it is drawn: at the notch's middle, and in its pockets", () => {
		const deeper = bar({}, {}, mill(3.175, "floor"));
		const depth = sizeClaim(deeper, "notch-7-depth")!;
		expect(depth.nominal).toBeCloseTo(1.9 + 1.5875, 9);
		expect(sizeClaim(deeper, "notch-7-relief-depth")).toBeUndefined();
		const pockets = bar({}, {}, mill(0.8, "floor"));
		for (const [id, nominal] of [
			["notch-7-depth", 1.9],
			["notch-7-relief-depth", 2.3],
		] as const) {
			const claim = sizeClaim(pockets, id)!;
			expect(claim.nominal).toBeCloseTo(nominal, 9);
			const [, floor] = crossingsAtPlace([outlineOf(pockets)], claim.at[0]!.x);
			const first = crossingsAtPlace([outlineOf(pockets)], claim.at[0]!.x)[0]!;
			expect([first, floor].some((y) => Math.abs(y! - nominal) < 1e-9)).toBe(true);
		}
		expect(sizeClaim(pockets, "notch-7-relief-depth")!.series).toBe("relief depth");
	});

	it("never touches the edge that the bar stands on", () => {
		const plain = notchesFrom(bar({}, {})).map((n) => n.flanks.map((p) => p.x));
		const relieved = notchesFrom(bar({}, {}, mill(3.175, "floor"))).map((n) =>
			n.flanks.map((p) => p.x),
		);
		expect(relieved).toEqual(plain);
		const outline = outlineOf(bar({}, {}, mill(0.8, "floor")));
		const lands = crossingsAtHeight([outline], 0.5);
		const before = crossingsAtHeight([outlineOf(bar({}, {}))], 0.5);
		expect(lands).toHaveLength(before.length);
		for (const [i, x] of lands.entries()) expect(x).toBeCloseTo(before[i]!, 9);
	});

	it("is told in words, and lifts numbers and the least height", () => {
		const deep = bar({}, {}, mill(3.175, "floor"));
		expect(deep.notes.join(" ")).toContain(
			"Relief: the floors of the notches lie 1.5875 mm deeper, so that the cutter leaves their full width down to 1.9 mm.",
		);
		expect(bar({}, {}, mill(0.8, "floor")).notes.join(" ")).toContain(
			"Relief: the floors of the notches have a half round pocket 0.4 mm deeper in either corner",
		);
		const baseline = (part: typeof deep) =>
			part.claims.find((c) => c.feature === "label fret-7")!.at[0]!.y;
		expect(baseline(deep)).toBeCloseTo(1.9 + 1.5875 + 1.5, 9);
		const low = {
			height: 15,
			"hanging-hole": "none",
			"finger-relief": false,
			"depth-clearance": 2.6,
		};
		const codes = (other: object) => madeBar({}, low, other).problems.map((p) => p.code);
		expect(codes({})).toEqual([]);
		expect(codes(mill(3.175, "floor"))).toEqual(["bar-too-low"]);
	});

	it("has pockets only where floor remains between them", () => {
		expect(hasPockets(4.2, 1)).toBe(true);
		expect(hasPockets(4.2, 1.05)).toBe(false);
		expect(hasPockets(4.2, 0)).toBe(false);
	});

	it("keeps any straightedge sound: simple contours, letters clear, no notch all corner", () => {
		let made = 0;
		const cutter = fc.constantFrom(0.5, 0.8, 2, 3.175);
		fc.assert(
			fc.property(randomJob({ leastGap: 5 }), anyStraightedge, cutter, ({ job }, entry, size) => {
				const { parts } = madeParts({ ...job, ...mill(size, "floor"), make: [entry] });
				made += parts.length;
				for (const part of parts) {
					expect([...contourFaults(part), ...labelFaults(part)]).toEqual([]);
					const narrowest = Math.min(...notchWidths(part));
					const found = cutterProblems(part, size).filter((p) =>
						`${p.facts.feature}`.includes("notch"),
					);
					expect(found.map((p) => p.code).filter((c) => c !== "narrower-than-cutter")).toEqual([]);
					expect(found.length > 0).toBe(narrowest < size - 2e-4);
				}
			}),
			{ ...RUNS, numRuns: 60 },
		);
		expect(made).toBeGreaterThan(15);
	});
});

/** Widths of the notches as they are claimed. */
function notchWidths(part: Part): number[] {
	return part.claims.flatMap((c) => (c.kind === "width" ? [c.nominal] : []));
}
