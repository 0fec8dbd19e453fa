import { OPERATIONS, type Operation, type Pens, type Sheet } from "../drawing/index.js";
import {
	around,
	type Extents,
	extents,
	type Move,
	moved,
	type Path,
	type Point,
	STAY,
} from "../geometry/index.js";

/** A mark at its place on the sheet. */
export interface Stroke {
	readonly operation: Operation;
	readonly path: Path;
	readonly feature: string;
	/** Name of its part; null for what is drawn besides the parts. */
	readonly part: string | null;
}

/**
 * A piece shorter than this could lose its length in six decimals, mm: both ends may move by
 * half a unit in x and in y.
 */
const SHORTEST = 2e-6;
/** How far a stroke may reach past the sheet: rounding only, mm. */
const OVERHANG = 1e-6;

/**
 * All marks of a sheet at their places, grouped by operation in the order of work; within an
 * operation as given, parts first.
 *
 * @throws RangeError, naming the feature, on NaN, infinities, pieces or paths without length,
 *   and on what lies outside the sheet, where a viewer would cut it off
 */
export function strokesOf(sheet: Sheet): Stroke[] {
	const all = [
		...sheet.placed.flatMap(({ part, move }) =>
			part.marks.map((mark) => ({ mark, move, part: part.name })),
		),
		...sheet.marks.map((mark) => ({ mark, move: STAY, part: null })),
	].map(({ mark, move, part }): Stroke => {
		const { operation, feature } = mark;
		const name = part === null ? feature : `${feature} of ${part}`;
		return { operation, path: placed(mark.path, move, name), feature, part };
	});
	for (const stroke of all) inside(stroke, sheet.size);
	return OPERATIONS.flatMap((operation) => all.filter((s) => s.operation === operation));
}

function placed(path: Path, move: Move, name: string): Path {
	const { points, closed } = path;
	if (points.length < 2) throw new RangeError(`${name}: a path needs two points`);
	if (![move.x, move.y, move.turn].every(Number.isFinite)) {
		throw new RangeError(`${name}: its place is not finite`);
	}
	for (let i = 0; i < points.length; i++) {
		const { x, y, bulge } = points[i]!;
		if (!Number.isFinite(x + y + bulge)) {
			throw new RangeError(`${name}: vertex ${i} is not finite: ${x}, ${y}, bulge ${bulge}`);
		}
		const next = points[(i + 1) % points.length]!;
		const last = !closed && i === points.length - 1;
		if (!last && Math.hypot(next.x - x, next.y - y) < SHORTEST) {
			throw new RangeError(`${name}: no length between vertex ${i} and the next`);
		}
	}
	return moved(path, move);
}

function inside({ path, feature }: Stroke, size: Extents): void {
	const box = extents(path);
	const over = Math.max(
		size.minX - box.minX,
		size.minY - box.minY,
		box.maxX - size.maxX,
		box.maxY - size.maxY,
	);
	if (!(over <= OVERHANG)) throw new RangeError(`${feature} lies outside the sheet`);
}

/** The exact box of all strokes. @throws RangeError when there is none */
export function strokeExtents(strokes: readonly Stroke[]): Extents {
	return around(strokes.map(({ path }) => extents(path)));
}

/** The operations that a sheet uses, notes being reference, in the order of work. */
export function operationsOf(sheet: Sheet, strokes: readonly Stroke[]): Operation[] {
	return OPERATIONS.filter(
		(operation) =>
			strokes.some((s) => s.operation === operation) ||
			(operation === "reference" && sheet.notes.length > 0),
	);
}

/**
 * Red, green and blue of a colour, 0 to 255.
 *
 * @throws RangeError unless it is written #rrggbb
 */
export function channels(colour: string): readonly [number, number, number] {
	if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new RangeError(`not a colour #rrggbb: ${colour}`);
	const value = Number.parseInt(colour.slice(1), 16);
	return [value >> 16, (value >> 8) & 255, value & 255];
}

/** Refuses pens that no reader would understand. @throws RangeError */
export function checkPens(pens: Pens): void {
	for (const operation of OPERATIONS) {
		const { colour, width } = pens[operation];
		channels(colour);
		if (!(width > 0) || !Number.isFinite(width)) {
			throw new RangeError(`the ${operation} pen needs a width above 0: ${width}`);
		}
	}
}

/** Refuses a note that cannot be seen. @throws RangeError */
export function checkNote(text: string, height: number, width: number, at: Point): void {
	if (text.trim() === "") throw new RangeError("a note has no text");
	const fine = height > 0 && width > 0 && [height, width, at.x, at.y].every(Number.isFinite);
	if (!fine) throw new RangeError(`the note "${text}" has no place or size`);
}
