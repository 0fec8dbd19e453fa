import { OFF_WORKING_EDGE } from "../drawing/index.js";
import {
	distance,
	distanceTo,
	type Extents,
	extents,
	grown,
	type Path,
	type Point,
	pointAt,
	reversed,
	type Segment,
	segmentExtents,
	segmentLength,
	segments,
	startedAt,
	tangentAt,
	vertex,
} from "../geometry/index.js";

/** A distance of exactly that much passes, mm: rounding. */
const ROUNDING = 1e-9;
/** From this turn on a vertex is a corner, and an arc of a small radius a rounded one, radians. */
const CORNER = Math.PI / 9;
/** Arcs from this radius on are no rounded corners, mm. */
const GENTLE = 10;
/** Least pieces in which a segment is searched: an even number, so that its middle is looked at. */
const LOOKS = 16;
/** Between points looked at, mm, on segments longer than 16 of them. */
const STEP = 0.5;
/** Most peaks of a segment that are narrowed down. */
const FEW = 4;
/** Narrowings of a search by the golden section: from half a millimetre below a nanometre. */
const NARROWINGS = 32;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Distances that differ by less are equal, mm. */
const AS_FAR = 1e-6;
/** A place nearer than this to a vertex is the vertex, mm: no crumb is split off. */
const CRUMB = 1e-3;

/** A place on a path: a fraction of one of its segments. */
interface Place {
	readonly segment: number;
	readonly u: number;
}

/** A place that was looked at, and how far it is from the nearest working edge, mm. */
interface Look extends Place {
	readonly clear: number;
}

/**
 * A path in every way in which it may be cut: a closed one begun at each place that is fit for
 * the mark which a start leaves, in its direction; an open one from either end.
 *
 * Fit are corners, sharp or rounded, 3 mm or more from every working edge. Where there is none,
 * other vertices are, then middles of segments, then any place so far off; on a contour without
 * one, as a narrow slot between its working flanks, the places farthest from them, corners first. A place within
 * a segment splits it exactly: an arc of the sweep s leaves two with the bulges tan(us/4) and
 * tan((1 − u)s/4).
 *
 * @param working - working edges on the nominal contours
 * @returns at least one path; its first vertex is the start
 * @example startsOf(rectangle(0, 0, 9, 9), [line({ x: 0, y: 0 }, { x: 9, y: 0 })]) // begun at
 *   (9, 9) and at (0, 9)
 */
export function startsOf(path: Path, working: readonly Path[]): Path[] {
	if (!path.closed) return [path, reversed(path)];
	const all = segments(path);
	const near = within(working, grown(extents(path), OFF_WORKING_EDGE));
	const clearOf = (p: Point) => clearance(p, near);
	const isFit = (p: Point) => clearOf(p) >= OFF_WORKING_EDGE - ROUNDING;
	const vertices = path.points.map((_, segment) => ({ segment, u: 0 }));
	const fit = vertices.filter(({ segment }) => isFit(path.points[segment]!));
	const corners = fit.filter(({ segment }) => isCorner(all, segment));
	const middles = () =>
		all
			.map((_, segment) => ({ segment, u: 0.5 }))
			.filter(({ segment }) => isFit(pointAt(all[segment]!, 0.5)));
	const first = [() => corners, () => fit, middles];
	for (const find of first) {
		const places = find();
		if (places.length > 0) return places.map((place) => begunAt(path, all, place));
	}
	return searched(all, clearOf).map((place) => begunAt(path, all, place));
}

/** The segments of some paths that reach into a box. */
function within(paths: readonly Path[], box: Extents): Segment[] {
	return paths.flatMap(segments).filter((s) => {
		const { minX, minY, maxX, maxY } = segmentExtents(s);
		return minX <= box.maxX && maxX >= box.minX && minY <= box.maxY && maxY >= box.minY;
	});
}

function clearance(p: Point, edges: readonly Segment[]): number {
	return edges.reduce((least, s) => Math.min(least, distanceTo(s, p)), Number.POSITIVE_INFINITY);
}

/** Whether a contour turns at the start of a segment, there or along a small arc beside it. */
function isCorner(all: readonly Segment[], i: number): boolean {
	const after = all[i]!;
	const before = all[(i + all.length - 1) % all.length]!;
	if (isRound(before) || isRound(after)) return true;
	const [a, b] = [tangentAt(before, 1), tangentAt(after, 0)];
	return Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) > CORNER;
}

function isRound(s: Segment): boolean {
	return s.kind === "arc" && s.radius < GENTLE && Math.abs(s.sweep) > CORNER;
}

/** A segment looked at from end to end. */
function looks(
	all: readonly Segment[],
	segment: number,
	clearOf: (p: Point) => number,
): readonly Look[] {
	const piece = all[segment]!;
	const count = Math.max(LOOKS, 2 * Math.ceil(segmentLength(piece) / STEP / 2));
	return Array.from({ length: count + 1 }, (_, k) => {
		const u = k / count;
		return { segment, u, clear: clearOf(pointAt(piece, u)) };
	});
}

/** Places that are far enough from the working edges or, if there is none, the farthest. */
function searched(all: readonly Segment[], clearOf: (p: Point) => number): Place[] {
	const rows = all.map((_, i) => looks(all, i, clearOf));
	const fit = rows.flatMap((row) => nearestMiddle(row.filter(isOff)));
	return fit.length > 0 ? fit : farthest(all, rows, clearOf);
}

function isOff({ clear }: Look): boolean {
	return clear >= OFF_WORKING_EDGE - ROUNDING;
}

function nearestMiddle(row: readonly Look[]): Look[] {
	const off = ({ u }: Look) => Math.abs(u - 0.5);
	return row.length > 0 ? [row.reduce((a, b) => (off(b) < off(a) ? b : a))] : [];
}

/** The places of a contour that are farthest from the working edges, corners if some are. */
function farthest(
	all: readonly Segment[],
	rows: readonly (readonly Look[])[],
	clearOf: (p: Point) => number,
): Place[] {
	const best = rows.flat().reduce((most, { clear }) => Math.max(most, clear), 0);
	const tops = rows.flatMap((row, i) => {
		const step = segmentLength(all[i]!) / (row.length - 1);
		const local = row.filter(({ clear }, k) => {
			const beside = Math.max(row[k - 1]?.clear ?? 0, row[k + 1]?.clear ?? 0);
			// Nowhere within half a step can it be farther by more than half a step.
			return clear >= beside - AS_FAR && clear > best - step / 2 - AS_FAR;
		});
		// Many are a stretch along which it is as far: its ends and its middle stand for it.
		if (local.length > FEW) return [local[0]!, ...nearestMiddle(local), local.at(-1)!];
		return local.map((look) => narrowed(all[i]!, look, 1 / (row.length - 1), clearOf));
	});
	const most = tops.reduce((m, { clear }) => Math.max(m, clear), 0);
	const chosen = tops.filter(({ clear }) => clear > most - AS_FAR);
	const corners = chosen.filter(({ segment, u }) => {
		if (u !== 0 && u !== 1) return false;
		return isCorner(all, (segment + u) % all.length);
	});
	const at = ({ segment, u }: Place) => pointAt(all[segment]!, u);
	const places = corners.length > 0 ? corners : chosen;
	return places.filter(
		(one, i) => !places.slice(0, i).some((o) => distance(at(o), at(one)) < CRUMB),
	);
}

/** The farthest place between a place's neighbours; the place itself unless another is farther. */
function narrowed(piece: Segment, look: Look, step: number, clearOf: (p: Point) => number): Look {
	const clearAt = (u: number) => clearOf(pointAt(piece, u));
	let low = Math.max(0, look.u - step);
	let high = Math.min(1, look.u + step);
	for (let i = 0; i < NARROWINGS; i++) {
		const width = (high - low) * GOLDEN;
		if (clearAt(high - width) < clearAt(low + width)) low = high - width;
		else high = low + width;
	}
	const u = (low + high) / 2;
	const clear = clearAt(u);
	return clear > look.clear + AS_FAR ? { ...look, u, clear } : look;
}

/** A closed path begun at a place of it, a new vertex if need be. */
function begunAt(path: Path, all: readonly Segment[], { segment, u }: Place): Path {
	const piece = all[segment]!;
	const size = segmentLength(piece);
	if (u * size < CRUMB) return segment === 0 ? path : startedAt(path, segment);
	if ((1 - u) * size < CRUMB) return startedAt(path, (segment + 1) % all.length);
	const sweep = piece.kind === "arc" ? piece.sweep : 0;
	const { x, y } = pointAt(piece, u);
	const split = vertex(x, y, Math.tan((sweep * (1 - u)) / 4));
	const points = path.points.map((v, i) =>
		i === segment ? vertex(v.x, v.y, Math.tan((sweep * u) / 4)) : v,
	);
	points.splice(segment + 1, 0, split);
	return startedAt({ points, closed: true }, segment + 1);
}
