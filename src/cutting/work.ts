import { OPERATIONS, type Operation, type Sheet } from "../drawing/index.js";
import { distance, movedPoint, type Path, type Point, pathLength } from "../geometry/index.js";
import type { Speeds } from "./machine.js";

/** What the head does along a path, as against what is only drawn. */
export type Travelled = Extract<Operation, "score" | "engrave" | "cut">;

/** What the head travels for, in the order of work. */
export const TRAVELLED: readonly Travelled[] = OPERATIONS.filter(
	(operation): operation is Travelled => ["score", "engrave", "cut"].includes(operation),
);

/** What a sheet asks of a machine. */
export interface Work {
	/** Lengths of the paths, mm. */
	readonly cut: number;
	readonly score: number;
	readonly engrave: number;
	/** Straight ways of the head from one path to the next, from where it stands at first, mm. */
	readonly travel: number;
	/** Time of it all at constant speeds, s; null where they are not known. */
	readonly seconds: number | null;
}

/** Where the head stands before a sheet: the origin, or the lower left corner of a sheet beside it. */
export function homeOf({ size }: Sheet): Point {
	const { minX, minY, maxX, maxY } = size;
	const holdsOrigin = minX <= 0 && minY <= 0 && maxX >= 0 && maxY >= 0;
	return holdsOrigin ? { x: 0, y: 0 } : { x: minX, y: minY };
}

/** The two ends of a path; of a closed one its start twice. */
export function endsOf({ points, closed }: Path): readonly [Point, Point] {
	return [points[0]!, closed ? points[0]! : points.at(-1)!];
}

/**
 * Lengths of a sheet's paths, the head's ways between them in the order of the file, and the time
 * that all of it takes. The head's ways begin at `homeOf` and end with the last path.
 *
 * @param speeds - mm/s, each above 0; null leaves the time open
 * @example a square of 10 mm cut from the origin of its sheet at 10 mm/s takes 4 s, no travel
 */
export function workOf(sheet: Sheet, speeds: Speeds | null): Work {
	const lengths = { cut: 0, score: 0, engrave: 0 };
	let travel = 0;
	let at = homeOf(sheet);
	const pass = (operation: Travelled, path: Path, onSheet: (p: Point) => Point) => {
		const [from, to] = endsOf(path).map(onSheet);
		lengths[operation] += pathLength(path);
		travel += distance(at, from!);
		at = to!;
	};
	for (const operation of TRAVELLED) {
		for (const { part, move } of sheet.placed) {
			for (const mark of part.marks) {
				if (mark.operation === operation) pass(operation, mark.path, (p) => movedPoint(p, move));
			}
		}
		for (const mark of sheet.marks) {
			if (mark.operation === operation) pass(operation, mark.path, (p) => p);
		}
	}
	const { cut, score, engrave } = lengths;
	const seconds = speeds
		? cut / speeds.cut + score / speeds.score + engrave / speeds.engrave + travel / speeds.travel
		: null;
	return { ...lengths, travel, seconds };
}
