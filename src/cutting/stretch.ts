import type { Mark, Part, Placed, Sheet } from "../drawing/index.js";
import {
	around,
	type Extents,
	extents,
	moved,
	type Path,
	type Point,
	STAY,
	stretched,
} from "../geometry/index.js";

/**
 * A sheet as a machine must be told it whose axes are not true: parts are set in their places
 * first, since the axes are those of the bed, and lie there from now on. The reference layer goes
 * along, so that dimensions still meet the part; text keeps its size. The page stays what it is,
 * the bed, unless something drawn reaches over it.
 *
 * Claims stay those of the finished part, in the part's own frame.
 *
 * @param stretch - as for `stretched`; 1 and 1 return the sheet itself
 * @throws RangeError for a factor that is none
 */
export function stretchedSheet(sheet: Sheet, stretch: Point): Sheet {
	if (stretch.x === 1 && stretch.y === 1) return sheet;
	const placed = sheet.placed.map((p) => stretchedPart(p, stretch));
	const marks = sheet.marks.map((m) => ({ ...m, path: stretched(m.path, stretch) }));
	const drawn = [...placed.flatMap(({ part }) => part.marks), ...marks];
	const notes = sheet.notes.map((n) => ({
		...n,
		at: { x: n.at.x / stretch.x, y: n.at.y / stretch.y },
	}));
	const { minX, minY, maxX, maxY } = sheet.size;
	const size: Extents = {
		minX: minX / stretch.x,
		minY: minY / stretch.y,
		maxX: maxX / stretch.x,
		maxY: maxY / stretch.y,
	};
	const boxes = drawn.map((m) => extents(m.path));
	const written = notes.length > 0 ? [size] : [];
	return { ...sheet, size: around([sheet.size, ...written, ...boxes]), placed, marks, notes };
}

function stretchedPart({ part, move }: Placed, stretch: Point): Placed {
	const inSheet = (path: Path) => stretched(moved(path, move), stretch);
	const marks = part.marks.map((m): Mark => ({ ...m, path: inSheet(m.path) }));
	const result: Part = { ...part, marks, working: part.working.map(inSheet) };
	return { part: result, move: STAY };
}
