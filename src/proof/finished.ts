import type { Operation } from "../drawing/index.js";
import { type Path, reversed, signedArea } from "../geometry/index.js";
import { type Cutter, holesAmong } from "./cut.js";
import { type Edges, edgesOf } from "./edges.js";
import { soundPath } from "./sound-paths.js";
import { gapOfTab, isTab, joinedOverTabs, type TabGap } from "./tab-gaps.js";
import type { PromisedPart, ReadStroke } from "./types.js";

/** A part as it leaves the machine: what is measured. */
export interface Finished {
	/** Closed contours after the cut, material on their left. */
	readonly contours: Edges;
	/** Open cuts that are meant to be open: their middle lines. */
	readonly slits: Edges;
	readonly scores: Edges;
	/** Width of the cut that was swept; 0 where nothing is. */
	readonly kerf: number;
	/** Room that each tab's claim finds between the cuts, or along a tab's own path. */
	readonly tabs: ReadonlyMap<string, TabGap>;
	/** All paths of an operation, as the file holds them. */
	readonly pathsOf: (operation: Operation) => readonly Path[];
}

/**
 * A part as its strokes leave it: outlines joined over their tabs, contours swept by the beam
 * that they are moved for. A nominal part's paths are measured themselves.
 *
 * @throws Error if a part moved for a kerf comes without a cutter
 */
export function finishedPart(
	part: PromisedPart,
	strokes: readonly ReadStroke[],
	cutter: Cutter | null,
): Finished {
	const sound = strokes.flatMap(({ operation, path }) => {
		const own = soundPath(path);
		return own && operation ? [{ operation, path: own }] : [];
	});
	const pathsOf = (operation: Operation) =>
		sound.filter((s) => s.operation === operation).map((s) => s.path);
	const kerf = part.nominal ? 0 : part.kerf;
	if (kerf > 0 && !cutter) throw new Error(`nothing to cut ${part.name} with`);
	const cuts = pathsOf("cut");
	const open = tabGaps(part, "cut", cuts);
	const { closed, rest } = joinedOverTabs(cuts, [...open.values()]);
	const all = [...closed, ...rest.filter((path) => path.closed)];
	const left = kerf > 0 ? cutter!(all, kerf) : all;
	return {
		contours: edgesOf(withMaterialLeft(left)),
		slits: edgesOf(rest.filter((path) => !path.closed)),
		scores: edgesOf(pathsOf("score")),
		kerf,
		tabs: new Map([...open, ...tabGaps(part, "tab", pathsOf("tab"))]),
		pathsOf,
	};
}

function tabGaps(
	{ claims }: PromisedPart,
	operation: Operation,
	paths: readonly Path[],
): Map<string, TabGap> {
	const found = new Map<string, TabGap>();
	for (const claim of claims) {
		if (claim.kind === "label" || claim.operation !== operation || !isTab(claim)) continue;
		const gap = gapOfTab(paths, claim);
		if (gap) found.set(claim.id, gap);
	}
	return found;
}

/** Contours turned so that material lies on their left: outlines around it, holes the other way. */
function withMaterialLeft(contours: readonly Path[]): Path[] {
	const holes = holesAmong(contours);
	return contours.map((path, i) => (signedArea(path) > 0 === holes[i] ? reversed(path) : path));
}
