import type { Mark, Placed } from "../../drawing/index.js";
import { around, extents, movedPoint, type Point, reversed } from "../../geometry/index.js";
import type { Travelled } from "../work.js";
import { cutStops } from "./cut-stops.js";
import { type Stop, waysOf } from "./stop.js";

/** Marks with this at the head of their feature are texts: each is finished before the next. */
const LABEL = "label ";

/** A part's stops by operation. */
export interface Job {
	readonly placed: Placed;
	readonly stops: Readonly<Record<Travelled, readonly Stop[]>>;
	readonly centre: Point;
}

/** What is done on a part at its place, in stops. */
export function jobOf(placed: Placed): Job {
	const { part, move } = placed;
	const marksOf = (operation: Travelled) => part.marks.filter((m) => m.operation === operation);
	const drawn = (operation: Travelled) => textBlocks(marksOf(operation)).map(stopOf);
	const stopOf = (marks: readonly Mark[]): Stop => {
		const paths = marks.map(({ path }) => (path.closed ? [path] : [path, reversed(path)]));
		return { marks, ways: waysOf(paths, placed), before: [] };
	};
	const box = around(part.marks.map(({ path }) => extents(path)));
	const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
	const cuts = marksOf("cut");
	const cut = part.nominal && cuts.length > 0 ? [stopOf(cuts)] : cutStops(cuts, part, placed);
	const stops = { score: drawn("score"), engrave: drawn("engrave"), cut };
	return { placed, stops, centre: movedPoint(middle, move) };
}

/** Marks one by one, but all of one text together. */
function textBlocks(marks: readonly Mark[]): Mark[][] {
	const texts = new Map<string, Mark[]>();
	const blocks: Mark[][] = [];
	for (const mark of marks) {
		const text = mark.feature.startsWith(LABEL) ? mark.feature : null;
		const block = text === null ? undefined : texts.get(text);
		if (block) block.push(mark);
		else {
			const begun = [mark];
			if (text !== null) texts.set(text, begun);
			blocks.push(begun);
		}
	}
	return blocks;
}
