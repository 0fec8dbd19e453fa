import type { Mark } from "../drawing/index.js";
import { line, moved } from "../geometry/index.js";
import { isFanned } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { edgeClaims, stripClaims } from "./indexing-strip/claims.js";
import { edgeLabels, holeAt, leastHeight, numberLabels, panelOf } from "./indexing-strip/labels.js";
import { edgesOf, type IndexEdge, landProblems } from "./indexing-strip/lay.js";
import { stripNotes } from "./indexing-strip/notes.js";
import { stripOutline, workingFlanks } from "./indexing-strip/outline.js";
import { type Given, type IndexingSettings, settings } from "./indexing-strip/settings.js";
import type { Label } from "./label.js";
import { secondProblems } from "./second-edge.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Lowest strip and shortest margin by default, mm. */
const USUAL_HEIGHT = 25;
const USUAL_MARGIN = 12;
/** Strip on both sides of the hole together, mm. */
const BESIDE_HOLE = 8;
/** How much deeper than the pin notches are by default, so that it is held by the flank alone, mm. */
const OVER_PIN = 2;

function holeOf(given: Given): number {
	return given["hanging-hole"] === "none" ? 0 : given["hanging-hole"];
}

function lowest(given: Given, depth: number): number {
	return leastHeight(depth, given["second-edge"] === "plain" ? 1 : 2, holeOf(given));
}

/** Margin that holds the hole at the end of a strip with one edge, mm; with two it is not there. */
function leastMargin(given: Given): number {
	const hole = holeOf(given);
	return hole === 0 || given["second-edge"] !== "plain" ? 0 : hole + BESIDE_HOLE;
}

function defaults(_bench: Bench, given: Given): Partial<Given> {
	const depth = given["notch-depth"] ?? given.pin + OVER_PIN;
	const height = Math.max(USUAL_HEIGHT, Math.ceil(lowest(given, depth) - 1e-9));
	return {
		"notch-depth": depth,
		"strip-height": given["strip-height"] ?? height,
		"end-margin": given["end-margin"] ?? Math.max(USUAL_MARGIN, leastMargin(given)),
	};
}

/** What must be sound before the strip can be laid out. */
function refusals({ neck }: Bench, s: IndexingSettings): Problem[] {
	if (isFanned(neck)) return [problem("fanned-in-a-mitre-box", [])];
	const least = lowest(s, s["notch-depth"]);
	const height = s["strip-height"];
	const low = height < least - 1e-9;
	const margin = leastMargin(s);
	const allowed = `${trimmed(margin, 3)} mm or more beside the hanging hole`;
	return [
		...secondProblems(neck, s["second-edge"]),
		...(s["end-margin"] < margin ? [outOfRange("end-margin", s["end-margin"], allowed)] : []),
		...(low ? [problem("index-strip-too-low", ["strip-height"], { height, least })] : []),
		...(s["notch-depth"] < s.pin / 2
			? [problem("notch-below-pin", ["notch-depth"], { depth: s["notch-depth"], least: s.pin / 2 })]
			: []),
	];
}

/** The line that is laid on the board's nut, over the numbers of its edge. */
function nutLine(edge: IndexEdge, s: IndexingSettings, edges: number, feature: string): Mark {
	const { low, high } = panelOf(s, edges);
	const path = moved(line({ x: 0, y: low }, { x: 0, y: high }), edge.move);
	return { operation: "score", path, feature };
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as IndexingSettings;
	const unsound = refusals(bench, s);
	if (unsound.length > 0) return { parts: [], problems: unsound };
	const edges = edgesOf(bench.neck, s);
	const lands = edges.flatMap((edge, i) => landProblems(edge, [i === 0 ? "pin" : "second-edge"]));
	if (lands.length > 0) return { parts: [], problems: lands };

	const hole = holeOf(s);
	const numbers = edges.map((e, i) => numberLabels(bench, e, s, i === 0 ? "" : "second-"));
	const texts = edges.map((e, i) =>
		edgeLabels(bench, e, s, { prefix: i === 0 ? "" : "second-", edges: edges.length, hole }),
	);
	const tooLong = texts.filter((t): t is Problem => "code" in t);
	if (tooLong.length > 0) return { parts: [], problems: tooLong };
	const labels = [...(texts as Label[][]).flat(), ...numbers.flatMap((n) => n.labels)];
	const hanging = hangingHole(bench, holeAt(edges, s, hole), hole);
	const part = {
		name,
		tool: "indexing-strip",
		title: "Indexing strip",
		stock: bench.stock,
		marks: [
			...edges.map((e, i) =>
				nutLine(e, s, edges.length, i === 0 ? "theoretical nut" : "second theoretical nut"),
			),
			...labels.flatMap((l) => l.marks),
			...hanging.marks,
			{ operation: "cut" as const, path: stripOutline(edges, s), feature: "outline" },
		],
		workingEdge: "every notch's flank on the nut's side",
		working: edges.flatMap((edge) => workingFlanks(edge, s["notch-depth"])),
		claims: [
			...edges.flatMap((e, i) => edgeClaims(bench, e, s, i === 0 ? "" : "second ", edges.length)),
			...stripClaims(bench, edges[0]!, s),
			...hanging.claims,
			...labels.map((l) => l.claim),
		],
		notes: stripNotes(bench, s, numbers[0]!.unnumbered),
	};
	return { parts: [part], problems: [] };
}

export const indexingStrip = tool({
	id: "indexing-strip",
	title: "Indexing strip",
	purpose:
		"Sets a board in a mitre box or on a saw sled so that every slot is sawn at its distance from the nut. Fix it to the board and set notch after notch on a pin beside the blade.",
	settings,
	defaults,
	build,
});
