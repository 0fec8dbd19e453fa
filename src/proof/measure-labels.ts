import type { LabelClaim, Operation } from "../drawing/index.js";
import {
	around,
	distanceTo,
	type Extents,
	extents,
	grown,
	type Path,
	pathLength,
	pointAt,
	segments,
} from "../geometry/index.js";
import { type Lettering, placedText } from "../lettering/index.js";
import { gap } from "./plane.js";

/** What is found of the labels of a part: heights by claim, NaN where the strokes are others. */
export type LabelHeights = ReadonlyMap<LabelClaim, number>;

interface Drawn {
	readonly path: Path;
	readonly box: Extents;
	used: boolean;
}

/**
 * Labels compared with the strokes of a file: each text is set again as claimed, and each of its
 * strokes must be there within the claim's tolerance. Strokes that no label accounts for spoil
 * the label on whose letters they lie.
 */
export function labelHeights(
	claims: readonly LabelClaim[],
	pathsOf: (operation: Operation) => readonly Path[],
	letters: Lettering,
): LabelHeights {
	const operations = [...new Set(claims.map((c) => c.operation))];
	const heights = new Map<LabelClaim, number>();
	for (const operation of operations) {
		const drawn = pathsOf(operation).map(
			(path): Drawn => ({ path, box: extents(path), used: false }),
		);
		const own = claims.filter((c) => c.operation === operation && c.font === letters.name);
		const boxes = own.map((claim) => {
			const { height, box } = found(claim, drawn, letters);
			heights.set(claim, height);
			return { claim, box };
		});
		const stray = drawn.filter(({ used }) => !used);
		for (const { claim, box } of boxes) {
			if (box && stray.some((d) => overlap(d.box, box))) heights.set(claim, Number.NaN);
		}
	}
	return heights;
}

/** A label's strokes among those drawn: its height as drawn, and the box of what it should be. */
function found(claim: LabelClaim, drawn: readonly Drawn[], letters: Lettering) {
	const { text, height, at, turn, file } = claim;
	const nothing = { height: Number.NaN, box: null };
	if (letters.missing(text).length > 0 || !(height > 0)) return nothing;
	const { paths } = placedText(letters, text, height, at[0], turn, "left");
	if (paths.length === 0) return nothing;
	const box = around(paths.map(extents));
	const own: Path[] = [];
	const alone = paths.filter((path) => {
		const place = extents(path);
		const match = drawn.find(
			(d) => !d.used && areBoxesAlike(d.box, place, file) && areAlike(d.path, path, file),
		);
		if (!match) return true;
		match.used = true;
		own.push(match.path);
		return false;
	});
	const joined = alone.length > 0 ? joinedStrokes(alone, drawn, grown(box, file), file) : [];
	if (!joined) return { height: Number.NaN, box };
	const wanted = rise(paths, turn);
	const has = rise([...own, ...joined], turn);
	return { height: wanted > 0 ? (height * has) / wanted : height, box };
}

/**
 * What is drawn within a label's box in place of some of its strokes: where letters touch, files
 * of loose pieces have them in one. Null unless it is as long as they are and runs along them.
 */
function joinedStrokes(
	wanted: readonly Path[],
	drawn: readonly Drawn[],
	box: Extents,
	by: number,
): Path[] | null {
	const inside = drawn.filter((d) => !d.used && isWithin(d.box, box));
	const paths = inside.map((d) => d.path);
	const length = (all: readonly Path[]) => all.reduce((sum, path) => sum + pathLength(path), 0);
	const lack = Math.abs(length(paths) - length(wanted));
	if (paths.length === 0 || lack > by * wanted.length) return null;
	const alike =
		wanted.every((path) => liesOn(path, paths, by)) && paths.every((p) => liesOn(p, wanted, by));
	if (!alike) return null;
	for (const one of inside) one.used = true;
	return paths;
}

/** How high strokes stand square to their baseline, between their corners, mm. */
function rise(paths: readonly Path[], turn: number): number {
	const [s, c] = [Math.sin(turn), Math.cos(turn)];
	const heights = paths.flatMap(({ points }) => points.map(({ x, y }) => c * y - s * x));
	return Math.max(...heights) - Math.min(...heights);
}

function overlap(a: Extents, b: Extents): boolean {
	return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}

function isWithin(a: Extents, b: Extents): boolean {
	return a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;
}

function areBoxesAlike(a: Extents, b: Extents, by: number): boolean {
	return (
		Math.abs(a.minX - b.minX) <= by &&
		Math.abs(a.maxX - b.maxX) <= by &&
		Math.abs(a.minY - b.minY) <= by &&
		Math.abs(a.maxY - b.maxY) <= by
	);
}

/** Whether each of two paths lies on the other, whatever their corners and ways. */
function areAlike(a: Path, b: Path, by: number): boolean {
	return haveSamePlaces(a, b, by) || (liesOn(a, [b], by) && liesOn(b, [a], by));
}

/** Whether two paths run through the same corners and middles of arcs: as most do, and soon told. */
function haveSamePlaces(a: Path, b: Path, by: number): boolean {
	if (a.closed !== b.closed || a.points.length !== b.points.length) return false;
	return a.points.every((p, i) => {
		const q = b.points[i]!;
		if (gap(p, q) > by) return false;
		const next = b.points[(i + 1) % b.points.length]!;
		// Half the chord times the bulge is the height of the arc over it.
		return (Math.abs(p.bulge - q.bulge) * gap(q, next)) / 2 <= by;
	});
}

function liesOn(path: Path, others: readonly Path[], by: number): boolean {
	const all = others.flatMap(segments);
	const places = segments(path).flatMap((s) => [0, 0.25, 0.5, 0.75, 1].map((u) => pointAt(s, u)));
	return places.every((p) => all.some((s) => distanceTo(s, p) <= by));
}
