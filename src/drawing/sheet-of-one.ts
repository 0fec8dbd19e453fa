import { around, type Extents, extents, grown, STAY } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { dimensions, partExtents } from "./dimension.js";
import { type Ink, NOTHING } from "./ink.js";
import type { Note, Part } from "./part.js";
import type { Sheet } from "./sheet.js";
import { type TitleFacts, titleBlock } from "./title-block.js";

/** White around a drawing, mm. */
const MARGIN = 5;

/**
 * The drawing of a single part in its own frame: dimensions around it, its title block, sizes,
 * notes and cautions below.
 *
 * @param dimensioned - false leaves the reference layer out
 */
export function sheetOfOne(
	part: Part,
	facts: TitleFacts,
	letters: Lettering,
	name: string,
	dimensioned: boolean,
): Sheet {
	const box = partExtents(part);
	const ink = dimensioned ? referenceInk(part, facts, letters, box) : NOTHING;
	return {
		name,
		title: `${facts.job}: ${part.title}`,
		size: grown(around([box, ...inkBoxes(ink)]), MARGIN),
		placed: [{ part, move: STAY }],
		marks: ink.marks,
		notes: ink.notes,
	};
}

function referenceInk(part: Part, facts: TitleFacts, letters: Lettering, box: Extents): Ink {
	const dims = dimensions(part, letters);
	const drawn = around([box, ...inkBoxes(dims)]);
	const top = { x: drawn.minX, y: drawn.minY - 6 };
	const block = titleBlock(part, facts, letters, top, drawn.maxX - drawn.minX);
	return { marks: [...dims.marks, ...block.marks], notes: [...dims.notes, ...block.notes] };
}

function inkBoxes(ink: Ink): Extents[] {
	return [...ink.marks.map((m) => extents(m.path)), ...ink.notes.map(noteExtents)];
}

/** The box of a note: its baseline, capitals and descenders. */
function noteExtents({ at, height, turn, width }: Note): Extents {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const corners = [
		[0, -0.3 * height],
		[width, -0.3 * height],
		[0, height],
		[width, height],
	] as const;
	const points = corners.map(([x, y]) => ({ x: at.x + c * x - s * y, y: at.y + s * x + c * y }));
	return around(points.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
}
