import { type Ink, TEXT } from "../../drawing/index.js";
import type { Extents } from "../../geometry/index.js";
import { isFanned, type Law, type Neck } from "../../neck/index.js";
import { fixed } from "../../units/index.js";
import { scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { blocksOf, gridsOf } from "./blocks.js";
import {
	broken,
	GUTTER,
	gridWidth,
	HANG,
	HEADING,
	type Line,
	paragraph,
	plainHeading,
	type Setting,
	textsLine,
} from "./lines.js";
import { COLUMN_GAP, type Frame, pagesOf } from "./pages.js";
import { LEAST_PICTURE, pictureLine } from "./picture.js";
import type { ShopSheetSettings } from "./settings.js";
import { type TableTexts, tableLines, tableTexts, tableWidth } from "./table.js";
import type { WireList } from "./wire.js";

/** From line to line, mm: the widest with which all stands on one page; ISO 3098's least is 1.4 of the height. */
const LEADINGS = [4.25, 4, 3.75, 1.4 * TEXT] as const;
/** From line to line where one page is too small in any case. */
const USUAL_LEADING = 4;
/** A table wider than this is hard to read across, mm. */
const WIDEST = 290;
/** Blocks of text are at least this wide where there are several columns, mm. */
const LEAST_COLUMN = 84;
/** Height of the job's name, and air under it, mm. */
const NAME = 5;
const NAME_AIR = 1;

/** Least width of body that a bench's sheet needs, mm. */
export function leastWidth(bench: Bench, table: TableTexts): number {
	const { letters } = bench;
	const grids = gridsOf(bench).map((rows) => gridWidth(letters, rows));
	return Math.max(LEAST_PICTURE, tableWidth(letters, table), ...grids);
}

/** The frame of a body: how much of its width is used, and in how many columns. */
function frameOf(bench: Bench, body: Extents): Frame {
	const width = Math.min(WIDEST, body.maxX - body.minX);
	const grids = gridsOf(bench).map((rows) => gridWidth(bench.letters, rows));
	const least = Math.max(LEAST_COLUMN, ...grids);
	const columns = Math.max(1, Math.floor((width + COLUMN_GAP) / (least + COLUMN_GAP)));
	return {
		body: { ...body, maxX: body.minX + width },
		columns,
		columnWidth: (width - (columns - 1) * COLUMN_GAP) / columns,
	};
}

/**
 * The sheet's pages: on one if any leading allows it. Null if a page is too low for a heading, the
 * table's heads and one line.
 */
export function layOut(
	bench: Bench,
	s: ShopSheetSettings,
	wire: WireList,
	body: Extents,
): Ink[] | null {
	const frame = frameOf(bench, body);
	const at = (leading: number) => pagesOf(contentOf(bench, s, wire, frame, leading), frame);
	for (const leading of LEADINGS) {
		const pages = at(leading);
		if (pages?.length === 1) return pages;
	}
	return at(USUAL_LEADING);
}

function contentOf(
	bench: Bench,
	s: ShopSheetSettings,
	wire: WireList,
	frame: Frame,
	leading: number,
) {
	const { body, columnWidth } = frame;
	const { letters } = bench;
	const set: Setting = { letters, leading, width: body.maxX - body.minX };
	const { heads, rows } = tableLines(set, tableTexts(bench.neck, wire));
	return {
		first: [...heading(bench, set), pictureLine(bench, set.width)],
		further: plainHeading(set, `${bench.job}: shop sheet, continued`),
		tableHeads: heads,
		tableRows: rows,
		blocks: blocksOf(bench, s, wire, { ...set, width: columnWidth }),
	};
}

/** Job, what this is and its date, and what neck it is. */
function heading({ job, date, neck }: Bench, set: Setting): Line[] {
	const { letters, width } = set;
	const size = [NAME, HEADING].find((h) => letters.width(job, h) <= width) ?? TEXT;
	const names = broken(letters, job, width, size);
	const what = date ? `Shop sheet, ${date}` : "Shop sheet";
	const room = width - letters.width(names.at(-1)!, size) - 2 * GUTTER;
	const beside = letters.width(what, HEADING) <= room;
	const right = { text: what, x: width, align: "right", height: HEADING } as const;
	return [
		...names.map((text, i) =>
			textsLine(set, (1 + HANG) * size + NAME_AIR, [
				{ text, x: 0, height: size },
				...(beside && i === names.length - 1 ? [right] : []),
			]),
		),
		...(beside ? [] : plainHeading(set, what)),
		...paragraph(set, neckText(neck)),
	];
}

/** What neck it is, in a line. */
function neckText(neck: Neck): string {
	const hand = neck.trebleSide === 1 ? "right-handed" : "left-handed";
	const scales = isFanned(neck) ? "scales (bass / treble)" : "scale";
	const also = [
		...(neck.zeroFret ? ["zero fret"] : []),
		...(neck.binding > 0 ? ["bound"] : []),
		hand,
		...(neck.nutShift === 0 ? [] : [`nut face at ${fixed(neck.nutShift, 3)} mm`]),
	];
	return `${scaleText(neck)} ${scales}, ${neck.frets} frets, ${lawText(neck.law)}, ${also.join(", ")}`;
}

function lawText(law: Law): string {
	if (law.kind === "equal") return `${law.steps} equal steps to the octave`;
	if (law.kind === "rule-of-18") return "rule of 18";
	return `a division of its own (${law.ratios.length} frets listed)`;
}
