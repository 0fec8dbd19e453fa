import { block, blockHeight, COLUMN, type Ink, inkOf, type TextLine } from "../drawing/index.js";
import type { Extents } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";

/** Between a drawing and the texts under it, mm. */
const UNDER = 4;

/** Blocks of text that go where pages have room left for them, each whole and on one page. */
export class FreeRoom {
	#waiting: (readonly TextLine[])[];

	/** @param blocks - the ones that matter most first; what finds no room is left out */
	constructor(
		blocks: readonly (readonly TextLine[])[],
		private readonly letters: Lettering,
	) {
		this.#waiting = [...blocks];
	}

	/** As many of the blocks that still wait as a page's free room holds. */
	filled({ minX, maxX, minY, maxY }: Extents): Ink {
		let top = maxY - UNDER;
		if (maxX - minX < COLUMN) return inkOf();
		const fitting = this.#waiting.filter((lines) => {
			if (top - blockHeight(lines) < minY) return false;
			top -= blockHeight(lines);
			return true;
		});
		this.#waiting = this.#waiting.filter((lines) => !fitting.includes(lines));
		let y = maxY - UNDER;
		return inkOf(
			...fitting.map((lines) => {
				const ink = block(lines, minX, y, this.letters);
				y -= blockHeight(lines);
				return ink;
			}),
		);
	}
}
