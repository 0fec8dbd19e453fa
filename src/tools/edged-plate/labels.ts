import type { Point } from "../../geometry/index.js";
import { type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import { type PlacedEdge, type Plate, type Relief, turned, type WorkingEdge } from "./plate.js";

/** Heights of letters, mm. */
const LARGE = 2.5;
const SMALL = 1.8;
/** From the body's side to an edge's letters, and between all letters, mm. */
const SIDE = 1.5;
const LEADING = 2;
/** What an edge's letters take of the body beside it, mm. */
const BAND = SIDE + LARGE + LEADING;

/** A text and the name of its label. */
interface Text {
	readonly id: string;
	readonly text: string;
}

/** What a plate carries: an edge's text beside it, lines and a hole in its middle. */
export interface Lettered<E extends WorkingEdge> {
	readonly edgeText: (edge: E) => Text;
	readonly lines: readonly Text[];
	/** Diameter of the hole over the lines, mm; 0 without. */
	readonly hole: number;
	/** Whether the hole stands up at the upper edge's letters, if there are any, apart from the lines. */
	readonly apart: boolean;
	/** Least size of the body along x, mm. */
	readonly least: number;
}

/** Height of an edge's letters: large where they are no longer than the edge and its shoulders. */
function edgeHeight(
	{ letters }: Bench,
	text: string,
	length: number,
	{ shoulder, chamfer }: Relief,
) {
	const room = length + 2 * (shoulder - chamfer) - 2 * SIDE;
	return letters.width(text, LARGE) <= room ? LARGE : SMALL;
}

/** Lines and hole over each other, the lines in letters as large as the room allows. */
function middleOf<E extends WorkingEdge>(
	{ letters }: Bench,
	{ lines: texts, hole }: Lettered<E>,
	room: number,
) {
	const lines = texts.map(({ id, text }) => {
		const height = letters.width(text, LARGE) <= room ? LARGE : SMALL;
		return { id, text, height };
	});
	const sizes = [...(hole > 0 ? [hole] : []), ...lines.map((l) => l.height)];
	const widths = lines.map(({ text, height }) => letters.width(text, height));
	return {
		lines,
		width: Math.max(hole, ...widths),
		height: sizes.reduce((sum, size) => sum + size + LEADING, -LEADING),
	};
}

/** The plate of some edges: its body as small as they, its letters and its hole allow. */
export function plateOf<E extends WorkingEdge>(
	bench: Bench,
	edges: readonly PlacedEdge<E>[],
	relief: Relief,
	lettered: Lettered<E>,
): Plate<E> {
	const aside = Math.max(SIDE, relief.chamfer);
	const along = (side: 0 | 1) => edges.filter((e) => e.quarters % 2 === side);
	const wanted = (side: 0 | 1) =>
		Math.max(0, ...along(side).map((e) => e.length + 2 * relief.shoulder));
	const texts = (side: 0 | 1) =>
		Math.max(
			0,
			...along(side).map((edge) => {
				const { text } = lettered.edgeText(edge);
				return bench.letters.width(text, edgeHeight(bench, text, edge.length, relief)) + 2 * aside;
			}),
		);
	const bands = { x: along(1).length * BAND, y: along(0).length * BAND };
	const least = Math.max(lettered.least, wanted(0));
	const { width, height } = middleOf(bench, lettered, least - 2 * BAND);
	const x = Math.max(least, texts(0), width + Math.max(2 * aside, 2 * BAND * Math.sign(bands.x)));
	const y = Math.max(
		wanted(1),
		texts(1) + 2 * BAND * Math.sign(bands.x),
		height + bands.y + 2 * SIDE,
	);
	return { edges, relief, half: { x: Math.ceil(x) / 2, y: Math.ceil(y) / 2 } };
}

/** Everything that is engraved, and where the hole is. */
export function plateLabels<E extends WorkingEdge>(
	bench: Bench,
	plate: Plate<E>,
	lettered: Lettered<E>,
) {
	const { letters } = bench;
	const { hole } = lettered;
	const lower = plate.edges.some((e) => e.quarters === 0) ? BAND : SIDE;
	const upper = plate.edges.some((e) => e.quarters === 2) ? BAND : SIDE;
	const { lines, height } = middleOf(bench, lettered, 2 * plate.half.x - 2 * BAND);
	let y = (lower - upper) / 2 + height / 2;
	const air = (2 * plate.half.y - lower - upper - height) / 2;
	const raised = lettered.apart && upper === BAND ? air : 0;
	const at: Point = { x: 0, y: y - hole / 2 + raised };
	if (hole > 0) y -= hole + LEADING;
	const middle = lines.map(({ id, text, height: size }): Label => {
		y -= size;
		const made = label(letters, id, text, { at: { x: 0, y }, height: size, align: "centre" });
		y -= LEADING;
		return made;
	});
	const own = plate.edges.map((e) => edgeLabel(bench, plate, e, lettered.edgeText(e)));
	return { labels: [...own, ...middle], hole: at };
}

/** An edge's letters, upright where it points down. */
function edgeLabel(
	bench: Bench,
	{ half, relief }: Plate,
	{ quarters, length }: PlacedEdge,
	{ id, text }: Text,
): Label {
	const y = -(quarters % 2 === 0 ? half.y : half.x) + SIDE;
	return label(bench.letters, id, text, {
		at: turned({ x: 0, y }, quarters),
		height: edgeHeight(bench, text, length, relief),
		turn: (quarters * Math.PI) / 2,
		align: "centre",
	});
}
