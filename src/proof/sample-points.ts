import { type Path, type Point, pointAt, segmentLength, segments } from "../geometry/index.js";

/** Places of every segment that are looked at: none at its ends, where paths have corners. */
const PLACES = [1 / 6, 1 / 2, 5 / 6];
/** From this length on a segment is looked at in more places, mm. */
const LONG = 60;
/** Most places of a long segment. */
const MOST = 12;

/** Points on every segment of some paths: three, more on long ones. */
export function samplePoints(paths: readonly Path[]): Point[] {
	return paths.flatMap(segments).flatMap((segment) => {
		const length = segmentLength(segment);
		if (length <= LONG) return PLACES.map((u) => pointAt(segment, u));
		const count = Math.min(MOST, 3 + Math.ceil(length / LONG));
		return Array.from({ length: count }, (_, k) => pointAt(segment, (k + 0.5) / count));
	});
}

/** At most about so many of a list, evenly chosen. */
export function thinned<T>(all: readonly T[], most: number): T[] {
	const step = Math.max(1, all.length / most);
	return Array.from(
		{ length: Math.floor(all.length / step) },
		(_, k) => all[Math.floor(k * step)]!,
	);
}
