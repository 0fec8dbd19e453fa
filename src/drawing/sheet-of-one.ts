import { around, type Extents, grown, STAY } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { dimensions, partExtents } from "./dimension.js";
import { type Ink, inkBoxes, NOTHING } from "./ink.js";
import type { Part } from "./part.js";
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
