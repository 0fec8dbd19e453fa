/** What sums of readings lose in their last digits, mm. */
export const ROUNDING = 1e-9;

/** A place and a height. */
export interface Spot {
	readonly x: number;
	readonly height: number;
}

/** height + slope·(at − x). */
export interface StraightLine {
	readonly x: number;
	readonly height: number;
	readonly slope: number;
}

/** The corners of the greatest convex curve under all spots, x rising (Andrew's monotone chain). */
function lowerHull(spots: readonly Spot[]): Spot[] {
	const hull: Spot[] = [];
	for (const spot of [...spots].sort((a, b) => a.x - b.x || b.height - a.height)) {
		while (hull.length > 0 && hull.at(-1)!.x === spot.x) hull.pop();
		while (hull.length > 1 && !turnsUp(hull.at(-2)!, hull.at(-1)!, spot)) hull.pop();
		hull.push(spot);
	}
	return hull;
}

function turnsUp(a: Spot, b: Spot, c: Spot): boolean {
	return (b.x - a.x) * (c.height - a.height) - (c.x - a.x) * (b.height - a.height) > 0;
}

/**
 * The line at or below every spot with the least sum of heights over it.
 *
 * The sum is n·(mean height − the line at the mean x), so the line is the one highest at the mean x:
 * the edge of the spots' lower convex hull over it, exactly. Where the mean lies on a corner, every
 * line through it between its two edges serves; the one between whose slopes are averaged is taken.
 *
 * @param spots - at two different places or more
 */
export function highestLineUnder(spots: readonly Spot[]): StraightLine {
	const hull = lowerHull(spots);
	const mean = spots.reduce((sum, { x }) => sum + x, 0) / spots.length;
	const slopes = hull.slice(1).map((b, i) => (b.height - hull[i]!.height) / (b.x - hull[i]!.x));
	const corner = hull.findIndex(({ x }) => Math.abs(x - mean) < 1e-9);
	if (corner > 0 && corner < hull.length - 1) {
		return { ...hull[corner]!, slope: (slopes[corner - 1]! + slopes[corner]!) / 2 };
	}
	const edge = hull.findIndex(({ x }, i) => i > 0 && x > mean) - 1;
	return { ...hull[edge]!, slope: slopes[edge]! };
}

/**
 * As `highestLineUnder`, but nowhere below a least height of every spot; null where no line is both.
 *
 * The height at the mean x is a concave function of the slope, so the best slope among those that leave
 * the least everywhere is the one nearest to the free best. Every pair of spots bounds the slope.
 */
export function highestLineBetween(
	spots: readonly (Spot & { readonly least: number })[],
): StraightLine | null {
	let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
	for (const top of spots) {
		for (const low of spots) {
			const room = top.height - low.least;
			const run = top.x - low.x;
			if (run === 0 && room < -ROUNDING) return null;
			if (run > 0) to = Math.min(to, room / run);
			if (run < 0) from = Math.max(from, room / run);
		}
	}
	if (from > to) return null;
	const free = highestLineUnder(spots);
	const slope = Math.min(Math.max(free.slope, from), to);
	const height = Math.min(...spots.map((spot) => spot.height - slope * (spot.x - free.x)));
	return { x: free.x, height, slope };
}
