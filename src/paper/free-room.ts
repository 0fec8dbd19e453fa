import { block, blockHeight, COLUMN, type Ink, inkOf, type TextLine } from "../drawing/index.js";
import type { Extents } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";

/** Between a drawing and the texts under it, mm. */
const UNDER = 4;

type Block = readonly TextLine[];

/** Blocks of text that go where pages have room left for them, each whole and on one page. */
export class FreeRoom {
	/** Whether there are any at all. */
	readonly isWanted: boolean;
	#waiting: readonly Block[];

	/** @param blocks - in the order in which they are to be read */
	constructor(
		blocks: readonly Block[],
		private readonly letters: Lettering,
	) {
		this.#waiting = blocks;
		this.isWanted = blocks.length > 0;
	}

	/** As many of the blocks that still wait as a page's free room holds; a long one lets shorter ones pass. */
	filled({ minX, maxX, minY, maxY }: Extents): Ink {
		if (maxX - minX < COLUMN) return inkOf();
		const placed: Ink[] = [];
		let y = maxY - UNDER;
		this.#waiting = this.#waiting.filter((lines) => {
			if (y - blockHeight(lines) < minY) return true;
			placed.push(block(lines, minX, y, this.letters));
			y -= blockHeight(lines);
			return false;
		});
		return inkOf(...placed);
	}

	/** Pages for what still waits; what even a whole page does not hold is left out. */
	pages(body: Extents): Ink[] {
		const pages: Ink[] = [];
		while (this.#waiting.length > 0) {
			const before = this.#waiting.length;
			const ink = this.filled(body);
			if (this.#waiting.length < before) pages.push(ink);
			else this.#waiting = this.#waiting.slice(1);
		}
		return pages;
	}
}
