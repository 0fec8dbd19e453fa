import { type Path, SAME_POINT, type Vertex } from "../geometry/index.js";
import type { Findings } from "./findings.js";
import { FARTHEST, MOST_BULGE } from "./limits.js";

/**
 * A path without what has no length, so that it can be measured; null if nothing is left of it
 * or a number in it is out of range, with a finding for each.
 *
 * @param place - where the path stands in its file, in words
 */
export function cleanedPath(
	points: readonly Vertex[],
	closed: boolean,
	place: string,
	findings: Findings,
): Path | null {
	const bad = points.find((p) => !isDrawable(p));
	if (bad) {
		const far = [bad.x, bad.y, bad.bulge].find((n) => !(Math.abs(n) < MOST_BULGE)) ?? bad.x;
		findings.noNumber(String(far), place);
		return null;
	}
	const kept: Vertex[] = [];
	for (const p of points) {
		const last = kept.at(-1);
		if (last && isSame(last, p)) kept[kept.length - 1] = { ...last, bulge: p.bulge };
		else kept.push(p);
	}
	while (closed && kept.length > 1 && isSame(kept.at(-1)!, kept[0]!)) kept.pop();
	if (kept.length < points.length || kept.length < 2) {
		findings.add("no-length", "warning", { place });
	}
	if (kept.length < 2) return null;
	if (!closed) kept[kept.length - 1] = { ...kept.at(-1)!, bulge: 0 };
	return { points: kept, closed };
}

function isDrawable({ x, y, bulge }: Vertex): boolean {
	return Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST && Math.abs(bulge) <= MOST_BULGE;
}

/** Whether two vertices are one point. */
export function isSame(a: Vertex, b: Vertex): boolean {
	const [x, y] = [a.x - b.x, a.y - b.y];
	return x * x + y * y < SAME_POINT * SAME_POINT;
}
