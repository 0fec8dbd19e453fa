import type { Mark, Part, Sheet } from "../../src/drawing/index.js";
import {
	around,
	clipped,
	combined,
	type Extents,
	extents,
	grown,
	line,
	type Move,
	moved,
	movedPoint,
	type Path,
	type Point,
	STAY,
	shift,
	stretched,
} from "../../src/geometry/index.js";
import type {
	PromisedPage,
	PromisedPart,
	PromisedPrint,
	PromisedTile,
} from "../../src/proof/index.js";
import { writePdf, writeSvg } from "../../src/writers/index.js";
import { PENS } from "./drawings.js";
import { promisedPart } from "./read-drawings.js";

/** A4. */
export const PAGE = { width: 210, height: 297 } as const;
const MIDDLE = { x: PAGE.width / 2, y: PAGE.height / 2 } as const;
/** What two neighbours both show, mm. */
const OVERLAP = 14;

/** Pages before they are written: marks in true millimetres of the page. */
export interface Drafted {
	readonly pages: readonly {
		readonly size: Extents;
		readonly marks: readonly Mark[];
	}[];
	readonly promised: PromisedPrint;
}

/** How a part is laid out on pages. */
export interface Plan {
	/** Seams along the part's x axis. */
	readonly seams: readonly number[];
	/** Seams along its y axis. */
	readonly rows?: readonly number[];
	readonly turn?: number;
	readonly made?: Point;
}

/** A part on A4 pages, column by column, with two rules each way on each and crosses on every seam. */
export function drafted(part: Part, plan: Plan): Drafted {
	const { seams, rows = [], turn = 0, made = { x: 1, y: 1 } } = plan;
	const promised = promisedPart(part);
	const box = grown(around(part.marks.map((m) => extents(m.path))), 2);
	const pages = spans(box.minX, box.maxX, seams).flatMap((x) =>
		spans(box.minY, box.maxY, rows).map((y) => pageOf(part, promised, x, y, turn)),
	);
	const files = [{ name: "a.pdf", format: "pdf", pages: pages.map((p) => p.promised) }] as const;
	const size = { minX: 0, minY: 0, maxX: PAGE.width, maxY: PAGE.height };
	return { pages: pages.map(({ marks }) => ({ size, marks })), promised: { files, made } };
}

/** What a page shows along one axis. */
interface Span {
	readonly own: readonly [number, number];
	readonly shown: readonly [number, number];
	/** Seams at its ends. */
	readonly seams: readonly number[];
}

function spans(from: number, to: number, seams: readonly number[]): Span[] {
	return [from, ...seams].map((start, i) => {
		const end = seams[i] ?? to;
		const [before, after] = [i > 0, i < seams.length];
		const shown = [before ? start - OVERLAP / 2 : start, after ? end + OVERLAP / 2 : end] as const;
		return {
			own: [start, end],
			shown,
			seams: [...(before ? [start] : []), ...(after ? [end] : [])],
		};
	});
}

function boxOf(x: readonly [number, number], y: readonly [number, number]): Extents {
	return { minX: x[0], maxX: x[1], minY: y[0], maxY: y[1] };
}

function pageOf(part: Part, promised: PromisedPart, x: Span, y: Span, turn: number) {
	const turned: Move = { ...STAY, turn };
	const window = boxOf(x.shown, y.shown);
	const shown = boxAfter(window, turned);
	const move = combined(
		turned,
		shift(MIDDLE.x + 8 - (shown.minX + shown.maxX) / 2, 160 - (shown.minY + shown.maxY) / 2),
	);
	const tile: PromisedTile = {
		part: promised,
		move,
		window: boxAfter(window, move),
		own: boxAfter(boxOf(x.own, y.own), move),
	};
	const work = part.marks.flatMap((mark) =>
		clipped(mark.path, window).map((path): Mark => ({ ...mark, path: moved(path, move) })),
	);
	const middle = { x: (x.own[0] + x.own[1]) / 2, y: (y.own[0] + y.own[1]) / 2 };
	const crosses = [
		...x.seams.map((at) => ({ x: at, y: middle.y })),
		...y.seams.map((at) => ({ x: middle.x, y: at })),
	].map((p) => movedPoint(p, move));
	const rules = [
		{ from: { x: 20, y: 10 }, to: { x: 120, y: 10 } },
		{ from: { x: 20, y: 10 }, to: { x: 121.6, y: 10 } },
		{ from: { x: 8, y: 20 }, to: { x: 8, y: 120 } },
		{ from: { x: 8, y: 20 }, to: { x: 8, y: 121.6 } },
	];
	const marks = [
		...work,
		...rules.map(({ from, to }) => reference("rule", line(from, to))),
		...crosses.flatMap((p) => [
			reference("cross", line({ x: p.x - 4, y: p.y }, { x: p.x + 4, y: p.y })),
			reference("cross", line({ x: p.x, y: p.y - 4 }, { x: p.x, y: p.y + 4 })),
		]),
	];
	const page: PromisedPage = { ...PAGE, rules, crosses, tile };
	return { marks, promised: page };
}

function reference(feature: string, path: Path): Mark {
	return { operation: "reference", path, feature };
}

function boxAfter({ minX, minY, maxX, maxY }: Extents, move: Move): Extents {
	const corners = [
		{ x: minX, y: minY },
		{ x: maxX, y: maxY },
	].map((p) => movedPoint(p, move));
	return around(corners.map(({ x, y }) => ({ minX: x, minY: y, maxX: x, maxY: y })));
}

/** The same with other marks on one page, counted from 1. */
export function withMarks(
	draft: Drafted,
	page: number,
	change: (marks: readonly Mark[]) => readonly Mark[],
): Drafted {
	const pages = draft.pages.map((p, i) => (i === page - 1 ? { ...p, marks: change(p.marks) } : p));
	return { ...draft, pages };
}

/** The same with every path of one page changed. */
export function withPaths(draft: Drafted, page: number, change: (path: Path) => Path): Drafted {
	return withMarks(draft, page, (marks) => marks.map((m) => ({ ...m, path: change(m.path) })));
}

/** A path about a page's middle, divided by what the printer makes of a millimetre. */
export function corrected(path: Path, made: Point): Path {
	if (made.x === 1 && made.y === 1) return path;
	const about = moved(path, shift(-MIDDLE.x, -MIDDLE.y));
	return moved(stretched(about, made), shift(MIDDLE.x, MIDDLE.y));
}

/** The bytes of a print. */
export function pdfOf(draft: Drafted, made = draft.promised.made): Promise<Uint8Array> {
	return writePdf(sheetsOf(draft, made), PENS, "A print");
}

/** The same as an SVG for each page. */
export function svgsOf(draft: Drafted) {
	return sheetsOf(draft, draft.promised.made).map((sheet, i) => ({
		name: `a-${i + 1}.svg`,
		bytes: new TextEncoder().encode(writeSvg(sheet, PENS)),
	}));
}

function sheetsOf({ pages }: Drafted, made: Point): Sheet[] {
	return pages.map(({ size, marks }) => {
		const own = marks.map((mark) => ({ ...mark, path: corrected(mark.path, made) }));
		return { name: "a", title: "A print", size, placed: [], marks: own, notes: [] };
	});
}
