import {
	around,
	closed,
	type Extents,
	extents,
	line,
	movedPoint,
	type Path,
	type Point,
	vertex,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Mark, Note } from "./part.js";

/** What is drawn for people to read: lines and text of the reference layer. */
export interface Ink {
	readonly marks: readonly Mark[];
	readonly notes: readonly Note[];
}

export const NOTHING: Ink = { marks: [], notes: [] };

/** Height of dimensions and notes, mm: the smallest that ISO 3098 calls usual for them. */
export const TEXT = 2.5;
/** Arrowheads are as long as the text is high, closed and slim (ISO 129-1, from memory). */
export const ARROW = 2.5;
const ARROW_HALF = 0.35;

/** Everything of several inks, in order. */
export function inkOf(...inks: readonly Ink[]): Ink {
	return {
		marks: inks.flatMap((i) => i.marks),
		notes: inks.flatMap((i) => i.notes),
	};
}

/** The boxes of everything in an ink. */
export function inkBoxes(ink: Ink): Extents[] {
	return [...ink.marks.map((m) => extents(m.path)), ...ink.notes.map(noteExtents)];
}

/** The box of a note: its baseline, capitals and descenders. */
function noteExtents({ at, height, turn, width }: Note): Extents {
	const corners = [
		[0, -0.3 * height],
		[width, -0.3 * height],
		[0, height],
		[width, height],
	] as const;
	const move = { x: at.x, y: at.y, turn, mirror: false };
	const points = corners.map(([x, y]) => movedPoint({ x, y }, move));
	return around(points.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
}

/** Lines of the reference layer. */
export function strokes(feature: string, ...paths: readonly Path[]): Ink {
	return {
		marks: paths.map((path) => ({ operation: "reference", path, feature })),
		notes: [],
	};
}

/** A straight stroke; nothing where both ends are one point. */
export function stroke(feature: string, a: Point, b: Point): Ink {
	return Math.hypot(b.x - a.x, b.y - a.y) < 1e-6 ? NOTHING : strokes(feature, line(a, b));
}

/** A text by its left, middle or right end. */
export function writing(
	letters: Lettering,
	text: string,
	at: Point,
	options: {
		readonly height?: number;
		readonly turn?: number;
		readonly align?: "left" | "centre" | "right";
	} = {},
): Ink {
	const { height = TEXT, turn = 0, align = "left" } = options;
	const width = letters.width(text, height);
	const back = { left: 0, centre: width / 2, right: width }[align];
	const left = movedPoint({ x: -back, y: 0 }, { x: at.x, y: at.y, turn, mirror: false });
	return { marks: [], notes: [{ text, at: left, height, turn, width }] };
}

/** An arrowhead at `tip`, pointing in a direction (radians). */
export function arrow(feature: string, tip: Point, direction: number): Ink {
	const back = (across: number) =>
		movedPoint({ x: -ARROW, y: across }, { x: tip.x, y: tip.y, turn: direction, mirror: false });
	const [a, b] = [back(ARROW_HALF), back(-ARROW_HALF)];
	return strokes(feature, closed(vertex(tip.x, tip.y), vertex(a.x, a.y), vertex(b.x, b.y)));
}

/** A point-down-free dimension line between two points with arrows inside, or outside if short. */
export function arrowed(feature: string, a: Point, b: Point): Ink {
	const direction = Math.atan2(b.y - a.y, b.x - a.x);
	const size = Math.hypot(b.x - a.x, b.y - a.y);
	if (size >= 3 * ARROW) {
		return inkOf(
			stroke(feature, a, b),
			arrow(feature, a, direction + Math.PI),
			arrow(feature, b, direction),
		);
	}
	const out = 2 * ARROW;
	const [ux, uy] = [Math.cos(direction) * out, Math.sin(direction) * out];
	return inkOf(
		stroke(feature, { x: a.x - ux, y: a.y - uy }, a),
		stroke(feature, b, { x: b.x + ux, y: b.y + uy }),
		arrow(feature, a, direction),
		arrow(feature, b, direction + Math.PI),
	);
}
