import { around, type Extents, segmentExtents } from "./measure.js";
import type { Point } from "./path.js";
import { distanceTo, pointAt, type Segment, segmentLength } from "./segment.js";

/** How far past its box a segment is still found, mm: further than it counts as met. */
const MARGIN = 1e-6;
/** A cell's key is its column times this plus its row: no grid has as many rows. */
const ROWS = 2 ** 26;

/**
 * Segments sorted into the square cells that they pass through, so that a question about a
 * place looks only at the segments near it.
 */
export class SegmentGrid {
	readonly boxes: readonly Extents[];
	/** Side of a cell, mm. */
	readonly cell: number;
	readonly #around: Extents;
	readonly #numberOf = new Map<number, number>();
	/** The segments in each cell, in their order. */
	readonly #inCell: number[][] = [];
	/** The cells of segment i: from place i to place i + 1 of the list. */
	readonly #cells: number[] = [];
	readonly #places: number[] = [0];
	/** The last question that a segment was found for: it may stand in many cells. */
	readonly #found: Uint32Array;
	#question = 0;

	/**
	 * @param reach - no cell is smaller, mm: the usual distance of questions, 0 if there is none
	 * @throws RangeError without segments
	 */
	constructor(
		readonly segments: readonly Segment[],
		reach = 0,
	) {
		this.boxes = segments.map(segmentExtents);
		this.#around = around(this.boxes);
		this.cell = cellSize(segments, this.#around, reach);
		this.#found = new Uint32Array(segments.length);
		for (let i = 0; i < segments.length; i++) this.#enter(i);
	}

	/** The segments after the given one that share a cell with it, in their order. */
	after(index: number): number[] {
		const result: number[] = [];
		this.#question++;
		for (let at = this.#places[index]!; at < this.#places[index + 1]!; at++) {
			const cell = this.#inCell[this.#cells[at]!]!;
			for (let k = cell.length - 1; cell[k]! > index; k--) {
				if (this.#isNew(cell[k]!)) result.push(cell[k]!);
			}
		}
		return result.sort((a, b) => a - b);
	}

	/**
	 * The distance from a point to the nearest segment, mm, or null if that is less than `least`.
	 * Beyond `least` it may be given too long.
	 */
	clearance(p: Point, least: number): number | null {
		let nearest = Number.POSITIVE_INFINITY;
		const reach = least + MARGIN;
		this.#question++;
		for (let column = this.#column(p.x - reach); column <= this.#column(p.x + reach); column++) {
			for (let row = this.#row(p.y - reach); row <= this.#row(p.y + reach); row++) {
				for (const i of this.#at(column, row)) {
					if (!this.#isNew(i) || besideBox(this.boxes[i]!, p) >= nearest) continue;
					nearest = Math.min(nearest, distanceTo(this.segments[i]!, p));
					if (nearest < least) return null;
				}
			}
		}
		return nearest;
	}

	/** The segments that a ray from a point toward +x may meet. */
	toTheRight(p: Point): Segment[] {
		const result: Segment[] = [];
		this.#question++;
		const row = this.#row(p.y);
		const last = this.#column(this.#around.maxX + MARGIN);
		for (let column = Math.max(0, this.#column(p.x)); column <= last; column++) {
			for (const i of this.#at(column, row)) {
				if (this.#isNew(i)) result.push(this.segments[i]!);
			}
		}
		return result;
	}

	#at(column: number, row: number): readonly number[] {
		const cell = this.#numberOf.get(column * ROWS + row);
		return cell === undefined ? NOTHING : this.#inCell[cell]!;
	}

	#isNew(index: number): boolean {
		if (this.#found[index] === this.#question) return false;
		this.#found[index] = this.#question;
		return true;
	}

	#column(x: number): number {
		return Math.floor((x - this.#around.minX) / this.cell);
	}

	#row(y: number): number {
		return Math.floor((y - this.#around.minY) / this.cell);
	}

	/** Walks a segment in steps no longer than a cell and enters the cells of every step's box. */
	#enter(index: number): void {
		const segment = this.segments[index]!;
		const steps = Math.ceil(segmentLength(segment) / this.cell) || 1;
		if (steps === 1) {
			const { minX, minY, maxX, maxY } = this.boxes[index]!;
			this.#enterBox(index, minX, minY, maxX, maxY);
		} else {
			const bow = segment.kind === "arc" ? bowOf(segment.radius, segment.sweep / steps) : 0;
			for (let i = 0, from = segment.start; i < steps; i++) {
				const to = pointAt(segment, (i + 1) / steps);
				const [minX, minY] = [Math.min(from.x, to.x) - bow, Math.min(from.y, to.y) - bow];
				const [maxX, maxY] = [Math.max(from.x, to.x) + bow, Math.max(from.y, to.y) + bow];
				this.#enterBox(index, minX, minY, maxX, maxY);
				from = to;
			}
		}
		this.#places.push(this.#cells.length);
	}

	#enterBox(index: number, minX: number, minY: number, maxX: number, maxY: number): void {
		const lastColumn = this.#column(maxX + MARGIN);
		const lastRow = this.#row(maxY + MARGIN);
		for (let column = this.#column(minX - MARGIN); column <= lastColumn; column++) {
			for (let row = this.#row(minY - MARGIN); row <= lastRow; row++) {
				const cell = this.#cellAt(column * ROWS + row);
				const inside = this.#inCell[cell]!;
				if (inside[inside.length - 1] === index) continue;
				inside.push(index);
				this.#cells.push(cell);
			}
		}
	}

	#cellAt(key: number): number {
		const known = this.#numberOf.get(key);
		if (known !== undefined) return known;
		this.#numberOf.set(key, this.#inCell.length);
		return this.#inCell.push([]) - 1;
	}
}

const NOTHING: readonly number[] = [];

/** At least how far a point is from whatever is in a box; 0 inside. */
function besideBox(box: Extents, p: Point): number {
	return Math.max(0, box.minX - p.x, p.x - box.maxX, box.minY - p.y, p.y - box.maxY);
}

/** How far an arc of this sweep stands out over its chord. */
function bowOf(radius: number, sweep: number): number {
	return radius * (1 - Math.cos(sweep / 2));
}

/**
 * As if the segments were spread evenly, one to a cell, but no larger than the mean segment and
 * no smaller than a sixteenth of it, so that a segment enters a few cells on average; no more
 * than a few cells a segment along a side, and none smaller than `reach`.
 */
function cellSize(segments: readonly Segment[], box: Extents, reach: number): number {
	const count = segments.length;
	const mean = segments.reduce((sum, s) => sum + segmentLength(s), 0) / count;
	const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
	const even = Math.sqrt((width * height) / count);
	const few = Math.max(width, height) / (4 * count + 16);
	return Math.max(Math.min(mean, even), mean / 16, few, reach, MARGIN);
}
