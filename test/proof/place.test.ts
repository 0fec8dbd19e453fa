import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compensated, withTabs } from "../../src/cutting/index.js";
import type { Part } from "../../src/drawing/index.js";
import { circle, type Move, moved, movedPoint, type Path } from "../../src/geometry/index.js";
import { placeOf } from "../../src/proof/place.js";
import type { PromisedPart, ReadDrawing } from "../../src/proof/types.js";
import { LETTERS, madeParts } from "../support/made-parts.js";
import { BAR, COUPON, GAUGE, STRIP, scaled } from "../support/proof-inspect-faults.js";
import { randomJob, reading } from "../support/random-neck.js";
import { anyGauge, anyStraightedge, anyStrip } from "../support/random-tools.js";
import { drawingOf, promisedPart, strokesOf } from "../support/read-drawings.js";

const anyMove: fc.Arbitrary<Move> = fc.record({
	x: reading(-800, 800),
	y: reading(-800, 800),
	turn: reading(-3, 3, 4),
	mirror: fc.boolean(),
});

/** The farthest that a part's own corners lie from where they should, mm. */
function farthest(part: PromisedPart, found: Move | null, move: Move): number {
	if (!found) return Number.POSITIVE_INFINITY;
	const corners = part.outline.flatMap(({ points }) => points);
	const apart = corners.map((p) => {
		const [a, b] = [movedPoint(p, found), movedPoint(p, move)];
		return Math.hypot(a.x - b.x, a.y - b.y);
	});
	return Math.max(...apart);
}

/** Strokes are not rounded: what is looked for is the move alone. */
function drawnAt(part: Part, move: Move): ReadDrawing {
	const strokes = part.marks.map(({ operation, path }) => {
		return { operation, layer: operation, path: moved(path, move) };
	});
	return drawingOf(strokes);
}

/** Parts and how they lie, of any job: neck and settings need not suit the tool. */
const anyLying = fc
	.record({
		job: randomJob({ leastGap: 7 }),
		tool: fc.oneof(anyStraightedge, anyGauge, anyStrip, fc.constant("kerf-coupon")),
		move: anyMove,
		kerf: fc.constantFrom(0, 0.2),
	})
	.map(({ job: { job }, tool, move, kerf }) => {
		try {
			return { parts: madeParts({ ...job, make: [tool] }).parts, move, kerf };
		} catch {
			return { parts: [], move, kerf };
		}
	});

/** A straightedge's outline with one notch 0.3 mm beside its place. */
function oneNotchMoved({ points, closed }: Path): Path {
	const claim = BAR.claims.find(({ id }) => id === "notch-7-width")!;
	const [left, right] = claim.at.map((p) => p.x);
	const isOn = (x: number) => x > left! - 0.01 && x < right! + 0.01;
	return {
		closed,
		points: points.map((v) => (isOn(v.x) && v.y < 10 ? { ...v, x: v.x + 0.3 } : v)),
	};
}

const TURNED: Move = { x: 120, y: -40, turn: 2.1, mirror: false };

/** A part's strokes after a move, some of them changed. */
function strokesAt(part: Part, change: (path: Path) => Path = (path) => path) {
	const marks = part.marks.map((m) => ({
		...m,
		path: m.operation === "cut" ? change(m.path) : m.path,
	}));
	return drawnAt({ ...part, marks }, TURNED).strokes;
}

describe("placeOf", () => {
	it("finds every tool's parts, compensated or not, to within 1e-6 mm", () => {
		const seen = new Set<string>();
		fc.assert(
			fc.property(anyLying, ({ parts, move, kerf }) => {
				for (const part of parts) {
					const cut = compensated(part, kerf);
					if (!cut.ok) continue;
					seen.add(part.tool);
					const promised = promisedPart(part, cut.part, kerf);
					const found = placeOf(drawnAt(cut.part, move), promised, LETTERS);
					expect(farthest(promised, found, move), part.name).toBeLessThan(1e-6);
					expect(found!.mirror).toBe(move.mirror);
				}
			}),
			{ seed: 272, numRuns: 40 },
		);
		expect(seen.size).toBe(4);
	});

	it.each([BAR, GAUGE, STRIP, COUPON])("finds $name though coordinates are rounded", (part) => {
		const found = placeOf(drawingOf(strokesOf(part, TURNED)), promisedPart(part), LETTERS);
		expect(farthest(promisedPart(part), found, TURNED)).toBeLessThan(1e-6);
	});

	it.each([0, 1, 2, 3])(
		"finds a symmetric gauge as it lies, after %s quarter turns",
		(quarters) => {
			for (const mirror of [false, true]) {
				const move = { x: 5, y: 7, turn: (quarters * Math.PI) / 2, mirror };
				const found = placeOf(drawnAt(GAUGE, move), promisedPart(GAUGE), LETTERS);
				expect(farthest(promisedPart(GAUGE), found, move)).toBeLessThan(1e-6);
				expect(found!.mirror).toBe(mirror);
			}
		},
	);

	it("takes a symmetric gauge not to be mirrored if no lettering tells", () => {
		const found = placeOf(drawnAt(GAUGE, { ...TURNED, mirror: true }), promisedPart(GAUGE));
		expect(found!.mirror).toBe(false);
	});

	it("finds an outline between tabs", () => {
		const moved = compensated(BAR, 0.2);
		if (!moved.ok) throw new Error("the bar cannot be cut");
		const cut = { kind: "laser", tolerance: 0.05, kerf: 0.2 } as const;
		const held = withTabs(moved.part, { count: 4, width: 2 }, cut);
		if ("code" in held) throw new Error("the bar has no room for tabs");
		const promised = promisedPart(BAR, held, 0.2);
		expect(promised.open).toBe(4);
		const found = placeOf(drawnAt(held, TURNED), promised, LETTERS);
		expect(farthest(promised, found, TURNED)).toBeLessThan(1e-6);
	});

	it("lets a notch that was moved by 0.3 mm have no say", () => {
		const strokes = strokesAt(BAR, oneNotchMoved);
		expect(strokes).not.toEqual(strokesAt(BAR));
		const found = placeOf(drawingOf(strokes), promisedPart(BAR), LETTERS);
		expect(farthest(promisedPart(BAR), found, TURNED)).toBeLessThan(1e-4);
	});

	it("finds a part among clutter", () => {
		const clutter = [circle({ x: 300, y: 300 }, 40), circle({ x: -60, y: 10 }, 3)].map((path) => {
			return { operation: "cut", layer: "CUT", path } as const;
		});
		const found = placeOf(drawingOf([...clutter, ...strokesAt(BAR)]), promisedPart(BAR), LETTERS);
		expect(farthest(promisedPart(BAR), found, TURNED)).toBeLessThan(1e-6);
	});

	it("finds a part whose layers were lost", () => {
		const strokes = strokesAt(STRIP).map((s) => ({ ...s, operation: null, layer: "0" }));
		const found = placeOf(drawingOf(strokes), promisedPart(STRIP), LETTERS);
		expect(farthest(promisedPart(STRIP), found, TURNED)).toBeLessThan(1e-6);
	});

	it("finds no part in a drawing of another, of another size, or of nothing", () => {
		const promised = promisedPart(BAR);
		const larger = BAR.marks.map((m) => ({ ...m, path: scaled(m.path, 1.1) }));
		expect(placeOf(drawnAt(GAUGE, TURNED), promised, LETTERS)).toBeNull();
		expect(placeOf(drawnAt({ ...BAR, marks: larger }, TURNED), promised, LETTERS)).toBeNull();
		expect(placeOf(drawingOf([]), promised, LETTERS)).toBeNull();
	});
});
