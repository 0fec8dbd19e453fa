import type { Mark, Part } from "../drawing/index.js";
import { line } from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { guideClaims } from "./marker-guide/claims.js";
import { guideLabels } from "./marker-guide/labels.js";
import { type Guide, guideOf } from "./marker-guide/lay.js";
import { guideNotes } from "./marker-guide/notes.js";
import { holeProblems, markerProblems } from "./marker-guide/refusals.js";
import { hangingPlace, marginFor } from "./marker-guide/room.js";
import { type Given, type GuideSettings, settings } from "./marker-guide/settings.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Diameter of the hole to hang it by, where nothing else is asked for, mm. */
const USUAL_HOLE = 5;
/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

function partOf(bench: Bench, s: GuideSettings, guide: Guide, name: string): Part {
	const diameter = s["hanging-hole"] === "none" ? 0 : s["hanging-hole"];
	const hanging = hangingHole(bench, hangingPlace(guide, diameter), diameter);
	const hung = hanging.marks.map(({ path }) => path);
	const texts = guideLabels(bench, s, guide, hung);
	const cut = (feature: string, path: Mark["path"]): Mark => ({ operation: "cut", path, feature });
	const lines = s["slot-lines"] ? guide.slots : [];
	return {
		name,
		tool: "marker-guide",
		title: "Marker drill guide",
		stock: bench.stock,
		marks: [
			...lines.map(
				({ fret, bass, treble }): Mark => ({
					operation: "score",
					path: line(bass, treble),
					feature: `slot ${fret.n}`,
				}),
			),
			...texts.labels.flatMap((l) => l.marks),
			...guide.holes.map(({ feature, path }) => cut(feature, path)),
			...hanging.marks,
			cut("outline", guide.outline),
		],
		workingEdge: "the holes at the markers, the nut end and the long sides",
		working: [...guide.edges, ...guide.holes.map(({ path }) => path)],
		claims: [
			...guideClaims(bench, s, guide),
			...hanging.claims,
			...texts.labels.map((l) => l.claim),
		],
		notes: guideNotes(s, guide, texts),
	};
}

function defaults(_bench: Bench, given: Given): Partial<Given> {
	const hasRoom = given["end-margin"] >= marginFor(USUAL_HOLE);
	return { "hanging-hole": given["hanging-hole"] ?? (hasRoom ? USUAL_HOLE : "none") };
}

/** A hole to hang the guide by that would come too near to the last slot. */
function hangingProblems(s: GuideSettings): Problem[] {
	const hole = s["hanging-hole"];
	if (hole === "none" || marginFor(hole) <= s["end-margin"] + ROUNDING) return [];
	const allowed = `none, or an end-margin of ${trimmed(marginFor(hole), 3)} mm or more`;
	return [outOfRange("hanging-hole", hole, allowed)];
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as GuideSettings;
	const unmarked = markerProblems(bench.neck, s);
	if (unmarked.length > 0) return { parts: [], problems: unmarked };
	const guide = guideOf(bench.neck, s);
	const problems = [...holeProblems(bench, s, guide), ...hangingProblems(s)];
	if (problems.length > 0) return { parts: [], problems };
	return { parts: [partOf(bench, s, guide, name)], problems: [] };
}

export const markerGuide = tool({
	id: "marker-guide",
	title: "Marker drill guide",
	purpose:
		"Guides a drill at the centres of the position markers. Butt its nut end against the nut, lay its long sides flush with the board's edges, tape it down and drill through.",
	settings,
	defaults,
	build,
});
