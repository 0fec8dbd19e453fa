import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Mark } from "../../src/drawing/index.js";
import { type Move, selfCrossings, type Vertex } from "../../src/geometry/index.js";
import { type DxfFlavour, writeDxf, writeSvg } from "../../src/writers/index.js";
import { expectedOf, PENS, partOf, sheetOf } from "../support/drawings.js";
import { auditDxf } from "../support/read-dxf.js";
import { auditSvg } from "../support/read-svg.js";

const SEED = { seed: 20_241, numRuns: 80 };

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Bulges from nearly straight to five sixths of a turn, and exact quarters and halves. */
const bulge = fc.oneof(
	fc.constant(0),
	number(-3.7, 3.7).filter((b) => Math.abs(b) > 1e-3),
	fc.constantFrom(1, -1, Math.tan(Math.PI / 8), -Math.tan(Math.PI / 8)),
);

/** A chain whose neighbouring points are some millimetres apart and which does not cross itself. */
const chain = fc
	.tuple(
		number(-300, 300),
		number(-300, 300),
		fc.array(fc.tuple(number(2, 40), number(-1, 1), bulge), { minLength: 1, maxLength: 6 }),
	)
	.map(([x, y, steps]): Vertex[] => {
		let at = { x, y };
		let heading = 0;
		const points = steps.map(([length, turn, b]): Vertex => {
			const here = { ...at, bulge: b };
			heading += turn;
			at = { x: at.x + length * Math.cos(heading), y: at.y + length * Math.sin(heading) };
			return here;
		});
		return [...points, { ...at, bulge: 0 }];
	});

/** A closed contour of lines and arcs around a centre, every radius drawn anew. */
const contour = fc
	.tuple(
		number(-300, 300),
		number(-300, 300),
		fc.array(fc.tuple(number(10, 40), number(-0.2, 0.4)), { minLength: 3, maxLength: 9 }),
	)
	.map(([x, y, corners]): Vertex[] =>
		corners.map(([radius, b], i) => {
			const angle = (2 * Math.PI * i) / corners.length;
			const place = { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
			return { ...place, bulge: Math.abs(b) < 0.02 ? 0 : b };
		}),
	);

const mark = fc
	.oneof(
		fc.record({ points: chain, closed: fc.constant(false) }),
		fc.record({ points: contour, closed: fc.constant(true) }),
	)
	.filter((path) => selfCrossings(path).length === 0)
	.chain((path) =>
		fc
			.constantFrom<Mark["operation"]>("score", "engrave", "reference", "cut")
			.filter((operation) => path.closed || operation !== "cut")
			.map((operation): Mark => ({ operation, feature: "thing", path })),
	);

const move = fc.record<Move>({
	x: number(-500, 500),
	y: number(-500, 500),
	turn: number(-4, 4),
	mirror: fc.boolean(),
});

const sheet = fc
	.array(fc.tuple(fc.array(mark, { minLength: 1, maxLength: 4 }), move), {
		minLength: 1,
		maxLength: 3,
	})
	.map((parts) =>
		sheetOf("random", {
			placed: parts.map(([marks, at], i) => ({ part: partOf(`part-${i}`, marks), move: at })),
		}),
	);

describe("drawings of random lines and arcs", () => {
	it("come back from SVG: vertices and radii within 1e-6 mm", () => {
		fc.assert(
			fc.property(sheet, (drawing) => {
				expect(auditSvg(writeSvg(drawing, PENS), expectedOf(drawing))).toEqual([]);
			}),
			SEED,
		);
	});

	it.each(["r2000", "r12", "loose"] satisfies DxfFlavour[])(
		"come back from DXF within 2e-9 mm, by degrees within 1e-11 of the radius more, %s",
		(flavour) => {
			fc.assert(
				fc.property(sheet, (drawing) => {
					const text = writeDxf(drawing, PENS, flavour);
					expect(auditDxf(text, flavour, expectedOf(drawing))).toEqual([]);
				}),
				SEED,
			);
		},
	);
});
