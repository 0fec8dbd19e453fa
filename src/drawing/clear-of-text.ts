import { line, movedPoint, type Path, type Point, undone } from "../geometry/index.js";
import type { Ink } from "./ink.js";
import type { Mark, Note } from "./part.js";

/** Air between a text and the ends of a line that is interrupted for it, mm. */
const AIR = 0.6;
/** Of an interrupted line, shorter pieces are left out, mm. */
const SHORTEST = 1;
/** How far descenders hang below the baseline, in heights of the text. */
const HANG = 0.25;

/** A stretch of a line, as shares of its length from its first end. */
interface Stretch {
	readonly from: number;
	readonly to: number;
}

/**
 * The same drawing with straight lines interrupted where they would run through a text: extension
 * lines of one dimension may cross the figures of another, which stay legible so.
 */
export function clearOfText({ marks, notes }: Ink): Ink {
	return { marks: marks.flatMap((mark) => interrupted(mark, notes)), notes };
}

function interrupted(mark: Mark, notes: readonly Note[]): Mark[] {
	const { path } = mark;
	if (path.closed || path.points.length !== 2 || path.points[0]!.bulge !== 0) return [mark];
	const gaps = notes
		.filter((note) => within(path, note, 0) !== null)
		.map((note) => within(path, note, AIR)!)
		.sort((a, b) => a.from - b.from);
	if (gaps.length === 0) return [mark];
	const kept: Stretch[] = [];
	let from = 0;
	for (const gap of [...gaps, { from: 1, to: 1 }]) {
		if (gap.from > from) kept.push({ from, to: gap.from });
		from = Math.max(from, gap.to);
	}
	const [a, b] = path.points as unknown as [Point, Point];
	const size = Math.hypot(b.x - a.x, b.y - a.y);
	const at = (t: number) => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
	return kept
		.filter((s) => (s.to - s.from) * size >= SHORTEST)
		.map((s) => ({ ...mark, path: line(at(s.from), at(s.to)) }));
}

/** The stretch of a line within a text's rectangle, grown by `air`; null where it passes beside it. */
function within(path: Path, { at, turn, width, height }: Note, air: number): Stretch | null {
	const back = undone({ x: at.x, y: at.y, turn, mirror: false });
	const [a, b] = path.points.map((p) => movedPoint(p, back)) as [Point, Point];
	const spans = [
		shareOf(a.x, b.x, -air, width + air),
		shareOf(a.y, b.y, -HANG * height - air, height + air),
	];
	const from = Math.max(0, ...spans.map((s) => s.from));
	const to = Math.min(1, ...spans.map((s) => s.to));
	return from < to ? { from, to } : null;
}

/** The stretch of a line between two bounds, by one coordinate of its ends. */
function shareOf(a: number, b: number, low: number, high: number): Stretch {
	if (a === b) {
		const isWithin = low < a && a < high;
		return isWithin ? { from: -1, to: 2 } : { from: 2, to: -1 };
	}
	const [s, t] = [(low - a) / (b - a), (high - a) / (b - a)];
	return { from: Math.min(s, t), to: Math.max(s, t) };
}
