import { around, type Extents, grown, type Point, rectangle } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { trimmed } from "../units/index.js";
import { type Ink, inkBoxes, inkOf, NOTHING, strokes } from "./ink.js";
import type { Stock } from "./part.js";
import { partNumbers } from "./part-numbers.js";
import type { Placed, Sheet } from "./sheet.js";
import {
	headingLine,
	inColumns,
	itemLines,
	jobLines,
	kerfText,
	paragraphLines,
	type TextLine,
	type TitleFacts,
	textLine,
} from "./title-block.js";

/** Parts at their places on a machine's bed. */
export interface LaidOut {
	/** Size of the bed, mm: its lower left corner is the origin. */
	readonly bed: Point;
	readonly stock: Stock;
	readonly placed: readonly Placed[];
	/** Share of the bed within the parts' outlines, 0 to 1. */
	readonly used: number;
}

/** What the block under a bed says besides. */
export interface BedFacts extends TitleFacts {
	/** Which sheet this is, from 1, and of how many. */
	readonly sheet: number;
	readonly of: number;
	/** Sentences about the work: lengths, time, what the paths make up for. */
	readonly lines: readonly string[];
}

/** White around a drawing, mm. */
const MARGIN = 5;
/** Between the bed and the block under it, mm. */
const UNDER = 6;

/**
 * The drawing of a bed with its parts. Without dimensions it is exactly the bed. With them the
 * bed's edges are drawn, every part has a number in a ring, and a block below lists the parts,
 * what they are cut from, the work and the cautions.
 *
 * @param dimensioned - false leaves the reference layer out
 */
export function sheetOfMany(
	laid: LaidOut,
	facts: BedFacts,
	letters: Lettering,
	name: string,
	dimensioned: boolean,
): Sheet {
	const bed: Extents = { minX: 0, minY: 0, maxX: laid.bed.x, maxY: laid.bed.y };
	const ink = dimensioned ? referenceInk(laid, facts, letters) : NOTHING;
	return {
		name,
		title: `${facts.job}: ${sheetText(facts)}`,
		size: dimensioned ? grown(around([bed, ...inkBoxes(ink)]), MARGIN) : bed,
		placed: laid.placed,
		marks: ink.marks,
		notes: ink.notes,
	};
}

function sheetText({ sheet, of }: BedFacts): string {
	return `sheet ${sheet} of ${of}`;
}

function referenceInk(laid: LaidOut, facts: BedFacts, letters: Lettering): Ink {
	const { bed } = laid;
	const top = { x: 0, y: -UNDER };
	return inkOf(
		strokes("bed", rectangle(0, 0, bed.x, bed.y)),
		partNumbers(laid, letters),
		inColumns(blocks(laid, facts, letters), letters, top, bed.x),
	);
}

function blocks(laid: LaidOut, facts: BedFacts, letters: Lettering): TextLine[][] {
	const { stock, bed, used, placed } = laid;
	const asDrawn = placed.filter(({ part }) => part.nominal).map(({ part }) => part.name);
	const compensated = facts.kerf > 0 && placed.some(({ part }) => !part.nominal);
	const grain = stock.grain ? `, grain along ${stock.grain}` : "";
	return [
		[
			...jobLines(facts.job, letters),
			textLine(`Sheet ${facts.sheet} of ${facts.of}`),
			textLine(`${stock.material}, ${trimmed(stock.thickness, 3)} mm${grain}`),
			textLine("SCALE 1:1", facts.date ?? undefined),
			textLine(
				`Bed ${trimmed(bed.x, 3)} x ${trimmed(bed.y, 3)} mm, ${trimmed(100 * used, 1)} % used`,
			),
			...(compensated ? paragraphLines(kerfText(facts.kerf, asDrawn), letters) : []),
			...facts.lines.flatMap((text) => paragraphLines(text, letters)),
		],
		[
			headingLine("Parts"),
			...placed.flatMap((p, i) => paragraphLines(`${i + 1} ${placedText(p)}`, letters)),
		],
		[headingLine("Cautions"), ...itemLines(facts.cautions, letters)],
	];
}

/** A part as the list names it: "notched-straightedge, turned 90°". */
function placedText({ part, move }: Placed): string {
	const degrees = trimmed((move.turn * 180) / Math.PI, 1);
	return degrees === "0" ? part.name : `${part.name}, turned ${degrees}°`;
}
