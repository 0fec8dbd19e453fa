import type { Part, Placed } from "../../drawing/index.js";
import {
	around,
	type Extents,
	extents,
	moved,
	type Path,
	type Point,
	STAY,
} from "../../geometry/index.js";

/** What positions and distances may be off by, mm. */
export const EXACT = 1e-8;

/** What the machine does along the paths of a part: all of it needs its place on the bed. */
export function pathsOf({ part, move }: Placed): Path[] {
	return part.marks.filter((m) => m.operation !== "reference").map((m) => moved(m.path, move));
}

/** The box of all that at its place. */
export function extentsOf(placed: Placed): Extents {
	return around(pathsOf(placed).map(extents));
}

/** A part turned, the lower left corner of its box at a point. */
export function withCorner(part: Part, turn: number, corner: Point): Placed {
	const box = extentsOf({ part, move: { ...STAY, turn } });
	return { part, move: { x: corner.x - box.minX, y: corner.y - box.minY, turn, mirror: false } };
}
