import { moved, type Path, type Point, shift, undone } from "../geometry/index.js";
import { asMade } from "./as-made.js";
import type { PromisedPage, PromisedTile, ReadDrawing, ReadStroke } from "./types.js";

/** One page of a print as it comes out of the printer. */
export interface PrintPage {
	/** Its file among those of the print, from 0. */
	readonly file: number;
	/** Its number in the print, from 1. */
	readonly nth: number;
	readonly promised: PromisedPage;
	/** As its file holds it. */
	readonly width: number;
	readonly height: number;
	/** True millimetres from the lower left corner. */
	readonly strokes: readonly ReadStroke[];
}

/** A page that shows a piece of a part. */
export interface TilePage extends PrintPage {
	readonly tile: PromisedTile;
}

/**
 * A page as the printer makes it: what it was corrected for is undone about its middle.
 *
 * @param made - measured / nominal
 */
export function printPage(
	{ page, strokes }: ReadDrawing,
	promised: PromisedPage,
	made: Point,
	place: Pick<PrintPage, "file" | "nth">,
): PrintPage {
	const { minX, minY, maxX, maxY } = page ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
	const corner = shift(-minX, -minY);
	const [x, y] = [promised.width / 2, promised.height / 2];
	const truly = (path: Path) => {
		const own = moved(path, corner);
		if (made.x === 1 && made.y === 1) return own;
		return moved(asMade(moved(own, shift(-x, -y)), made), shift(x, y));
	};
	return {
		...place,
		promised,
		width: maxX - minX,
		height: maxY - minY,
		strokes: strokes.map((stroke) => ({ ...stroke, path: truly(stroke.path) })),
	};
}

/** Whether a stroke is of a part: reference lines are for people. */
export function isWork({ operation }: ReadStroke): boolean {
	return operation !== null && operation !== "reference";
}

/** What a page shows of its part, in the part's own frame. */
export function workInPart({ strokes, tile }: TilePage): ReadStroke[] {
	const back = undone(tile.move);
	return strokes.filter(isWork).map((s) => ({ ...s, path: moved(s.path, back) }));
}

/** The pages that show a piece of a part. */
export function tilePages(pages: readonly PrintPage[]): TilePage[] {
	return pages.flatMap((page) => {
		const { tile } = page.promised;
		return tile ? [{ ...page, tile }] : [];
	});
}
