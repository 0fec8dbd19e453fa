import { type Path, type Point, pointAt, segments } from "../geometry/index.js";

/** Points of an arc that stand for it in a hull. */
const OF_ARC = [0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1];

/** Centre of area of a convex hull, the direction of its length, and how much longer than wide it is. */
export interface Lie {
	readonly centre: Point;
	/** Radians; half a turn more is the same. */
	readonly axis: number;
	/** 0 for a hull that is as long as it is wide, toward 1 for a needle. */
	readonly slenderness: number;
}

/** How the convex hull of some paths lies; null without area. */
export function lieOf(paths: readonly Path[]): Lie | null {
	const points = paths
		.flatMap(segments)
		.flatMap((s) => (s.kind === "line" ? [s.start, s.end] : OF_ARC.map((u) => pointAt(s, u))));
	return lieOfHull(hull(points));
}

/** Andrew's monotone chain, counter-clockwise. */
function hull(points: readonly Point[]): Point[] {
	const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
	const chain = (all: readonly Point[]) => {
		const kept: Point[] = [];
		for (const p of all) {
			while (kept.length > 1 && cross(kept.at(-2)!, kept.at(-1)!, p) <= 0) kept.pop();
			kept.push(p);
		}
		return kept.slice(0, -1);
	};
	return [...chain(sorted), ...chain(sorted.reverse())];
}

function cross(o: Point, a: Point, b: Point): number {
	return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

/** Moments of area of a polygon, from its first corner (Green's theorem over its triangles). */
function lieOfHull(corners: readonly Point[]): Lie | null {
	let [area, sx, sy, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
	const o = corners[0];
	for (let i = 1; o && i + 1 < corners.length; i++) {
		const [ax, ay] = [corners[i]!.x - o.x, corners[i]!.y - o.y];
		const [bx, by] = [corners[i + 1]!.x - o.x, corners[i + 1]!.y - o.y];
		const twice = ax * by - ay * bx;
		area += twice / 2;
		sx += (twice * (ax + bx)) / 6;
		sy += (twice * (ay + by)) / 6;
		xx += (twice * (ax * ax + ax * bx + bx * bx)) / 12;
		yy += (twice * (ay * ay + ay * by + by * by)) / 12;
		xy += (twice * (2 * ax * ay + ax * by + ay * bx + 2 * bx * by)) / 24;
	}
	if (!o || !(area > 0)) return null;
	const [cx, cy] = [sx / area, sy / area];
	const [mx, my, mxy] = [xx - area * cx * cx, yy - area * cy * cy, xy - area * cx * cy];
	return {
		centre: { x: o.x + cx, y: o.y + cy },
		axis: Math.atan2(2 * mxy, mx - my) / 2,
		slenderness: Math.hypot(mx - my, 2 * mxy) / (mx + my),
	};
}
