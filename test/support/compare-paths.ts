import type { Mark, Note, Operation } from "../../src/drawing/index.js";
import {
	distanceTo,
	type Path,
	type Point,
	pointAt,
	type Segment,
	segments,
} from "../../src/geometry/index.js";

/** What a file must hold, told apart from how a writer found it. */
export interface Expected {
	/** In the order of work, then as given; `part` is null beside the parts. */
	readonly marks: readonly (Mark & { readonly part: string | null })[];
	readonly notes: readonly Note[];
}

/** One thing found wrong in a file. */
export interface Finding {
	readonly rule: string;
	readonly detail: string;
}

export const WORK_ORDER: readonly Operation[] = ["reference", "score", "engrave", "cut", "tab"];

/** How many open paths are meant to be cut: an outline that tabs interrupt. */
export function openCuts(expected: Expected | undefined): number {
	const marks = expected?.marks ?? [];
	return marks.filter(({ operation, path }) => operation === "cut" && !path.closed).length;
}

export function gap(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Whether a path is one full circle: arcs of one centre and radius that turn once. */
export function isCircle(path: Path): boolean {
	const all = segments(path);
	const [first] = all;
	if (!path.closed || first?.kind !== "arc") return false;
	const turned = all.reduce((sum, s) => sum + (s.kind === "arc" ? s.sweep : 0), 0);
	const together = all.every(
		(s) =>
			s.kind === "arc" && gap(s.centre, first.centre) + Math.abs(s.radius - first.radius) < 1e-7,
	);
	return together && Math.abs(Math.abs(turned) - 2 * Math.PI) < 1e-6;
}

/**
 * Why a path that was read is not the expected one, or null. Arcs may come in several pieces;
 * every piece must start, pass its middle and end on the expected arc and turn the same way.
 *
 * @param near - how far points may be off, mm
 * @param nearMiddle - how far the middle of an arc may be off, mm
 */
export function pathFault(
	expected: Path,
	found: Path,
	near: number,
	nearMiddle = near,
): string | null {
	if (expected.closed !== found.closed) return found.closed ? "closed" : "open";
	const got = segments(found);
	let next = 0;
	for (const [i, wanted] of segments(expected).entries()) {
		let from = wanted.start;
		for (;;) {
			const piece = got[next++];
			if (!piece) return `segment ${i} is missing`;
			const fault = pieceFault(wanted, piece, from, near, nearMiddle);
			if (fault) return `segment ${i}: ${fault}`;
			from = piece.end;
			if (gap(piece.end, wanted.end) <= near) break;
			if (wanted.kind === "line") return `segment ${i} ends elsewhere`;
		}
	}
	return next === got.length ? null : `${got.length - next} segments too many`;
}

function pieceFault(
	wanted: Segment,
	piece: Segment,
	from: Point,
	near: number,
	nearMiddle: number,
): string | null {
	if (piece.kind !== wanted.kind) return `a ${piece.kind} for a ${wanted.kind}`;
	if (gap(piece.start, from) > near) return "starts elsewhere";
	if (piece.kind === "line" || wanted.kind === "line") return null;
	if (Math.sign(piece.sweep) !== Math.sign(wanted.sweep)) return "turns the other way";
	if (distanceTo(wanted, piece.end) > near) return "leaves the arc";
	const off = distanceTo(wanted, pointAt(piece, 0.5));
	if (off > nearMiddle) return `middle is ${off} off`;
	// The radius found from ends and middle moves by about 4r/c for every unit of a point.
	const slack = near * (1 + (4 * wanted.radius) / gap(piece.start, piece.end));
	const deviation = Math.abs(piece.radius - wanted.radius);
	return deviation > slack ? `radius is ${deviation} off` : null;
}

/** Why a circle that was read, wherever it starts, is not the expected one, or null. */
export function circleFault(expected: Path, found: Path, near: number): string | null {
	if (!isCircle(found)) return "no circle";
	const [a] = segments(expected);
	const [b] = segments(found);
	if (a?.kind !== "arc" || b?.kind !== "arc") return "no arc";
	if (gap(a.centre, b.centre) > near) return "centre is elsewhere";
	return Math.abs(a.radius - b.radius) > near ? "radius differs" : null;
}

/** Vertices of a path that are repeated by the next one. */
export function repeatedVertices(path: Path, near = 1e-6): number[] {
	const { points, closed } = path;
	return points.flatMap((p, i) => {
		if (!closed && i === points.length - 1) return [];
		return gap(p, points[(i + 1) % points.length]!) < near ? [i] : [];
	});
}

/** A path whose numbers can be measured: finite, with no repeated vertex. */
export function isMeasurable(path: Path): boolean {
	const finite = path.points.every((p) => [p.x, p.y, p.bulge].every(Number.isFinite));
	return finite && path.points.length > 1 && repeatedVertices(path).length === 0;
}
