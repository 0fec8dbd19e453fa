import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stretchedSheet } from "../../src/cutting/stretch.js";
import type { Part, Sheet, SizeClaim } from "../../src/drawing/index.js";
import {
	around,
	bulgeOf,
	circle,
	closed,
	extents,
	filleted,
	line,
	type Move,
	moved,
	open,
	type Path,
	type Point,
	rectangle,
	reversed,
	STAY,
	signedArea,
	stretched,
	type Vertex,
	vertex,
} from "../../src/geometry/index.js";
import { handDrawing, partOf, sheetOf } from "../support/drawings.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { measured } from "../support/measure-part.js";
import { gap, pieces } from "../support/measure-path.js";
import { sheetFor } from "../support/sheets.js";

/** How far an arc may lie from its ellipse, and what rounding may add, mm. */
const NEAR = 0.0002;
const ROUNDING = 1e-8;
const USUAL = { x: 1.0008, y: 0.9996 };

/** A circular arc given by its circle, from which everything here is measured. */
interface Round {
	readonly centre: Point;
	readonly radius: number;
	readonly from: number;
	readonly sweep: number;
}

function onCircle({ centre, radius }: Round, angle: number): Point {
	return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

function pathOf(round: Round): Path {
	const a = onCircle(round, round.from);
	const b = onCircle(round, round.from + round.sweep);
	return open(vertex(a.x, a.y, Math.tan(round.sweep / 4)), vertex(b.x, b.y));
}

/** What a machine makes of a place in a file: the only way back, by multiplying. */
function madeOf<P extends Point>(p: P, stretch: Point): P {
	return { ...p, x: p.x * stretch.x, y: p.y * stretch.y };
}

function madePath({ points, closed }: Path, stretch: Point): Path {
	return { closed, points: points.map((p) => madeOf(p, stretch)) };
}

/** Centre, radius and places along the arc from a to b, from its bulge alone. */
function arcOf(a: Vertex, b: Point) {
	const rise = (1 - a.bulge * a.bulge) / (4 * a.bulge);
	const centre = {
		x: (a.x + b.x) / 2 - (b.y - a.y) * rise,
		y: (a.y + b.y) / 2 + (b.x - a.x) * rise,
	};
	const radius = gap(a, centre);
	const from = Math.atan2(a.y - centre.y, a.x - centre.x);
	const sweep = 4 * Math.atan(a.bulge);
	return { centre, radius, from, sweep };
}

const STEPS = Array.from({ length: 13 }, (_, i) => i / 12);

/**
 * The furthest that the arcs of a path lie from the ellipse of a circle. What a machine makes of
 * a place at the distance d from the circle is at most d/f from the ellipse, f the smaller factor.
 */
function overshoot(path: Path, { centre, radius }: Round, stretch: Point): number {
	const least = Math.min(stretch.x, stretch.y);
	const far = pieces(path).flatMap(({ a, b }) => {
		const arc = arcOf(a, b);
		return STEPS.map((u) => {
			const made = madeOf(onCircle(arc, arc.from + arc.sweep * u), stretch);
			return Math.abs(gap(made, centre) - radius) / least;
		});
	});
	return Math.max(...far);
}

/** How far along a circular arc each vertex of its stretched path stands, radians. */
function placesOf(path: Path, round: Round, stretch: Point): number[] {
	const turn = 2 * Math.PI;
	const way = Math.sign(round.sweep);
	let last = 0;
	return path.points.map((p, i) => {
		const made = madeOf(p, stretch);
		const angle = Math.atan2(made.y - round.centre.y, made.x - round.centre.x);
		const raw = (way * (angle - round.from)) % turn;
		if (i > 0) last = raw < last - 1e-9 ? raw + turn : raw;
		return last;
	});
}

/** The furthest that places on the ellipse lie from the arc that stands for them. */
function undershoot(path: Path, round: Round, stretch: Point): number {
	const places = placesOf(path, round, stretch);
	const way = Math.sign(round.sweep);
	const far = pieces(path).flatMap(({ a, b }, i) => {
		const arc = arcOf(a, b);
		return STEPS.map((u) => {
			const place = places[i]! + (places[i + 1]! - places[i]!) * u;
			const true_ = onCircle(round, round.from + way * place);
			const told = { x: true_.x / stretch.x, y: true_.y / stretch.y };
			return Math.abs(gap(told, arc.centre) - arc.radius);
		});
	});
	return Math.max(...far);
}

/** Equal arcs of an ellipse that a circle through their ends and middles needs to be near enough. */
function arcsNeeded({ radius, sweep }: Round, stretch: Point): number {
	// Radii r(1 ± e): r·e·cos 2θ against the best circle leaves r·e·w³·2/√27 over ± w.
	const e = Math.abs(1 / stretch.x - 1 / stretch.y) / 2;
	const half = Math.cbrt((NEAR * Math.sqrt(27)) / (2 * radius * e));
	return Math.ceil(Math.abs(sweep) / (2 * half));
}

const factor = fc.double({ min: 0.988, max: 1.012, noNaN: true });
const stretches = fc.record({ x: factor, y: factor }).filter(({ x, y }) => Math.abs(x - y) > 1e-7);
const rounds: fc.Arbitrary<Round> = fc
	.record({
		centre: fc.record({
			x: fc.double({ min: -500, max: 500, noNaN: true }),
			y: fc.double({ min: -500, max: 500, noNaN: true }),
		}),
		size: fc.double({ min: Math.log(0.2), max: Math.log(20_000), noNaN: true }),
		from: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
		degrees: fc.double({ min: 0.5, max: 359, noNaN: true }),
		left: fc.boolean(),
	})
	.map(({ centre, size, from, degrees, left }) => ({
		centre,
		radius: Math.exp(size),
		from,
		sweep: ((left ? 1 : -1) * degrees * Math.PI) / 180,
	}));
const RUNS = { numRuns: 300, seed: 20260214 };

describe("stretched", () => {
	it("divides by what the machine makes of a millimetre", () => {
		const path = stretched(line({ x: 0, y: 9.996 }, { x: 100.08, y: -0.9996 }), USUAL);
		expect(path.closed).toBe(false);
		expect(path.points.map(({ bulge }) => bulge)).toEqual([0, 0]);
		expect(path.points[0]!.y).toBeCloseTo(10, 12);
		expect(path.points[1]!.x).toBeCloseTo(100, 12);
		expect(path.points[1]!.y).toBeCloseTo(-1, 12);
	});

	it("keeps the arcs of any circle within 0.2 µm of the true ellipse, either way round", () => {
		fc.assert(
			fc.property(rounds, stretches, (round, stretch) => {
				const path = stretched(pathOf(round), stretch);
				expect(overshoot(path, round, stretch)).toBeLessThan(NEAR * 1.025 + ROUNDING);
				expect(undershoot(path, round, stretch)).toBeLessThan(NEAR + ROUNDING);
			}),
			RUNS,
		);
	});

	it("sets all vertices on the ellipse, in order, from end to end", () => {
		fc.assert(
			fc.property(rounds, stretches, (round, stretch) => {
				const given = pathOf(round);
				const path = stretched(given, stretch);
				const places = placesOf(path, round, stretch);
				for (const [i, p] of path.points.entries()) {
					const made = madeOf(p, stretch);
					expect(Math.abs(gap(made, round.centre) - round.radius)).toBeLessThan(ROUNDING);
					if (i > 0) expect(places[i]!).toBeGreaterThan(places[i - 1]!);
				}
				expect(places.at(-1)!).toBeCloseTo(Math.abs(round.sweep), 6);
				const turns = pieces(path).map(({ a }) => Math.sign(a.bulge));
				expect(new Set(turns)).toEqual(new Set([Math.sign(round.sweep)]));
				const [first, last] = [given.points[0]!, given.points[1]!];
				expect(path.points[0]).toMatchObject({ x: first.x / stretch.x, y: first.y / stretch.y });
				expect(path.points.at(-1)).toEqual(
					vertex(last.x / stretch.x, last.y / stretch.y, last.bulge),
				);
			}),
			RUNS,
		);
	});

	it("makes no more than about twice the arcs that equal ones would need", () => {
		fc.assert(
			fc.property(rounds, stretches, (round, stretch) => {
				const made = stretched(pathOf(round), stretch).points.length - 1;
				expect(made).toBeLessThanOrEqual(2 * arcsNeeded(round, stretch));
			}),
			RUNS,
		);
	});

	it("makes 8 arcs of a 5 mm hole, and leaves one of a gauge's crown and of a small fillet", () => {
		const crown = open(vertex(0, 0, bulgeOf(254, 56)), vertex(56, 0));
		expect(stretched(crown, USUAL).points).toHaveLength(2);
		// Next to an axis an ellipse is nearly round, even that of a poor machine.
		expect(stretched(crown, { x: 1.012, y: 0.988 }).points).toHaveLength(2);
		const corner = filleted(rectangle(0, 0, 20, 20), 0, 1.5);
		expect(stretched(corner, USUAL).points).toHaveLength(5);
		const whole = { centre: { x: 30, y: 10 }, radius: 2.5, from: 0, sweep: Math.PI };
		const hole = stretched(circle(whole.centre, 2.5), USUAL);
		expect(hole.points).toHaveLength(8);
		// Arcs of twice the size would not do: the machine's quarter circles are off by more.
		const quarter = hole.points.slice(0, 3) as [Vertex, Vertex, Vertex];
		const double = open(
			vertex(quarter[0].x, quarter[0].y, Math.tan(Math.atan(quarter[0].bulge) * 2)),
			quarter[2],
		);
		expect(overshoot(double, whole, USUAL)).toBeGreaterThan(NEAR);
	});

	it("keeps bulges as they are under equal factors, and closed paths closed", () => {
		const path = closed(
			vertex(1, 2, 0.3),
			vertex(40, 2, -7.25),
			vertex(40, 9),
			vertex(1, 9, 1e-10),
		);
		const even = stretched(path, { x: 1.003, y: 1.003 });
		expect(even.closed).toBe(true);
		expect(even.points).toEqual(path.points.map((p) => vertex(p.x / 1.003, p.y / 1.003, p.bulge)));
		const uneven = stretched(path, USUAL);
		expect(uneven.closed).toBe(true);
		expect(uneven.points.length).toBeGreaterThan(4);
	});

	it("keeps the digits of an arc whose radius is kilometres", () => {
		// A sagitta of 5 µm over half a metre: a radius of 6.25 km.
		const bulge = (2 * 0.005) / 500;
		const path = stretched(open(vertex(300, 200, bulge), vertex(800, 200)), USUAL);
		const sagitta = pieces(path).map(({ a, b }) => (gap(a, b) * a.bulge) / 2);
		expect(sagitta).toHaveLength(1);
		expect(sagitta[0]! * USUAL.y).toBeCloseTo(0.005, 11);
	});

	it("keeps areas but for both factors, and the way round of holes", () => {
		const hole = reversed(circle({ x: 30, y: 5 }, 2.5));
		const area = signedArea(stretched(hole, USUAL)) * USUAL.x * USUAL.y;
		expect(Math.abs(area + Math.PI * 6.25)).toBeLessThan(2 * Math.PI * 2.5 * NEAR);
	});

	it("refuses factors that are none", () => {
		for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
			expect(() => stretched(rectangle(0, 0, 1, 1), { x: 1, y: bad })).toThrow(RangeError);
			expect(() => stretched(rectangle(0, 0, 1, 1), { x: bad, y: 1 })).toThrow(RangeError);
		}
	});
});

function sheetWith(move: Move): Sheet {
	const path = closed(vertex(0, 0), vertex(30, 0), vertex(30, 4), vertex(0, 12));
	const part = { ...partOf("wedge", [{ operation: "cut", feature: "outline", path }]) };
	return sheetOf("bed", { placed: [{ part: { ...part, working: [path] }, move }] });
}

/** A part as the machine makes it, set back from its place on the sheet by hand. */
function unplaced(part: Part, { x, y, turn, mirror }: Move, stretch: Point): Part {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const back = (v: Vertex): Vertex => {
		const made = madeOf(v, stretch);
		const [dx, dy] = [made.x - x, made.y - y];
		const up = c * dy - s * dx;
		return { x: c * dx + s * dy, y: mirror ? -up : up, bulge: mirror ? -v.bulge : v.bulge };
	};
	const path = (p: Path) => ({ closed: p.closed, points: p.points.map(back) });
	return { ...part, marks: part.marks.map((m) => ({ ...m, path: path(m.path) })) };
}

describe("stretchedSheet", () => {
	it("returns the sheet itself for a true machine", () => {
		const sheet = handDrawing();
		expect(stretchedSheet(sheet, { x: 1, y: 1 })).toBe(sheet);
	});

	it("divides in the axes of the bed, after parts were turned and mirrored", () => {
		for (const mirror of [false, true]) {
			const move = { x: 70, y: 20, turn: Math.PI / 2, mirror };
			const sheet = sheetWith(move);
			const { part, move: stays } = stretchedSheet(sheet, { x: 1.01, y: 0.99 }).placed[0]!;
			expect(stays).toEqual({ x: 0, y: 0, turn: 0, mirror: false });
			// By hand: a quarter turn takes the part's x to the bed's y.
			const side = mirror ? 1 : -1;
			const expected = [
				[70, 20],
				[70, 50],
				[70 + side * 4, 50],
				[70 + side * 12, 20],
			];
			const { points } = part.marks[0]!.path;
			points.forEach((p, i) => {
				expect(p.x).toBeCloseTo(expected[i]![0]! / 1.01, 9);
				expect(p.y).toBeCloseTo(expected[i]![1]! / 0.99, 9);
			});
			expect(part.working[0]!.points).toEqual(points);
		}
	});

	it("leaves the notches of a straightedge true on the finished part, however it lies", () => {
		const { parts } = madeParts(jobWith({}, ["notched-straightedge"]));
		const part = parts[0]!;
		const notches = part.claims.filter(
			(c): c is SizeClaim => c.kind === "position" && /^notch/u.test(c.feature),
		);
		expect(notches.length).toBeGreaterThan(20);
		for (const move of [
			{ x: 0, y: 0, turn: 0, mirror: false },
			{ x: 33, y: 700, turn: -Math.PI / 2, mirror: false },
			{ x: 600, y: 41, turn: Math.PI, mirror: true },
		]) {
			const sheet = sheetOf("bed", { placed: [{ part, move }] });
			const told = stretchedSheet(sheet, USUAL).placed[0]!.part;
			const made = unplaced(told, move, USUAL);
			for (const claim of notches) {
				expect(Math.abs(measured(made, claim) - claim.nominal)).toBeLessThan(1e-9);
			}
			expect(told.claims).toBe(part.claims);
		}
	});

	it("takes dimensions along, so that they still meet the part, and keeps the size of text", () => {
		const { parts } = madeParts(jobWith({}, ["radius-gauge"]));
		const sheet = sheetFor(parts[0]!);
		const told = stretchedSheet(sheet, USUAL);
		sheet.marks.forEach((mark, i) => {
			const made = madePath(told.marks[i]!.path, USUAL).points.map(({ x, y }) => [x, y]);
			mark.path.points.forEach(({ x, y }, k) => {
				expect(made[k]![0]).toBeCloseTo(x, 9);
				expect(made[k]![1]).toBeCloseTo(y, 9);
			});
		});
		expect(sheet.notes.length).toBeGreaterThan(3);
		sheet.notes.forEach((note, i) => {
			const { at, ...rest } = told.notes[i]!;
			const { at: given, ...same } = note;
			expect(rest).toEqual(same);
			expect(at.x * USUAL.x).toBeCloseTo(given.x, 9);
			expect(at.y * USUAL.y).toBeCloseTo(given.y, 9);
		});
	});

	it("grows the sheet where the drawing does, and never cuts it off", () => {
		const sheet = handDrawing();
		const { size, placed } = stretchedSheet(sheet, { x: 0.99, y: 1.01 });
		expect(size.maxX).toBeCloseTo(sheet.size.maxX / 0.99, 9);
		expect(size.maxY).toBe(sheet.size.maxY);
		const box = around(placed.flatMap(({ part }) => part.marks.map((m) => extents(m.path))));
		expect(around([size, box])).toEqual(size);
		// A sheet without a margin holds the arcs that reach a little past the ellipse.
		for (const stretch of [
			{ x: 0.988, y: 0.999 },
			{ x: 0.999, y: 0.988 },
		]) {
			const ring = moved(circle({ x: 0, y: 0 }, 40), { x: 0, y: 0, turn: 0.3, mirror: false });
			const part = partOf("ring", [{ operation: "cut", feature: "outline", path: ring }]);
			const tight = sheetOf("tight", { placed: [{ part, move: STAY }] });
			const grown = stretchedSheet({ ...tight, size: extents(ring) }, stretch);
			const reach = extents(grown.placed[0]!.part.marks[0]!.path);
			expect(around([grown.size, reach])).toEqual(grown.size);
		}
	});
});
