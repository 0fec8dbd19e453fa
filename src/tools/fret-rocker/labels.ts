import type { Point } from "../../geometry/index.js";
import { fixed } from "../../units/index.js";
import { type Label, label } from "../label.js";
import { scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { type PlacedEdge, type Plate, type Relief, turned } from "./plate.js";

/** Heights of letters, mm. */
const LARGE = 2.5;
const SMALL = 1.8;
/** From the body's side to an edge's letters, and between all letters, mm. */
const SIDE = 1.5;
const LEADING = 2;
/** What an edge's letters take of the body beside it, mm. */
const BAND = SIDE + LARGE + LEADING;

/** What a plate says of itself, and its hole. */
interface Middle {
	readonly lines: readonly {
		readonly id: string;
		readonly text: string;
		readonly height: number;
	}[];
	readonly hole: number;
	readonly width: number;
	readonly height: number;
}

/** What an edge says: the frets that it serves, and its length. */
export function edgeText({ frets, length }: PlacedEdge): string {
	return `frets ${frets}   ${fixed(length, 2)} mm`;
}

/** Height of an edge's letters: large where they are no longer than the edge and its shoulders. */
function edgeHeight({ letters }: Bench, edge: PlacedEdge, { shoulder }: Relief): number {
	const room = edge.length + 2 * shoulder - 2 * SIDE;
	return letters.width(edgeText(edge), LARGE) <= room ? LARGE : SMALL;
}

function middleOf({ job, neck, letters }: Bench, hole: number, room: number): Middle {
	const texts = [
		{ id: "job", text: job },
		{ id: "scale", text: `${scaleText(neck)}, ${neck.frets} frets` },
	];
	const lines = texts.map(({ id, text }) => {
		const height = letters.width(text, LARGE) <= room ? LARGE : SMALL;
		return { id, text, height };
	});
	const sizes = [...(hole > 0 ? [hole] : []), ...lines.map((l) => l.height)];
	const widths = lines.map(({ text, height }) => letters.width(text, height));
	return {
		lines,
		hole,
		width: Math.max(hole, ...widths),
		height: sizes.reduce((sum, size) => sum + size + LEADING, -LEADING),
	};
}

/** The plate of some edges: its body as small as they, its letters and its hole allow. */
export function plateOf(
	bench: Bench,
	edges: readonly PlacedEdge[],
	relief: Relief,
	hole: number,
): Plate {
	const along = (side: 0 | 1) => edges.filter((e) => e.quarters % 2 === side);
	const wanted = (side: 0 | 1) =>
		Math.max(0, ...along(side).map((e) => e.length + 2 * relief.shoulder));
	const texts = (side: 0 | 1) =>
		Math.max(
			0,
			...along(side).map(
				(e) => bench.letters.width(edgeText(e), edgeHeight(bench, e, relief)) + 2 * SIDE,
			),
		);
	const bands = { x: along(1).length * BAND, y: along(0).length * BAND };
	const { width, height } = middleOf(bench, hole, wanted(0) - 2 * BAND);
	const x = Math.max(
		wanted(0),
		texts(0),
		width + Math.max(2 * SIDE, 2 * BAND * Math.sign(bands.x)),
	);
	const y = Math.max(
		wanted(1),
		texts(1) + 2 * BAND * Math.sign(bands.x),
		height + bands.y + 2 * SIDE,
	);
	return { edges, relief, half: { x: Math.ceil(x) / 2, y: Math.ceil(y) / 2 } };
}

/** Everything that is engraved, and where the hole is. */
export function plateLabels(bench: Bench, plate: Plate, hole: number) {
	const { letters } = bench;
	const lower = plate.edges.some((e) => e.quarters === 0) ? BAND : SIDE;
	const upper = plate.edges.some((e) => e.quarters === 2) ? BAND : SIDE;
	const { lines, height } = middleOf(bench, hole, 2 * plate.half.x - 2 * BAND);
	let y = (lower - upper) / 2 + height / 2;
	const at: Point = { x: 0, y: y - hole / 2 };
	if (hole > 0) y -= hole + LEADING;
	const middle = lines.map(({ id, text, height: size }): Label => {
		y -= size;
		const made = label(letters, id, text, { at: { x: 0, y }, height: size, align: "centre" });
		y -= LEADING;
		return made;
	});
	return { labels: [...plate.edges.map((e) => edgeLabel(bench, plate, e)), ...middle], hole: at };
}

/** An edge's letters, upright where it points down. */
function edgeLabel(bench: Bench, { half, relief }: Plate, edge: PlacedEdge): Label {
	const { quarters, number } = edge;
	const y = -(quarters % 2 === 0 ? half.y : half.x) + SIDE;
	return label(bench.letters, `edge-${number}`, edgeText(edge), {
		at: turned({ x: 0, y }, quarters),
		height: edgeHeight(bench, edge, relief),
		turn: (quarters * Math.PI) / 2,
		align: "centre",
	});
}
