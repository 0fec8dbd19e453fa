import {
	around,
	type Extents,
	extents,
	grown,
	moved,
	type Path,
	rectangle,
} from "../geometry/index.js";
import type { PromisedFile, ReadDrawing, ReadStroke } from "./types.js";

/** A path that a machine follows, with the part that it belongs to. */
export interface LaidStroke extends ReadStroke {
	/** In the file's own coordinates. */
	readonly box: Extents;
	/** Its place among the parts that are promised; −1 if it lies on none. */
	readonly part: number;
}

/** So much of a line's box is looked at beside it, mm: a line alone has no area. */
const BESIDE = 0.25;

/** All strokes of a drawing but its reference layer, each with the part on whose box most of it lies. */
export function laidStrokes({ strokes }: ReadDrawing, promised: PromisedFile): LaidStroke[] {
	const boxes = promised.placed.map((_, i) => promisedBox(promised, i));
	return strokes
		.filter(({ operation }) => operation !== "reference")
		.map((stroke) => {
			const box = extents(stroke.path);
			return { ...stroke, box, part: boxes.length === 1 ? 0 : partUnder(box, boxes) };
		});
}

/** Where the cuts of one part are promised to lie, in the file's own coordinates. */
export function promisedBox({ placed, stretch }: PromisedFile, index: number): Extents {
	const { part, move } = placed[index]!;
	const paths = part.outline.length > 0 ? part.outline : [boxPath(part.box)];
	const nominal = around(paths.map((path) => extents(moved(path, move))));
	const { minX, minY, maxX, maxY } = grown(nominal, part.kerf / 2);
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

function partUnder(box: Extents, parts: readonly Extents[]): number {
	const own = grown(box, BESIDE);
	let [best, most] = [-1, 0];
	parts.forEach((part, i) => {
		const shared = sharedArea(own, part);
		if (shared > most) [best, most] = [i, shared];
	});
	return best;
}

function sharedArea(a: Extents, b: Extents): number {
	const width = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
	const height = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
	return width > 0 && height > 0 ? width * height : 0;
}

/** The name of the part that a stroke lies on; "" if on none. */
export function partName({ placed }: PromisedFile, { part }: { readonly part: number }): string {
	return placed[part]?.part.name ?? "";
}
