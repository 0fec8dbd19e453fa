import { extents, type Path, SAME_POINT, type Vertex } from "../geometry/index.js";

/** Farthest from the origin that a path is measured, mm: beyond it no template lies. */
const FARTHEST = 1e5;
/** Largest bulge that is measured: an arc that lacks a hundred-thousandth of its circle. */
const MOST_BULGE = 1e5;

/**
 * A path that can be measured whatever it held: points that repeat the one before are left out.
 * Null where nothing is left, or a number is none that a drawing has.
 */
export function soundPath({ points, closed }: Path): Path | null {
	if (!points.every(isSound)) return null;
	const kept: Vertex[] = [];
	for (const p of points) {
		const last = kept.at(-1);
		if (last && isSame(last, p)) kept[kept.length - 1] = { ...last, bulge: p.bulge };
		else kept.push(p);
	}
	while (closed && kept.length > 1 && isSame(kept.at(-1)!, kept[0]!)) kept.pop();
	if (kept.length < 2) return null;
	const path = { points: kept, closed };
	const box = extents(path);
	const reach = Math.max(-box.minX, -box.minY, box.maxX, box.maxY);
	return reach < FARTHEST ? path : null;
}

function isSound({ x, y, bulge }: Vertex): boolean {
	return Math.abs(x) < FARTHEST && Math.abs(y) < FARTHEST && Math.abs(bulge) < MOST_BULGE;
}

function isSame(a: Vertex, b: Vertex): boolean {
	return Math.hypot(a.x - b.x, a.y - b.y) < SAME_POINT;
}
