import {
	distance,
	type Move,
	movedPoint,
	type Path,
	type Point,
	signedArea,
	undone,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { type Contours, contoursOf, fitted, medianRest } from "./contour-fit.js";
import { type Expected, expected, fitShare } from "./fit-share.js";
import { type Lie, lieOf } from "./hull.js";
import { labelPaths } from "./label-paths.js";
import { samplePoints, thinned } from "./sample-points.js";
import type { PromisedPart, ReadDrawing } from "./types.js";

/** Points of the drawing for a first fit, for the last one, and for a look at whether a turn may do. */
const FEW = 160;
const MANY = 1500;
const LOOKS = 48;
/** Hulls less slender than this do not say how they are turned. */
const ROUND = 0.15;
/** Turns tried then, and how many of the best are fitted. */
const TURNS = 72;
const BEST = 6;
/** From this share of a part's cuts on they are found, where they lie so near, mm. */
const ENOUGH = 0.5;
const BESIDE = 0.05;
/** Labels and claims are found where something lies so near, mm. */
const NEAR = 0.1;
/** Shares that differ by less say nothing. */
const ALIKE = 0.02;

/**
 * Where a part lies in a drawing that was edited elsewhere: the move that carries its own frame
 * onto the file, mirrored if it must be; null if the part is not found.
 *
 * The hull of what is cut gives the first guesses; each is fitted to the nominal contours, so
 * that what was changed afterwards has no say. Of a symmetric part, scored claims and labels tell
 * which way it lies; if they do not, it is taken to lie as little turned as may be, not mirrored.
 *
 * @param drawing - in true millimetres: a machine's stretch undone
 * @param letters - the lettering of the part's labels, if it is known
 */
export function placeOf(
	drawing: ReadDrawing,
	part: PromisedPart,
	letters?: Lettering,
): Move | null {
	const cuts = cutsOf(drawing);
	const contours = contoursOf(part.outline, part.kerf);
	const all = thinned(samplePoints(cuts), MANY);
	if (all.length < 3 || contours.length === 0) return null;
	const few = thinned(all, FEW);
	const views = viewsOf(drawing, part, cuts, letters ?? null);
	const found = guesses(cuts, part.outline, contours, few)
		.map((guess) => fitted(contours, few, guess))
		.map((back) => ({ back, ...sharesOf(views, undone(back)) }))
		.filter(({ cut }) => cut >= ENOUGH)
		.reduce<Candidate | null>((best, next) => (best && !isBetter(next, best) ? best : next), null);
	return found && upTo(undone(fitted(contours, all, found.back)));
}

/** All cuts; where nothing is called so, the contours, or else all that is drawn. */
function cutsOf({ strokes }: ReadDrawing): Path[] {
	const cuts = strokes.filter(({ operation }) => operation === "cut");
	const drawn = strokes.filter(({ operation }) => operation !== "reference");
	const contours = drawn.filter(({ path }) => path.closed);
	const chosen = [cuts, contours, drawn].find((list) => list.length > 0) ?? [];
	return chosen.map(({ path }) => path);
}

/** A move from the drawing to the part, and how much of the part is there then. */
interface Candidate extends Shares {
	readonly back: Move;
}

interface Shares {
	readonly cut: number;
	readonly drawn: number;
}

/** Moves from the drawing to the part, one of which is near the true one. */
function guesses(
	cuts: readonly Path[],
	outline: readonly Path[],
	contours: Contours,
	points: readonly Point[],
): Move[] {
	const part = lieOf(outline);
	const whole = lieOf(cuts);
	const largest = lieOf(largestOf(cuts));
	if (!part) return [];
	const apart = largest && whole && distance(largest.centre, whole.centre) > NEAR;
	const lies = [whole, ...(apart ? [largest] : [])].filter((lie) => lie !== null);
	return lies.flatMap((lie) =>
		Math.min(lie.slenderness, part.slenderness) > ROUND
			? axisMoves(lie, part)
			: bestTurns(lie, part, contours, points),
	);
}

function largestOf(paths: readonly Path[]): Path[] {
	const closed = paths.filter((path) => path.closed);
	const area = (path: Path) => Math.abs(signedArea(path));
	return closed.length === 0 ? [] : [closed.reduce((a, b) => (area(b) > area(a) ? b : a))];
}

/** Axis on axis, in all four ways. */
function axisMoves(from: Lie, to: Lie): Move[] {
	return [false, true].flatMap((mirror) => {
		const turn = to.axis + (mirror ? from.axis : -from.axis);
		return [turn, turn + Math.PI].map((t) => centred(from.centre, to.centre, t, mirror));
	});
}

function bestTurns(from: Lie, to: Lie, contours: Contours, points: readonly Point[]): Move[] {
	const looks = thinned(points, LOOKS);
	const all = [false, true].flatMap((mirror) =>
		Array.from({ length: TURNS }, (_, i) => {
			const move = centred(from.centre, to.centre, (2 * Math.PI * i) / TURNS, mirror);
			return { move, rest: medianRest(contours, looks, move) };
		}),
	);
	const best = all.sort((a, b) => a.rest - b.rest).slice(0, BEST);
	return [...best.map(({ move }) => move), ...axisMoves(from, to)];
}

/** The move that turns about one point and brings it to another. */
function centred(from: Point, to: Point, turn: number, mirror: boolean): Move {
	const at = movedPoint(from, { x: 0, y: 0, turn, mirror });
	return { x: to.x - at.x, y: to.y - at.y, turn, mirror };
}

interface Views {
	readonly cut: Expected;
	readonly drawn: readonly Expected[];
}

/** What should be seen of a part where it lies: its cuts; its labels and scored claims. */
function viewsOf(
	{ strokes }: ReadDrawing,
	part: PromisedPart,
	cuts: readonly Path[],
	letters: Lettering | null,
): Views {
	const of = (wanted: string) => {
		const own = strokes.filter(({ operation }) => operation === wanted);
		return (own.length > 0 ? own : strokes).map(({ path }) => path);
	};
	const scored = part.claims.flatMap((claim): Point[] =>
		claim.operation === "score" && claim.kind !== "label" ? claim.at.slice(-1) : [],
	);
	const labels = expected(labelPaths(part, letters), of("engrave"), NEAR, FEW);
	const scores = { ...expected([], of("score"), NEAR, FEW), points: scored };
	return {
		cut: expected(part.outline, cuts, part.kerf / 2 + BESIDE, 2 * FEW),
		drawn: [labels, scores],
	};
}

function sharesOf({ cut, drawn }: Views, move: Move): Shares {
	const at = (p: Point) => movedPoint(p, move);
	return {
		cut: fitShare(cut, at),
		drawn: drawn.reduce((sum, view) => sum + fitShare(view, at), 0),
	};
}

function isBetter(a: Candidate, b: Candidate): boolean {
	const gain = a.cut + a.drawn - b.cut - b.drawn;
	if (Math.abs(gain) > ALIKE) return gain > 0;
	if (a.back.mirror !== b.back.mirror) return b.back.mirror;
	return Math.abs(upTo(a.back).turn) < Math.abs(upTo(b.back).turn) - 1e-9;
}

/** The same move with its turn between −π and π. */
function upTo(move: Move): Move {
	const { turn } = move;
	return { ...move, turn: turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)) };
}
