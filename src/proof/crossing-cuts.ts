import { distance, meetings, type Point } from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { found } from "./found.js";
import { type LaidStroke, partName } from "./laid-strokes.js";
import { type PathWeb, pairKey } from "./path-web.js";
import type { PromisedFile } from "./types.js";

/**
 * Neighbours that meet again so near to their joint do not cross, mm: of a line that leads into an
 * arc of the radius r, coordinates rounded by e meet it √(2re) from the joint.
 */
const JOINT = 0.1;
/** An open cut may end on another one: so near to its end they do not cross, mm. */
const END = 0.01;
/** Most pairs that are told one by one. */
const MOST_TOLD = 20;

/**
 * Cuts that cross themselves or each other, one finding for each pair. Open cuts of a part that
 * is meant at nominal size may cross others; what runs along each other is told elsewhere.
 *
 * @param doubled - pairs that run along each other, by `pairKey`
 */
export function crossingFaults(
	web: PathWeb,
	doubled: { readonly has: (key: string) => boolean },
	promised: PromisedFile,
): Problem[] {
	const pairs = new Map<string, { readonly stroke: LaidStroke; all: Point[]; own: boolean }>();
	for (const [i, j] of web.near) {
		const [first, second] = [web.owner[i]!, web.owner[j]!];
		const key = pairKey(first, second);
		const known = pairs.get(key);
		if (doubled.has(key) || (!known && pairs.size >= MOST_TOLD)) continue;
		const all = meetings(web.segments[i]!, web.segments[j]!)
			.map(({ at }) => at)
			.filter((at) => isFault(web, i, j, at, promised));
		if (all.length === 0) continue;
		if (known) known.all.push(...all);
		else pairs.set(key, { stroke: web.strokes[first]!, all, own: first === second });
	}
	return [...pairs.values()].map(({ stroke, all, own }) => {
		const { x, y } = all[0]!;
		const facts = { part: partName(promised, stroke), count: all.length, x, y };
		return found(own ? "contour-crosses-itself" : "cuts-cross", "error", facts);
	});
}

function isFault(
	{ strokes, owner, segments, nextOf }: PathWeb,
	i: number,
	j: number,
	at: Point,
	promised: PromisedFile,
): boolean {
	const [a, b] = [strokes[owner[i]!]!, strokes[owner[j]!]!];
	if (a.operation !== "cut" || b.operation !== "cut") return false;
	if (a === b) {
		const isJoint = (before: number, after: number) =>
			nextOf[before] === after && distance(segments[before]!.end, at) < JOINT;
		return !isJoint(i, j) && !isJoint(j, i);
	}
	const crossers = [a, b].filter(({ path }) => !path.closed);
	if (crossers.some(({ part }) => promised.placed[part]?.part.nominal)) return false;
	return !crossers.some(({ path: { points } }) =>
		[points[0]!, points.at(-1)!].some((end) => distance(end, at) < END),
	);
}
