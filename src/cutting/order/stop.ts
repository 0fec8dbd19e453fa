import type { Mark, Placed } from "../../drawing/index.js";
import { distance, movedPoint, type Path, type Point } from "../../geometry/index.js";
import { endsOf } from "../work.js";

/** One way to go along the marks of a stop, places on the sheet. */
export interface Way {
	readonly from: Point;
	readonly to: Point;
	/** Between the stop's own paths, mm. */
	readonly travel: number;
	/** Of every mark of the stop, in their order. */
	readonly paths: readonly Path[];
}

/** Marks that are travelled one after the other: one, a text, or all cuts of a coupon. */
export interface Stop {
	readonly marks: readonly Mark[];
	readonly ways: readonly Way[];
	/** Stops that must be done before, by their numbers. */
	readonly before: readonly number[];
}

/** A path run in one of its directions, after others. */
interface Run {
	readonly path: Path;
	readonly from: Point;
	readonly to: Point;
	/** From the first path on, mm. */
	readonly travel: number;
	readonly previous: Run | null;
}

/** The least ways through paths in their order, one for each pair of a first and a last path. */
export function waysOf(paths: readonly (readonly Path[])[], { move }: Placed): Way[] {
	const isStill = move.x === 0 && move.y === 0 && move.turn === 0 && !move.mirror;
	const onSheet = (path: Path): Run => {
		const [start, end] = endsOf(path);
		const from = isStill ? start : movedPoint(start, move);
		const to = path.closed ? from : isStill ? end : movedPoint(end, move);
		return { path, from, to, travel: 0, previous: null };
	};
	const [first, ...rest] = paths.map((choice) => choice.map(onSheet));
	return first!.flatMap((start) => {
		const ends = rest.reduce(
			(runs: readonly Run[], choice) => choice.map((next) => after(runs, next)),
			[start],
		);
		return ends.map((end) => ({
			from: start.from,
			to: end.to,
			travel: end.travel,
			paths: pathsTo(end),
		}));
	});
}

/** A run after whichever of some others is the least way to it. */
function after(runs: readonly Run[], next: Run): Run {
	const far = ({ to, travel }: Run) => travel + distance(to, next.from);
	const previous = runs.reduce((a, b) => (far(b) < far(a) ? b : a));
	return { ...next, travel: far(previous), previous };
}

function pathsTo(end: Run): Path[] {
	const paths: Path[] = [];
	for (let run: Run | null = end; run; run = run.previous) paths.push(run.path);
	return paths.reverse();
}
