import { type Path, pathLength } from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { found } from "./found.js";
import type { LaidStroke } from "./laid-strokes.js";
import type { PromisedFile } from "./types.js";

/** Shorter paths are no work of anybody's, mm: a machine only burns a spot there. */
const SHORTEST = 0.01;

/** Cuts that end elsewhere than they begin and should not, or the other way round; crumbs of paths. */
export function contourFaults(laid: readonly LaidStroke[], promised: PromisedFile): Problem[] {
	const open = promised.placed.flatMap((_, i) => openDiffers(laid, promised, i));
	return [...open, ...crumbs(laid)];
}

function openDiffers(laid: readonly LaidStroke[], { placed }: PromisedFile, i: number): Problem[] {
	const { name, open } = placed[i]!.part;
	const cuts = laid.filter(({ part, operation }) => part === i && operation === "cut");
	const ends = cuts.flatMap(({ path }) => (path.closed ? [] : [endOf(path)]));
	if (ends.length === open) return [];
	const facts = { part: name, found: ends.length, promised: open };
	if (ends.length < open) return [found("contour-joined", "error", facts)];
	const narrowest = ends.reduce((a, b) => (b.gap < a.gap ? b : a));
	return [found("contour-open", "error", { ...facts, ...narrowest })];
}

/** Where an open path ends, and how far that is from where it begins. */
function endOf({ points }: Path) {
	const [from, { x, y }] = [points[0]!, points.at(-1)!];
	return { x, y, gap: Math.hypot(x - from.x, y - from.y) };
}

function crumbs(laid: readonly LaidStroke[]): Problem[] {
	const tiny = laid.filter(
		({ box, path }) =>
			box.maxX - box.minX < SHORTEST &&
			box.maxY - box.minY < SHORTEST &&
			pathLength(path) < SHORTEST,
	);
	if (tiny.length === 0) return [];
	const { path, layer } = tiny[0]!;
	const { x, y } = path.points[0]!;
	const facts = { count: tiny.length, layer, length: pathLength(path), x, y };
	return [found("path-too-short", "warning", facts)];
}
