import {
	around,
	type Extents,
	extents,
	grown,
	type Move,
	moved,
	type Path,
	rectangle,
	STAY,
	undone,
} from "../geometry/index.js";
import { asMade } from "./as-made.js";
import type { PromisedFile, PromisedPart, ReadDrawing, ReadStroke } from "./types.js";

/** A path that a machine follows, with the part that it belongs to. */
export interface LaidStroke extends ReadStroke {
	/** In the file's own coordinates. */
	readonly box: Extents;
	/** Its place among the parts that are promised; −1 if it lies on none. */
	readonly part: number;
}

/** So much of a line's box is looked at beside it, mm: a line alone has no area. */
const BESIDE = 0.25;

/** A part turned by less beyond a quarter turn, as a sine, lies along the bed. */
const SLANTED = 1e-9;

/** All strokes of a drawing but its reference layer, each with the part on whose box most of it lies. */
export function laidStrokes({ strokes }: ReadDrawing, promised: PromisedFile): LaidStroke[] {
	const boxes = promised.placed.map((_, i) => promisedBox(promised, i));
	return strokes
		.filter(({ operation }) => operation !== "reference")
		.map((stroke) => {
			const box = extents(stroke.path);
			if (boxes.length === 1) return { ...stroke, box, part: 0 };
			const near = boxes.flatMap((part, i) => {
				const share = shareOf(box, part);
				return share > 0 ? [{ i, share }] : [];
			});
			return { ...stroke, box, part: partUnder(stroke.path, near, promised) };
		});
}

/** Where the cuts of one part are promised to lie, in the file's own coordinates. */
export function promisedBox({ placed, stretch }: PromisedFile, index: number): Extents {
	const { part, move } = placed[index]!;
	const { minX, minY, maxX, maxY } = cutBox(part, move);
	return {
		minX: minX / stretch.x,
		minY: minY / stretch.y,
		maxX: maxX / stretch.x,
		maxY: maxY / stretch.y,
	};
}

function boxPath({ minX, minY, maxX, maxY }: Extents): Path {
	return rectangle(minX, minY, maxX, maxY);
}

/** Where the cuts of a part lie that is moved so. */
function cutBox({ outline, box, kerf }: PromisedPart, move: Move): Extents {
	const paths = outline.length > 0 ? outline : [boxPath(box)];
	return grown(around(paths.map((path) => extents(moved(path, move)))), kerf / 2);
}

/** A part near a stroke, and how much of the stroke's box lies on its box. */
interface Near {
	readonly i: number;
	readonly share: number;
}

/**
 * The part on which most of a stroke lies. The box of a part on the diagonal holds others: where
 * such a part is near, shares are taken in the parts' own frames.
 */
function partUnder(path: Path, near: readonly Near[], { placed, stretch }: PromisedFile): number {
	const isSlanted = ({ i }: Near) => Math.abs(Math.sin(2 * placed[i]!.move.turn)) > SLANTED;
	const inOwnFrame = ({ i }: Near): Near => {
		const { part, move } = placed[i]!;
		const own = extents(moved(asMade(path, stretch), undone(move)));
		return { i, share: shareOf(own, cutBox(part, STAY)) };
	};
	const all = near.length > 1 && near.some(isSlanted) ? near.map(inOwnFrame) : near;
	const best = all.reduce((a, b) => (b.share > a.share ? b : a), { i: -1, share: 0 });
	return best.i;
}

/** How much of one box lies on another, 0 to 1. */
function shareOf(box: Extents, other: Extents): number {
	const own = grown(box, BESIDE);
	const width = Math.min(own.maxX, other.maxX) - Math.max(own.minX, other.minX);
	const height = Math.min(own.maxY, other.maxY) - Math.max(own.minY, other.minY);
	if (width <= 0 || height <= 0) return 0;
	return (width * height) / ((own.maxX - own.minX) * (own.maxY - own.minY));
}

/** The name of the part that a stroke lies on; "" if on none. */
export function partName({ placed }: PromisedFile, { part }: { readonly part: number }): string {
	return placed[part]?.part.name ?? "";
}
