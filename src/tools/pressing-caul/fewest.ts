import { arcSagitta, radiusFromSagitta } from "../../geometry/index.js";
import type { CrownTop } from "../crown-top.js";

/** Radii that are one but for rounding, mm. */
const SAME = 1e-9;

/** A caul's radius with the frets that it serves. */
export interface Served {
	readonly radius: number;
	readonly frets: readonly CrownTop[];
	/** Most that stays open over the middle of a fret, mm. */
	readonly gap: number;
}

/** What stays open over the middle of a fret under a caul that touches its ends, mm. */
export function gapOver(radius: number, { length, sagitta }: CrownTop): number {
	return arcSagitta(radius, length) - sagitta;
}

/** The roundest caul that a fret bears: its middle gap is the most allowed. */
function roundest({ length, sagitta }: CrownTop, most: number): number {
	const height = sagitta + most;
	return height >= length / 2 ? length / 2 : radiusFromSagitta(length, height);
}

/** The fret whose middle even its flattest caul leaves farthest open, if that is more than `most`. */
export function unreachable(frets: readonly CrownTop[], most: number): CrownTop | null {
	const gap = (fret: CrownTop) => gapOver(fret.radius, fret);
	const worst = frets.reduce((a, b) => (gap(b) > gap(a) ? b : a));
	return gap(worst) > most ? worst : null;
}

/**
 * The fewest cauls that serve all frets, in the order of their first frets.
 *
 * Each fret bears the radii from its roundest to its own crown's: an interval. Taking the least upper end
 * that is not served yet, again and again, stabs all intervals with the fewest points. A fret
 * then goes under the flattest caul that it bears, where its gap is least.
 */
export function fewestCauls(frets: readonly CrownTop[], most: number): Served[] {
	const radii: number[] = [];
	for (const fret of [...frets].sort((a, b) => a.radius - b.radius)) {
		const last = radii.at(-1);
		if (last === undefined || roundest(fret, most) > last + SAME) radii.push(fret.radius);
	}
	const own = new Map<number, CrownTop[]>(radii.map((r) => [r, []]));
	for (const fret of frets) own.get(radii.filter((r) => r <= fret.radius).at(-1)!)!.push(fret);
	return [...own]
		.map(([radius, served]) => ({
			radius,
			frets: served,
			gap: Math.max(...served.map((fret) => gapOver(radius, fret))),
		}))
		.sort((a, b) => a.frets[0]!.n - b.frets[0]!.n);
}

/**
 * Fret numbers in words, neighbours as a range.
 *
 * @example fretRanges([1, 2, 3, 7]) // "frets 1-3, 7"
 */
export function fretRanges(frets: readonly number[]): string {
	const runs: [number, number][] = [];
	for (const n of frets) {
		const last = runs.at(-1);
		if (last && last[1] === n - 1) last[1] = n;
		else runs.push([n, n]);
	}
	const texts = runs.map(([a, b]) => (a === b ? `${a}` : `${a}-${b}`));
	return `${frets.length === 1 ? "fret" : "frets"} ${texts.join(", ")}`;
}
