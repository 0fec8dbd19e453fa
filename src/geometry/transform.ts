import type { Extents } from "./measure.js";
import type { Path, Point } from "./path.js";

/**
 * A rigid move: mirror about the x axis first (if asked), then turn, then shift.
 * There is no scale: a template is drawn at its size.
 */
export interface Move {
	readonly x: number;
	readonly y: number;
	/** Radians, counter-clockwise. */
	readonly turn: number;
	readonly mirror: boolean;
}

export const STAY: Move = { x: 0, y: 0, turn: 0, mirror: false };

/** A shift without turn. */
export function shift(x: number, y: number): Move {
	return { x, y, turn: 0, mirror: false };
}

/** Cosine and sine, exact for quarter turns, so that upright stays upright. */
function cosSin(turn: number): readonly [number, number] {
	const quarters = turn / (Math.PI / 2);
	const nearest = Math.round(quarters);
	if (Math.abs(quarters - nearest) < 1e-12) {
		const exact = [
			[1, 0],
			[0, 1],
			[-1, 0],
			[0, -1],
		] as const;
		return exact[((nearest % 4) + 4) % 4]!;
	}
	return [Math.cos(turn), Math.sin(turn)];
}

/** A point after the move. */
export function movedPoint(p: Point, move: Move): Point {
	const [c, s] = cosSin(move.turn);
	const y = move.mirror ? -p.y : p.y;
	return { x: c * p.x - s * y + move.x, y: s * p.x + c * y + move.y };
}

/** A path after the move; a mirrored path runs the other way round. */
export function moved(path: Path, move: Move): Path {
	const { x, y, turn, mirror } = move;
	if (x === 0 && y === 0 && turn === 0 && !mirror) return path;
	const [c, s] = cosSin(turn);
	const flip = mirror ? -1 : 1;
	return {
		closed: path.closed,
		points: path.points.map((v) => ({
			x: c * v.x - s * flip * v.y + x,
			y: s * v.x + c * flip * v.y + y,
			bulge: v.bulge === 0 ? 0 : flip * v.bulge,
		})),
	};
}

/** The move that does `first`, then `second`. */
export function combined(first: Move, second: Move): Move {
	const at = movedPoint(first, second);
	return {
		x: at.x,
		y: at.y,
		turn: second.mirror ? second.turn - first.turn : second.turn + first.turn,
		mirror: first.mirror !== second.mirror,
	};
}

/** The move that undoes another. */
export function undone({ x, y, turn, mirror }: Move): Move {
	const bare = { x: 0, y: 0, turn: mirror ? turn : -turn, mirror };
	return { ...bare, ...movedPoint({ x: -x, y: -y }, bare) };
}

/** A box after a move by shifts and quarter turns, which leave it upright. */
export function movedExtents({ minX, minY, maxX, maxY }: Extents, move: Move): Extents {
	const a = movedPoint({ x: minX, y: minY }, move);
	const b = movedPoint({ x: maxX, y: maxY }, move);
	return {
		minX: Math.min(a.x, b.x),
		minY: Math.min(a.y, b.y),
		maxX: Math.max(a.x, b.x),
		maxY: Math.max(a.y, b.y),
	};
}
