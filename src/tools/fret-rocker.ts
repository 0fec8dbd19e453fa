import type { Mark, Part } from "../drawing/index.js";
import { line } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { fixed } from "../units/index.js";
import { type Lettered, plateLabels, plateOf } from "./edged-plate/labels.js";
import { endsOf, MOST_EDGES, placed, plateOutline, reliefOf } from "./edged-plate/plate.js";
import { plateClaims } from "./fret-rocker/claims.js";
import { edgesFor, type RockerEdge } from "./fret-rocker/edges.js";
import { plateNotes } from "./fret-rocker/notes.js";
import { type RockerSettings, settings } from "./fret-rocker/settings.js";
import { type Triple, triplesOf } from "./fret-rocker/triples.js";
import { hangingHole } from "./hanging-hole.js";
import { scaleText } from "./scale-text.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

/** Why no edge spans some three frets alone, the tightest three; or too few frets. */
function refusals(bench: Bench, triples: readonly Triple[], clearance: number): Problem[] {
	if (triples.length === 0) {
		const { frets, zeroFret } = bench.neck;
		return [problem("too-few-frets-to-rock", [], { frets, least: zeroFret ? 2 : 3 })];
	}
	const tight = triples.filter(({ room }) => room < clearance - ROUNDING);
	const [first] = tight;
	if (!first) return [];
	const { fret, line, room } = tight.reduce((a, b) => (b.room < a.room ? b : a), first);
	const facts = { fret, last: fret + 2, line, room, least: clearance, more: tight.length - 1 };
	return [problem("three-frets-too-close", ["end-clearance"], facts)];
}

/** Edges in plates of nearly as many each, the longest together. */
function inPlates(edges: readonly RockerEdge[]): RockerEdge[][] {
	const plates = Math.ceil(edges.length / MOST_EDGES);
	const each = Math.ceil(edges.length / plates);
	return Array.from({ length: plates }, (_, i) => edges.slice(i * each, (i + 1) * each)).filter(
		(some) => some.length > 0,
	);
}

/** What is engraved: the frets that an edge serves and its length; job and scale. */
function letteredOf({ job, neck }: Bench, hole: number): Lettered<RockerEdge> {
	return {
		edgeText: ({ number, frets, length }) => ({
			id: `edge-${number}`,
			text: `frets ${frets}   ${fixed(length, 2)} mm`,
		}),
		lines: [
			{ id: "job", text: job },
			{ id: "scale", text: `${scaleText(neck)}, ${neck.frets} frets` },
		],
		hole,
		apart: false,
		least: 0,
	};
}

/** An edge from end to end. */
function profileOf({ length }: RockerEdge) {
	return [
		{ x: -length / 2, y: 0 },
		{ x: length / 2, y: 0 },
	];
}

function partOf(bench: Bench, edges: readonly RockerEdge[], diameter: number, name: string): Part {
	const lettered = letteredOf(bench, diameter);
	const plate = plateOf(bench, placed(edges), reliefOf(bench), lettered);
	const { labels, hole } = plateLabels(bench, plate, lettered);
	const hanging = hangingHole(bench, hole, diameter);
	const path = plateOutline(plate, profileOf);
	const outline: Mark = { operation: "cut", path, feature: "outline" };
	return {
		name,
		tool: "fret-rocker",
		title: `Fret rocker, ${edges.length === 1 ? "one edge" : `${edges.length} edges`}`,
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...hanging.marks, outline],
		workingEdge: "each edge that stands out from the plate, from end to end",
		working: plate.edges.map((edge) => line(...endsOf(plate, edge))),
		claims: [...plateClaims(bench, plate), ...hanging.claims, ...labels.map((l) => l.claim)],
		notes: plateNotes(bench, edges),
	};
}

function build(bench: Bench, given: RockerSettings, name: string): Built {
	const clearance = given["end-clearance"];
	const triples = triplesOf(bench, clearance);
	const problems = refusals(bench, triples, clearance);
	if (problems.length > 0) return { parts: [], problems };
	const diameter = given["hanging-hole"] === "none" ? 0 : given["hanging-hole"];
	const plates = inPlates(edgesFor(triples));
	const parts = plates.map((edges, i) =>
		partOf(bench, edges, diameter, plates.length === 1 ? name : `${name}-${i + 1}`),
	);
	return { parts, problems: [] };
}

export const fretRocker = tool({
	id: "fret-rocker",
	title: "Fret rocker",
	purpose:
		"Finds frets that stand higher than their neighbours: each edge spans three frets and no more. Stand the edge that serves them on three frets and try whether it rocks on the middle one.",
	settings,
	defaults: () => ({}),
	build,
});
