import { type Ink, inkOf, strokes, wrapped, writing } from "../drawing/index.js";
import { type Extents, rectangle } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { trimmed } from "../units/index.js";
import { printable, SIDE } from "./body.js";
import type { Rule } from "./document.js";
import type { Paper } from "./paper.js";
import { inchRule, metricRule } from "./rule-ink.js";

/** What every page says beside its drawing. */
export interface PageFacts {
	readonly job: string;
	readonly title: string;
	/** Which page this is, from 1, and of how many. */
	readonly page: number;
	readonly of: number;
	/** Whether what the printer makes of a millimetre is divided out. */
	readonly corrected: boolean;
	/** The grid of tiles; null on a page by itself. */
	readonly grid: PageGrid | null;
}

/** Tiles of a drawing: pages are counted down each column, columns from the left. */
export interface PageGrid {
	readonly columns: number;
	readonly rows: number;
}

/** What a page carries beside its drawing. */
export interface Furniture {
	readonly ink: Ink;
	readonly rules: readonly Rule[];
}

const LEADING = 4;
/** From the left edge of what is printable to the rule that runs up the page, mm. */
const UP_RULE = 6;
/** From the lower edge of what is printable to the rule across the page, and to what stands over it, mm. */
const ACROSS_RULE = 6;
const OVER_RULE = 14.5;
const METRIC = 100;
const INCHES = 4;
/** Room for the rule across the page with its end strokes, mm. */
const RULE_ROOM = 104;
/** Largest box that the map of the tiles takes, mm. */
const MAP = { width: 24, height: 20 } as const;

/** The words that every page carries. */
export const PRINT_WORDS =
	"Print at actual size (100 %), no fitting to the page; check both rules first.";
export const GLUE_WORDS =
	"Tiles: cut only where it says cut off; lay cross on cross, glue; measure over each seam.";
export const EDGE_WORDS = "The sheet's edge is no datum. Paper moves 0.1 to 0.4 % with humidity.";

/**
 * What every page carries: 100 mm and 4 in both ways, how to print it, which page it is, what the
 * printer's error was taken for, and a small map of the tiles.
 *
 * @param height - of the page
 */
export function furniture(
	paper: Paper,
	height: number,
	facts: PageFacts,
	letters: Lettering,
): Furniture {
	const area = printable(paper, height);
	const across = { x: area.minX + SIDE, y: area.minY + ACROSS_RULE };
	const up = { x: area.minX + UP_RULE, y: area.minY + SIDE };
	const rules = [
		metricRule(letters, across, 0, METRIC),
		inchRule(letters, across, 0, INCHES),
		metricRule(letters, up, Math.PI / 2, METRIC),
		inchRule(letters, up, Math.PI / 2, INCHES),
	];
	const ink = inkOf(
		...rules.map((r) => r.ink),
		words(paper, facts, area, letters),
		facts.grid ? mapOf(facts.grid, facts.page, mapBox(area), letters) : inkOf(),
	);
	return { ink, rules: rules.map((r) => r.rule) };
}

/** The texts over the rule, the last line lowest. */
function words(paper: Paper, facts: PageFacts, area: Extents, letters: Lettering): Ink {
	const { job, title, page, of } = facts;
	const room = area.maxX - area.minX - SIDE - MAP.width - 3;
	const texts = [
		`${job}: ${title}, page ${page} of ${of}`,
		PRINT_WORDS,
		EDGE_WORDS,
		madeText(paper, facts),
		...(facts.grid ? [GLUE_WORDS] : []),
	];
	const lines = texts.flatMap((text) => wrapped(letters, text, room));
	return inkOf(
		...lines.map((text, i) => {
			const y = area.minY + OVER_RULE + (lines.length - 1 - i) * LEADING;
			return writing(letters, text, { x: area.minX + SIDE, y });
		}),
	);
}

/** What the page says of the printer. */
function madeText({ made }: Paper, { corrected }: PageFacts): string {
	if (!corrected) return "Not corrected: it shows what the printer does.";
	if (made.x === 1 && made.y === 1) return "Not corrected for the printer.";
	const [across, along] = [trimmed(made.x, 6), trimmed(made.y, 6)];
	return `Divided by what the printer makes of 1: ${across} across, ${along} along the feed.`;
}

/** Where the map stands: the page's lower right corner. */
function mapBox({ minX, minY, maxX }: Extents): Extents {
	const left = Math.max(maxX - MAP.width, minX + SIDE + RULE_ROOM);
	return { minX: left, minY: minY + 1, maxX, maxY: minY + 1 + MAP.height };
}

/** The grid of tiles, each with its number, this page's tile in a double frame. */
function mapOf(grid: PageGrid, page: number, box: Extents, letters: Lettering): Ink {
	const { columns, rows } = grid;
	const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
	const cell = Math.min(width / columns, height / rows / 1.3, 6);
	const [w, h] = [cell, 1.3 * cell];
	const left = box.maxX - columns * w;
	const cells = Array.from({ length: columns * rows }, (_, i) => {
		const x = left + Math.floor(i / rows) * w;
		const y = box.minY + (rows - 1 - (i % rows)) * h;
		const own = i + 1 === page ? [rectangle(x + 0.6, y + 0.6, x + w - 0.6, y + h - 0.6)] : [];
		const number = String(i + 1);
		const size = Math.min(2.5, 0.45 * h, (0.6 * w * 2.5) / letters.width(number, 2.5));
		const at = { x: x + w / 2, y: y + (h - size) / 2 };
		return inkOf(
			strokes("map", rectangle(x, y, x + w, y + h), ...own),
			size < 0.8 ? inkOf() : writing(letters, number, at, { height: size, align: "centre" }),
		);
	});
	return inkOf(...cells);
}
