/** A stretch of a drawing that a seam should not run through, and how bad it is if it does. */
export interface Avoid {
	readonly from: number;
	readonly to: number;
	readonly weight: number;
}

/** One direction of a drawing that is cut into pages, mm. */
export interface Stretch {
	readonly from: number;
	readonly to: number;
	/** The most of it that one page holds. */
	readonly window: number;
	/** What two neighbours both show, half of it on either side of their seam. */
	readonly overlap: number;
	readonly avoid: readonly Avoid[];
}

/** Places that are tried for a seam, mm apart. */
const STEP = 0.5;
/** From this weight on a seam is worth a further page. */
const BAD = 1000;

/**
 * The seams between the pages of a drawing along one direction, in order; none if one page holds
 * it.
 *
 * As few pages as may be, evenly filled; each seam is shifted by up to the overlap off what it
 * should not run through, and one page more is taken where the fewest leave no room for that.
 *
 * @throws RangeError unless the overlap is less than the window
 * @example seams({ from: 0, to: 480, window: 250, overlap: 15, avoid: [] }) // [240]
 */
export function seams(stretch: Stretch): number[] {
	const { from, to, window, overlap } = stretch;
	if (!(overlap < window)) throw new RangeError(`an overlap of ${overlap} leaves no page`);
	if (to - from <= window) return [];
	const fewest = Math.ceil((to - from - overlap) / (window - overlap) - 1e-9);
	const first = bestSeams(stretch, fewest);
	if (first.cost < BAD) return first.at;
	const more = bestSeams(stretch, fewest + 1);
	return more.cost < BAD ? more.at : first.at;
}

interface Found {
	readonly at: number[];
	readonly cost: number;
}

/** The cheapest seams of so many pages: every place of one is joined to every place of the next. */
function bestSeams(stretch: Stretch, pages: number): Found {
	const { from, to, window, overlap } = stretch;
	const half = overlap / 2;
	const extent = (to - from + (pages - 1) * overlap) / pages;
	let row: Found[] = [{ at: [from + half], cost: 0 }];
	for (let k = 1; k < pages; k++) {
		const even = from + k * (extent - overlap) + half;
		row = places(even, overlap).flatMap((at): Found[] => {
			const own = costAt(at, even, stretch);
			const before = row.filter((f) => at - f.at.at(-1)! <= window - overlap + 1e-9);
			if (before.length === 0) return [];
			const best = before.reduce((a, b) => (b.cost < a.cost ? b : a));
			return [{ at: [...best.at, at], cost: best.cost + own }];
		});
	}
	const fits = row.filter((f) => to - half - f.at.at(-1)! <= window - overlap + 1e-9);
	const best = fits.reduce((a, b) => (b.cost < a.cost ? b : a));
	return { at: best.at.slice(1), cost: best.cost };
}

/** Places around an even one, it first, none further off than the overlap. */
function places(even: number, overlap: number): number[] {
	const steps = Math.floor(overlap / STEP);
	const offsets = Array.from({ length: steps }, (_, i) => [(i + 1) * STEP, -(i + 1) * STEP]);
	return [0, ...offsets.flat()].map((off) => even + off);
}

/** What a seam costs: what it runs through, then how far it is from even. */
function costAt(at: number, even: number, { avoid, overlap }: Stretch): number {
	const met = avoid.filter((a) => at > a.from && at < a.to);
	return met.reduce((sum, a) => sum + a.weight, 0) + Math.abs(at - even) / (10 * overlap);
}
