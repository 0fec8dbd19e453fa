import {
	distanceTo,
	type Extents,
	fractionOfAngle,
	type Move,
	movedPoint,
	type Path,
	type Point,
	pointAt,
	type Segment,
	segmentExtents,
	segments,
	tangentAt,
} from "../geometry/index.js";

/** A contour as it is to be met: with how far to its right points should lie, mm. */
interface Piece {
	readonly segment: Segment;
	readonly box: Extents;
	readonly off: number;
}

/** Nominal contours that points of a drawing are fitted to. */
export type Contours = readonly Piece[];

/**
 * @param kerf - closed contours are cut half of it to their right, on the waste; open cuts on them
 */
export function contoursOf(paths: readonly Path[], kerf: number): Contours {
	return paths.flatMap((path) =>
		segments(path).map((segment) => ({
			segment,
			box: segmentExtents(segment),
			off: path.closed ? kerf / 2 : 0,
		})),
	);
}

/** How far a point is from where its contour is cut, and the direction in which that grows. */
interface Rest {
	readonly value: number;
	readonly nx: number;
	readonly ny: number;
}

function restAt(contours: Contours, p: Point): Rest {
	let nearest = contours[0]!;
	let least = Number.POSITIVE_INFINITY;
	for (const piece of contours) {
		if (besideBox(piece.box, p) >= least) continue;
		const distance = distanceTo(piece.segment, p);
		if (distance < least) [nearest, least] = [piece, distance];
	}
	const { segment, off } = nearest;
	const u = footOn(segment, p);
	const foot = pointAt(segment, u);
	const { x, y } = tangentAt(segment, u);
	const side = (p.x - foot.x) * y - (p.y - foot.y) * x < 0 ? -1 : 1;
	const value = side * least - off;
	// Beside an end the distance grows away from it, not square to the segment.
	const isBeside = (u === 0 || u === 1) && least > 1e-6;
	if (!isBeside) return { value, nx: y, ny: -x };
	return { value, nx: (side * (p.x - foot.x)) / least, ny: (side * (p.y - foot.y)) / least };
}

function besideBox({ minX, minY, maxX, maxY }: Extents, p: Point): number {
	return Math.max(0, minX - p.x, p.x - maxX, minY - p.y, p.y - maxY);
}

function footOn(s: Segment, p: Point): number {
	if (s.kind === "arc") {
		const u = fractionOfAngle(s, Math.atan2(p.y - s.centre.y, p.x - s.centre.x));
		if (u !== null) return u;
		const toStart = Math.hypot(p.x - s.start.x, p.y - s.start.y);
		return toStart < Math.hypot(p.x - s.end.x, p.y - s.end.y) ? 0 : 1;
	}
	const [dx, dy] = [s.end.x - s.start.x, s.end.y - s.start.y];
	const along = ((p.x - s.start.x) * dx + (p.y - s.start.y) * dy) / (dx * dx + dy * dy);
	return Math.min(1, Math.max(0, along));
}

/** How far half of some points are at most from where their contours are cut, mm. */
export function medianRest(contours: Contours, points: readonly Point[], move: Move): number {
	const rests = points.map((p) => Math.abs(restAt(contours, movedPoint(p, move)).value));
	return rests.sort((a, b) => a - b)[Math.floor(rests.length / 2)] ?? Number.POSITIVE_INFINITY;
}

/** Rests from which on a point counts little: at first, mm, and at last, a few micrometres. */
const FIRST = 1;
const LAST = 0.002;
/** Rounds until the scale is at its least, and as many more at most until nothing moves. */
const ROUNDS = 30;
const STILL = 1e-10;

/**
 * A move that carries points of a drawing onto the contours, from one that nearly does.
 *
 * Gauss–Newton on the distances from the contours, each weighted by (s²/(s² + r²))² (Geman and
 * McClure): what was moved or does not belong to the part ends with no weight. The scale s
 * shrinks round by round.
 */
export function fitted(contours: Contours, points: readonly Point[], from: Move): Move {
	let move = from;
	let scale = FIRST;
	for (let round = 0; round < ROUNDS; round++) {
		const step = stepOf(
			contours,
			points.map((p) => movedPoint(p, move)),
			scale,
		);
		if (!step) return move;
		const { x, y, turn, centre } = step;
		const [c, s] = [Math.cos(turn), Math.sin(turn)];
		const [ox, oy] = [move.x - centre.x, move.y - centre.y];
		const at = { x: c * ox - s * oy + centre.x + x, y: s * ox + c * oy + centre.y + y };
		move = { ...move, ...at, turn: move.turn + turn };
		if (scale === LAST && Math.hypot(x, y) + Math.abs(turn) < STILL) break;
		scale = Math.max(LAST, scale / 2);
	}
	return move;
}

/** The shift, and the turn about the middle of the points, that lessens their weighted rests most. */
function stepOf(contours: Contours, points: readonly Point[], scale: number) {
	const centre = {
		x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
		y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
	};
	// Sums of the normal equations: a symmetric matrix of three unknowns, and its right side.
	let [xx, xy, xt, yy, yt, tt, bx, by, bt] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
	for (const p of points) {
		const { value, nx, ny } = restAt(contours, p);
		const weight = (scale ** 2 / (scale ** 2 + value ** 2)) ** 2;
		const nt = (p.x - centre.x) * ny - (p.y - centre.y) * nx;
		xx += weight * nx * nx;
		xy += weight * nx * ny;
		xt += weight * nx * nt;
		yy += weight * ny * ny;
		yt += weight * ny * nt;
		tt += weight * nt * nt;
		bx -= weight * nx * value;
		by -= weight * ny * value;
		bt -= weight * nt * value;
	}
	const [a, b, c] = [yy * tt - yt * yt, xt * yt - xy * tt, xy * yt - xt * yy];
	const determinant = xx * a + xy * b + xt * c;
	if (!(Math.abs(determinant) > 1e-9 * xx * yy * tt)) return null;
	const [d, e, f] = [xx * tt - xt * xt, xy * xt - xx * yt, xx * yy - xy * xy];
	return {
		x: (a * bx + b * by + c * bt) / determinant,
		y: (b * bx + d * by + e * bt) / determinant,
		turn: (c * bx + e * by + f * bt) / determinant,
		centre,
	};
}
