import {
	closed,
	extents,
	grown,
	moved,
	offset,
	type Path,
	pointAt,
	rectangle,
	reversed,
	segments,
	selfCrossings,
	shift,
	type Vertex,
	vertex,
} from "../../src/geometry/index.js";
import {
	GRID_DISTANCES,
	notchedGrid,
	type Random,
	random,
	randomContour,
	randomDistance,
	randomSteps,
} from "./offset-cases.js";
import { judge } from "./offset-oracle.js";

/** Contours to be offset. */
export interface Trial {
	readonly contours: readonly Path[];
	readonly distance: number;
}

/** Kinds of trials; each makes one from random numbers. */
export const TRIALS = {
	/** One contour of lines and arcs. */
	random: (next: Random): Trial => ({
		contours: [randomContour(next)],
		distance: randomDistance(next),
	}),
	/** One contour on a grid, where gaps and tongues just close. */
	grid: (next: Random): Trial => ({
		contours: [notchedGrid(randomSteps(next))],
		distance: GRID_DISTANCES[Math.floor(next() * GRID_DISTANCES.length)]!,
	}),
	/** One contour in more segments than it needs, rounded as a file would. */
	rounded: (next: Random): Trial => ({
		contours: [inRoundedPieces(randomContour(next), next)],
		distance: randomDistance(next),
	}),
	/** Several contours side by side, each alone or all as holes in a plate. */
	plate: (next: Random): Trial => {
		const row = besideEachOther(next);
		const box = extents({ closed: true, points: row.flatMap((p) => p.points) });
		const { minX, minY, maxX, maxY } = grown(box, 60);
		const plate = [rectangle(minX, minY, maxX, maxY), ...row.map(reversed)];
		return { contours: next() < 0.5 ? row : plate, distance: randomDistance(next) };
	},
} as const;

export type TrialKind = keyof typeof TRIALS;

function inRoundedPieces(path: Path, next: Random): Path {
	const digits = [4, 6, 9, 12][Math.floor(next() * 4)]!;
	const rounded = (v: number) => Number(v.toFixed(digits));
	return closed(
		...segments(path).flatMap((s): Vertex[] => {
			const count = 1 + Math.floor(next() * 3);
			const bulge = s.kind === "arc" ? Math.tan(s.sweep / count / 4) : 0;
			return Array.from({ length: count }, (_, i) => {
				const { x, y } = pointAt(s, i / count);
				return vertex(rounded(x), rounded(y), bulge);
			});
		}),
	);
}

function besideEachOther(next: Random): Path[] {
	const row: Path[] = [];
	let x = 0;
	for (let i = 2 + Math.floor(next() * 3); i > 0; i--) {
		const path = randomContour(next);
		const box = extents(path);
		row.push(moved(path, shift(x - box.minX, 4 * next())));
		x += box.maxX - box.minX + 0.05 + 4 * next();
	}
	return row;
}

/** What came of a trial: what is wrong with it, if anything, and how exact it is. */
export interface Outcome {
	readonly wrong: string | null;
	readonly error: number;
	readonly tested: number;
}

/** How far a point of an offset may be from where it should be, mm. */
const EXACT = 1e-6;

/** Makes and judges the trial of a seed. */
export function outcomeOf(kind: TrialKind, seed: number): Outcome {
	const next = random(seed);
	const { contours, distance } = TRIALS[kind](next);
	let error = 0;
	let tested = 0;
	let wrong: string | null = null;
	try {
		const { paths, born, died } = offset(contours, distance);
		const verdict = judge(contours, paths, distance, next);
		error = verdict.error;
		tested = verdict.tested;
		if (!(error < EXACT)) wrong = `off by ${error} mm`;
		else if (verdict.misplaced > 0) wrong = `${verdict.misplaced} of ${tested} points misplaced`;
		else if (paths.some((p) => selfCrossings(p).length > 0)) wrong = "a path crosses itself";
		else if (paths.length !== contours.length + born - died) wrong = `born ${born}, died ${died}`;
	} catch (thrown) {
		wrong = String(thrown);
	}
	return { wrong: wrong && `${kind} ${seed} by ${distance}: ${wrong}`, error, tested };
}
