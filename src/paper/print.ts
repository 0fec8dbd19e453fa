import type { Ink, Mark, Part, Sheet } from "../drawing/index.js";
import {
	type Extents,
	type Move,
	moved,
	type Path,
	type Point,
	shift,
	stretched,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import type { PaperDocument, Rule } from "./document.js";
import { furniture, type PageGrid } from "./furniture.js";
import type { Paper } from "./paper.js";

/** A piece of a part on a page. */
export interface Tile {
	readonly part: Part;
	/** From the part's own frame to the page. */
	readonly move: Move;
	/** What of the page shows the part: all that lies in it, and nothing beyond. */
	readonly window: Extents;
	/** The piece of the window up to the seams. */
	readonly own: Extents;
}

/** A page; all but the sheet in true millimetres from its lower left corner. */
export interface PrintedPage {
	/** As files hold it: divided by what the printer makes of a millimetre. */
	readonly sheet: Sheet;
	/** Lengths that it promises. */
	readonly rules: readonly Rule[];
	/** Middles of the crosses that neighbours are laid together by. */
	readonly crosses: readonly Point[];
	readonly tile: Tile | null;
}

/** Something on paper: a part on one page or in tiles, or a document. */
export interface Print {
	/** Of its files, without ending. */
	readonly name: string;
	readonly title: string;
	readonly paper: Paper;
	/** What of the printer is divided out: 1 and 1 in a check of the printer. */
	readonly made: Point;
	readonly grid: PageGrid | null;
	readonly pages: readonly PrintedPage[];
}

/** What is drawn on a page besides what every page carries, true millimetres. */
export interface PageContent {
	/** Of the part, in its place and clipped. */
	readonly marks: readonly Mark[];
	readonly ink: Ink;
	readonly rules: readonly Rule[];
	readonly crosses: readonly Point[];
	readonly tile: Tile | null;
}

/** What pages have in common. */
export interface PrintFacts {
	readonly job: string;
	readonly name: string;
	readonly title: string;
	readonly height: number;
	readonly corrected: boolean;
	readonly grid: PageGrid | null;
}

/** Pages with what every page carries, as files hold them. */
export function printOf(
	contents: readonly PageContent[],
	paper: Paper,
	facts: PrintFacts,
	letters: Lettering,
): Print {
	const { job, name, title, height, corrected, grid } = facts;
	const made = corrected ? paper.made : { x: 1, y: 1 };
	const pages = contents.map((content, i): PrintedPage => {
		const page = { job, title, page: i + 1, of: contents.length, corrected, grid };
		const besides = furniture({ ...paper, made }, height, page, letters);
		const ink = [content.ink, besides.ink].flatMap((one) => inkMarks(one, letters));
		const marks = [...content.marks, ...ink].map((mark) => ({
			...mark,
			path: inFile(mark.path, paper.width, height, made),
		}));
		const size = { minX: 0, minY: 0, maxX: paper.width, maxY: height };
		const sheet = { name, title: `${job}: ${title}`, size, placed: [], marks, notes: [] };
		const rules = [...content.rules, ...besides.rules];
		return { sheet, rules, crosses: content.crosses, tile: content.tile };
	});
	return { name, title, paper, made, grid, pages };
}

/** A document's pages as files hold them. */
export function printOfDocument(
	given: PaperDocument,
	paper: Paper,
	job: string,
	name: string,
	letters: Lettering,
): Print {
	const { title, height, corrected, pages } = given;
	const contents = pages.map(({ ink, rules }) => ({
		marks: [],
		ink,
		rules,
		crosses: [],
		tile: null,
	}));
	return printOf(contents, paper, { job, name, title, height, corrected, grid: null }, letters);
}

/** Lines and texts as marks: texts by their strokes. */
export function inkMarks({ marks, notes }: Ink, letters: Lettering): Mark[] {
	const written = notes.flatMap(({ text, at, height, turn }) =>
		letters.paths(text, height).map((path): Mark => {
			const placed = moved(path, { ...at, turn, mirror: false });
			return { operation: "reference", path: placed, feature: "text" };
		}),
	);
	return [...marks, ...written];
}

/** A path of a page as its file holds it: the page's middle stays, all else is divided by the factors. */
function inFile(path: Path, width: number, height: number, made: Point): Path {
	if (made.x === 1 && made.y === 1) return path;
	const [x, y] = [width / 2, height / 2];
	return moved(stretched(moved(path, shift(-x, -y)), made), shift(x, y));
}
