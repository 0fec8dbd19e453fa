import type { Ink, Note } from "../../src/drawing/index.js";
import { type Extents, extents } from "../../src/geometry/index.js";

/** Rounding of sums, mm. */
const SLACK = 1e-6;
/** What hangs below a baseline, as a share of the height of capitals. */
const HANG = 0.3;

/** What is wrong with a page of drawing and texts: each fault in a line. */
export function inkFaults({ marks, notes }: Ink, body: Extents, leastText = 2.5): string[] {
	const texts = notes.map((note) => ({ text: note.text, box: boxOf(note) }));
	return [
		...marks.flatMap(({ path, feature }) =>
			isWithin(extents(path), body) ? [] : [`outside: ${feature}`],
		),
		...texts.flatMap(({ text, box }) => (isWithin(box, body) ? [] : [`outside: "${text}"`])),
		...texts.flatMap((one, i) =>
			texts
				.slice(i + 1)
				.filter(({ box }) => meet(one.box, box))
				.map(({ text }) => `one over the other: "${one.text}" and "${text}"`),
		),
		...notes.flatMap(({ text, height }) =>
			height < leastText - SLACK ? [`too small: "${text}"`] : [],
		),
		...notes.flatMap(({ text, turn }) => (turn === 0 ? [] : [`turned: "${text}"`])),
	];
}

function boxOf({ at, height, width }: Note): Extents {
	return { minX: at.x, maxX: at.x + width, minY: at.y - HANG * height, maxY: at.y + height };
}

function isWithin(box: Extents, body: Extents): boolean {
	return (
		box.minX >= body.minX - SLACK &&
		box.maxX <= body.maxX + SLACK &&
		box.minY >= body.minY - SLACK &&
		box.maxY <= body.maxY + SLACK
	);
}

function meet(a: Extents, b: Extents): boolean {
	return (
		a.minX < b.maxX - SLACK &&
		b.minX < a.maxX - SLACK &&
		a.minY < b.maxY - SLACK &&
		b.minY < a.maxY - SLACK
	);
}
