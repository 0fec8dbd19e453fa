import type { Path, Point, Vertex } from "../geometry/index.js";
import { JOINT } from "./limits.js";

/** A line or an arc that may be a piece of an exploded path. */
interface Piece {
	readonly start: Point;
	readonly end: Point;
	readonly bulge: number;
}

/** A path with the place in the file of its first piece. */
export interface Joined {
	readonly path: Path;
	readonly order: number;
}

/** How many pieces of one place are looked at: thousands may be heaped up there. */
const MOST_LOOKED_AT = 16;

/**
 * Open paths of one segment joined end to end into the longest chains, within `JOINT`.
 *
 * The next piece of the file goes before all others: an exploded path lies in one run. A chain
 * that comes back to its start is closed. Two lines over each other are left as they are.
 */
export function joinedPieces(paths: readonly Path[]): Joined[] {
	const heap = new Heap(paths.map(pieceOf));
	const result: Joined[] = [];
	for (let i = 0; i < paths.length; i++) {
		if (heap.isUsed(i)) continue;
		const { chain, closed, first } = chainFrom(heap, i);
		result.push({ path: pathOf(chain, closed), order: first });
	}
	return result;
}

function pieceOf({ points }: Path): Piece {
	return { start: points[0]!, end: points[1]!, bulge: points[0]!.bulge };
}

function turned({ start, end, bulge }: Piece): Piece {
	return { start: end, end: start, bulge: bulge === 0 ? 0 : -bulge };
}

function touch(a: Point, b: Point): boolean {
	return Math.hypot(a.x - b.x, a.y - b.y) <= JOINT;
}

function chainFrom(heap: Heap, index: number) {
	const one = heap.take(index);
	const next = heap.at(index + 1);
	const forward = !next || touch(next.start, one.end) || touch(next.end, one.end);
	const backward = next && (touch(next.start, one.start) || touch(next.end, one.start));
	let chain = [!forward && backward ? turned(one) : one];
	let closed = grow(heap, chain, index);
	if (!closed) {
		chain = chain.map(turned).reverse();
		closed = grow(heap, chain, index);
		chain = chain.map(turned).reverse();
	}
	return { chain, closed, first: index };
}

/** Adds pieces to the end of a chain while there are any: true once it is closed. */
function grow(heap: Heap, chain: Piece[], index: number): boolean {
	let last = index;
	for (;;) {
		const end = chain.at(-1)!.end;
		if (chain.length > 1 && touch(end, chain[0]!.start)) return true;
		const found = heap.touching(end, last + 1);
		if (found === null) return false;
		const piece = heap.at(found)!;
		const ahead = touch(piece.start, end) ? piece : turned(piece);
		if (isDoubled(chain, ahead)) return false;
		heap.take(found);
		chain.push(ahead);
		last = found;
	}
}

function isDoubled(chain: readonly Piece[], next: Piece): boolean {
	const [only] = chain;
	const straight = only?.bulge === 0 && next.bulge === 0;
	return chain.length === 1 && straight && touch(next.end, only!.start);
}

/** Ends of lines go before ends of arcs, which come from angles. */
function pathOf(chain: readonly Piece[], closed: boolean): Path {
	const points = chain.map((piece, i): Vertex => {
		const before = i > 0 ? chain[i - 1] : closed ? chain.at(-1) : undefined;
		const at = piece.bulge !== 0 && before?.bulge === 0 ? before.end : piece.start;
		return { x: at.x, y: at.y, bulge: piece.bulge };
	});
	if (closed) return { points, closed };
	const { x, y } = chain.at(-1)!.end;
	return { points: [...points, { x, y, bulge: 0 }], closed };
}

/** Pieces that are not used yet, found by their ends. */
class Heap {
	private readonly used: boolean[];
	private readonly cells = new Map<number, number[]>();

	constructor(private readonly pieces: readonly Piece[]) {
		this.used = pieces.map(() => false);
		for (let i = pieces.length - 1; i >= 0; i--) {
			for (const p of [pieces[i]!.start, pieces[i]!.end]) {
				const key = keyOf(Math.floor(p.x / CELL), Math.floor(p.y / CELL));
				const cell = this.cells.get(key);
				if (cell) cell.push(i);
				else this.cells.set(key, [i]);
			}
		}
	}

	isUsed(index: number): boolean {
		return this.used[index]!;
	}

	/** A piece that is not used, or undefined. */
	at(index: number): Piece | undefined {
		return this.used[index] ? undefined : this.pieces[index];
	}

	take(index: number): Piece {
		this.used[index] = true;
		return this.pieces[index]!;
	}

	/** A piece that begins or ends at a place: the preferred one, else the first of the file. */
	touching(p: Point, preferred: number): number | null {
		if (this.touches(preferred, p)) return preferred;
		let first: number | null = null;
		for (const x of near(p.x)) {
			for (const y of near(p.y)) {
				const found = this.firstIn(keyOf(x, y), p);
				if (found !== null && (first === null || found < first)) first = found;
			}
		}
		return first;
	}

	/** A cell holds its pieces from the last to the first; used ones are dropped on the way. */
	private firstIn(key: number, p: Point): number | null {
		const cell = this.cells.get(key);
		if (!cell) return null;
		while (cell.length > 0 && this.used[cell.at(-1)!]) cell.pop();
		const least = Math.max(0, cell.length - MOST_LOOKED_AT);
		for (let i = cell.length - 1; i >= least; i--) if (this.touches(cell[i]!, p)) return cell[i]!;
		return null;
	}

	private touches(index: number, p: Point): boolean {
		const piece = this.at(index);
		return piece !== undefined && (touch(piece.start, p) || touch(piece.end, p));
	}
}

const CELL = 4 * JOINT;

/** The cells within a joint of a coordinate: one or two. */
function near(value: number): number[] {
	const [low, high] = [Math.floor((value - JOINT) / CELL), Math.floor((value + JOINT) / CELL)];
	return low === high ? [low] : [low, high];
}

/** One number for a cell; cells that share it are told apart by their distances. */
function keyOf(x: number, y: number): number {
	return Math.imul(x | 0, 73_856_093) ^ Math.imul(y | 0, 19_349_663);
}
