import {
	type Path,
	type Point,
	pointAt,
	reversed,
	SAME_POINT,
	type Segment,
	segmentLength,
	segments,
	signedArea,
	tangentAt,
	type Vertex,
	vertex,
	windingNumber,
} from "../geometry/index.js";
import { arcsAlong, CURVE_TOLERANCE, cubicOfQuadratic } from "./curve.js";

/** A drawing command of a font outline, coordinates in any unit, y up. */
export type OutlineCommand = Ends<"M"> | Ends<"L"> | QuadraticTo | CubicTo | { readonly type: "Z" };

interface Ends<T> extends Point {
	readonly type: T;
}

interface QuadraticTo extends Ends<"Q"> {
	readonly x1: number;
	readonly y1: number;
}

interface CubicTo extends Ends<"C"> {
	readonly x1: number;
	readonly y1: number;
	readonly x2: number;
	readonly y2: number;
}

/** A contour of less area is a leftover of the font's making, not a shape, mm². */
const NO_AREA = 1e-9;

/**
 * The closed contours of a glyph outline, material on the left.
 *
 * Curves become tangent arcs within CURVE_TOLERANCE. Contours that overlap stay apart.
 *
 * @param scale - mm per unit of the commands
 * @throws RangeError on coordinates that are not finite
 */
export function contours(commands: readonly OutlineCommand[], scale: number): Path[] {
	const result: Path[] = [];
	let points: Vertex[] = [];
	let pen: Point = { x: 0, y: 0 };
	const finish = () => {
		const path = joined(points, pen);
		if (path.points.length > 1 && Math.abs(signedArea(path)) > NO_AREA) result.push(path);
		points = [];
	};
	for (const command of commands) {
		if (command.type === "Z") continue;
		const to = { x: command.x * scale, y: command.y * scale };
		if (!Number.isFinite(to.x + to.y)) throw new RangeError("an outline needs finite points");
		if (command.type === "M") finish();
		else points.push(...piece(pen, command, to, scale));
		pen = to;
	}
	finish();
	return oriented(result);
}

function piece(
	pen: Point,
	command: Exclude<OutlineCommand, { type: "Z" }>,
	to: Point,
	scale: number,
): Vertex[] {
	if (command.type === "M" || command.type === "L") {
		return apart(pen, to) ? [vertex(pen.x, pen.y)] : [];
	}
	const first = { x: command.x1 * scale, y: command.y1 * scale };
	const curve =
		command.type === "Q"
			? cubicOfQuadratic(pen, first, to)
			: ([pen, first, { x: command.x2 * scale, y: command.y2 * scale }, to] as const);
	return arcsAlong(curve, CURVE_TOLERANCE);
}

/** Closes a contour: a last point away from the first is led back to it by a line. */
function joined(points: readonly Vertex[], pen: Point): Path {
	const start = points[0];
	const open = start !== undefined && apart(start, pen);
	return { points: open ? [...points, vertex(pen.x, pen.y)] : points, closed: true };
}

function apart(a: Point, b: Point): boolean {
	return Math.hypot(b.x - a.x, b.y - a.y) >= SAME_POINT;
}

/** How far beside a contour is looked for material, mm: clear of the fit, within the thinnest stem. */
const BESIDE = 0.002;

/**
 * Turns every contour so that the filled side (winding not 0) is on its left. TrueType fills to
 * the right, CFF to the left, and a font may mix them. A contour that lies within another
 * shape all along follows the largest one, which is always an outer contour.
 */
function oriented(paths: readonly Path[]): Path[] {
	const all = paths.flatMap(segments);
	const areas = paths.map(signedArea);
	const largest = areas.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
	return paths.map((path) => {
		for (const s of segments(path)) {
			const side = filledSide(s, all);
			if (side !== 0) return side < 0 ? reversed(path) : path;
		}
		return largest < 0 ? reversed(path) : path;
	});
}

/** +1 if only the left of a segment's middle is filled, −1 if only the right is, else 0. */
function filledSide(s: Segment, all: readonly Segment[]): number {
	if (segmentLength(s) < 4 * BESIDE) return 0;
	const middle = pointAt(s, 0.5);
	const { x, y } = tangentAt(s, 0.5);
	const filled = (side: number) =>
		windingNumber(all, {
			x: middle.x - side * BESIDE * y,
			y: middle.y + side * BESIDE * x,
		}) !== 0;
	return Number(filled(1)) - Number(filled(-1));
}
